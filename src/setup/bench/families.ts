import { nth } from '../../lib/measure';
import { boards, madeByClass, problemOf, published, type Instance } from './instances';
import { measure, PACKER_WAYS, packed, type Allowance } from './measure';

/** One line of a table: a class, or the sum of all. */
export interface ClassRow {
	readonly group: string;
	readonly instances: number;
	readonly bound: number;
	readonly first: number;
	readonly ours: number;
	readonly proven: number;
	/** The packer's best single mode over all instances; null where it cannot be asked. */
	readonly packer: number | null;
	readonly seconds: number;
}

export interface BenchTable {
	readonly title: string;
	readonly turns: 'any' | 'half';
	readonly rows: readonly ClassRow[];
	readonly total: ClassRow;
	readonly packerWay: string;
}

export type Note = (line: string) => void;

interface Tally {
	instances: number;
	bound: number;
	first: number;
	ours: number;
	proven: number;
	seconds: number;
	packer: number[];
}

const emptyTally = (): Tally => ({
	instances: 0,
	bound: 0,
	first: 0,
	ours: 0,
	proven: 0,
	seconds: 0,
	packer: PACKER_WAYS.map(() => 0),
});

function add(tally: Tally, instance: Instance, turns: 'any' | 'half', allowance: Allowance): void {
	const problem = problemOf(instance, turns);
	const { first, answer, ms } = measure(problem, allowance);
	tally.instances++;
	tally.bound += answer.bound.sheets;
	tally.first += first.layouts.length;
	tally.ours += answer.layouts.length;
	tally.proven += Number(answer.proven);
	tally.seconds += ms / 1000;
	tally.packer = packed(problem).map((n, i) => nth(tally.packer, i) + n);
}

function sheetsTable(
	title: string,
	instances: readonly Instance[],
	turns: 'any' | 'half',
	allowance: Allowance,
	note: Note,
): BenchTable {
	const groups = new Map<string, Tally>();
	const total = emptyTally();
	for (const instance of instances) {
		const tally = groups.get(instance.group) ?? emptyTally();
		groups.set(instance.group, tally);
		const before = { ...tally, packer: [...tally.packer] };
		add(tally, instance, turns, allowance);
		for (const key of ['instances', 'bound', 'first', 'ours', 'proven', 'seconds'] as const)
			total[key] += tally[key] - before[key];
		total.packer = total.packer.map((n, i) => n + nth(tally.packer, i) - nth(before.packer, i));
		note(`${title}, ${turns}: ${instance.name} done, ${total.ours} sheets so far`);
	}
	const best = total.packer.indexOf(Math.min(...total.packer));
	const row = (group: string, t: Tally): ClassRow => ({ group, ...t, packer: nth(t.packer, best) });
	const { logic, order } = nth(PACKER_WAYS, best);
	return {
		title,
		turns,
		rows: [...groups].map(([g, t]) => row(g, t)),
		total: row('all', total),
		packerWay: `${logic}, pieces by ${order}`,
	};
}

/**
 * Sheets used on instances of the ten published classes: those beside the checkout if `shared`,
 * else made here.
 */
export function classTables(
	root: string,
	each: number | null,
	allowance: Allowance,
	note: Note,
): BenchTable[] {
	const shared = each === null ? published(root, 'class-bw-mv') : null;
	const instances = shared?.instances ?? madeByClass(each ?? 1, allowance.seed);
	const title = shared ? 'Published instances, ten classes' : 'Instances by the class definitions';
	return (['half', 'any'] as const).map((turns) =>
		sheetsTable(title, instances, turns, allowance, note),
	);
}

export interface UseRow {
	readonly group: string;
	readonly instances: number;
	readonly first: number; // per cent of the sheet area used
	readonly ours: number;
	readonly proven: number; // layouts that no cheaper one exists for
	readonly most: number; // per cent that the bounds leave possible
	readonly published: number | null;
}

/**
 * Several sizes of sheet, priced by area: mean utilisation per class. Null without the published
 * instances.
 */
export function sizesTable(root: string, allowance: Allowance, note: Note): UseRow[] | null {
	const data = published(root, 'varsize-pisinger-sigurd');
	if (!data) return null;
	const sums = new Map<string, Omit<UseRow, 'group' | 'published'>>();
	for (const instance of data.instances) {
		const { first, answer } = measure(problemOf(instance, 'half'), allowance);
		const area = instance.items.reduce((sum, i) => sum + i.w * i.h * i.n, 0);
		for (const group of [instance.group, 'mean']) {
			const sum = sums.get(group) ?? { instances: 0, first: 0, ours: 0, proven: 0, most: 0 };
			sums.set(group, {
				instances: sum.instances + 1,
				first: sum.first + (100 * area) / first.cost,
				ours: sum.ours + (100 * area) / answer.cost,
				proven: sum.proven + Number(answer.proven),
				most: sum.most + (100 * area) / answer.bound.cost,
			});
		}
		note(`Several sizes: ${instance.name} done`);
	}
	const row = (group: string): UseRow => {
		const sum = sums.get(group);
		if (!sum) throw new Error(`bug: nothing was counted of ${group}`);
		const { instances: n, first, ours, proven, most } = sum;
		const best = data.utilisation[group] ?? null;
		const means = { first: first / n, ours: ours / n, most: most / n };
		return { group, instances: n, proven, ...means, published: best };
	};
	return [...[...sums.keys()].filter((g) => g !== 'mean'), 'mean'].map(row);
}

export interface GrowthRow {
	readonly pieces: number;
	readonly firstMs: number;
	readonly first: number;
	readonly ours: number;
	readonly bound: number;
}

const COUNTS = [10, 20, 50, 100, 200, 500, 1000, 2000] as const;

/** Time of the first layout, and what the search makes of it, as the list grows. */
export function growthTable(allowance: Allowance, note: Note): GrowthRow[] {
	measure(boards(300, allowance.seed), { ...allowance, effort: 300 }); // warms the machine up
	return COUNTS.map((pieces) => {
		const problem = boards(pieces, allowance.seed);
		const { first, firstMs, answer } = measure(problem, allowance);
		const again = measure(problem, { ...allowance, effort: 1 });
		note(`Growth: ${pieces} pieces done`);
		return {
			pieces,
			firstMs: Math.min(firstMs, again.firstMs),
			first: first.layouts.length,
			ours: answer.layouts.length,
			bound: answer.bound.sheets,
		};
	});
}

/** Slope of time against pieces on double logarithmic paper, from 100 pieces up. */
export function growthPower(rows: readonly GrowthRow[]): number {
	const points = rows
		.filter((r) => r.pieces >= 100)
		.map((r) => [Math.log(r.pieces), Math.log(r.firstMs)] as const);
	const mean = (i: 0 | 1): number => points.reduce((sum, p) => sum + p[i], 0) / points.length;
	const [x, y] = [mean(0), mean(1)];
	const up = points.reduce((sum, p) => sum + (p[0] - x) * (p[1] - y), 0);
	return up / points.reduce((sum, p) => sum + (p[0] - x) ** 2, 0);
}
