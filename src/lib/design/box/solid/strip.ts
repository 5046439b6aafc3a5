import { mm } from '../../../measure';
import { type Line, type Point, cross, minus, cornerAt } from '../../../geometry';
import type { Quad } from './section';

/**
 * A board laid right across a side view: what it shows in section and the air on each side of it.
 */
export interface BoardStrip {
	/** `outside` is the face on the left of the heading, `inside` the one on its right. */
	readonly quad: Quad;
	/** The sides of the polygon its two edges stand on: where it starts and where it ends. */
	readonly sides: readonly [number, number];
	readonly left: readonly Point[];
	readonly right: readonly Point[];
	/**
	 * For each side of `left` and `right`, the side of the polygon it lies on, or -1 for the face
	 * of the board.
	 */
	readonly leftSides: readonly number[];
	readonly rightSides: readonly number[];
}

/**
 * Lays a board of `thickness` with its left face on `line` across a polygon. Null where a corner of
 * the polygon lies within the board, or where the line leaves and enters again: no straight board
 * fits there.
 */
export function stripAcross(
	corners: readonly Point[],
	line: Line,
	thickness: number,
): BoardStrip | null {
	const shifted: Line = {
		at: {
			x: line.at.x + line.heading.y * thickness,
			y: line.at.y - line.heading.x * thickness,
		},
		heading: line.heading,
	};
	const within = (d: number): boolean => d < CLEAR && d > -thickness - CLEAR;
	if (corners.some((c) => within(leftOfLine(c, line)))) return null;
	const upper = crossingsOf(corners, line);
	const lower = crossingsOf(corners, shifted);
	if (upper.length !== 2 || lower.length !== 2) return null;
	const [u0, u1] = upper as [Met, Met];
	const [l0, l1] = lower as [Met, Met];
	if (u0.side !== l0.side || u1.side !== l1.side) return null;
	const left = halfOf(corners, line, 1);
	const right = halfOf(corners, shifted, -1);
	return {
		quad: { outside: [u0.p, u1.p], inside: [l0.p, l1.p] },
		sides: [u0.side, u1.side],
		left: left.points,
		leftSides: left.sides,
		right: right.points,
		rightSides: right.sides,
	};
}

interface Met {
	readonly p: Point;
	readonly side: number;
	readonly along: number;
}

/** A board keeps this far from a corner it does not end in. */
const CLEAR = mm(1);

/** Signed distance of a point to the left of a line. */
const leftOfLine = (p: Point, line: Line): number => cross(line.heading, minus(p, line.at));

/** Where a line crosses the sides of a polygon, in the order it meets them. */
export function crossingsOf(corners: readonly Point[], line: Line): Met[] {
	const found: Met[] = [];
	corners.forEach((a, side) => {
		const b = cornerAt(corners, side + 1);
		const da = leftOfLine(a, line);
		const db = leftOfLine(b, line);
		if (da >= 0 === db >= 0) return;
		const t = da / (da - db);
		const p = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
		const d = minus(p, line.at);
		found.push({ p, side, along: d.x * line.heading.x + d.y * line.heading.y });
	});
	return found.sort((a, b) => a.along - b.along);
}

/**
 * The part of a polygon on one side of a line that crosses it twice. `sign` 1 keeps the left, -1
 * the right.
 */
export function halfOf(
	corners: readonly Point[],
	line: Line,
	sign: 1 | -1,
): { points: Point[]; sides: number[] } {
	const points: Point[] = [];
	const sides: number[] = [];
	corners.forEach((a, i) => {
		const b = cornerAt(corners, i + 1);
		const da = sign * leftOfLine(a, line);
		const db = sign * leftOfLine(b, line);
		if (da >= 0) {
			points.push(a);
			sides.push(i);
		}
		if (da >= 0 === db >= 0) return;
		const t = da / (da - db);
		points.push({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
		sides.push(da >= 0 ? -1 : i);
	});
	// A line through a corner leaves a side of no length behind.
	const kept = points.map((p, i) => {
		const q = cornerAt(points, i + 1);
		return Math.hypot(q.x - p.x, q.y - p.y) > 0.5;
	});
	return { points: points.filter((_, i) => kept[i]), sides: sides.filter((_, i) => kept[i]) };
}
