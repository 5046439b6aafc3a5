import { nth } from '../../measure';
import { fillColumns, SpanTables, type Filled, type FreeSpot, type Strip } from './free-columns';
import { PairTables } from './free-pairs';
import type { FreeKind } from './free-shape';
import { random, type Random } from '../random';
import { Separation, copyOf, lyingOf, spotsOf, type Lying } from './separate';
import type { Budget } from '../types';

/** Columns to the width of the strip in first layouts. */
const COLUMNS = 200;
/** Work of the column filler and of the pair tables for one unit: measured. */
const STRETCHES_PER_UNIT = 400;
const LOOKS_PER_UNIT = 80;
/** Share of the budget for shrinking; the rest presses the result together. */
const EXPLORE = 0.75;
const FIRST_STEP = 0.01;
const LAST_STEP = 0.001;
const FAILURES = 6;
const POOL = 10;
/**
 * More pieces than this are not separated: the tables of their pairs would not pay within any
 * budget a person waits for.
 */
const MOST_SEPARATED = 250;

export interface FreeState {
	readonly spots: readonly FreeSpot[];
	readonly left: readonly number[];
	readonly length: number;
	readonly effort: number;
}

interface StripSearch {
	readonly kinds: readonly FreeKind[];
	readonly strip: Strip;
	readonly tables: PairTables;
	readonly stream: Random;
	readonly effort: number;
	readonly bound: number;
	work: number; // of the filler, units
	best: { spots: readonly FreeSpot[]; left: readonly number[]; length: number };
}

/**
 * Shortest layout of outlines on a strip: first layouts by columns in several orders, then the
 * strip is shortened a little at a time and what sticks out or overlaps is pushed apart again.
 */
export function* searchFree(
	kinds: readonly FreeKind[],
	strip: Strip,
	bound: number,
	budget: Budget,
): Generator<FreeState, FreeState, void> {
	const search: StripSearch = {
		kinds,
		strip,
		tables: new PairTables(kinds.reduce((n, kind) => n + kind.shapes.length, 0)),
		stream: random(budget.seed),
		effort: budget.effort,
		bound,
		work: 0,
		best: { spots: [], left: orderBy(kinds, () => 0), length: 0 },
	};
	const spans = new SpanTables();
	for (const order of firstOrders(kinds)) {
		const filled = fillColumns(kinds, order, strip, columnOf(strip), spans);
		search.work += Math.ceil(filled.work / STRETCHES_PER_UNIT) + 1;
		if (isBetter(filled, search.best)) search.best = settled(search, filled);
		yield stateOf(search);
		if (isOver(search, 0.5)) break;
	}
	const { spots, left } = search.best;
	if (left.length === 0 && spots.length > 1 && spots.length <= MOST_SEPARATED) {
		yield* explore(search);
		yield* press(search);
	}
	return stateOf(search);
}

function spent(search: StripSearch): number {
	return search.work + Math.ceil(search.tables.work / LOOKS_PER_UNIT);
}

function isOver(search: StripSearch, share: number): boolean {
	return (
		spent(search) >= share * search.effort ||
		(search.best.left.length === 0 && search.best.length <= search.bound)
	);
}

function stateOf(search: StripSearch): FreeState {
	return { ...search.best, effort: spent(search) };
}

export function columnOf(strip: Strip): number {
	return Math.max(1, Math.ceil(strip.width / COLUMNS));
}

/** Less left over, then shorter. */
function isBetter(a: Pick<Filled, 'left' | 'length'>, b: StripSearch['best']): boolean {
	return a.left.length < b.left.length || (a.left.length === b.left.length && a.length < b.length);
}

/** One entry a copy, falling by a size of the kind. */
function orderBy(kinds: readonly FreeKind[], key: (kind: FreeKind) => number): number[] {
	const all = kinds.map((_, k) => k);
	all.sort(
		(a, b) =>
			key(nth(kinds, b)) - key(nth(kinds, a)) || nth(kinds, b).area - nth(kinds, a).area || a - b,
	);
	return all.flatMap((k) => new Array<number>(nth(kinds, k).count).fill(k));
}

export function firstOrders(kinds: readonly FreeKind[]): number[][] {
	const length = (kind: FreeKind): number => nth(kind.shapes, 0).length;
	const width = (kind: FreeKind): number => nth(kind.shapes, 0).width;
	return [
		orderBy(kinds, (kind) => kind.area),
		orderBy(kinds, (kind) => Math.max(length(kind), width(kind))),
		orderBy(kinds, width),
		orderBy(kinds, length),
		orderBy(kinds, (kind) => length(kind) * width(kind)),
	];
}

/**
 * Slide every piece to the left, those farthest left first: the columns leave up to one column
 * between neighbours. All others are in its way, also those not moved yet: one may lie in the mouth
 * of an outline that starts farther left.
 */
