import { nth } from '../../../measure';
import type { Box } from '../../../job';
import { type Point, type Line, cornerAt } from '../../../geometry';
import { boardName, boardOf, type Board } from '../board';
import {
	convex,
	sideLine,
	type Quad,
	halfOf,
	frameOf,
	planeArea,
	type Frame,
	type Solid,
	p3,
	scale3,
	type Point3,
} from '../solid';
import type { SweptSection } from './swept-section';

/** The boards of the profile, each a quadrilateral swept along the width. */
export function wallBoards(section: SweptSection, box: Pick<Box, 'boards'>): Board[] {
	const [x0, x1] = section.fit === 'over' ? [section.x0, section.x1] : [0, section.width];
	const notches = rabbets(section);
	return section.keys.map((key, i) => {
		return boardOf({
			key,
			wall: key,
			name: boardName(key),
			role: 'wall',
			material: nth(section.materials, i),
			frame: sideFrame(section.outer, i),
			solid: sweptSolid(nth(section.quads, i), x0, x1),
			cuts: notches[i] ?? [],
			grain: box.boards[key]?.grain ?? 'along',
		});
	});
}

/** A quadrilateral of the profile swept from `x0` to `x1`. */
export function sweptSolid(q: Quad, x0: number, x1: number): Solid {
	const face = ([a, b]: readonly [Point, Point]): Point3[] => [
		p3(x0, a.x, a.y),
		p3(x1, a.x, a.y),
		p3(x1, b.x, b.y),
		p3(x0, b.x, b.y),
	];
	return { outside: face(q.outside), inside: face(q.inside) };
}

/**
 * How side `i` of the profile is looked at from outside: upright as far as it goes; a level board
 * with its back up.
 */
export function sideFrame(corners: readonly Point[], i: number): Frame {
	const a = cornerAt(corners, i);
	const b = cornerAt(corners, i + 1);
	const d = { x: b.x - a.x, y: b.y - a.y };
	const n = scale3(p3(0, d.y, -d.x), 1 / Math.hypot(d.x, d.y));
	const level = Math.abs(d.y) < 1e-6 * Math.abs(d.x);
	// Seen from below, the front edge is up; from above, the back edge.
	return frameOf(p3(0, a.x, a.y), n, level ? p3(0, n.z > 0 ? 1 : -1, 0) : p3(0, 0, 1));
}

/**
 * What the rabbets for the ends take out of each wall: as deep as the rabbet, as wide as the end is
 * thick.
 */
function rabbets(section: SweptSection): Solid[][] {
	if (section.fit !== 'rabbet') return [];
	const deep = section.inner.map((_, i) => sideLine(section.inner, i, -section.rabbet));
	const ends = [
		[0, section.x0],
		[section.x1, section.width],
	] as const;
	return section.quads.map((q, i) =>
		rabbetSections(section, deep, q, i).flatMap((shape) =>
			ends.map(([x0, x1]) => prism(shape, x0, x1)),
		),
	);
}

/**
 * The rabbet of one wall in section. At an outward corner it ends where the neighbour's ends; at an
 * inward one the neighbour's runs on through the wood of the corner, whichever board that belongs
 * to.
 */
function rabbetSections(
	section: SweptSection,
	deep: readonly Line[],
	q: Quad,
	i: number,
): Point[][] {
	const n = deep.length;
	const whole = [q.outside[0], q.outside[1], q.inside[1], q.inside[0]];
	const own = nth(deep, i);
	let strip = halfOf(whole, own, 1).points;
	const blocks: Point[][] = [];
	for (const [corner, other] of [
		[i, (i + n - 1) % n],
		[(i + 1) % n, (i + 1) % n],
	] as const) {
		const line = nth(deep, other);
		if (convex(section.inner, corner)) strip = halfOf(strip, line, 1).points;
		else blocks.push(halfOf(halfOf(whole, own, -1).points, line, 1).points);
	}
	return [strip, ...blocks].filter((shape) => Math.abs(planeArea(shape)) > 1);
}

/** A shape of the side view carried from `x0` to `x1`. */
function prism(shape: readonly Point[], x0: number, x1: number): Solid {
	const turned = planeArea(shape) < 0 ? [...shape].reverse() : shape;
	const face = (x: number): Point3[] => turned.map((p) => p3(x, p.x, p.y));
	return { outside: face(x1), inside: face(x0) };
}
