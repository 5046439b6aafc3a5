import { readLength, TICKS_PER_MM } from '../../measure';
import { unitOf } from './claim';
import { type ListName, LISTS } from './lists';

/** A line of the stock as it was typed: anything at all, and what there is of it. */
export interface Counted {
	readonly line: unknown;
	readonly unit: string;
	readonly id: unknown;
	readonly material: unknown;
	readonly length: unknown;
	readonly width: unknown;
	/** How much there is, in grains; null where what stands there is no amount. */
	readonly count: number | null;
}

type Line = Readonly<Record<string, unknown>>;

export function countedLines(stock: unknown, name: ListName): Counted[] {
	const list = isLine(stock) ? stock[name] : null;
	return Array.isArray(list) ? list.map((line: unknown) => counted(line, name)) : [];
}

function counted(line: unknown, name: ListName): Counted {
	const { id, material, length, width } = isLine(line) ? line : ({} as Line);
	const unit = unitOf({ kind: LISTS[name].kind, id: typeof id === 'string' ? id : '' });
	return { line, unit, id, material, length, width, count: grainsThere(line, name) };
}

/**
 * A sundry kept may be less than nothing, where what was bought for a job came to it before it was
 * counted; of all else there is none at least, and sheets are whole.
 */
function grainsThere(line: unknown, name: ListName): number | null {
	const said = grainsSaid(line, name);
	if (said === null || name === 'sundries') return said;
	return Math.max(0, Math.floor(said));
}

/** As it stands in the field; a length may be a text with its unit. */
function grainsSaid(line: unknown, name: ListName): number | null {
	const { none, grains } = LISTS[name];
	const said = typedCount(line, name) ?? none;
	const number = typeof said === 'string' && name === 'rolls' ? millimetres(said) : said;
	if (typeof number !== 'number' || !Number.isFinite(number)) return null;
	return grains === 1 ? number : Math.round(number * grains);
}

function millimetres(text: string): number | null {
	const reading = readLength(text, { unit: 'mm', decimal: '.' });
	return reading.ok ? reading.value / TICKS_PER_MM : null;
}

/** What stands in the line's field of how much there is. */
export function typedCount(line: unknown, name: ListName): unknown {
	return isLine(line) ? line[LISTS[name].field] : undefined;
}

/** The line with so many grains more, or fewer. */
export function withMore(line: unknown, name: ListName, more: number): unknown {
	if (more === 0 || !isLine(line)) return line;
	const { field, grains } = LISTS[name];
	const there = grainsSaid(line, name);
	return there === null ? line : { ...line, [field]: (there + more) / grains };
}

/** Lines and offcuts of which one is as good as the other. */
export function sameAs({ id, material, length, width }: Omit<Counted, 'line' | 'unit' | 'count'>) {
	return JSON.stringify([id, material, length, width]);
}

const isLine = (value: unknown): value is Line =>
	typeof value === 'object' && value !== null && !Array.isArray(value);
