import { liesWithin } from './explore';
import { relax, type Separation } from './separate';
import { lyingOf, type FreeState, type StripSearch } from './strip-search';

/** Moved to the left at a time, as a share of the length: at first and, besides, to the end. */
const FIRST_SHIFT = 0.0005;
const LAST_SHIFT = 0.00001;
const PATIENCE = { patience: 15, strikes: 1 };
const RELAXED = 100;

/**
 * Press the best layout together: all right of a random line moves left a little, and is pushed
 * apart again.
 */
export function* press(
	search: StripSearch,
	separation: Separation,
): Generator<FreeState, void, void> {
	const { layout } = separation;
	const from = search.spent;
	while (!search.isOver(1)) {
		const done = (search.spent - from) / Math.max(1, search.effort - from);
		const { best } = search;
		const shift = Math.max(1, Math.round((FIRST_SHIFT * (1 - done) + LAST_SHIFT) * best.length));
		const lying = lyingOf(best.spots);
		const line = search.stream.unit() * best.length;
		for (let i = 0; i < lying.x.length; i++) if (lying.x[i]! > line) lying.x[i]! -= shift;
		layout.set(lying);
		const length = Math.max(search.bound, best.length - shift);
		layout.clamp(length);
		const apart =
			search.stream.int(2) === 0
				? relax(layout, RELAXED)
				: yield* liesWithin(search, separation, { length, ...PATIENCE }, 1);
		if (apart) search.keep(layout);
		yield search.state;
	}
}
