import { unitOf } from './claim';

/** A line of the stock as it was typed: anything at all, and what there is of it. */
export interface Counted {
	readonly line: unknown;
	readonly unit: string;
	readonly id: unknown;
	readonly material: unknown;
	readonly length: unknown;
	readonly width: unknown;
	/** Whole ones; null where what stands there is no number. */
	readonly count: number | null;
}

/** Which lists are counted, in which field, and what none said comes to. */
export const LISTS = {
	sheets: { kind: 'owned', field: 'owned', none: 0 },
	offcuts: { kind: 'offcut', field: 'count', none: 1 },
} as const;
export type ListName = keyof typeof LISTS;

type Line = Readonly<Record<string, unknown>>;

export function countedLines(stock: unknown, name: ListName): Counted[] {
	const list = isLine(stock) ? stock[name] : null;
	return Array.isArray(list) ? list.map((line: unknown) => counted(line, name)) : [];
}

function counted(line: unknown, name: ListName): Counted {
	const { id, material, length, width } = isLine(line) ? line : ({} as Line);
	const unit = unitOf({ kind: LISTS[name].kind, id: typeof id === 'string' ? id : '' });
	return { line, unit, id, material, length, width, count: wholeOnes(line, name) };
}

function wholeOnes(line: unknown, name: ListName): number | null {
	const said = typedCount(line, name) ?? LISTS[name].none;
	const isCount = typeof said === 'number' && Number.isFinite(said);
	return isCount ? Math.max(0, Math.floor(said)) : null;
}

/** What stands in the line's field of how many there are. */
export function typedCount(line: unknown, name: ListName): unknown {
	return isLine(line) ? line[LISTS[name].field] : undefined;
}

/** The line with so many more, or fewer. */
export function withMore(line: unknown, name: ListName, more: number): unknown {
	if (more === 0 || !isLine(line)) return line;
	const { field, none } = LISTS[name];
	return { ...line, [field]: ((line[field] as number | undefined) ?? none) + more };
}

/** Lines and offcuts of which one is as good as the other. */
export function sameAs({ id, material, length, width }: Omit<Counted, 'line' | 'unit' | 'count'>) {
	return JSON.stringify([id, material, length, width]);
}

const isLine = (value: unknown): value is Line =>
	typeof value === 'object' && value !== null && !Array.isArray(value);
