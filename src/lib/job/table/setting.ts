import { nth, type Hand } from '../../measure';
import { readCsv, type CsvRow, type Delimiter } from './csv';
import { type ColumnAs, columnsOf, headingOf, isHeading, type Vocabulary } from './headings';

/** How a list is to be read: guessed where that is safe, the rest said by the person. */
export interface Setting<M extends string = string> {
	readonly separator: Delimiter;
	/** Which of the rows names the columns, from 0; null when none does. */
	readonly heading: number | null;
	readonly columns: readonly ColumnAs<M>[];
	/** Null while `1.200` may be more than a thousand or little more than one. */
	readonly decimal: Hand['decimal'] | null;
}

/** What a person said of it; columns by their number from 0. */
export interface Chosen<M extends string = string> {
	readonly separator?: Delimiter;
	readonly heading?: boolean;
	readonly columns?: Readonly<Record<number, ColumnAs<M>>>;
	readonly decimal?: Hand['decimal'];
}

export const SEPARATORS = ['\t', ';', ','] as const;

/** A title or an address may stand above the headings. */
const ABOVE = 10;
const LOOKED_AT = 50;

/** The separator under which the text looks most like a table: known headings, then even rows. */
export function separatorOf(text: string, of: Heard): Delimiter {
	const start = text.slice(0, 20_000);
	const scored = SEPARATORS.map((separator) => {
		const { rows, fault } = readCsv(start, separator);
		const broken = fault && start.length === text.length ? 500 : 0;
		return { separator, score: 1000 * most(rows, of) + 100 * evenness(rows) - broken };
	});
	return scored.reduce((best, s) => (s.score > best.score ? s : best)).separator;
}

type Heard = Parameters<typeof isHeading>[1];

const known = (row: CsvRow, of: Heard): number =>
	row.cells.filter((cell) => isHeading(cell, of)).length;
const most = (rows: readonly CsvRow[], of: Heard): number =>
	Math.max(0, ...rows.slice(0, ABOVE).map((row) => known(row, of)));

/** Share of the rows that have as many cells as most have; none where that is one. */
function evenness(rows: readonly CsvRow[]): number {
	const counts = new Map<number, number>();
	const looked = rows.slice(0, LOOKED_AT);
	for (const { cells } of looked) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
	const [usual] = [...counts].sort((a, b) => b[1] - a[1]);
	return usual && usual[0] > 1 ? usual[1] / looked.length : 0;
}

/** The row that names the columns: the one among the first that holds the most known headings. */
export function headingRow(rows: readonly CsvRow[], of: Heard): number | null {
	const above = rows.slice(0, ABOVE);
	const best = above.reduce((b, row, i) => (known(row, of) > known(nth(above, b), of) ? i : b), 0);
	const row = above[best];
	if (row && known(row, of) >= 2 && known(row, of) > row.cells.filter(isNumber).length) return best;
	// Words nobody knows over columns of numbers are headings too.
	const [first, second] = rows;
	const over = first?.cells.some(
		(cell, i) => cell.trim() !== '' && isNumber(second?.cells[i] ?? ''),
	);
	return over && !first?.cells.some(isNumber) ? 0 : null;
}

const isWhole = (cell: string): boolean => /^\s*(\d{1,4}([.,]0+)?\s*)?$/.test(cell);
const isNumber = (cell: string): boolean => /^\s*[-+]?[.,]?\d/.test(cell);

/** A column that can be told by what stands in it: its cells are all of these words. */
export interface ByContent<M extends string> {
	readonly as: M;
	/** In small letters. */
	readonly words: readonly string[];
}

/** What the columns are; without headings only the person can tell a length from a count. */
export function guessedColumns<M extends string>(
	heading: CsvRow | null,
	body: readonly CsvRow[],
	of: Vocabulary<M>,
	content: ByContent<M> | null,
): ColumnAs<M>[] {
	const width = heading
		? heading.cells.length
		: Math.max(0, ...body.slice(0, LOOKED_AT).map((row) => row.cells.length));
	const empty = (i: number): boolean => body.every((row) => (row.cells[i] ?? '').trim() === '');
	const named = heading && known(heading, of) >= 2 ? columnsOf(heading.cells, of) : null;
	// How many there are must not be left out for a word nobody knows.
	const counts = (i: number): boolean =>
		of.counted !== null &&
		named?.[i] === 'out' &&
		!named.includes(of.counted) &&
		body.every((row) => isWhole(row.cells[i] ?? ''));
	const isTold = (row: CsvRow, i: number): boolean =>
		content?.words.includes((row.cells[i] ?? '').trim().toLowerCase()) ?? false;
	const columns = Array.from({ length: width }, (_, i): ColumnAs<M> => {
		if (empty(i)) return named?.[i] ?? 'out';
		if (counts(i)) return null;
		if (named && named[i] !== null) return named[i] ?? 'out';
		return content && !named && body.every((row) => isTold(row, i)) ? content.as : null;
	});
	return columns.map((c, i) => (content && c === content.as && columns.indexOf(c) < i ? null : c));
}

/** The sign that parts decimals, by what the lengths look like; null when it may be either. */
export function decimalOf(
	cells: readonly string[],
	units: readonly string[],
	hand: Hand,
): Setting['decimal'] {
	const clear = new Set<string>();
	const doubtful = new Set<string>();
	for (const cell of cells)
		for (const [number] of cell.matchAll(/\d*[.,][\d.,]*\d|\d+/g)) weigh(number, clear, doubtful);
	if (clear.size === 2) return null;
	if (clear.has('.')) return '.';
	if (clear.has(',')) return ',';
	if (doubtful.size === 2) return null;
	// Three decimals of a millimetre nobody writes: 1.200 may well be more than a metre.
	const millimetres =
		units.some((unit) => unit === 'mm') || (hand.unit === 'mm' && units.includes(''));
	const sure = doubtful.size === 0 || (doubtful.has(hand.decimal) && !millimetres);
	return sure ? hand.decimal : null;
}

function weigh(number: string, clear: Set<string>, doubtful: Set<string>): void {
	const signs = number.replace(/\d/g, '');
	const last = signs.slice(-1);
	if (last === '') return;
	const [before = '', after = ''] = number.split(last);
	if (new Set(signs).size === 2) clear.add(last);
	else if (signs.length > 1) clear.add(last === '.' ? ',' : '.');
	else if (after.length !== 3 || before === '' || before.startsWith('0') || before.length > 3)
		clear.add(last);
	else doubtful.add(last);
}

/** The units that the headings name. */
export const unitsOf = (heading: CsvRow | null, width: number): string[] =>
	Array.from({ length: width }, (_, i) => headingOf(heading?.cells[i] ?? '').unit);
