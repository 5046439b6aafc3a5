import { type BoxBoard, dot3, hull, type Point3, pointOnBoard } from '../../design';
import { boundsOfPoints, type Outline, type Point } from '../../geometry';
import type { StageShape } from './stage-view';

/** One of the views of a box: which way it looks, and what lies right and up in it. */
export interface Sight {
	readonly key: 'front' | 'side' | 'above';
	readonly title: string;
	readonly toward: Point3;
	readonly flat: (p: Point3) => Point;
}

export const FRONT: Sight = {
	key: 'front',
	title: 'Front',
	toward: { x: 0, y: -1, z: 0 },
	flat: (p) => ({ x: p.x, y: p.z }),
};
export const SIDE: Sight = {
	key: 'side',
	title: 'Section from the right',
	toward: { x: 1, y: 0, z: 0 },
	flat: (p) => ({ x: p.y, y: p.z }),
};
export const ABOVE: Sight = {
	key: 'above',
	title: 'From above',
	toward: { x: 0, y: 0, z: 1 },
	flat: (p) => ({ x: p.x, y: p.y }),
};

const OUTER = ['wall', 'end', 'overlay', 'ring'];
const outer = (boards: readonly BoxBoard[]): BoxBoard[] =>
	boards.filter((b) => OUTER.includes(b.role));

/** A sight that counts from the lower left corner of the outside. */
export function settled(boards: readonly BoxBoard[], sight: Sight): Sight {
	const low = boundsOfPoints(outer(boards).flatMap((b) => b.solid.outside.map(sight.flat)));
	const flat = (p: Point3): Point => ({
		x: sight.flat(p).x - low.x,
		y: sight.flat(p).y - low.y,
	});
	return { ...sight, flat };
}

/** A hole of a board as it is seen; its arcs stay arcs where the board is seen face on. */
export function holeSeen(b: BoxBoard, hole: Outline, sight: Sight): Outline {
	return hole.map((c) => ({
		...sight.flat(pointOnBoard(b, c)),
		...(c.bulge ? { bulge: c.bulge } : {}),
	}));
}

export const facesOn = (b: BoxBoard, sight: Sight): boolean => dot3(b.frame.n, sight.toward) > 0.7;

/** Outside faces turned to the viewer, with what is cut into them. */
export function facesSeen(boards: readonly BoxBoard[], sight: Sight): StageShape[] {
	const seen = outer(boards).filter((b) => dot3(b.frame.n, sight.toward) > 0.05);
	const round = hull(outer(boards).flatMap((b) => b.solid.outside.map(sight.flat)));
	return [
		{ outlines: [round], line: 'wide', fill: 'sheet' },
		...seen.map((b): StageShape => ({ outlines: [b.solid.outside.map(sight.flat)], line: 'wide' })),
		...seen
			.filter((b) => facesOn(b, sight))
			.flatMap((b) =>
				b.holes.filter((h) => h.of !== 'bolt' && h.of !== 'screw').map((h) => [b, h] as const),
			)
			.map(([b, h]): StageShape => ({
				outlines: [holeSeen(b, h.outline, sight)],
				line: 'narrow',
				fill: 'bench',
			})),
	];
}

/** Boards swept along the width, sawn through. */
export function sectionSeen(boards: readonly BoxBoard[], sight: Sight): StageShape[] {
	const swept = boards.filter(
		(b) => ['wall', 'doubler', 'overlay', 'slot'].includes(b.role) && Math.abs(b.frame.n.x) <= 0.5,
	);
	return swept.map((b) => ({
		outlines: [sectionOf(b, sight)],
		line: 'wide',
		fill: b.role === 'wall' ? 'sunk' : 'chalk-wash',
	}));
}

function sectionOf(b: BoxBoard, sight: Sight): Outline {
	const most = Math.max(...b.solid.outside.map((p) => p.x));
	const cut = (ring: readonly Point3[]): Point3[] => ring.filter((p) => most - p.x < 2);
	return [...cut(b.solid.outside), ...cut(b.solid.inside).reverse()].map(sight.flat);
}

/** Plates that stand inside, dashed. */
export function insideSeen(boards: readonly BoxBoard[], sight: Sight): StageShape[] {
	return boards
		.filter((b) => ['divider', 'brace', 'slot'].includes(b.role))
		.filter((b) => Math.abs(dot3(b.frame.n, sight.toward)) < 0.5)
		.map((b) => ({ outlines: [roundBoard(b, sight)], line: 'dashed' }));
}

/** Round a whole board as it is seen. */
export function roundBoard(b: BoxBoard, sight: Sight): Outline {
	return hull([...b.solid.outside, ...b.solid.inside].map(sight.flat));
}
