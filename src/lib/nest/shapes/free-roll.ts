import { explore, MOST_STEP } from './explore';
import { firstLayouts } from './first-layouts';
import type { FreeSpot, Strip } from './free-columns';
import type { FreeKind } from './free-shape';
import { press } from './press';
import { Separation } from './separate';
import { endOf, lyingOf, StripSearch, type FreeState } from './strip-search';
import type { Budget } from '../types';

/** Shares of the budget for shrinking: at first, and between each two presses after that. */
const FIRST_SHARE = 0.6;
const NEXT_SHARE = 0.1;
/** Shortening after a press starts with this share of the length. */
const NEXT_STEP = 0.005;
/**
 * More pieces than this are not separated: the weights of their pairs grow with the square.
 */
const MOST_SEPARATED = 1000;

/** A strip, and how far apart pieces lie on it. */
export interface GappedStrip extends Strip {
	readonly gap: number;
}

/**
 * Shortest layout of outlines on a strip: first layouts by columns in several orders, then the
 * strip is shortened a little at a time and what sticks out or overlaps is pushed apart again. With
 * a layout of all pieces to go on from there are no first ones. Where the first layouts leave
 * pieces over at the end of a remnant, all of them are laid on a longer strip, which is then
 * shortened: it becomes the answer once it is no longer than the remnant.
 */
export function* searchFree(
	kinds: readonly FreeKind[],
	{ gap, ...strip }: GappedStrip,
	bound: number,
	{ start, ...budget }: Budget & { readonly start?: readonly FreeSpot[] },
): Generator<FreeState, FreeState, void> {
	const search = new StripSearch(kinds, strip, bound, budget, gap);
	if (start) search.best = { spots: start, left: [], length: endOf(start) };
	else yield* firstLayouts(search);
	if (search.best.left.length === 0 || bound > strip.limit) {
		yield* shorten(search, start !== undefined);
		return search.state;
	}
	const over = search.state;
	const rest = { seed: budget.seed, effort: Math.max(0, budget.effort - over.effort) };
	const whole = new StripSearch(kinds, { ...strip, limit: Infinity }, bound, rest, gap);
	const fits = (): boolean => whole.best.left.length === 0 && whole.best.length <= strip.limit;
	const state = (): FreeState => ({
		...(fits() ? whole.best : over),
		effort: over.effort + whole.spent,
	});
	for (const steps of [firstLayouts(whole), shorten(whole, false)])
		while (steps.next().done !== true) yield state();
	return state();
}

function* shorten(search: StripSearch, isStarted: boolean): Generator<FreeState, void, void> {
	const { spots, left } = search.best;
	if (left.length > 0 || spots.length <= 1 || spots.length > MOST_SEPARATED) return;
	const separation = new Separation(search.openLayout());
	if (!isStarted) yield* explore(search, separation, { share: FIRST_SHARE });
	yield* press(search, separation);
	for (let n = 0; !search.isOver(1); n++) {
		separation.layout.set(lyingOf(search.best.spots));
		const share = Math.min(1, search.spent / search.effort + NEXT_SHARE);
		yield* explore(search, separation, { share, step: n % 2 === 0 ? NEXT_STEP : MOST_STEP });
		yield* press(search, separation);
	}
}
