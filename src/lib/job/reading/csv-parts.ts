import { toMm, readLength, type Hand } from '../../measure';
import { readCsv, unguarded, writeCsv, type CsvRow, type Delimiter } from './csv';
import { problemsOf } from './issue-words';
import { loosePart, type LoosePart } from '../loose-part';
import { nearest, type Path, type Problem } from '../problems';
import type { z } from '../zod';

/** A listed part as a job file holds it. */
export type PartFile = z.input<typeof loosePart>;

/**
 * The columns of a parts list, in the order we write them. Id and count may be missing, the others
 * are needed or optional.
 */
export const COLUMNS = [
	'id',
	'name',
	'material',
	'length',
	'width',
	'count',
	'grain',
	'note',
] as const;
type Column = (typeof COLUMNS)[number];
const NEEDED: readonly Column[] = ['material', 'length', 'width'];

/** As many parts as one job takes. */
const MOST_ROWS = 3000;
const LARGEST = 5_000_000;

/**
 * Reads a list of parts: a header row of our own names ({@link COLUMNS}) in any order, then a part
 * a row; comma, semicolon or tab. Lengths are read by `hand`. Every bad row is a problem with the
 * path ['row', line]; the good ones are returned, ready to be put into a job file.
 */
export function readPartsCsv(
	text: string,
	hand: Hand,
): { readonly parts: readonly PartFile[]; readonly problems: readonly Problem[] } {
	if (text.length > LARGEST) {
		return {
			parts: [],
			problems: [stop([], 'The list is longer than five million characters.', 'Split it.')],
		};
	}
	const { rows, fault } = readCsv(text, delimiterOf(text));
	const problems: Problem[] = fault ? [stop(['row', fault.line], fault.what, fault.fix)] : [];
	const [header, ...body] = rows;
	if (!header) {
		const fix = `Start with a row that names the columns: ${COLUMNS.join(', ')}.`;
		return { parts: [], problems: [...problems, stop([], 'The list is empty.', fix)] };
	}
	const columns = readHeader(header, problems);
	if (NEEDED.some((column) => !columns.includes(column))) return { parts: [], problems };
	if (body.length > MOST_ROWS) {
		problems.push(
			stop(
				[],
				`The list has ${body.length} rows.`,
				`A job takes ${MOST_ROWS}: the rest is left out.`,
			),
		);
	}
	const parts = body
		.slice(0, MOST_ROWS)
		.flatMap((row) => readRow(row, columns, hand, problems) ?? []);
	return { parts, problems };
}

/** The parts as a list that {@link readPartsCsv} reads again, lengths in millimetres. */
export function writePartsCsv(parts: readonly LoosePart[]): string {
	const rows = parts.map((p) => [
		p.id,
		p.name ?? '',
		p.material,
		toMm(p.length),
		toMm(p.width),
		p.count,
		p.grain,
		p.note,
	]);
	return writeCsv([[...COLUMNS], ...rows]);
}

/** The delimiter under which the first row names the most columns. */
function delimiterOf(text: string): Delimiter {
	const first = text.slice(0, 2000).split(/[\r\n]/)[0] ?? '';
	const known = (delimiter: Delimiter) =>
		first.split(delimiter).filter((cell) => columnOf(cell) !== null).length;
	return ([',', ';', '\t'] as const).reduce((best, d) => (known(d) > known(best) ? d : best));
}

function columnOf(cell: string): Column | null {
	const word = cell
		.replace(/^\ufeff/, '')
		.replaceAll('"', '')
		.trim()
		.toLowerCase();
	return COLUMNS.find((column) => column === word) ?? null;
}

function readHeader(header: CsvRow, problems: Problem[]): (Column | null)[] {
	const columns = header.cells.map(columnOf);
	for (const [i, cell] of header.cells.entries()) {
		if (cell.trim() === '' || (columns[i] && columns.indexOf(columns[i]) === i)) continue;
		const like = nearest(cell.trim(), COLUMNS);
		problems.push({
			path: ['row', header.line],
			what: `The column "${cell.trim().slice(0, 40)}" is ${columns[i] ? 'there twice' : 'not known'} and passed over.`,
			fix: like && !columns[i] ? `Call it "${like}".` : `Columns are ${COLUMNS.join(', ')}.`,
			kind: 'check',
		});
	}
	const missing = NEEDED.filter((column) => !columns.includes(column));
	if (missing.length > 0) {
		problems.push(
			stop(
				['row', header.line],
				`The first row names no column ${missing.map((m) => `"${m}"`).join(', ')}.`,
				`Name the columns in the first row: ${COLUMNS.join(', ')}.`,
			),
		);
	}
	return columns;
}

function readRow(
	row: CsvRow,
	columns: readonly (Column | null)[],
	hand: Hand,
	problems: Problem[],
): PartFile | null {
	const at = ['row', row.line];
	if (row.cells.slice(columns.length).some((cell) => cell.trim() !== '')) {
		const what = `This row has ${row.cells.length} cells where the header names ${columns.length}.`;
		problems.push(stop(at, what, 'Put a text that holds the delimiter in quotation marks.'));
		return null;
	}
	const faults: Problem[] = [];
	const cell: Cells = (column) => unguarded(row.cells[columns.indexOf(column)] ?? '').trim();
	const length = (column: 'length' | 'width') => {
		const reading = readLength(cell(column), hand);
		if (reading.ok) return toMm(reading.value);
		faults.push(stop([...at, column], reading.what, reading.fix));
		return 1; // so that the other cells are still looked at
	};
	const file = partOf(cell, length('length'), length('width'), row.line);
	const parsed = loosePart.safeParse(file);
	const issues = parsed.success ? [] : parsed.error.issues;
	for (const p of problemsOf(issues, loosePart, file))
		faults.push({ ...p, path: [...at, ...p.path] });
	problems.push(...faults);
	return faults.length === 0 ? (file as PartFile) : null;
}

type Cells = (column: Column) => string;

/**
 * What a row says, still to be held against the schema; an empty cell leaves its field to the
 * default.
 */
function partOf(cell: Cells, length: number, width: number, line: number): object {
	return {
		id: cell('id') || `row-${line}`,
		...(cell('name') === '' ? {} : { name: cell('name') }),
		material: cell('material'),
		length,
		width,
		...(cell('count') === '' ? {} : { count: plainNumber(cell('count')) }),
		...(cell('grain') === '' ? {} : { grain: cell('grain').toLowerCase() }),
		note: cell('note'),
	};
}

/** A count as a number; what is none stays the text it is, for the complaint to show. */
function plainNumber(cell: string): number | string {
	return /^\d{1,7}$/.test(cell) ? Number(cell) : cell;
}

function stop(path: Path, what: string, fix: string): Problem {
	return { path, what, fix, kind: 'stop' };
}
