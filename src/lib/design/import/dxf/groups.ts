import { nth } from '../../../measure';
/**
 * The open drawing exchange format is a list of pairs of lines: a group code and its value. This
 * reads the pairs of the entities one by one. An own reader, because the library tried for it never
 * returns from a polyline whose end mark is missing, and a planner must not hang on a broken file.
 */
export interface DxfEntity {
	readonly type: string;
	readonly groups: readonly (readonly [code: number, value: string])[];
}

export interface DxfText {
	/** Value of the header's unit variable; 0 when the file does not say. */
	readonly unit: number;
	readonly entities: readonly DxfEntity[];
	/**
	 * What is drawn once to be put in several times, one after the other between BLOCK and ENDBLK.
	 */
	readonly blocks: readonly DxfEntity[];
	/** The table of layers, where the file holds one. */
	readonly layers: readonly DxfEntity[];
	/** False when the reading stopped at the limit. */
	readonly whole: boolean;
}

type Open = { type: string; groups: [number, string][] };

/**
 * The entities of a file and of its blocks, at most `most` of them; null when the text is no such
 * file.
 */
export function readGroups(text: string, most: number): DxfText | null {
	const lines = text.split(/\r\n|\r|\n/);
	const lists: Record<'entities' | 'blocks' | 'layers', Open[]> = {
		entities: [],
		blocks: [],
		layers: [],
	};
	const listOf: Readonly<Record<string, Open[]>> = {
		ENTITIES: lists.entities,
		BLOCKS: lists.blocks,
		TABLES: lists.layers,
	};
	let unit = 0;
	let section = '';
	let variable = '';
	let known = false;
	const read = (whole: boolean): DxfText | null => (known ? { unit, ...lists, whole } : null);
	for (let i = 0; i + 1 < lines.length; i += 2) {
		const code = Number(lines[i]);
		if (!Number.isInteger(code)) return read(true);
		const value = nth(lines, i + 1).trim();
		const list = listOf[section] ?? null;
		if (code === 0 && value === 'SECTION') {
			section = (lines[i + 3] ?? '').trim();
			known = true;
			i += 2;
		} else if (code === 0 && value === 'ENDSEC') section = '';
		else if (code === 9) variable = value;
		else if (section === 'HEADER' && code === 70 && variable === '$INSUNITS') unit = Number(value);
		else if (list && code === 0) {
			if (Object.values(lists).reduce((sum, l) => sum + l.length, 0) >= most) return read(false);
			list.push({ type: value.toUpperCase(), groups: [] });
		} else list?.at(-1)?.groups.push([code, value]);
	}
	return read(true);
}

/** The first number under a group code, or what it is when missing or no number. */
export function numberOf(e: DxfEntity, code: number, missing = 0): number {
	const found = e.groups.find(([c]) => c === code);
	const n = found ? Number(found[1]) : missing;
	return Number.isFinite(n) ? n : missing;
}

/** All numbers under a group code, in order. */
export function numbersOf(e: DxfEntity, code: number): number[] {
	return e.groups
		.filter(([c]) => c === code)
		.map(([, v]) => (Number.isFinite(Number(v)) ? Number(v) : 0));
}

export function textOf(e: DxfEntity, code: number): string {
	return e.groups.find(([c]) => c === code)?.[1] ?? '';
}
