import { nth } from '../../measure';
import { copyOf, type Attempt, type Lying, type Separation } from './separate';
import { lyingOf, type FreeState, type StripSearch } from './strip-search';

/** Shortening, as a share of the length: the most, and the least. */
export const MOST_STEP = 0.02;
const LAST_STEP = 0.001;
/** Failures in a row before the step is halved. */
const FAILURES = 6;
/** Failed states remembered, the least overlap first. */
const POOL = 10;
const PATIENCE = { patience: 30, strikes: 2 };
/** Of the pieces by size, the share that may change places. */
const LARGE = 0.6;

interface Stuck {
	readonly lying: Lying;
	readonly overlap: number;
}

/**
 * Shorten by a step; when the pieces will not lie apart, change two large ones over in one of the
 * states that came near and try again; then shorter steps.
 */
export function* explore(
	search: StripSearch,
	separation: Separation,
	until: { readonly share: number; readonly step?: number },
): Generator<FreeState, void, void> {
	const { layout } = separation;
	const { share } = until;
	let step = until.step ?? MOST_STEP;
	let failures = 0;
	let pool: Stuck[] = [];
	while (!search.isOver(share)) {
		const length = Math.max(search.bound, Math.floor(search.best.length * (1 - step)));
		const apart = yield* liesWithin(search, separation, { length, ...PATIENCE }, share);
		if (apart) {
			search.keep(layout);
			layout.set(stretched(lyingOf(search.best.spots), 1 - step));
			[failures, pool] = [0, []];
			continue;
		}
		pool = [...pool, separation.least].sort((a, b) => a.overlap - b.overlap).slice(0, POOL);
		failures += 1;
		if (failures < FAILURES) {
			layout.set(
				nth(pool, Math.floor(search.stream.unit() * search.stream.unit() * pool.length)).lying,
			);
			swapLarge(search, separation);
			continue;
		}
		if (step <= LAST_STEP) return;
		step = Math.max(LAST_STEP, step / 2);
		layout.set(stretched(nth(pool, 0).lying, (search.best.length * (1 - step)) / length));
		[failures, pool] = [0, []];
	}
}

/** Can the pieces lie apart within a length? False, too, when that share of the budget is spent. */
export function* liesWithin(
	search: StripSearch,
	separation: Separation,
	attempt: Attempt,
	share: number,
): Generator<FreeState, boolean, void> {
	const run = separation.run(attempt);
	for (let sweep = run.next(); ; sweep = run.next()) {
		if (sweep.done === true) return sweep.value;
		yield search.state;
		if (search.spent >= share * search.effort) return false;
	}
}

function stretched(lying: Lying, by: number): Lying {
	const copy = copyOf(lying);
	for (let i = 0; i < copy.x.length; i++) copy.x[i]! *= by;
	return copy;
}

/** Two of the larger pieces of different kinds change places. */
function swapLarge(search: StripSearch, { layout }: Separation): void {
	const { shape, x, y } = layout.lying;
	const kind = (i: number): number => search.tables.kind[shape[i]!]!;
	const areas = Array.from(shape, (_, i) => nth(search.kinds, kind(i)).area);
	const bySize = areas.map((_, i) => i).sort((a, b) => nth(areas, b) - nth(areas, a) || a - b);
	const large = bySize.slice(0, Math.max(2, Math.ceil(bySize.length * LARGE)));
	const a = nth(large, search.stream.int(large.length));
	const others = large.filter((i) => kind(i) !== kind(a));
	if (others.length === 0) return;
	const b = nth(others, search.stream.int(others.length));
	[x[a], x[b]] = [x[b]!, x[a]!];
	[y[a], y[b]] = [y[b]!, y[a]!];
}
