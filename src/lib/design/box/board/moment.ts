import { area, flatten, type Outline, type Point } from '../../../geometry';
import { nth } from '../../../measure';
import { add3, planeArea, raised, scale3, weighBody, type Weighed } from '../solid';
import type { Board } from './board';

/** How far straight pieces may lie off the arcs of a hole when its middle is looked for, ticks. */
const FINE = 16;

/** The wood of a board and where it weighs: its body less its rabbets, holes and recesses. */
export function weighBoard(board: Board): Weighed {
	const t = board.material.measured;
	const holes = board.holes.map((h): Weighed => {
		const deep = h.recess ?? t;
		const volume = Math.abs(area(h.outline)) * deep;
		const under = h.face === 'inside' ? t - deep / 2 : deep / 2;
		const middle = raised(middleOfOutline(h.outline), board.frame, -under);
		return { volume, moment: scale3(middle, volume) };
	});
	const whole = positive(weighBody(board.solid));
	const cuts = board.cuts.map((c) => positive(weighBody(c)));
	return [...cuts, ...holes].reduce(
		(left, gone) => ({
			volume: left.volume - gone.volume,
			moment: add3(left.moment, scale3(gone.moment, -1)),
		}),
		whole,
	);
}

/** A body run the other way round weighs the same. */
const positive = (w: Weighed): Weighed =>
	w.volume < 0 ? { volume: -w.volume, moment: scale3(w.moment, -1) } : w;

/** Centre of area of an outline, arcs as fine straight pieces. */
function middleOfOutline(outline: Outline): Point {
	const points = flatten(outline, FINE);
	const o = nth(points, 0);
	const sum = points.reduce(
		(so, p, i) => {
			const q = nth(points, (i + 1) % points.length);
			const twice = (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x);
			return {
				x: so.x + twice * (p.x + q.x - 2 * o.x),
				y: so.y + twice * (p.y + q.y - 2 * o.y),
			};
		},
		{ x: 0, y: 0 },
	);
	const six = 6 * planeArea(points);
	return { x: o.x + sum.x / six, y: o.y + sum.y / six };
}
