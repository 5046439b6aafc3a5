import { type Job, type Problem, type Roll, rollOf, rollsOf, sheetOf } from '../../job';
import type { BoardLayouts, ClothLayouts } from '../../layout';
import { ticks } from '../../measure';
import { layReels, type ReelPlan, type RunPlan } from '../../runs';

/*
 * What a job costs is what it takes, whether or not any of that is cut, pulled or used already: the
 * price of a job never falls by working on it. So a quote is made of the job as if nothing were
 * booked; only the order is of what is left.
 */

/** What of a plan can be booked. */
interface Bookable {
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	readonly runs: readonly RunPlan[];
	readonly reels: readonly ReelPlan[];
}

/**
 * The job and its layouts with nothing booked: the same layouts, their sheets to be cut and their
 * cloth to be pulled, and sundries back on the rack as they were before they were used. What was
 * bought is priced as the rack prices it now.
 */
export function unbooked<W extends Bookable>(
	job: Job,
	work: W,
): { readonly job: Job; readonly work: W } {
	const whole = withoutBookings(job);
	const reels = job.used.length > 0 ? layReels(whole, [work.runs]) : work.reels;
	const boards = work.boards.map((b) => ({
		...b,
		sources: b.sources.map((s) => ({ ...s, cut: false })),
	}));
	const cloths = work.cloths.map((c) => ({
		...c,
		rolls: c.rolls.filter(({ roll }) => rollOf(whole, roll)).map(({ pulled: _, ...roll }) => roll),
	}));
	return { job: whole, work: { ...work, boards, cloths, reels } };
}

function withoutBookings(job: Job): Job {
	const used = (id: string): number =>
		job.used
			.filter((u) => u.sundry === id)
			.reduce((sum, { packs, bought }) => sum + packs - bought, 0);
	const sundries = job.stock.sundries.map((s) => ({
		...s,
		owned: Math.max(0, s.owned + used(s.id)),
	}));
	const rolls = [...job.stock.rolls, ...rollsUsedUp(job)];
	return { ...job, used: [], stock: { ...job.stock, sundries, rolls } };
}

/**
 * Rolls that were pulled whole and are on no rack any more, at the price they had; of before that
 * was kept, at the dearest of their cloth.
 */
function rollsUsedUp(job: Job): Job['stock']['rolls'] {
	const gone = new Map(
		job.pulled.filter((p) => !rollOf(job, p.roll)).map((p) => [p.roll, p] as const),
	);
	return [...gone].flatMap(([id, { cloth, usable, pull, price }]) => {
		const of = { id, cloth, usable, left: pull };
		if (price) return [{ ...PLAIN, width: usable, ...of, ...price }];
		const like = dearest(job, cloth);
		return like ? [{ ...like, ...of }] : [];
	});
}

/** Of a roll that is gone nothing but its price is asked. */
const PLAIN = {
	...{ least: ticks(0), breaks: [], code: '', priced: '', lot: '' },
	...{ cuts: 'counted', begins: 'anywhere' },
} as const satisfies Partial<Roll>;

const dearest = (job: Job, cloth: string): Roll | undefined =>
	rollsOf(job, cloth).toSorted((a, b) => b.price - a.price)[0];

/** What is cut or pulled and stands on no rack any more has no price: told, at its booking. */
export function unpricedBookings(job: Job): Problem[] {
	const told = (list: 'pinned' | 'pulled', i: number, what: string): Problem => ({
		path: [list, i, list === 'pinned' ? 'sheet' : 'roll'],
		what: `${what} is on the rack no more, so nobody knows its price and the quote is too low by it.`,
		fix: 'Put it on the rack again with its price; none of it need be there.',
		kind: 'note',
	});
	const sheets = job.pinned.flatMap(({ sheet, cut }, i) => {
		const [, id] = /^(?:owned|buy)\/(.+)$/.exec(sheet) ?? [];
		return cut && id !== undefined && !sheetOf(job, id)
			? [told('pinned', i, `The sheet "${id}" that was cut`)]
			: [];
	});
	const rolls = job.pulled.flatMap(({ roll, cloth, price }, i) => {
		if (price || rollOf(job, roll)) return [];
		const like = dearest(job, cloth);
		return [
			like ? pricedLike(i, roll, like.id) : told('pulled', i, `The roll "${roll}" that was pulled`),
		];
	});
	return [...sheets, ...rolls];
}

const pricedLike = (i: number, roll: string, like: string): Problem => ({
	path: ['pulled', i, 'roll'],
	what: `The roll "${roll}" that was pulled is on the rack no more; the quote takes the price of "${like}" for it.`,
	fix: 'If it cost another price, put it on the rack again at that price, as cloth to be bought.',
	kind: 'note',
});
