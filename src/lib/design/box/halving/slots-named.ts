import { shown } from '../shown';
import type { Board, Halving, Hole } from '../board';

/** The boards with each slot named by the mark of the board that goes in, and told in the notes. */
export function withSlotsNamed(
	boards: readonly Board[],
	markOf: (i: number) => string,
): readonly Board[] {
	const marks = new Map(boards.map((b, i) => [b.key, markOf(i)]));
	return boards.map((board) => {
		const notes = board.holes.flatMap(({ halving }) =>
			halving ? [noteOf(halving, marks.get(halving.over) ?? '')] : [],
		);
		if (notes.length === 0) return board;
		const holes = board.holes.map((h): Hole => {
			if (!h.halving) return h;
			return { ...h, name: `slot over ${marks.get(h.halving.over) ?? ''}` };
		});
		return { ...board, holes, notes: [...board.notes, ...notes] };
	});
}

function noteOf({ from, wide, deep, through }: Halving, other: string): string {
	const how = through ? `right through ${shown(deep)} mm of rim` : `${shown(deep)} mm deep`;
	return `Halved over ${other}: slot ${shown(wide)} mm wide, ${how}, from the ${from}; glued in the slot.`;
}
