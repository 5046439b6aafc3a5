import type { BoxFigures, Point3 } from '../../../design';
import type { Box } from '../../../job';
import { inMm } from './body';

/**
 * The edges of the space in the vehicle as it was measured, mm: the box stands on its floor, in the
 * middle of its width, its front as far from that of the space as the clearance says. None where no
 * space was measured.
 */
export function spaceLines(figures: BoxFigures, space: Box['space']): Point3[][] {
	if (!space) return [];
	const left = (figures.outside.width - space.width) / 2;
	const front = -space.clearance;
	const back = front + space.depth;
	const backTop = front + (space.depthTop ?? space.depth);
	const side = (x: number): Point3[] =>
		[
			{ x, y: front, z: 0 },
			{ x, y: back, z: 0 },
			{ x, y: backTop, z: space.height },
			{ x, y: front, z: space.height },
		].map(inMm);
	const [one, other] = [side(left), side(left + space.width)];
	return [
		[...one, ...one.slice(0, 1)],
		[...other, ...other.slice(0, 1)],
		...one.map((p, k) => [p, ...other.slice(k, k + 1)]),
	];
}