function settled(search: StripSearch, filled: Filled): StripSearch['best'] {
	const spots = [...filled.spots].sort((a, b) => a.x - b.x || a.y - b.y);
	spots.forEach((spot, i) => {
		let free = spot.x;
		for (const [j, other] of spots.entries()) {
			if (j === i || free <= 0) continue;
			const [x, y] = [spot.x - other.x, spot.y - other.y];
			free = Math.min(free, search.tables.slideLeft(other.shape, spot.shape, x, y));
		}
		spots[i] = { ...spot, x: spot.x - Math.max(0, Math.floor(free)) };
	});
	return { spots, left: filled.left, length: endOf(spots) };
}

function endOf(spots: readonly FreeSpot[]): number {
	return spots.reduce((end, spot) => Math.max(end, spot.x + spot.shape.length), 0);
}

interface Stuck {
	readonly lying: Lying;
	readonly failed: number;
}

/**
 * Shorten by a step; when the pieces will not lie apart, change two large ones over and try again;
 * then shorter steps.
 */
function* explore(search: StripSearch): Generator<FreeState, void, void> {
	const kindOf = search.best.spots.map((spot) => spot.kind);
	const separation = openSeparation(search, kindOf);
	let step = FIRST_STEP;
	let failures = 0;
	let pool: Stuck[] = [];
	while (!isOver(search, EXPLORE)) {
		const length = Math.max(search.bound, Math.floor(search.best.length * (1 - step)));
		const apart = yield* liesWithin(search, separation, length, EXPLORE);
		if (apart) {
			keep(search, separation, kindOf);
			failures = 0;
			pool = [];
			continue;
		}
		pool = [...pool, { lying: copyOf(separation.now), failed: failures }].slice(-POOL);
		failures += 1;
		if (failures >= FAILURES) {
			if (step <= LAST_STEP) step = FIRST_STEP;
			else step = Math.max(LAST_STEP, step / 2);
			failures = 0;
			pool = [];
			separation.now = lyingOf(search.best.spots);
			continue;
		}
		separation.now = copyOf(nth(pool, search.stream.int(pool.length)).lying);
		swapLarge(separation, search);
	}
}

function openSeparation(search: StripSearch, kindOf: readonly number[]): Separation {
	const { width } = search.strip;
	return new Separation({ ...search, width }, kindOf, lyingOf(search.best.spots));
}

/** Can the pieces lie apart within a length? False, too, when that share of the budget is spent. */
function* liesWithin(
	search: StripSearch,
	separation: Separation,
	length: number,
	share: number,
	patience?: number,
): Generator<FreeState, boolean, void> {
	const run = separation.run(length, patience);
	for (let sweep = run.next(); ; sweep = run.next()) {
		if (sweep.done === true) return sweep.value;
		yield stateOf(search);
		if (spent(search) >= share * search.effort) return false;
	}
}

function keep(search: StripSearch, separation: Separation, kindOf: readonly number[]): void {
	const spots = spotsOf(separation.now, kindOf);
	if (endOf(spots) < search.best.length) search.best = { spots, left: [], length: endOf(spots) };
}

/** Two of the larger pieces of different kinds change places. */
function swapLarge(separation: Separation, search: StripSearch): void {
	const { shapes, x, y } = separation.now;
	const bySize = shapes.map((_, i) => i);
	bySize.sort(
		(a, b) =>
			nth(shapes, b).length * nth(shapes, b).width - nth(shapes, a).length * nth(shapes, a).width,
	);
	const large = bySize.slice(0, Math.max(2, Math.ceil(bySize.length * 0.6)));
	const a = nth(large, search.stream.int(large.length));
	const b = nth(large, search.stream.int(large.length));
	[x[a], x[b]] = [x[b]!, x[a]!];
	[y[a], y[b]] = [y[b]!, y[a]!];
}

/**
 * Press the best layout together: all right of a random line moves left a little, and is pushed
 * apart again.
 */
function* press(search: StripSearch): Generator<FreeState, void, void> {
	const kindOf = search.best.spots.map((spot) => spot.kind);
	const separation = openSeparation(search, kindOf);
	const from = spent(search);
	while (!isOver(search, 1)) {
		const done = (spent(search) - from) / Math.max(1, search.effort - from);
		const share = 0.0005 * (1 - done) + 0.00001;
		const shift = Math.max(1, Math.round(share * search.best.length));
		separation.now = lyingOf(search.best.spots);
		const line = search.stream.unit() * search.best.length;
		const { x } = separation.now;
		for (let i = 0; i < x.length; i++) if (x[i]! > line) x[i]! -= shift;
		const length = Math.max(search.bound, search.best.length - shift);
		const apart = yield* liesWithin(search, separation, length, 1, 15);
		if (apart) keep(search, separation, kindOf);
	}
}
