import { type Outline, type Point, direction, bounds, reversed, snapPoint } from '../../geometry';
import { ticks, type Length } from '../../measure';
import type { BlankMark } from '../blank';

/*
 * A covering is described as the finished panel is seen. Cloth lies on the bench face down, and its
 * nap runs along the roll: the view is turned until the nap points along +x and then mirrored
 * across it, which leaves the nap where it is.
 */

/**
 * A point of the front view as the back of the cloth shows it. `nap`: degrees counter-clockwise
 * from +x.
 */
export function onTheBack(p: Point, nap: number): Point {
	const d = direction(nap);
	return { x: p.x * d.x + p.y * d.y, y: p.x * d.y - p.y * d.x };
}

export interface LaidOut {
	readonly outline: Outline;
	readonly marks: readonly BlankMark[];
	readonly length: Length;
	readonly width: Length;
}

/** A cloth laid out, and the way from a point of the front view to its place on the back. */
export interface Layout {
	readonly laid: LaidOut;
	readonly place: (p: Point) => Point;
}

/**
 * Outline (counter-clockwise, front view) and marks as seen from the back, on the grid, corner at
 * 0,0.
 */
export function layOut(
	outline: readonly Point[],
	marks: readonly BlankMark[],
	nap: number,
): Layout {
	const turned = reversed(outline.map((p) => snapPoint(onTheBack(p, nap))));
	const box = bounds(turned);
	const place = (p: Point): Point => {
		const q = onTheBack(p, nap);
		return snapPoint({ x: q.x - box.x, y: q.y - box.y });
	};
	return {
		laid: {
			outline: turned.map((p) => ({ x: p.x - box.x, y: p.y - box.y })),
			marks: marks.map((m) => ({ ...m, line: m.line.map(place) })),
			length: ticks(box.length),
			width: ticks(box.width),
		},
		place,
	};
}
