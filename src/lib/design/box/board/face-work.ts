import { boundsOfPoints, rectangle, type Outline } from '../../../geometry';
import { snap } from '../../../measure';
import type { FaceWork } from '../../part';
import { flat, over } from '../solid';
import type { Board } from './board';

/**
 * Recesses and rabbets of a board that is looked at from outside.
 * @param onPart from the board's frame to that of its part
 */
export function workOf(board: Board, onPart: (outline: Outline) => Outline): FaceWork[] {
	const recesses = board.holes.flatMap(({ name, outline, recess, face }): FaceWork[] => {
		if (recess === null) return [];
		const from = face === 'inside' ? 'far' : 'near';
		return [
			{ kind: 'pocket', name, from, line: onPart(outline), closed: true, depth: snap(recess) },
		];
	});
	return [...recesses, ...board.cuts.map((cut) => rabbetOf(cut, board, onPart))];
}

/** A rabbet is cut into the inside face: the rectangle it takes there, and how deep. */
function rabbetOf(
	{ outside, inside }: Board['cuts'][number],
	{ frame }: Board,
	onPart: (outline: Outline) => Outline,
): FaceWork {
	const points = [...outside, ...inside];
	const { x, y, length, width } = boundsOfPoints(points.map((p) => flat(p, frame)));
	const up = points.map((p) => over(p, frame));
	return {
		kind: 'rabbet',
		name: 'rabbet',
		from: 'far',
		line: onPart(rectangle(x, y, length, width)),
		closed: true,
		depth: snap(Math.max(...up) - Math.min(...up)),
	};
}
