import { type Mark, type PathMark, line, type Spot, textWidth } from '../drawing';
import { ARROW, arrowhead } from './arrowhead';

/*
 * Dimensions by ISO 129-1: narrow lines, filled arrowheads of 15 degrees, the figure above its
 * line, read from the bottom or the right. One character height on a drawing.
 */

export const FIGURE = 3; // size of figures, mm: 2.1 mm capitals
export const GAP = 0.8; // paper between outline and extension line
const OVERRUN = 1.6;

/**
 * The distance between two spots, its line `offset` to the right of the way from one to the other
 * as seen on paper (negative: to the left). Arrows go outside, and the figure beside them, where
 * there is no room between.
 */
export function dimension(
	from: Spot,
	to: Spot,
	offset: number,
	text: string,
	size = FIGURE,
): Mark[] {
	const long = Math.hypot(to.x - from.x, to.y - from.y);
	if (long === 0) return [];
	const u = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
	const n = { x: -u.y, y: u.x }; // right of the way, y down
	const place = (along: number, across: number): Spot => ({
		x: from.x + u.x * along + n.x * across,
		y: from.y + u.y * along + n.y * across,
	});
	const side = Math.sign(offset) || 1;
	const reach = offset + side * OVERRUN;
	const tight = long < 2 * ARROW + 1;
	const narrow = (a: Spot, b: Spot): PathMark => ({
		kind: 'path',
		steps: line(a.x, a.y, b.x, b.y),
		line: 'narrow',
		ink: 'pencil',
	});
	const out = tight ? ARROW * 1.8 : 0;
	const angle = Math.atan2(u.y, u.x);
	const marks: Mark[] = [
		narrow(place(-out, offset), place(long + out, offset)),
		arrowhead(place(0, offset), tight ? angle : angle + Math.PI),
		arrowhead(place(long, offset), tight ? angle + Math.PI : angle),
	];
	if (Math.abs(offset) > GAP)
		marks.push(
			narrow(place(0, side * GAP), place(0, reach)),
			narrow(place(long, side * GAP), place(long, reach)),
		);
	return [...marks, figure({ place, long, offset, angle }, text, size)];
}

/** The dimension line: `place` gives a spot along it and to its right, both mm. */
interface Measured {
	readonly place: (along: number, across: number) => Spot;
	readonly long: number;
	readonly offset: number;
	readonly angle: number;
}

function figure({ place, long, offset, angle }: Measured, text: string, size: number): Mark {
	const width = textWidth(text, size);
	// Read from the bottom or from the right: letters never stand on their heads.
	const turn = 0 - Math.round(((angle * 180) / Math.PI) * 1e6) / 1e6;
	const upright = turn > 90 || turn <= -90 ? turn - Math.sign(turn) * 180 : turn;
	const flipped = upright !== turn;
	const fits = width <= long - 1;
	const along = fits ? long / 2 : flipped ? -(ARROW * 1.8 + 1) : long + ARROW * 1.8 + 1;
	const above = flipped ? size * 0.28 : -size * 0.28;
	const spot = place(along, fits ? offset + above : offset + (flipped ? -1 : 1) * size * 0.35);
	return {
		kind: 'text',
		x: spot.x,
		y: spot.y,
		text,
		size,
		anchor: fits ? 'middle' : 'start',
		turn: upright,
		ink: 'pencil',
		halo: true,
	};
}
