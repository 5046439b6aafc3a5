import type { TookTime } from '../../job';

/** What an operation took in one job: so many minutes for so much of it. */
export type Took = Pick<TookTime, 'what' | 'amount' | 'taken'>;

/** The shop's own time for an operation, from the jobs it was entered for. */
export interface OwnTime {
	readonly what: string;
	/** Minutes for one: of a metre, a cut, a box. */
	readonly minutes: number;
	readonly jobs: number;
	/** Half of the jobs lie no farther from it than this, in minutes. */
	readonly spread: number;
	readonly sure: 'one job' | 'few jobs' | 'scattered' | 'steady';
}

/** Fewer jobs than these show no habit: common practice, no source. */
const ENOUGH = 3;
/** Half the jobs within this share of the middle are of one habit: common practice, no source. */
const STEADY = 0.2;

/**
 * The middle of what an operation took for one, over all jobs that did any of it: the median, for
 * one day that went wrong moves it hardly. How far the jobs lie from it is the median of their
 * distances from it (median absolute deviation). Of an even number of figures the median is the
 * mean of the two in the middle. By operation, in the order in which they are first met.
 */
export function ownTimes(jobs: readonly (readonly Took[])[]): OwnTime[] {
	const each = new Map<string, number[]>();
	for (const rows of jobs)
		for (const { what, amount, taken } of together(rows))
			if (amount > 0 && taken > 0) each.set(what, [...(each.get(what) ?? []), taken / amount]);
	return [...each].map(([what, times]) => {
		const minutes = median(times);
		const spread = median(times.map((t) => Math.abs(t - minutes)));
		return {
			what,
			minutes,
			jobs: times.length,
			spread,
			sure: surety(times.length, spread / minutes),
		};
	});
}

/** An operation that stands twice in one job is one. */
function together(rows: readonly Took[]): Took[] {
	const sums = new Map<string, Took>();
	for (const { what, amount, taken } of rows) {
		const sum = sums.get(what) ?? { what, amount: 0, taken: 0 };
		sums.set(what, { what, amount: sum.amount + amount, taken: sum.taken + taken });
	}
	return [...sums.values()];
}

export function median(figures: readonly number[]): number {
	const inOrder = figures.toSorted((a, b) => a - b);
	const middle = inOrder.length / 2;
	const [low = NaN, high = low] = inOrder.slice(Math.ceil(middle) - 1, Math.floor(middle) + 1);
	return (low + high) / 2;
}

function surety(jobs: number, share: number): OwnTime['sure'] {
	if (jobs === 1) return 'one job';
	if (jobs < ENOUGH) return 'few jobs';
	return share > STEADY ? 'scattered' : 'steady';
}
