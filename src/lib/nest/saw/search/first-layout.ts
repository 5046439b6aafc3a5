import { Laying, type Kept } from './partial-layout';
import type { Labour } from './open-sheet';
import { cheapestOpening, makePairs, ordered, recreate, type OrderKey } from './recreate';

const ORDERS: readonly OrderKey[] = ['area', 'long', 'sum', 'w', 'h', 'short'];

/** Fewer pieces left over first, then less cost. */
export function better(a: Kept, b: Kept): boolean {
	return a.missing < b.missing || (a.missing === b.missing && a.cost < b.cost);
}

/** Lays everything from nothing. Pairs: chance that tapered pieces are laid head to tail. */
function layOnce(laying: Laying, key: OrderKey, noise: number, shake: number, pairs: number): void {
	const { job } = laying;
	laying.clear();
	makePairs(laying, pairs, job.dice);
	recreate(laying, ordered(laying, key, noise), Infinity, cheapestOpening(shake));
	laying.shrink();
}

/** A full layout at once: largest pieces first, each where it spoils least. */
export function firstLayout(job: Labour): Kept {
	const laying = new Laying(job);
	layOnce(laying, 'area', 0, 0, 1);
	return laying.keep();
}

/** The same in other orders, then with noise, until `work` is spent or the cost is `enough`; returns the best. */
export function* moreFirstLayouts(
	job: Labour,
	best: Kept,
	work: number,
	enough: (kept: Kept) => boolean,
): Generator<Kept, Kept, void> {
	const laying = new Laying(job);
	const end = job.work + work;
	for (let i = 1; job.work < end && !enough(best); i++) {
		const key = ORDERS[i % ORDERS.length]!;
		const plain = i < ORDERS.length;
		job.blinkEvery = plain ? Infinity : 50;
		job.blink = plain ? Infinity : 25;
		const pairs = i % 3 === 2 ? 0 : 1;
		job.work += 100;
		layOnce(laying, key, plain ? 0 : 0.12, plain ? 0 : 0.3, pairs);
		if (better({ ...best, cost: laying.cost, missing: laying.missing() }, best))
			best = laying.keep();
		yield best;
	}
	return best;
}
