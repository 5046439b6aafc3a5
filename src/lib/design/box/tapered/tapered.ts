import { nth } from '../../../measure';
import type { Box, BoardKey, ShapeOf, Material } from '../../../job';
import {
	type Plane,
	faceWithin,
	meet3,
	ROUND,
	SIX,
	type Planes,
	type Six,
	frameOf,
	type Frame,
	type Solid,
	length3,
	middle3,
	p3,
	sub3,
	type Point3,
} from '../solid';
import { boardName, boardOf, type Board, type Seam } from '../board';
import type { BoardRack } from '../rack';
import { taperedForm, type Form } from './form';
import type { ProblemLog } from '../../problem-log';

/** The walls of a double-tapered box: front and back stand parallel, the other four boards lean. */
export interface TaperedShell extends Form {
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
}

/** Walls of a double-tapered box; null when it cannot be made, with the reason told. */
export function taperedShell(
	box: Box,
	shape: ShapeOf<'tapered'>,
	rack: BoardRack,
	tiltLimit: number,
	log: ProblemLog,
): TaperedShell | null {
	const form = taperedForm(box, shape, rack, log);
	if (!form) return null;
	if (box.ends.fit === 'rabbet') {
		log.check(
			['ends', 'fit'],
			'A rabbet into four leaning boards cannot be cut on the saw.',
			"Set front and back over or between; the plan has them 'over'.",
		);
	}
	const boards = boardsOf(box, form.outer, form.inner, form.materials);
	checkTilts(boards, tiltLimit, log);
	return { ...form, boards, seams: seamsOf(form.innerCorners, form.materials) };
}

type Past = 'level' | 'upright' | 'mitre';

/** What is asked for at the four edges that run from front to back. */
function hipJoint(box: Box, level: Six, upright: Six): Past {
	const wish = box.corners.find((c) => c.between.includes(level) && c.between.includes(upright));
	if (!wish)
		return { 'level-past': 'level', 'upright-past': 'upright', mitre: 'mitre' }[box.joint] as Past;
	if (wish.joint === 'mitre') return 'mitre';
	const first = wish.joint === 'first-past';
	return (wish.between[0] === level) === first ? 'level' : 'upright';
}

function boardsOf(
	box: Box,
	outer: Planes,
	inner: Planes,
	materials: Record<Six, Material>,
): Board[] {
	const over = box.ends.fit !== 'between';
	return SIX.map((key) => {
		const closes = key === 'front' || key === 'back';
		const solid = closes
			? closing(key, over ? outer : inner, outer, inner)
			: leaning(box, key, over ? inner : outer, outer, inner);
		const material = materials[key];
		const frame = faceFrame(outer[key], solid);
		const role = key === 'left' || key === 'right' ? ('end' as const) : ('wall' as const);
		return boardOf({
			key,
			wall: key,
			name: sideName(key),
			role,
			material,
			frame,
			solid,
			grain: box.boards[key]?.grain ?? 'along',
		});
	});
}

/** Left and right are no ends here: front and back close the box. */
export function sideName(key: BoardKey): string {
	if (key === 'left') return 'Left side';
	return key === 'right' ? 'Right side' : boardName(key);
}

/** How a leaning face is looked at: upright as far as it goes; a level one with its back up. */
export function faceFrame(plane: Plane, solid: Solid): Frame {
	const level = Math.abs(plane.n.z) > 0.8;
	return frameOf(
		nth(solid.outside, 0),
		plane.n,
		level ? p3(0, plane.n.z > 0 ? 1 : -1, 0) : p3(0, 0, 1),
	);
}

/**
 * Front or back: over the leaning boards its edges follow their outside, between them their inside.
 */
function closing(key: 'front' | 'back', round: Planes, outer: Planes, inner: Planes): Solid {
	const ring = ROUND.map((side) => round[side]);
	const face = (plane: Plane): Point3[] => faceWithin(plane, ring);
	return { outside: face(outer[key]), inside: face(inner[key]) };
}

/** One of the four: cut by its two neighbours at the hips and by front and back. */
function leaning(box: Box, key: Six, ends: Planes, outer: Planes, inner: Planes): Solid {
	const i = ROUND.indexOf(key);
	const level = key === 'bottom' || key === 'top';
	const corner = (side: Plane, neighbour: Six, end: 'front' | 'back', isOut: boolean): Point3 => {
		const joint = level ? hipJoint(box, key, neighbour) : hipJoint(box, neighbour, key);
		if (joint === 'mitre') return meet3(side, (isOut ? outer : inner)[neighbour], ends[end]);
		const past = (joint === 'level') === level;
		return meet3(side, (past ? outer : inner)[neighbour], ends[end]);
	};
	const face = (plane: Plane, isOut: boolean): Point3[] => {
		const [before, after] = [nth(ROUND, (i + 3) % 4), nth(ROUND, (i + 1) % 4)];
		return [
			corner(plane, before, 'front', isOut),
			corner(plane, after, 'front', isOut),
			corner(plane, after, 'back', isOut),
			corner(plane, before, 'back', isOut),
		];
	};
	return { outside: face(outer[key], true), inside: face(inner[key], false) };
}

function checkTilts(boards: readonly Board[], limit: number, log: ProblemLog): void {
	for (const board of boards) {
		const worst = Math.max(...board.edges.map((e) => e.tilt));
		if (worst <= limit + 1e-9) continue;
		log.check(
			['corners'],
			`${board.name} needs an edge tilted ${Math.round(worst * 10) / 10}°; the saw stops at ${limit}°.`,
			'Let one board run past the other instead of a mitre, or lean the boards less.',
		);
	}
}

function seamsOf(c: readonly Point3[], materials: Record<Six, Material>): Seam[] {
	const seam = (a: Six, b: Six, from: Point3, to: Point3): Seam => {
		const length = length3(sub3(to, from));
		const t = Math.min(materials[a].measured, materials[b].measured);
		return {
			letter: '',
			between: [a, b],
			kind: 'butt',
			length,
			area: length * t,
			at: middle3(from, to),
			seals: true,
		};
	};
	const hips = ROUND.map((key, i) => seam(nth(ROUND, (i + 3) % 4), key, nth(c, i), nth(c, i + 4)));
	const closings = (['front', 'back'] as const).flatMap((end, e) =>
		ROUND.map((key, i) => seam(key, end, nth(c, 4 * e + i), nth(c, 4 * e + ((i + 1) % 4)))),
	);
	return [...hips, ...closings];
}
