import type { Job } from '../job';
import { ticks } from '../measure';
import type { Plan } from '../plan';

/**
 * How much there is of each line of a rack, by 'owned/ply-18', 'buy/ply-18', 'offcut/R7',
 * 'roll/rest', 'sundry/glue': sheets, pieces, ticks of length, packs. Lines of several racks under
 * one mark are one thing: nothing is counted twice.
 */
export type Counts = ReadonlyMap<string, number>;

type Stock = Job['stock'];

/** What a rack holds, and what can be bought where there is a limit to that. */
function countsIn({ sheets, offcuts, rolls, sundries }: Stock): [string, number][] {
	return [
		...sheets.flatMap(({ id, owned, buy }): [string, number][] => [
			[`owned/${id}`, owned],
			...(buy === null ? [] : [[`buy/${id}`, buy] as [string, number]]),
		]),
		...offcuts.map(({ id, count }): [string, number] => [`offcut/${id}`, count]),
		...rolls.flatMap(({ id, left }): [string, number][] =>
			left === null ? [] : [[`roll/${id}`, left]],
		),
		...sundries.map(({ id, owned }): [string, number] => [`sundry/${id}`, owned]),
	];
}

/** What all racks together hold: of a line that several tell of, the lowest count. */
export function leastCounts(jobs: readonly Pick<Job, 'stock'>[]): {
	readonly counts: Counts;
	/** Lines that are not told alike. */
	readonly unlike: readonly string[];
} {
	const counts = new Map<string, number>();
	const unlike = new Set<string>();
	for (const [key, count] of jobs.flatMap(({ stock }) => countsIn(stock))) {
		const known = counts.get(key);
		if (known !== undefined && known !== count) unlike.add(key);
		counts.set(key, Math.min(known ?? count, count));
	}
	return { counts, unlike: [...unlike] };
}

/** What a plan takes of its rack. */
export function takesOf(plan: Plan): Counts {
	const taken = new Map<string, number>();
	const take = (key: string, many: number): unknown => taken.set(key, (taken.get(key) ?? 0) + many);
	for (const { kind, id, cut } of plan.boards.flatMap((b) => b.sources))
		if (!cut) take(`${kind}/${id}`, 1);
	for (const roll of plan.cloths.flatMap((c) => c.rolls))
		if (roll.owned && !roll.pulled) take(`roll/${roll.roll}`, roll.pull);
	for (const line of plan.order.lines)
		if (line.group === 'sundries') take(`sundry/${line.id}`, line.fromRack.number / line.pack);
	return taken;
}

/** What is left of it. */
export function lessTaken(counts: Counts, taken: Counts): Counts {
	return new Map(
		[...counts].map(([key, count]) => [key, Math.max(0, count - (taken.get(key) ?? 0))]),
	);
}

/** The rack with these counts; a line they do not know stays as it is. */
export function withCounts(stock: Stock, counts: Counts): Stock {
	const of = (key: string, own: number): number => counts.get(key) ?? own;
	return {
		...stock,
		sheets: stock.sheets.map((s) => ({
			...s,
			owned: of(`owned/${s.id}`, s.owned),
			buy: counts.get(`buy/${s.id}`) ?? s.buy,
		})),
		offcuts: stock.offcuts
			.map((o) => ({ ...o, count: of(`offcut/${o.id}`, o.count) }))
			.filter((o) => o.count > 0),
		rolls: stock.rolls
			.map((r) => ({ ...r, left: r.left === null ? null : ticks(of(`roll/${r.id}`, r.left)) }))
			.filter((r) => r.left !== 0),
		sundries: stock.sundries.map((s) => ({ ...s, owned: of(`sundry/${s.id}`, s.owned) })),
	};
}
