import { lastOf, nth } from '../../../measure';
import type { Line, Point } from '../../../geometry';
import { crossed, type Quad, type SlotPlane, planeArea } from '../solid';
import { besideWall, freeAlong, legsOf, type SlotSize } from './slot-legs';

/** What a slot of one length is made of, in its plane. */
export interface SlotBody {
	/** Slot boards in section, one for each leg; `outside` is the face towards the slot. */
	readonly quads: readonly Quad[];
	/** Air of the vent inside the box. */
	readonly air: readonly Point[];
	/** Air and boards together: the outline of a cheek board. */
	readonly cheek: readonly Point[];
	/** Free distance from the inner mouth to what faces it. */
	readonly clear: number;
	/** How long each leg is along the middle, the first from the outer face of the front. */
	readonly legs: readonly number[];
}

/**
 * The slot that turns so often at a length measured along its middle, the thickness of the front
 * included. Each board runs on to the slot side of the next, which stands on it.
 */
export function slotBody(
	plane: SlotPlane,
	size: SlotSize,
	length: number,
	turns: number,
): SlotBody {
	const { gap, board } = size;
	const legs = legsOf(plane, size, turns);
	const last = lastOf(legs);
	const inside = length - last.behind;
	const end = squareTo(last.line, ahead(last.from, last.line, inside));
	const wall = (k: number, by: number): Line => besideWall(plane, k, by);
	const all = legs.map((_, k) => k);
	const ends = [0, ...legs.slice(1).map((leg) => leg.behind), length];
	const quads = all.map((k): Quad => {
		const start = k === 0 ? wall(-1, 0) : wall(k - 1, gap + board);
		const stop = k === turns ? end : wall(k + 1, gap);
		const face = (by: number): [Point, Point] => [
			crossed(wall(k, by), start),
			crossed(wall(k, by), stop),
		];
		return { outside: face(gap), inside: face(gap + board) };
	});
	// From the front to the mouth along the walls, and back along the boards.
	const round = (by: number): Point[] => [
		...all.map((k) => crossed(wall(k, 0), wall(k - 1, 0))),
		crossed(wall(turns, 0), end),
		crossed(wall(turns, by), end),
		...all
			.slice(1)
			.reverse()
			.map((k) => crossed(wall(k - 1, by), wall(k, by))),
		crossed(wall(0, by), wall(-1, 0)),
	];
	return {
		quads,
		air: round(gap),
		cheek: round(gap + board),
		clear: freeAlong(plane, last, gap) - inside,
		legs: all.map((k) => nth(ends, k + 1) - nth(ends, k)),
	};
}

const ahead = (p: Point, line: Line, by: number): Point => ({
	x: p.x + line.heading.x * by,
	y: p.y + line.heading.y * by,
});

function squareTo(line: Line, p: Point): Line {
	return { at: p, heading: { x: -line.heading.y, y: line.heading.x } };
}

/** Section areas of a slot: its air, and its boards. */
export function slotAreas(body: SlotBody): { air: number; boards: number } {
	const boards = body.quads.reduce((sum, q) => sum + quadArea(q), 0);
	return { air: Math.abs(planeArea(body.air)), boards };
}

function quadArea(q: Quad): number {
	return Math.abs(planeArea([q.outside[0], q.outside[1], q.inside[1], q.inside[0]]));
}
