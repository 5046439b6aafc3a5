import {
	without,
	area,
	type Outline,
	type Point,
	leftOf,
	minus,
	plus,
	snapPoint,
	times,
	unit,
} from '../../../geometry';
import { ticks, mm } from '../../../measure';
import { clothAsked, type Bench } from '../bench';
import type { HingeFigure } from '../figures';

/**
 * Fold lines; the cloth lies double in a closed fold, so the boards stand two loose thicknesses
 * apart. Common practice, no source.
 */
export function hingeFigures(bench: Bench): HingeFigure[] {
	const cloth = clothAsked(bench, bench.panel.cloth, ['cloth']);
	return bench.panel.hinges.flatMap((h, i) => {
		const path = ['hinges', i];
		if (h.from.x === h.to.x && h.from.y === h.to.y) {
			bench.log.stop(
				path,
				'The fold line starts and ends at one point.',
				'Give a point at each of two edges.',
			);
			return [];
		}
		if (!cloth)
			bench.log.check(
				path,
				'The fold is to hinge on the cloth, and the panel has none.',
				'Choose a cloth, or plan a hinge of metal and two panels.',
			);
		const gap = h.gap ?? ticks(2 * (cloth?.loose ?? 0));
		return [{ id: h.id, from: h.from, to: h.to, gap }];
	});
}

/** Far past any board. */
const FAR = mm(10_000);

/** The board split along its fold lines, the gap taken out, largest first. */
export function hingeLeaves(
	bench: Bench,
	board: Outline,
	hinges: readonly HingeFigure[],
): Outline[] {
	if (hinges.length === 0) return [board];
	const leaves = without([board], hinges.map(strip))
		.map((r) => r.outline)
		.sort((a, b) => area(b) - area(a));
	if (leaves.length < hinges.length + 1)
		bench.log.check(
			['hinges'],
			'A fold line does not cross the board from edge to edge.',
			'Give its points at, or beyond, two edges of the panel.',
		);
	return leaves;
}

/** The endless strip a fold takes out; a tick wide at least. */
function strip(h: HingeFigure): Outline {
	const along = unit(minus(h.to, h.from));
	const half = times(leftOf(along), Math.max(h.gap / 2, 1));
	const reach = times(along, FAR);
	const [a, b]: [Point, Point] = [minus(h.from, reach), plus(h.to, reach)];
	return [minus(a, half), minus(b, half), plus(b, half), plus(a, half)].map(snapPoint);
}
