import { sayLength, type Ruler } from '../../../measure';
import type { Board, Halving, Hole } from '../board';

/** The boards with each slot named by the mark of the board that goes in, and told in the notes. */
export function withSlotsNamed(
	boards: readonly Board[],
	markOf: (i: number) => string,
	ruler: Ruler,
): readonly Board[] {
	const marks = new Map(boards.map((b, i) => [b.key, markOf(i)]));
	return boards.map((board) => {
		const notes = board.holes.flatMap(({ halving }) =>
			halving ? [noteOf(halving, marks.get(halving.over) ?? '', ruler)] : [],
		);
		if (notes.length === 0) return board;
		const holes = board.holes.map((h): Hole => {
			if (!h.halving) return h;
			return { ...h, name: `slot over ${marks.get(h.halving.over) ?? ''}` };
		});
		return { ...board, holes, notes: [...board.notes, ...notes] };
	});
}

function noteOf({ from, wide, deep, through }: Halving, other: string, ruler: Ruler): string {
	const say = (l: number): string => sayLength(l, ruler);
	const how = through ? `right through ${say(deep)} of rim` : `${say(deep)} deep`;
	return `Halved over ${other}: slot ${say(wide)} wide, ${how}, from the ${from}; glued in the slot.`;
}
