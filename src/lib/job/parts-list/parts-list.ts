import type { Hand } from '../../measure';
import type { Path, Problem } from '../problems';
import type { RackBoard } from './boards';
import { readCsv, type CsvRow } from './csv';
import type { ListColumn } from './headings';
import { judge, type RowVerdict } from './row';
import {
	decimalOf,
	guessedColumns,
	headingRow,
	separatorOf,
	unitsOf,
	type Chosen,
	type Setting,
} from './setting';

/** As many parts as one job takes. */
export const MOST_PARTS = 3000;
const LARGEST = 5_000_000;

/** What a list is read against. */
export interface ListAbout {
	/** How the person writes lengths that name no unit. */
	readonly hand: Hand;
	readonly boards: readonly RackBoard[];
	/** Marks of the parts the list is to lie beside. */
	readonly taken: readonly string[];
}

/** A list of parts taken apart: every row of it with its verdict. Nothing is taken in by it. */
export interface PartsList {
	readonly setting: Setting;
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
 * Reads a list of parts as people write it: comma, semicolon or tab, with headings in their own
 * words and order or without, units in the heading or the cell, boards by name or mark. What cannot
 * be guessed safely is asked for in `open`, and until it is said no row becomes a part. Never
 * throws.
 */
export function readPartsList(text: string, about: ListAbout, chosen: Chosen = {}): PartsList {
	const refused = refusal(text);
	if (refused) return nothing(refused, chosen);
	const separator = chosen.separator ?? separatorOf(text);
	const { rows, fault } = readCsv(text, separator);
	const heading = headingChosen(rows, chosen);
	const headed = heading === null ? null : (rows[heading] ?? null);
	const body = rows.slice(heading === null ? 0 : heading + 1);
	const guessed = guessedColumns(headed, body.slice(0, MOST_PARTS), about.boards);
	const columns = guessed.map((column, i) => chosen.columns?.[i] ?? column);
	const units = unitsOf(headed, columns.length);
	const lengths = measured(columns);
	const cells = body.flatMap((row) => lengths.map((i) => row.cells[i] ?? ''));
	const decimal =
		chosen.decimal ??
		decimalOf(
			cells,
			lengths.map((i) => units[i] ?? ''),
			about.hand,
		);
	const board = chosen.board ?? (about.boards.length === 1 ? (about.boards[0]?.id ?? '') : '');
	const headings = columns.map((_, i) => headed?.cells[i]?.trim() ?? '');
	const setting = { separator, heading, columns, decimal, board };
	const asked = [
		...columnsAsked(columns, headings),
		...(decimal === null ? [signAsked(cells)] : []),
	];
	const room = MOST_PARTS - about.taken.length;
	const hand = { ...about.hand, decimal: decimal ?? about.hand.decimal };
	const taken = new Map(about.taken.map((mark) => [mark, 'a part of the job']));
	const reader = { columns, units, hand, boards: about.boards, board, taken };
	const looked = body.slice(0, Math.max(room, 0));
	return {
		setting,
		headings,
		rows: asked.length > 0 ? looked.map(unread) : looked.map((row) => judge(row, reader)),
		open: [
			...(fault ? [stop(['row', fault.line], fault.what, fault.fix)] : []),
			...asked,
			...(body.length === 0 && !fault ? [stop([], 'There is no row with a part.', ROWS)] : []),
			...(body.length > room ? [tooMany(body.length, room)] : []),
		],
		waits: asked.length > 0,
	};
}

/**
 * What is left of the text once these rows are taken in: every other letter of it; nothing when
 * that is only headings and gaps.
 */
export function withoutRows(text: string, list: PartsList, taken: readonly CsvRow[]): string {
	const last = list.rows.at(-1)?.to ?? text.length;
	const full = taken.length === list.rows.length && text.slice(last).trim() === '';
	if (full) return '';
	const pieces: string[] = [];
	let at = 0;
	for (const { from, to } of taken) {
		pieces.push(text.slice(at, from));
		at = to;
	}
	return [...pieces, text.slice(at)].join('');
}

const ROWS = 'Give a row for each part, with its length and width.';

function refusal(text: string): Problem | null {
	if (text.length > LARGEST)
		return stop([], 'The list is longer than five million characters.', 'Split it.');
	if (text.startsWith('PK\u0003\u0004') || text.includes('\0'))
		return stop(
			[],
			'This is no text: it seems to be a workbook or another file of a program.',
			'Save the list as CSV (comma, semicolon or tab between the cells) and give that file, or copy its cells and paste them.',
		);
	return text.trim() === '' || text.trim() === '\ufeff'
		? stop([], 'The list is empty.', `${ROWS} A first row may name the columns.`)
		: null;
}

function nothing(problem: Problem, chosen: Chosen): PartsList {
	const setting: Setting = {
		separator: chosen.separator ?? ',',
		heading: null,
		columns: [],
		decimal: chosen.decimal ?? null,
		board: chosen.board ?? '',
	};
	return { setting, headings: [], rows: [], open: [problem], waits: true };
}

function headingChosen(rows: readonly CsvRow[], { heading }: Chosen): number | null {
	const found = heading === false ? null : headingRow(rows);
	return heading === true ? (found ?? 0) : found;
}

/** The columns that hold lengths. */
const measured = (columns: readonly ListColumn[]): number[] =>
	columns.flatMap((c, i) => (c === 'length' || c === 'width' || c === 'thickness' ? [i] : []));

const unread = (row: CsvRow): RowVerdict => ({ ...row, part: null, faults: [] });

function columnsAsked(columns: readonly ListColumn[], headings: readonly string[]): Problem[] {
	const title = (i: number): string =>
		`${i + 1}${headings[i] ? ` ("${headings[i].slice(0, 40)}")` : ''}`;
	const doubtful = columns.flatMap((column, i) => (column === null ? [title(i)] : []));
	const twice = columns.flatMap((column, i) =>
		column !== null && column !== 'out' && columns.indexOf(column) < i
			? [
					stop(
						[],
						`Column ${title(i)} is the ${column}, and so is column ${columns.indexOf(column) + 1}.`,
						'Leave one of them out.',
					),
				]
			: [],
	);
	const missing = (['length', 'width'] as const).filter((needed) => !columns.includes(needed));
	return [
		...(doubtful.length > 0 ? [doubted(doubtful)] : []),
		...twice,
		...missing.map((needed) =>
			stop(
				[],
				`No column is the ${needed}.`,
				`Choose the column that holds the ${needed} of each part.`,
			),
		),
	];
}

/** Columns named in a sentence. */
const NAMED = 12;

function doubted(titles: readonly string[]): Problem {
	const more = titles.length > NAMED ? ` and ${titles.length - NAMED} more` : '';
	return stop(
		[],
		`What is meant cannot be told of column ${titles.slice(0, NAMED).join(', ')}${more}.`,
		'Choose what each is, or leave it out.',
	);
}

function signAsked(cells: readonly string[]): Problem {
	const example = cells.find((cell) => /\d[.,]\d/.test(cell)) ?? '';
	return stop(
		[],
		`In "${example.trim().slice(0, 30)}" and the like the sign may part decimals or thousands.`,
		'Choose the decimal sign of the list.',
	);
}

function tooMany(rows: number, room: number): Problem {
	const here = room < MOST_PARTS ? ` and ${MOST_PARTS - room} are listed already` : '';
	return {
		path: [],
		what: `The list has ${rows} rows; a job takes ${MOST_PARTS} parts${here}.`,
		fix: `The first ${Math.max(room, 0)} rows are read; the others stay here, for another job.`,
		kind: 'check',
	};
}

function stop(path: Path, what: string, fix: string): Problem {
	return { path, what, fix, kind: 'stop' };
}
