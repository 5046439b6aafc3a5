import type { Box } from '../../job/box';
import type { Point } from '../../geometry/outline';
import { boardName, type Board, type Edge } from './board';
import { at, quads, setIn, type Quad } from './section';
import type { Section } from './shell';
import { edgeTilt, flat, frameOf, raised, type Frame, type Solid } from './solid';
import { add3, p3, scale3, type Point3 } from './vec';

/** The boards of the profile, each a quadrilateral swept along the width. */
export function wallBoards(section: Section, box: Pick<Box, 'boards'>): Board[] {
	const [x0, x1] = section.fit === 'over' ? [section.x0, section.x1] : [0, section.width];
	const notches = rabbets(section);
	return section.keys.map((key, i) => {
		const solid = sweptSolid(section.quads[i]!, x0, x1);
		const frame = cornerFrame(solid, sideFrame(section.outer, i));
		return {
			key,
			wall: key,
			name: boardName(key),
			role: 'wall' as const,
			material: section.materials[i]!,
			frame,
			solid: ordered(solid, frame),
			edges: edgesOf(ordered(solid, frame), frame),
			cuts: notches[i] ?? [],
			holes: [],
			grain: box.boards[key]?.grain ?? 'along',
			notes: [],
		};
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

/** How side `i` of the profile is looked at from outside: upright as far as it goes; a level board with its back up. */
export function sideFrame(corners: readonly Point[], i: number): Frame {
	const a = at(corners, i);
	const b = at(corners, i + 1);
	const d = { x: b.x - a.x, y: b.y - a.y };
	const n = scale3(p3(0, d.y, -d.x), 1 / Math.hypot(d.x, d.y));
	const level = Math.abs(d.y) < 1e-6 * Math.abs(d.x);
	// Seen from below, the front edge is up; from above, the back edge.
	return frameOf(p3(0, a.x, a.y), n, level ? p3(0, n.z > 0 ? 1 : -1, 0) : p3(0, 0, 1));
}

/** The frame moved to the lower left corner of the outside face. */
export function cornerFrame(solid: Solid, frame: Frame): Frame {
	const points = solid.outside.map((p) => flat(p, frame));
	const low = { x: Math.min(...points.map((p) => p.x)), y: Math.min(...points.map((p) => p.y)) };
	return { ...frame, at: raised(low, frame) };
}

/** Both faces started at their lower left corner and run counter-clockwise as seen from outside. */
export function ordered(solid: Solid, frame: Frame): Solid {
	const points = solid.outside.map((p) => flat(p, frame));
	const clockwise = area2(points) < 0;
	const n = points.length;
	const order = points.map((_, i) => (clockwise ? n - 1 - i : i));
	const first = order.reduce((best, k) => (lower(points[k]!, points[best]!) ? k : best), order[0]!);
	const start = order.indexOf(first);
	const turned = order.map((_, i) => order[(start + i) % n]!);
	return {
		outside: turned.map((k) => solid.outside[k]!),
		inside: turned.map((k) => solid.inside[k]!),
	};
}

function lower(a: Point, b: Point): boolean {
	return Math.abs(a.y - b.y) > 0.5 ? a.y < b.y : a.x < b.x;
}

function area2(points: readonly Point[]): number {
	return points.reduce((sum, p, i) => {
		const q = points[(i + 1) % points.length]!;
		return sum + p.x * q.y - p.y * q.x;
	}, 0);
}

/** Tilts of all edges; the letters come when it is known what meets there. */
export function edgesOf(solid: Solid, frame: Frame): Edge[] {
	return solid.outside.map((_, k) => ({ letter: '', ...edgeTilt(solid, frame, k) }));
}

/** What the rabbets for the ends take out of each wall: a strip as deep as the rabbet and as wide as the end is thick. */
function rabbets(section: Section): Solid[][] {
	if (section.fit !== 'rabbet') return [];
	const deep = setIn(
		section.inner,
		section.inner.map(() => -section.rabbet),
	);
	if (!deep) return [];
	return quads(section.inner, deep, section.joints).map((q) => [
		sweptSolid(q, 0, section.x0),
		sweptSolid(q, section.x1, section.width),
	]);
}

/** A point over the outside face of a board, for the tests and drawings. */
export function onFace(frame: Frame, p: Point): Point3 {
	return add3(frame.at, add3(scale3(frame.u, p.x), scale3(frame.v, p.y)));
}
