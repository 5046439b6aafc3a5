import type { Hand } from '../../measure';
import type { Problem } from '../problems';
import { type Chosen, type CsvRow, readTable, type Setting } from '../table';
import type { RackBoard } from './boards';
import { type Meaning, PARTS_WORDS } from './parts-words';
import { judge, type RowVerdict } from './row';

/** As many parts as one job takes. */
export const MOST_PARTS = 3000;

/** What a list is read against. */
export interface ListAbout {
	/** How the person writes lengths that name no unit. */
	readonly hand: Hand;
	readonly boards: readonly RackBoard[];
	/** Marks of the parts the list is to lie beside. */
	readonly taken: readonly string[];
}

/** What a person said of a list of parts. */
export interface PartsChosen extends Chosen<Meaning> {
	/** Mark of the board of rows that name none; '' for none. */
	readonly board?: string;
}

/** A list of parts taken apart: every row of it with its verdict. Nothing is taken in by it. */
export interface PartsList {
	readonly setting: Setting<Meaning> & { readonly board: string };
	/** What the heading says of each column, '' where it says nothing. */
	readonly headings: readonly string[];
	/** Each row under the headings that was looked at. */
	readonly rows: readonly RowVerdict[];
	/** What has to be said or mended before any row can be read, and what is left out. */
	readonly open: readonly Problem[];
	/** Something of the whole list has to be said first: no row was read yet. */
	readonly waits: boolean;
}

/**
 * Reads a list of parts as people write it: units in the heading or the cell, boards by name or
 * mark. Until all that is asked for is said no row becomes a part. Never throws.
 */
export function readPartsList(text: string, about: ListAbout, chosen: PartsChosen = {}): PartsList {
	const words = about.boards.flatMap((b) => [b.id.toLowerCase(), b.name.toLowerCase()]);
	const table = readTable(
		text,
		{
			...{ vocabulary: PARTS_WORDS, hand: about.hand, most: MOST_PARTS },
			content: { as: 'material', words },
		},
		chosen,
	);
	const { setting, units, headings, body, open, waits } = table;
	const board = chosen.board ?? (about.boards.length === 1 ? (about.boards[0]?.id ?? '') : '');
	const room = MOST_PARTS - about.taken.length;
	const hand = { ...about.hand, decimal: setting.decimal ?? about.hand.decimal };
	const taken = new Map(about.taken.map((mark) => [mark, 'a part of the job']));
	const reader = { columns: setting.columns, units, hand, boards: about.boards, board, taken };
	const looked = body.slice(0, Math.max(room, 0));
	return {
		setting: { ...setting, board },
		headings,
		rows: waits ? looked.map(unread) : looked.map((row) => judge(row, reader)),
		open: [...open, ...(body.length > room ? [tooMany(body.length, room)] : [])],
		waits,
	};
}

const unread = (row: CsvRow): RowVerdict => ({ ...row, part: null, faults: [] });

function tooMany(rows: number, room: number): Problem {
	const here = room < MOST_PARTS ? ` and ${MOST_PARTS - room} are listed already` : '';
	return {
		path: [],
		what: `The list has ${rows} rows; a job takes ${MOST_PARTS} parts${here}.`,
		fix: `The first ${Math.max(room, 0)} rows are read; the others stay here, for another job.`,
		kind: 'check',
	};
}
