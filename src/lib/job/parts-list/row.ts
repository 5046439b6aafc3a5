import {
	mm,
	readLength,
	answeringRuler,
	toMm,
	type Hand,
	type Length,
	type Ruler,
} from '../../measure';
import { loosePart } from '../loose-part';
import type { Problem } from '../problems';
import { problemsOf } from '../reading';
import type { z } from '../zod';
import { rackBoard, type RackBoard } from './boards';
import { brokenRow, type CsvRow, unguarded } from '../table';
import type { ListColumn, Meaning } from './parts-words';

/** A listed part as a job file holds it. */
export type PartFile = z.input<typeof loosePart>;

/** What a row came to: a part, or all that is wrong with it. */
export interface RowVerdict extends CsvRow {
	readonly part: PartFile | null;
	/** Paths begin with ['row', line]; the column's meaning follows where one is at fault. */
	readonly faults: readonly Problem[];
}

/** How rows are read. */
export interface Reader {
	readonly columns: readonly ListColumn[];
	/** Unit each heading names, '' for the ruler's. */
	readonly units: readonly string[];
	readonly hand: Hand;
	readonly boards: readonly RackBoard[];
	/** Mark of the board of rows that name none; '' for none. */
	readonly board: string;
	/** Marks taken, and by whom in words. */
	readonly taken: Map<string, string>;
}

/** Reads one row; its mark is taken from then on. */
export function judge(row: CsvRow, reader: Reader): RowVerdict {
	const at = ['row', row.line];
	const faults: Problem[] = [];
	const wrong = (column: Meaning, what: string, fix: string): void => {
		faults.push({ path: [...at, column], what, fix, kind: 'stop' });
	};
	const broken = brokenRow(row, reader.columns);
	if (broken) return { ...row, part: null, faults: [broken] };
	const cell: Cells = (column) => unguarded(row.cells[reader.columns.indexOf(column)] ?? '').trim();
	const length = (column: 'length' | 'width' | 'thickness'): Length => {
		const text = withUnit(cell(column), reader.units[reader.columns.indexOf(column)] ?? '', reader);
		const reading = readLength(text, reader.hand);
		if (reading.ok) return reading.value;
		wrong(column, reading.what, reading.fix);
		return mm(1); // so that the other cells are still looked at
	};
	const thickness = cell('thickness') === '' ? null : length('thickness');
	const found = rackBoard(
		cell('material') || reader.board,
		thickness,
		reader.boards,
		answeringRuler(reader.hand),
	);
	if (!('board' in found)) wrong(found.column, found.what, found.fix);
	const count = countIn(cell('count'));
	if (count === null)
		wrong(
			'count',
			`"${cell('count').slice(0, 40)}" is no number of parts.`,
			'Write a whole number such as 2.',
		);
	const grain = grainIn(cell('grain'));
	if (grain === null)
		wrong(
			'grain',
			`"${cell('grain').slice(0, 40)}" is no way of the grain.`,
			'Write length, width or any.',
		);
	const file = {
		id: cell('mark') || freeMark(row.line, reader.taken),
		...(cell('name') === '' ? {} : { name: cell('name') }),
		material: 'board' in found ? found.board.id : 'none',
		length: toMm(length('length')),
		width: toMm(length('width')),
		...(cell('count') === '' ? {} : { count: count ?? 1 }),
		...(cell('grain') === '' ? {} : { grain: grain ?? 'any' }),
		note: cell('note'),
	};
	for (const p of againstSchema(file, answeringRuler(reader.hand)))
		faults.push({ ...p, path: [...at, ...named(p)] });
	const holder = reader.taken.get(file.id);
	if (holder !== undefined)
		wrong('mark', `The mark "${file.id}" is taken by ${holder}.`, 'Give every part its own mark.');
	else reader.taken.set(file.id, `row ${row.line}`);
	return { ...row, part: faults.length === 0 ? (file as PartFile) : null, faults };
}

type Cells = (column: Meaning) => string;

function againstSchema(file: object, ruler: Ruler): Problem[] {
	const parsed = loosePart.safeParse(file);
	return problemsOf(parsed.success ? [] : parsed.error.issues, loosePart, file, ruler);
}

/** The field at fault by the name of its column. */
const named = (p: Problem): Problem['path'] =>
	p.path.map((step) => (step === 'id' ? 'mark' : step));

/**
 * A bare number gets the unit of its heading. Signs between thousands are taken out: it has been
 * settled which sign parts the decimals.
 */
function withUnit(cell: string, unit: string, { hand }: Reader): string {
	const thousands =
		hand.decimal === '.' ? /\b\d{1,3}(?:,\d{3})+(?![\d,])/g : /\b\d{1,3}(?:\.\d{3})+(?![\d.])/g;
	const text = cell.replace(thousands, (number) => number.replace(/[.,]/g, ''));
	return unit !== '' && /^[\d\s.,/½⅓⅔¼¾⅛⅜⅝⅞-]+$/.test(text) ? `${text} ${unit}` : text;
}

/** `2`, `2 pcs`, `2 off`, `2x`, `x2`, `2.0`, nothing for one; null for no whole number. */
function countIn(cell: string): number | null {
	if (cell === '') return 1;
	const found =
		/^(?:[x×]\s*)?(\d{1,7})(?:[.,]0+)?\s*(?:[x×]|pcs?\.?|pieces?|off|nos?\.?|ea\.?|each)?$/i.exec(
			cell,
		);
	return found ? Number(found[1]) : null;
}

const GRAINS: Readonly<Record<string, string>> = {
	length:
		'length l long along lengthwise lengthways alonglength withlength withthelength alongthelength yes y',
	width: 'width w across cross crosswise crossways alongwidth acrossthewidth alongthewidth',
	any: 'any none no n - free either both anyway nograin',
};

/** A way of the grain as people write it; null when it is none. */
function grainIn(cell: string): string | null {
	if (cell === '') return 'length';
	const word = cell.toLowerCase().replace(/\s+/g, '');
	return Object.keys(GRAINS).find((way) => GRAINS[way]?.split(' ').includes(word)) ?? null;
}

function freeMark(line: number, taken: ReadonlyMap<string, string>): string {
	for (let n = 1; ; n++) {
		const mark = n === 1 ? `row-${line}` : `row-${line}-${n}`;
		if (!taken.has(mark)) return mark;
	}
}
