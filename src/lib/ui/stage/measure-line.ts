import type { Point } from '../../geometry';
import { type PlacedView, onScreen, roundOnScreen } from './arrange';
import type { Measure } from './stage-view';

/** A measure on the screen: its line, the lines that lead to it, and the middle of its figure. */
export interface MeasureLine {
	readonly from: Point;
	readonly to: Point;
	readonly leads: readonly (readonly [Point, Point])[];
	readonly at: Point;
	/** Radians of the line, for its arrows. */
	readonly heading: number;
}

/** From the drawing to the first line, and from one line to the next, pixels. */
const OFF = 30;
const ROW = 30;
/** How far the leading lines go past, and how far they stay off what they lead from. */
const PAST = 6;
const CLEAR = 4;

/** A figure in the middle of a thing stands over the grip there, pixels. */
const OVER = 30;

export function measureLine(m: Measure, laid: PlacedView): MeasureLine {
	const [a, b] = [onScreen(laid, m.from), onScreen(laid, m.to)];
	if (m.off === 'in') {
		return { from: a, to: a, leads: [], at: { x: a.x, y: a.y - OVER }, heading: 0 };
	}
	const round = roundOnScreen(laid);
	const far = OFF + m.row * ROW;
	const level = m.off === 'below' || m.off === 'above';
	const line = {
		below: round.y + round.width + far,
		above: round.y - far,
		left: round.x - far,
		right: round.x + round.length + far,
	}[m.off];
	const on = (p: Point, at: number): Point => (level ? { x: p.x, y: at } : { x: at, y: p.y });
	const out = m.off === 'below' || m.off === 'right' ? 1 : -1;
	const lead = (p: Point): readonly [Point, Point] => [
		on(p, (level ? p.y : p.x) + out * CLEAR),
		on(p, line + out * PAST),
	];
	const [from, to] = [on(a, line), on(b, line)];
	return {
		from,
		to,
		leads: [lead(a), lead(b)],
		at: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
		heading: Math.atan2(to.y - from.y, to.x - from.x),
	};
}
