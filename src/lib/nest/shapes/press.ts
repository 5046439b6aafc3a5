import { liesWithin } from './explore';
import { relax, type Separation } from './separate';
import { lyingOf, type FreeState, type StripSearch } from './strip-search';

/** Moved to the left at a time, as a share of the length: at first, at most, and too little. */
const FIRST_SHIFT = 0.0005;
const MOST_SHIFT = 0.01;
const LEAST_SHIFT = 0.00001;
/** After a gain, and after none. */
const LONGER = 1.5;
const SHORTER = 0.75;
const PATIENCE = { patience: 15, strikes: 1 };
const RELAXED = 100;

/**
 * Press the best layout together: all right of a random line moves left a little, and is pushed
 * apart again. Ends when even the least shift gains nothing.
 */
export function* press(
	search: StripSearch,
	separation: Separation,
): Generator<FreeState, void, void> {
	let shift = FIRST_SHIFT;
	while (shift > LEAST_SHIFT && !search.isOver(1)) {
		const apart = yield* shifted(search, separation, shift);
		if (apart) search.keep(separation.layout);
		shift = apart ? Math.min(MOST_SHIFT, LONGER * shift) : SHORTER * shift;
		yield search.state;
	}
}

function* shifted(
	search: StripSearch,
	separation: Separation,
	share: number,
): Generator<FreeState, boolean, void> {
	const { best, stream } = search;
	const { layout } = separation;
	const shift = Math.max(1, Math.round(share * best.length));
	const lying = lyingOf(best.spots);
	const line = stream.unit() * best.length;
	for (let i = 0; i < lying.x.length; i++) if (lying.x[i]! > line) lying.x[i]! -= shift;
	layout.set(lying);
	const length = Math.max(search.bound, best.length - shift);
	layout.clamp(length);
	if (stream.int(2) === 0) return relax(layout, RELAXED);
	return yield* liesWithin(search, separation, { length, ...PATIENCE }, 1);
}
