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
	partial: PartialLayout,
	key: OrderKey,
	noise: number,
	shake: number,
	pairs: number,
): void {
	const { search } = partial;
	partial.clear();
	makePairs(partial, pairs, search.dice);
	recreate(partial, typesInOrder(partial, key, noise), Infinity, cheapestOpening(shake));
	partial.shrink();
}

/** A full layout at once: largest pieces first, each where it spoils least. */
export function firstLayout(search: SearchState): LayoutSnapshot {
	const partial = new PartialLayout(search);
	layOnce(partial, 'area', 0, 0, 1);
	return partial.keep();
}

/**
 * The same in other orders, then with noise, until `work` is spent or the cost is `enough`; returns
 * the best.
 */
export function* moreFirstLayouts(
	search: SearchState,
	best: LayoutSnapshot,
	work: number,
	enough: (kept: LayoutSnapshot) => boolean,
): Generator<LayoutSnapshot, LayoutSnapshot, void> {
	const partial = new PartialLayout(search);
	const end = search.work + work;
	for (let i = 1; search.work < end && !enough(best); i++) {
		const key = around(ORDERS, i);
		const plain = i < ORDERS.length;
		search.blinkEvery = plain ? Infinity : 50;
		search.blink = plain ? Infinity : 25;
		const pairs = i % 3 === 2 ? 0 : 1;
		search.work += 100;
		layOnce(partial, key, plain ? 0 : 0.12, plain ? 0 : 0.3, pairs);
		if (better({ ...best, cost: partial.cost, missing: partial.missing() }, best))
			best = partial.keep();
		yield best;
	}
	return best;
}
