import { nth } from '../../measure';
import type { Block } from './flow';
import { type Ink, type Mark, line, rect, textWidth, wrapped } from '../drawing';

export interface Column {
	readonly head: string;
	/** Millimetres, or a share of what the fixed columns leave. */
	readonly width: number | { readonly share: number };
	readonly align?: 'start' | 'middle' | 'end';
}

/** What stands in a cell: a text, a styled text, or an empty box to tick at the bench. */
export type Cell =
	| string
	| {
			readonly text: string;
			readonly weight?: 'semibold';
			readonly ink?: Ink;
			/** Height of its letters, mm, where it is to be read from farther off than the rest. */
			readonly size?: number;
	  }
	| { readonly tick: true };

export interface Row {
	readonly cells: readonly Cell[];
	readonly of?: string;
	/** A sum: a wide line above it. */
	readonly sum?: boolean;
}

export interface Table {
	readonly columns: readonly Column[];
	readonly rows: readonly Row[];
	readonly size?: number;
}

const SIZE = 3.2;
const LEADING = 1.22;
const PAD = 0.24; // above and below the text of a row, as a share of its size
const GUTTER = 2.4; // paper between columns
const SHORT = 6; // rows
const BOX = 1; // side of a box to tick, as a share of the size

/**
 * A table as blocks that may flow over pages, its head repeated on each. Rules are hairlines under
 * each row, as on a job card; long texts wrap inside their column and nothing is cut off.
 */
export function table(spec: Table, width: number): Block[] {
	const size = spec.size ?? SIZE;
	const grid = gridOf(spec.columns, width);
	const head = rowBlock({ cells: spec.columns.map((c) => bold(c.head)) }, spec, grid, size, 'head');
	const rows = spec.rows.map((row) => rowBlock(row, spec, grid, size, 'row'));
	if (spec.columns.every((c) => c.head === '')) return rows;
	return [{ ...head, keep: true }, ...heldTogether(rows).map((row) => ({ ...row, again: head }))];
}

/** Rows of a short table stay together; of a longer one none stands alone on a page. */
function heldTogether(rows: readonly Block[]): Block[] {
	const short = rows.length <= SHORT;
	const kept = (i: number): boolean => short || i === 0 || i === rows.length - 2;
	return rows.map((row, i) => (i < rows.length - 1 && kept(i) ? { ...row, keep: true } : row));
}

function bold(text: string): Cell {
	return { text, weight: 'semibold' };
}

interface Grid {
	readonly lefts: readonly number[];
	readonly widths: readonly number[];
	readonly width: number;
}

function gridOf(columns: readonly Column[], width: number): Grid {
	const fixed = columns.map((c) => (typeof c.width === 'number' ? c.width : 0));
	const shares = columns.map((c) => (typeof c.width === 'number' ? 0 : c.width.share));
	const all = shares.reduce((a, b) => a + b, 0);
	const left = width - fixed.reduce((a, b) => a + b, 0) - GUTTER * (columns.length - 1);
	const widths = columns.map(
		(_, i) => nth(fixed, i) + (all === 0 ? 0 : (left * nth(shares, i)) / all),
	);
	if (widths.some((w) => w < 2)) throw new Error('bug: a table with no room for its columns');
	const lefts = widths.map((_, i) => widths.slice(0, i).reduce((a, b) => a + b + GUTTER, 0));
	return { lefts, widths, width };
}

function rowBlock(row: Row, spec: Table, grid: Grid, size: number, as: 'head' | 'row'): Block {
	const sizes = row.cells.map((cell) => sizeOf(cell, size));
	const lines = row.cells.map((cell, i) => cellLines(cell, nth(grid.widths, i), nth(sizes, i)));
	const first = Math.max(size, ...sizes);
	// A large figure reaches below its line no deeper than the text beside it.
	const lead = Math.max(size, first / LEADING);
	const tall = lines.map((l, i) => lead + (l.length - 1) * nth(sizes, i));
	const height = Math.max(lead, ...tall) * LEADING + 2 * PAD * size;
	const marks: Mark[] = row.cells.flatMap((cell, i) =>
		cellMarks(cell, nth(lines, i), {
			left: nth(grid.lefts, i),
			width: nth(grid.widths, i),
			align: spec.columns[i]?.align ?? 'start',
			size: nth(sizes, i),
			baseline: PAD * size + 0.9 * first,
			of: row.of,
		}),
	);
	const rule = as === 'head' ? ('narrow' as const) : ('hair' as const);
	const under = line(0, height, grid.width, height);
	marks.push({ kind: 'path', steps: under, line: rule, ink: as === 'head' ? 'ink' : 'pencil' });
	if (row.sum === true)
		marks.push({ kind: 'path', steps: line(0, 0, grid.width, 0), line: 'narrow' });
	return { height, marks };
}

function sizeOf(cell: Cell, usual: number): number {
	return typeof cell !== 'string' && 'text' in cell ? (cell.size ?? usual) : usual;
}

function cellLines(cell: Cell, width: number, size: number): string[] {
	if (typeof cell !== 'string' && 'tick' in cell) return [''];
	const text = typeof cell === 'string' ? cell : cell.text;
	return wrapped(text, width, size, typeof cell === 'string' ? 'regular' : cell.weight);
}

/** Where a cell lies in its row, how its text is set, and what its row is of. */
interface CellAt {
	readonly left: number;
	readonly width: number;
	readonly align: 'start' | 'middle' | 'end';
	readonly size: number;
	/** Of the first line, which all cells of a row share. */
	readonly baseline: number;
	readonly of: string | undefined;
}

function cellMarks(cell: Cell, lines: readonly string[], at: CellAt): Mark[] {
	const { left, width, align, size, baseline, of } = at;
	if (typeof cell !== 'string' && 'tick' in cell) {
		const y = baseline - size * (0.9 - (LEADING - BOX) / 2);
		return [{ kind: 'path', steps: rect(left + 0.2, y, BOX * size, BOX * size), line: 'narrow' }];
	}
	const style = typeof cell === 'string' ? {} : styleOf(cell);
	const x = align === 'start' ? left : align === 'end' ? left + width : left + width / 2;
	return lines
		.map((text, i) => ({ text, y: baseline + i * size * LEADING }))
		.filter(({ text }) => text !== '')
		.map(({ text, y }) => ({
			kind: 'text' as const,
			x,
			y,
			text,
			size,
			anchor: align,
			...style,
			...(of === undefined ? {} : { of }),
		}));
}

function styleOf(cell: { readonly weight?: 'semibold'; readonly ink?: Ink }) {
	return {
		...(cell.weight === undefined ? {} : { weight: cell.weight }),
		...(cell.ink === undefined ? {} : { ink: cell.ink }),
	};
}

/** Width of the widest of some texts in a table's own size, for columns of figures. */
export function widest(texts: readonly string[], size = SIZE): number {
	return Math.max(2, ...texts.map((t) => textWidth(t, size, 'semibold'))) + 0.2;
}
