import { around } from '../../../measure';
import { PartialLayout, type LayoutSnapshot } from './partial-layout';
import type { SearchState } from './open-sheet';
import { cheapestOpening, makePairs, typesInOrder, recreate, type OrderKey } from './recreate';

const ORDERS: readonly OrderKey[] = ['area', 'long', 'sum', 'w', 'h', 'short'];

/** Fewer pieces left over first, then less cost. */
export function better(a: LayoutSnapshot, b: LayoutSnapshot): boolean {
	return a.missing < b.missing || (a.missing === b.missing && a.cost < b.cost);
}

/** Lays everything from nothing. Pairs: chance that tapered pieces are laid head to tail. */
function layOnce(
	laying: PartialLayout,
	key: OrderKey,
	noise: number,
	shake: number,
	pairs: number,
): void {
	const { job } = laying;
	laying.clear();
	makePairs(laying, pairs, job.dice);
	recreate(laying, typesInOrder(laying, key, noise), Infinity, cheapestOpening(shake));
	laying.shrink();
}

/** A full layout at once: largest pieces first, each where it spoils least. */
export function firstLayout(job: SearchState): LayoutSnapshot {
	const laying = new PartialLayout(job);
	layOnce(laying, 'area', 0, 0, 1);
	return laying.keep();
}

/** The same in other orders, then with noise, until `work` is spent or the cost is `enough`; returns the best. */
export function* moreFirstLayouts(
	job: SearchState,
	best: LayoutSnapshot,
	work: number,
	enough: (kept: LayoutSnapshot) => boolean,
): Generator<LayoutSnapshot, LayoutSnapshot, void> {
	const laying = new PartialLayout(job);
	const end = job.work + work;
	for (let i = 1; job.work < end && !enough(best); i++) {
		const key = around(ORDERS, i);
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
