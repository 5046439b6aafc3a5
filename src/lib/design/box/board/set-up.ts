import { nth } from '../../../measure';
import type { Point } from '../../../geometry';
import { edgeTilt, flat, over, planeArea, raised, type Frame, type Solid } from '../solid';

/* How the body of a board is brought into the order every drawing and every size relies on. */

/** One edge of a board, in the order of the corners of its faces. */
export interface SeamEdge {
	/** The seam's letter, the same on the neighbour; empty where nothing meets it. */
	letter: string;
	readonly tilt: number;
	readonly long: 'outside' | 'inside';
}

/** The frame moved to the lower left corner of the outside face. */
export function cornerFrame(solid: Solid, frame: Frame): Frame {
	const points = solid.outside.map((p) => flat(p, frame));
	const low = { x: Math.min(...points.map((p) => p.x)), y: Math.min(...points.map((p) => p.y)) };
	return { ...frame, at: raised(low, frame, over(nth(solid.outside, 0), frame)) };
}

/** Both faces started at their lower left corner and run counter-clockwise as seen from outside. */
export function orderedFaces(solid: Solid, frame: Frame): Solid {
	const points = solid.outside.map((p) => flat(p, frame));
	const clockwise = planeArea(points) < 0;
	const n = points.length;
	const order = points.map((_, i) => (clockwise ? n - 1 - i : i));
	const first = order.reduce(
		(best, k) => (lower(nth(points, k), nth(points, best)) ? k : best),
		nth(order, 0),
	);
	const start = order.indexOf(first);
	const turned = order.map((_, i) => nth(order, (start + i) % n));
	return {
		outside: turned.map((k) => nth(solid.outside, k)),
		inside: turned.map((k) => nth(solid.inside, k)),
	};
}

function lower(a: Point, b: Point): boolean {
	return Math.abs(a.y - b.y) > 0.5 ? a.y < b.y : a.x < b.x;
}

/** Tilts of all edges; the letters come when it is known what meets there. */
export function boardEdges(solid: Solid, frame: Frame): SeamEdge[] {
	return solid.outside.map((_, k) => {
		const { tilt, long } = edgeTilt(solid, frame, k);
		return { letter: '', tilt: tilt < 1e-6 ? 0 : tilt, long };
	});
}
