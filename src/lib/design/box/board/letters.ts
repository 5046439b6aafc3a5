import { nth, around } from '../../../measure';
import type { Board } from './board';
import { seamLetter, type Seam } from './seam';
import { length3, middle3, sub3, type Point3 } from '../solid';

/**
 * Names the seams A, B, C ... and writes each letter on the edges that lie in it. Layers face to
 * face get none.
 */
export function letter(boards: readonly Board[], seams: readonly Seam[]): Seam[] {
	const byKey = new Map(boards.map((b) => [b.key, b]));
	let next = 0;
	return seams.map((seam) => {
		if (seam.kind === 'face' || seam.kind === 'strip') return seam;
		const named = { ...seam, letter: seamLetter(next++) };
		for (const key of seam.between) {
			const board = byKey.get(key);
			if (board) mark(board, named);
		}
		return named;
	});
}

/** The edge nearest to the middle of the seam, unless the seam runs over the face of this board. */
function mark(board: Board, seam: Seam): void {
	const n = board.solid.outside.length;
	const reach = 1.5 * board.material.measured;
	const gaps = board.edges.map((edge, k) => ({
		edge,
		gap: length3(sub3(middleOf(board, k, n), seam.at)),
	}));
	const found = gaps.filter(({ edge }) => edge.letter === '').sort((a, b) => a.gap - b.gap)[0];
	if (found && found.gap < reach + nearness(board)) found.edge.letter = seam.letter;
}

/** Half the shortest edge: farther away, another edge would be the nearer one. */
function nearness(board: Board): number {
	const face = board.solid.outside;
	return Math.min(...face.map((p, k) => length3(sub3(p, around(face, k + 1))))) / 2;
}

function middleOf(board: Board, k: number, n: number): Point3 {
	const { outside, inside } = board.solid;
	return middle3(
		middle3(nth(outside, k), nth(outside, (k + 1) % n)),
		middle3(nth(inside, k), nth(inside, (k + 1) % n)),
	);
}
