import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { mm, nth, ticks } from '../../lib/measure';
import { random, type Random, type SawProblem, type Sheet } from '../../lib/nest';

/*
 * Problems to measure on. Ten classes by their published definitions: 1 to 6 of J. O. Berkey, P. Y.
 * Wang, "Two-dimensional finite bin-packing algorithms", J. Oper. Res. Soc. 38 (1987); 7 to 10 of
 * S. Martello, D. Vigo, "Exact solution of the two-dimensional finite bin packing problem",
 * Management Science 44 (1998). One unit of theirs is one tick here.
 */

export interface Instance {
	readonly name: string;
	readonly group: string; // class, as printed
	readonly sheets: readonly { readonly w: number; readonly h: number }[];
	readonly items: readonly { readonly w: number; readonly h: number; readonly n: number }[];
}

const BERKEY_WANG = [
	{ most: 10, sheet: 10 },
	{ most: 10, sheet: 30 },
	{ most: 35, sheet: 40 },
	{ most: 35, sheet: 100 },
	{ most: 100, sheet: 100 },
	{ most: 100, sheet: 300 },
] as const;

const SIZES = [20, 40, 60, 80, 100] as const;

function between(dice: Random, least: number, most: number): number {
	return least + dice.int(most - least + 1);
}

/** The four shapes of Martello and Vigo on a sheet of 100 x 100: wide, tall, large, small. */
function shaped(dice: Random, shape: number): { w: number; h: number; n: number } {
	const small = (): number => between(dice, 1, 50);
	const long = (): number => between(dice, 67, 100);
	if (shape === 0) return { w: long(), h: small(), n: 1 };
	if (shape === 1) return { w: small(), h: long(), n: 1 };
	if (shape === 2) return { w: between(dice, 50, 100), h: between(dice, 50, 100), n: 1 };
	return { w: small(), h: small(), n: 1 };
}

function made(cls: number, count: number, dice: Random): Pick<Instance, 'sheets' | 'items'> {
	const berkey = BERKEY_WANG[cls - 1];
	if (berkey) {
		const { most, sheet } = berkey;
		const side = (): number => between(dice, 1, most);
		const items = Array.from({ length: count }, () => ({ w: side(), h: side(), n: 1 }));
		return { sheets: [{ w: sheet, h: sheet }], items };
	}
	const main = cls - 7;
	const shape = (): number => {
		const draw = dice.int(10); // seven in ten of the main shape, one in ten of each other
		return draw < 7
			? main
			: nth(
					[0, 1, 2, 3].filter((s) => s !== main),
					draw - 7,
				);
	};
	const items = Array.from({ length: count }, () => shaped(dice, shape()));
	return { sheets: [{ w: 100, h: 100 }], items };
}

/** `each` instances of every class and size, the same for the same seed. */
export function madeByClass(each: number, seed: number): Instance[] {
	return Array.from({ length: 10 }, (_, i) => i + 1).flatMap((cls) =>
		SIZES.flatMap((count) =>
			Array.from({ length: each }, (_, k) => ({
				name: `class ${cls}, ${count} pieces, ${k + 1}`,
				group: String(cls),
				...made(cls, count, random(seed + 1000 * cls + 10 * count + k)),
			})),
		),
	);
}

/** Pieces as a cabinet shop cuts them, on full boards of 2440 x 1220 mm with a kerf of 3.2 mm. */
export function boards(count: number, seed: number): SawProblem {
	const dice = random(seed);
	const pieces = Array.from({ length: count }, (_, i) => ({
		id: `p${i}`,
		length: ticks(1600 * between(dice, 100, 1200)),
		width: ticks(1600 * between(dice, 80, 600)),
		count: 1,
		turns: 'any' as const,
	}));
	const board = sheetOf({ w: mm(2440), h: mm(1220) }, 0, 1);
	return { ...rules(ticks(5120)), sheets: [board], pieces };
}

const none = { left: ticks(0), right: ticks(0), bottom: ticks(0), top: ticks(0) };

function sheetOf({ w, h }: { w: number; h: number }, i: number, price: number): Sheet {
	const size = { length: ticks(w), width: ticks(h) };
	return { id: `S${i}`, ...size, price, count: null, rank: 2, trim: none };
}

function rules(kerf: SawProblem['kerf']): Omit<SawProblem, 'sheets' | 'pieces'> {
	const keep = { length: ticks(1), width: ticks(1) };
	return { kerf, stages: null, fenceLimit: null, narrowestRip: null, keep, first: 'any' };
}

/** Without kerf, as all published figures are. Several sizes are priced by their area. */
export function problemOf(instance: Instance, turns: 'any' | 'half'): SawProblem {
	const { sheets, items } = instance;
	const price = (s: { w: number; h: number }): number => (sheets.length === 1 ? 1 : s.w * s.h);
	return {
		...rules(ticks(0)),
		sheets: sheets.map((s, i) => sheetOf(s, i, price(s))),
		pieces: items.map(({ w, h, n }, i) => ({
			id: `p${i}`,
			length: ticks(w),
			width: ticks(h),
			count: n,
			turns,
		})),
	};
}

interface Published {
	readonly publishedUtilisation?: { readonly best: Readonly<Record<string, number>> };
	readonly instances: readonly {
		readonly name: string;
		readonly group: string;
		readonly bin?: { readonly w: number; readonly h: number };
		readonly bins?: readonly { readonly w: number; readonly h: number }[];
		readonly items: Instance['items'];
	}[];
}

/**
 * A family of published instances from the folder beside the checkout; null when it is not there.
 */
export function published(
	root: string,
	family: string,
): { instances: Instance[]; utilisation: Readonly<Record<string, number>> } | null {
	const file = join(root, '..', 'shared', 'benchmarks', `${family}.json`);
	if (!existsSync(file)) return null;
	const data = JSON.parse(readFileSync(file, 'utf8')) as Published;
	const instances = data.instances.map((i) => ({
		name: i.name,
		group: nth(i.group.split('-'), 0),
		sheets: i.bins ?? (i.bin ? [i.bin] : []),
		items: i.items,
	}));
	return { instances, utilisation: data.publishedUtilisation?.best ?? {} };
}
