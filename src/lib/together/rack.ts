import { clothOf, type Job, materialOf, type Problem } from '../job';
import { nth, ticks } from '../measure';
import type { Plan } from '../plan';
import { boardBundles, clothBundles, sundryBundles, tellIn } from './bundles';
import type { Counts } from './counts';
import { free, type Alike, alikeIn } from './groups';

type Stock = Job['stock'];

/** What the marks of one job's rack are among all, by the job's own. */
export interface RackMarks {
	readonly materials: ReadonlyMap<string, string>;
	readonly cloths: ReadonlyMap<string, string>;
	/** Sheets and offcuts, which share their marks. */
	readonly sheets: ReadonlyMap<string, string>;
	readonly rolls: ReadonlyMap<string, string>;
	readonly sundries: ReadonlyMap<string, string>;
}

/** One rack of all that the jobs take. */
export interface JoinedRack {
	readonly stock: Stock;
	readonly boards: readonly Alike[];
	readonly cloths: readonly Alike[];
	/** By the place of the job. */
	readonly marks: readonly RackMarks[];
	/** What is kept apart, and why. */
	readonly said: readonly Problem[];
}

/** What there is, and what each job took of it when it was planned by itself. */
export interface OnShelf {
	readonly counts: Counts;
	readonly taken: readonly Counts[];
}

/** The rack of several jobs: what is the same in all of them once, everything else by itself. */
export function joinedRack(
	racks: readonly Job[],
	plans: readonly Plan[],
	tags: readonly string[],
	shelf: OnShelf,
): JoinedRack {
	const tell = tellIn(nth(racks, 0));
	const boards = alikeIn(boardBundles(plans, racks), tags, tell);
	const cloths = alikeIn(clothBundles(plans, racks), tags, tell);
	const sundries = alikeIn(sundryBundles(plans, racks), tags, tell);
	const maker = new RackMaker(racks, tags, shelf);
	for (const group of boards) maker.addBoard(group);
	for (const group of cloths) maker.addCloth(group);
	for (const group of sundries) maker.addSundry(group);
	const said = [
		...boards.flatMap((g) => keptApart(g, 'materials', tags)),
		...cloths.flatMap((g) => keptApart(g, 'cloths', tags)),
		...sundries.flatMap((g) => keptApart(g, 'sundries', tags)),
	];
	return { stock: maker.stock, boards, cloths, marks: maker.marks, said };
}

function keptApart(group: Alike, list: string, tags: readonly string[]): Problem[] {
	if (group.unlike === '') return [];
	const who = group.jobs.map((j) => nth(tags, j)).join(', ');
	return [
		{
			path: [nth(tags, nth(group.jobs, 0)), 'stock', list, group.own],
			what: `"${nth(group.bundles, 0).name}" is not the same in job ${who} as in the others: ${group.unlike}. It is kept apart as "${group.name}".`,
			fix: 'If it is the same thing, set the same figures in all jobs; they then share it.',
			kind: 'check',
		},
	];
}

interface MarksMade {
	readonly materials: Map<string, string>;
	readonly cloths: Map<string, string>;
	readonly sheets: Map<string, string>;
	readonly rolls: Map<string, string>;
	readonly sundries: Map<string, string>;
}

