import type { Hand } from '../../measure';
import type { Path, Problem } from '../problems';
import { type CsvRow, readCsv } from './csv';
import type { ColumnAs, Vocabulary } from './headings';
import {
	type ByContent,
	type Chosen,
	decimalOf,
	guessedColumns,
	headingRow,
	separatorOf,
	type Setting,
	unitsOf,
} from './setting';

const LARGEST = 5_000_000;

/** What a table is read against. */
export interface TableAbout<M extends string> {
	readonly vocabulary: Vocabulary<M>;
	/** How the person writes figures. */
	readonly hand: Hand;
	readonly content: ByContent<M> | null;
	/** Rows looked at for what the columns hold. */
	readonly most: number;
}

/** A table taken apart, before anybody read its rows. */
export interface TakenApart<M extends string> {
	readonly setting: Setting<M>;
	/** Unit each heading names, '' for none. */
	readonly units: readonly string[];
	/** What the heading says of each column, '' where it says nothing. */
	readonly headings: readonly string[];
	/** The rows under the headings. */
	readonly body: readonly CsvRow[];
	/** What has to be said or mended before any row can be read, and what is left out. */
	readonly open: readonly Problem[];
	/** Something of the whole table has to be said first: no row can be read yet. */
	readonly waits: boolean;
}

/**
 * A table as people write it: comma, semicolon or tab, with headings in their own words and order
 * or without. What cannot be guessed safely is asked for in `open`. Never throws.
 */
export function readTable<M extends string>(
	text: string,
	about: TableAbout<M>,
	chosen: Chosen<M> = {},
): TakenApart<M> {
	const { vocabulary } = about;
	const refused = refusal(text, vocabulary);
	if (refused) return nothing(refused, chosen);
	const separator = chosen.separator ?? separatorOf(text, vocabulary);
	const { rows, fault } = readCsv(text, separator);
	const heading = headingChosen(rows, chosen, vocabulary);
	const headed = heading === null ? null : (rows[heading] ?? null);
	const body = rows.slice(heading === null ? 0 : heading + 1);
	const guessed = guessedColumns(headed, body.slice(0, about.most), vocabulary, about.content);
	const columns = guessed.map((column, i) => chosen.columns?.[i] ?? column);
	const units = unitsOf(headed, columns.length);
	const figures = columns.flatMap((c, i) =>
		c !== null && c !== 'out' && vocabulary.figures.includes(c) ? [i] : [],
	);
	const cells = body.flatMap((row) => figures.map((i) => row.cells[i] ?? ''));
	const inUnits = figures.map((i) => units[i] ?? '');
	const decimal = chosen.decimal ?? decimalOf(cells, inUnits, about.hand);
	const headings = columns.map((_, i) => headed?.cells[i]?.trim() ?? '');
	const asked = [
		...columnsAsked(columns, headings, vocabulary),
		...(decimal === null ? [signAsked(cells)] : []),
	];
	return {
		setting: { separator, heading, columns, decimal },
		...{ units, headings, body, waits: asked.length > 0 },
		open: [
			...(fault ? [stop(['row', fault.line], fault.what, fault.fix)] : []),
			...asked,
			...(body.length === 0 && !fault ? [rowless(vocabulary)] : []),
		],
	};
}

/**
 * What is left of the text once these rows are taken in: every other letter of it; nothing when
 * that is only headings and gaps.
 */
export function withoutRows(
	text: string,
	list: { readonly rows: readonly CsvRow[] },
	taken: readonly CsvRow[],
): string {
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

/** A row with more in it than there are columns: nobody knows where it broke. */
export function brokenRow(row: CsvRow, columns: readonly unknown[]): Problem | null {
	if (row.cells.slice(columns.length).every((cell) => cell.trim() === '')) return null;
	return stop(
		['row', row.line],
		`This row has ${row.cells.length} cells where there are ${columns.length} columns.`,
		'Put a text that holds the separator in quotation marks.',
	);
}

const rowsWanted = ({ row, needed }: Vocabulary<string>): string =>
	`Give a row for ${row.each}, with its ${needed.join(' and ')}.`;

const rowless = (of: Vocabulary<string>): Problem =>
	stop([], `There is no row with ${of.row.one}.`, rowsWanted(of));

function refusal(text: string, of: Vocabulary<string>): Problem | null {
	if (text.length > LARGEST)
		return stop([], 'The list is longer than five million characters.', 'Split it.');
	if (text.startsWith('PK\u0003\u0004') || text.includes('\0'))
		return stop(
			[],
			'This is no text: it seems to be a workbook or another file of a program.',
			'Save the list as CSV (comma, semicolon or tab between the cells) and give that file, or copy its cells and paste them.',
		);
	return text.trim() === '' || text.trim() === '\ufeff'
		? stop([], 'The list is empty.', `${rowsWanted(of)} A first row may name the columns.`)
		: null;
}

function nothing<M extends string>(problem: Problem, chosen: Chosen<M>): TakenApart<M> {
	const setting: Setting<M> = {
		separator: chosen.separator ?? ',',
		heading: null,
		columns: [],
		decimal: chosen.decimal ?? null,
	};
	return { setting, units: [], headings: [], body: [], open: [problem], waits: true };
}

function headingChosen(
	rows: readonly CsvRow[],
	{ heading }: Pick<Chosen, 'heading'>,
	of: Vocabulary<string>,
): number | null {
	const found = heading === false ? null : headingRow(rows, of);
	return heading === true ? (found ?? 0) : found;
}

function columnsAsked<M extends string>(
	columns: readonly ColumnAs<M>[],
	headings: readonly string[],
	of: Vocabulary<M>,
): Problem[] {
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
	const missing = of.needed.filter((needed) => !columns.includes(needed));
	return [
		...(doubtful.length > 0 ? [doubted(doubtful)] : []),
		...twice,
		...missing.map((needed) =>
			stop(
				[],
				`No column is the ${needed}.`,
				`Choose the column that holds the ${needed} of ${of.row.each}.`,
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

function stop(path: Path, what: string, fix: string): Problem {
	return { path, what, fix, kind: 'stop' };
}
