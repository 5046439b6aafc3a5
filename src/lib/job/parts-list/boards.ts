import { sayLength, type Length, type Ruler } from '../../measure';
import { nearest } from '../problems';

/** What a list has to know of a board on the rack. */
export interface RackBoard {
	readonly id: string;
	readonly name: string;
	readonly nominal: Length;
	readonly measured: Length;
}

/** The board a row names, or why there is none: what is wrong, what would be right. */
export type Found =
	| { readonly board: RackBoard }
	| { readonly column: 'material' | 'thickness'; readonly what: string; readonly fix: string };

/** Boards named in a sentence. */
const NAMED = 8;
/** Half a millimetre: a board is called by its round figure. Common practice, no source. */
const CALLED = 800;

/**
 * The board by its name or mark, whatever the case, spaces and dashes; where none is named by its
 * thickness, if one board alone has it. `thickness`: null when the list gives none.
 */
export function rackBoard(
	named: string,
	thickness: Length | null,
	boards: readonly RackBoard[],
	ruler: Ruler,
): Found {
	if (boards.length === 0)
		return {
			column: 'material',
			what: 'There is no board on the rack.',
			fix: 'Put the boards of the list on the rack first; what is pasted here stays.',
		};
	const fits = (b: RackBoard): boolean =>
		thickness === null || [b.nominal, b.measured].some((t) => Math.abs(t - thickness) <= CALLED);
	if (named === '') return unnamed(boards.filter(fits), thickness, boards);
	const like = boards.filter((b) => [b.id, b.name].some((word) => plain(word) === plain(named)));
	const [board, ...more] = like.filter(fits).length > 0 ? like.filter(fits) : like;
	if (!board) return unknown(named, boards);
	if (more.length > 0)
		return {
			column: 'material',
			what: `"${named.slice(0, 40)}" may be ${shown(like)}.`,
			fix: 'Write the mark of the one that is meant.',
		};
	if (fits(board)) return { board };
	return {
		column: 'thickness',
		what: `The list says ${sayLength(thickness ?? 0, ruler)}, and "${board.name}" is ${sayLength(board.nominal, ruler)}.`,
		fix: `Write the board that is meant; the rack has ${shown(boards)}.`,
	};
}

function unnamed(
	fitting: readonly RackBoard[],
	thickness: Length | null,
	all: readonly RackBoard[],
): Found {
	const [board, ...more] = fitting;
	if (thickness !== null && board && more.length === 0) return { board };
	const by = thickness === null ? '' : ` and ${board ? 'several have' : 'none has'} its thickness`;
	return {
		column: 'material',
		what: `The row names no board${by}.`,
		fix: `Write one of ${shown(thickness !== null && board ? fitting : all)}, or choose a board for all rows without one.`,
	};
}

function unknown(named: string, boards: readonly RackBoard[]): Found {
	const like = nearest(
		named,
		boards.flatMap((b) => [b.name, b.id]),
	);
	return {
		column: 'material',
		what: `There is no board "${named.slice(0, 40)}" on the rack.`,
		fix: `${like ? `"${like}" is near; the` : 'The'} rack has ${shown(boards)}.`,
	};
}

function shown(boards: readonly RackBoard[]): string {
	const names = boards.slice(0, NAMED).map((b) => (b.name === b.id ? b.id : `${b.name} (${b.id})`));
	const more = boards.length > NAMED ? ` and ${boards.length - NAMED} more` : '';
	return `${names.join(', ')}${more}`;
}

const plain = (word: string): string =>
	word
		.normalize('NFKC')
		.toLowerCase()
		.replace(/[\s._-]+/g, '');