/** Puts the groups into one stock, each line under a mark that no other has. */
class RackMaker {
	readonly stock = {
		materials: [] as Stock['materials'],
		sheets: [] as Stock['sheets'],
		offcuts: [] as Stock['offcuts'],
		cloths: [] as Stock['cloths'],
		rolls: [] as Stock['rolls'],
		sundries: [] as Stock['sundries'],
		suppliers: [] as Stock['suppliers'],
	};
	readonly marks: readonly MarksMade[];
	readonly #racks: readonly Job[];
	readonly #tags: readonly string[];
	readonly #shelf: OnShelf;
	/** Marks given, by the list; sheets and offcuts share theirs. */
	readonly #taken = {
		sheets: new Set<string>(),
		rolls: new Set<string>(),
		sellers: new Set<string>(),
	};
	/** Lines whose rest nobody has been given yet. */
	readonly #begun = new Set<string>();

	constructor(racks: readonly Job[], tags: readonly string[], shelf: OnShelf) {
		this.#racks = racks;
		this.#tags = tags;
		this.#shelf = shelf;
		this.marks = racks.map(() => ({
			...{ materials: new Map(), cloths: new Map(), sheets: new Map() },
			...{ rolls: new Map(), sundries: new Map() },
		}));
	}

	addBoard(group: Alike): void {
		for (const { job, id } of group.bundles) {
			const { stock } = nth(this.#racks, job);
			const mine = nth(this.marks, job);
			mine.materials.set(id, group.id);
			const material = materialOf({ stock }, id);
			if (material && !this.stock.materials.some((m) => m.id === group.id))
				this.stock.materials.push({ ...material, id: group.id, name: group.name });
			for (const sheet of stock.sheets.filter((s) => s.material === id))
				this.#addSheet(group, job, sheet);
			for (const offcut of stock.offcuts.filter((o) => o.material === id)) {
				const mark = this.#markOf(group, job, offcut.id, 'sheets');
				if (mark === null) continue;
				const count = this.#share(`offcut/${offcut.id}`, group);
				if (count > 0) this.stock.offcuts.push({ ...offcut, id: mark, material: group.id, count });
			}
		}
	}

	#addSheet(group: Alike, job: number, sheet: Stock['sheets'][number]): void {
		const mark = this.#markOf(group, job, sheet.id, 'sheets');
		if (mark === null) return;
		const limited = this.#shelf.counts.has(`buy/${sheet.id}`);
		this.stock.sheets.push({
			...sheet,
			...{ id: mark, material: group.id },
			owned: this.#share(`owned/${sheet.id}`, group),
			buy: limited ? this.#share(`buy/${sheet.id}`, group) : null,
			...this.#seller(job, sheet.supplier),
		});
	}

	addCloth(group: Alike): void {
		for (const { job, id } of group.bundles) {
			const { stock } = nth(this.#racks, job);
			nth(this.marks, job).cloths.set(id, group.id);
			const cloth = clothOf({ stock }, id);
			if (cloth && !this.stock.cloths.some((c) => c.id === group.id))
				this.stock.cloths.push({ ...cloth, id: group.id, name: group.name });
			for (const roll of stock.rolls.filter((r) => r.cloth === id)) {
				const mark = this.#markOf(group, job, roll.id, 'rolls');
				if (mark === null) continue;
				const left = roll.left === null ? null : ticks(this.#share(`roll/${roll.id}`, group));
				const seller = this.#seller(job, roll.supplier);
				if (left !== 0)
					this.stock.rolls.push({ ...roll, id: mark, cloth: group.id, left, ...seller });
			}
		}
	}

	addSundry(group: Alike): void {
		const all = group.bundles.flatMap(({ job, id }) => {
			nth(this.marks, job).sundries.set(id, group.id);
			const sundry = nth(this.#racks, job).stock.sundries.find((s) => s.id === id);
			return sundry ? [{ job, sundry }] : [];
		});
		const [first] = all;
		if (!first) return;
		this.stock.sundries.push({
			...first.sundry,
			...{ id: group.id, name: group.name },
			owned: this.#share(`sundry/${group.own}`, group),
			use: all.reduce((sum, { sundry }) => sum + sundry.use, 0),
			...this.#seller(first.job, first.sundry.supplier),
		});
	}

	/** The mark of a line; null where another job of the group has brought it already. */
	#markOf(group: Alike, job: number, id: string, list: 'sheets' | 'rolls'): string | null {
		const mine = nth(this.marks, job)[list];
		const before = group.jobs.map((j) => nth(this.marks, j)[list].get(id)).find((m) => m);
		const mark = before ?? free(this.#taken[list], id, `${id}-${nth(this.#tags, job)}`);
		mine.set(id, mark);
		return before === undefined ? mark : null;
	}

	/**
	 * How much of a line the group may take: what its jobs took each by itself, and the first group
	 * that knows the line all that nobody took. So nothing is taken twice.
	 */
	#share(key: string, { jobs }: Alike): number {
		const took = (js: readonly number[]): number =>
			js.reduce((sum, j) => sum + (this.#shelf.taken[j]?.get(key) ?? 0), 0);
		const all = this.#shelf.taken.map((_, j) => j);
		const isFirst = !this.#begun.has(key);
		this.#begun.add(key);
		const count = this.#shelf.counts.get(key) ?? 0;
		const rest = isFirst ? Math.max(0, count - took(all)) : 0;
		return took(jobs) + rest;
	}

	/** Sellers alike in all that is said of them are one. */
	#seller(job: number, id: string | undefined): { supplier?: string } {
		const seller = nth(this.#racks, job).stock.suppliers.find((s) => s.id === id);
		if (!seller) return id === undefined ? {} : { supplier: id };
		const said = JSON.stringify({ ...seller, id: '' });
		const known = this.stock.suppliers.find((s) => JSON.stringify({ ...s, id: '' }) === said);
		if (known) return { supplier: known.id };
		const mark = free(this.#taken.sellers, seller.id, `${seller.id}-${nth(this.#tags, job)}`);
		this.stock.suppliers.push({ ...seller, id: mark });
		return { supplier: mark };
	}
}
