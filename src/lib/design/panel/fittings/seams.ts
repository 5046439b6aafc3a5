import { TICKS_PER_MM } from '../../../measure';
import {
	boundsOfPoints,
	distance,
	linesInside,
	minus,
	type Outline,
	plus,
	type Point,
	snapPoint,
	times,
	unit,
} from '../../../geometry';
import type { Bench } from '../bench';

export type SeamPoints = readonly [Point, Point];

/** Seams that cross the panel; one that does not is left out and said. */
export function seamLines({ panel, log }: Bench, board: Outline): SeamPoints[] {
	return panel.seams.flatMap(({ from, to }, i): SeamPoints[] => {
		if (distance(from, to) < TICKS_PER_MM) {
			log.check(
				['seams', i],
				'The seam starts and ends at one point; it is left out.',
				'Give a point at one edge of the panel and one at another.',
			);
			return [];
		}
		if (linesInside([runOn(from, to, board)], [board]).length > 0) return [[from, to]];
		log.check(
			['seams', i],
			'The seam lies beside the panel, not across it; it is left out.',
			'Give a point at one edge of the panel and one at another.',
		);
		return [];
	});
}

/** A seam goes on beyond both of its points as far as there is cloth. */
function runOn(from: Point, to: Point, board: Outline): Point[] {
	const box = boundsOfPoints([...board, from, to]);
	const along = times(unit(minus(to, from)), 2 * (box.length + box.width));
	return [minus(from, along), plus(to, along)].map(snapPoint);
}
