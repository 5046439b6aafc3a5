import { random, type Random } from '../random';
import { raisedBound, rollBound } from './bound';
import type { RollDeck } from './kinds';
import { Skyline, type Laid, type Mode } from './skyline';
import type { Budget } from '../types';

/** Blanks looked at for one unit of work: measured, about 10 microseconds on a desk computer. */
const LOOKS_PER_UNIT = 400;
/**
 * The least step between two goals, as a share of the bound, when the lengths of the blanks allow
 * finer ones.
 */
const FINEST = 1e-4;
/** Share of the budget for each goal while the range of goals is halved. */
const HALVING_SHARE = 0.03;
/** Moves without gain, per blank, before the next start is taken. */
const PATIENCE = 20;
/** Share of the blanks that may be moved to get a start going again. */
const KICK = 0.1;
/** Times that each order of a few blanks is looked for before a goal counts as out of reach. */
const EACH_ORDER = 4;
/** Units of work between two reports. */
const REPORT_EVERY = 1000;

/** A blank laid down: kind and orientation in the deck, lower left corner. */
export interface DeckPlacement {
	readonly kind: number;
	readonly orientation: number;
	readonly x: number;
	readonly y: number;
}

/** A layout of the deck; `length` and `bound` count one gap more than is used. */
export interface DeckLayout {
	readonly spots: readonly DeckPlacement[];
	readonly left: number;
	readonly area: number;
	readonly length: number;
}

export interface RollState {
	readonly best: DeckLayout;
	readonly bound: number;
	readonly effort: number;
}

interface RollSearch {
	readonly deck: RollDeck;
	readonly skyline: Skyline;
	readonly stream: Random;
	readonly starts: { readonly order: Int32Array; readonly mode: Mode }[];
	readonly effort: number;
	/** The most units worth giving to one goal: a few blanks have few orders. */
	readonly most: number;
	readonly unit: number;
	bound: number;
	best: DeckLayout;
	reported: number;
}

/**
 * Shortest layout of the deck's rectangles: a first one from plain orders, then goals. A goal is a
 * length a little under the best; the order is changed two blanks at a time, keeping what lays no
 * less area within the goal, until everything lies within it.
 */
export function* searchRoll(deck: RollDeck, budget: Budget): Generator<RollState, RollState, void> {
	const search = openSearch(deck, budget);
	if (search.starts.length === 0) return state(search);
	yield state(search);
	if (search.best.left === 0 && !solved(search))
		search.bound = raisedBound(deck, search.bound, search.best.length, search.unit);
	if (search.best.left > 0) yield* attempt(search, deck.limit, search.effort);
	if (search.best.left === 0) {
		yield* halve(search);
		yield* shorten(search);
	}
	return state(search);
}

function spent(search: RollSearch): number {
	return Math.ceil(search.skyline.looks / LOOKS_PER_UNIT);
}

function state(search: RollSearch): RollState {
	return { best: search.best, bound: search.bound, effort: spent(search) };
}

function openSearch(deck: RollDeck, budget: Budget): RollSearch {
	const orders = plainOrders(deck);
	const blanks = orders[0]!.length;
	const bound = rollBound(
		deck,
		deck.kinds.map((kind) => kind.count),
	);
	const search: RollSearch = {
		deck,
		skyline: new Skyline(deck, blanks),
		stream: random(budget.seed),
		starts:
			blanks === 0
				? []
				: orders.flatMap((order) => [1, 2].map((m) => ({ order, mode: m as Mode }))),
		effort: budget.effort,
		most: mostFor(blanks),
		unit: Math.max(1, commonMeasure(deck)),
		bound,
		best: { spots: [], left: blanks, area: -1, length: 0 },
		reported: 0,
	};
	for (const start of search.starts) {
		offer(search, search.skyline.lay(start.order, deck.limit, start.mode, 0));
		if (solved(search) || (spent(search) > budget.effort && search.best.area >= 0)) break;
	}
	return search;
}

/** Units that it takes to lay every order of so many blanks several times over. */
function mostFor(blanks: number): number {
	let orders = 2; // one a mode
	for (let n = 2; n <= blanks; n++) orders *= n;
	return 1 + Math.ceil((EACH_ORDER * orders * blanks * blanks) / LOOKS_PER_UNIT);
}

/**
 * The greatest length of which all lengths along the roll are multiples: no goal in between need be
 * tried.
 */
function commonMeasure(deck: RollDeck): number {
	const orientations = deck.kinds.flatMap((kind) => kind.orientations);
	return orientations.reduce(
		(g, orientation) => common(common(g, orientation.tall), orientation.reach),
		0,
	);
}

function common(a: number, b: number): number {
	return b === 0 ? a : common(b, a % b);
}

/**
 * Orders that make good first layouts: by area, width, length, their sum, the longer side; falling.
 */
function plainOrders(deck: RollDeck): Int32Array[] {
	const keys = deck.kinds.map(({ orientations }) => {
		const { wide, reach } = orientations[0] ?? { wide: 0, reach: 0 };
		return [wide * reach, wide, reach, wide + reach, Math.max(wide, reach)];
	});
	return [0, 1, 2, 3, 4].map((key) => {
		const kinds = deck.kinds.map((_, k) => k);
		kinds.sort((a, b) => keys[b]![key]! - keys[a]![key]! || keys[b]![0]! - keys[a]![0]! || a - b);
		return Int32Array.from(kinds.flatMap((k) => new Array<number>(deck.kinds[k]!.count).fill(k)));
	});
}

/** Keep what was just laid if it is better than the best. */
function offer(search: RollSearch, laid: Laid): boolean {
	const { best, skyline } = search;
	if (laid.area < 0 || laid.left > best.left) return false;
	const better =
		laid.left === 0
			? best.left > 0 || laid.length < best.length
			: laid.area > best.area || best.area < 0;
	if (!better) return false;
	const spots: DeckPlacement[] = [];
	for (let i = 0; i < skyline.laidCount; i++) {
		const kind = skyline.laidKind[i]!;
		spots.push({
			kind,
			orientation: skyline.laidOrientation[i]!,
			x: skyline.laidX[i]!,
			y: skyline.laidY[i]!,
		});
	}
	search.best = { spots, left: laid.left, area: laid.area, length: laid.length };
	return true;
}

function solved(search: RollSearch): boolean {
	return search.best.left === 0 && search.best.length <= search.bound;
}

function over(search: RollSearch): boolean {
	return spent(search) >= search.effort;
}

/** Halve the range between bound and best; a goal that cannot be met soon raises the lower end. */
function* halve(search: RollSearch): Generator<RollState, void, void> {
	let low = search.bound;
	while (!solved(search) && !over(search) && low < search.best.length - step(search)) {
		const middle = Math.floor((low + search.best.length) / 2 / search.unit) * search.unit;
		const goal = Math.max(search.bound, Math.min(middle, search.best.length - 1));
		const met = yield* attempt(search, goal, spent(search) + HALVING_SHARE * search.effort);
		if (!met) low = goal + search.unit;
	}
}

function step(search: RollSearch): number {
	return Math.max(search.unit, Math.round(search.bound * FINEST));
}

function* shorten(search: RollSearch): Generator<RollState, void, void> {
	while (!solved(search) && !over(search)) {
		const goal = Math.max(search.bound, search.best.length - step(search));
		if (!(yield* attempt(search, goal, search.effort))) return;
	}
}

/** Try to lay everything within a goal until `end` units are spent. True when it was met. */
function* attempt(
	search: RollSearch,
	goal: number,
	end: number,
): Generator<RollState, boolean, void> {
	const { skyline } = search;
	const until = Math.min(end, spent(search) + search.most);
	const wasLeft = search.best.left > 0;
	const starts = search.starts.map(({ order, mode }) => {
		const laid = skyline.lay(order, goal, mode, 0);
		const met = offer(search, laid) && laid.left === 0;
		return { order: order.slice(), mode, area: laid.area, met };
	});
	if (starts.some((start) => start.met)) return true;
	starts.sort((a, b) => b.area - a.area);
	for (let round = 0; spent(search) < until; round++) {
		for (const start of starts) {
			if (round > 0) kick(search, start, goal);
			const met = yield* improve(search, start, goal, until);
			if (met) return true;
			if (spent(search) >= until || (wasLeft && search.best.left === 0)) return false;
		}
	}
	return false;
}

interface Start {
	readonly order: Int32Array;
	readonly mode: Mode;
	area: number;
}

/**
 * Some blanks change places for better or worse, so that a start that has come to rest moves again.
 */
function kick(search: RollSearch, start: Start, goal: number): void {
	const n = start.order.length;
	const times = 2 + search.stream.int(Math.max(1, Math.ceil(n * KICK)));
	for (let k = 0; k < times; k++) change(start.order, search.stream);
	start.area = search.skyline.lay(start.order, goal, start.mode, 0).area;
}

function* improve(
	search: RollSearch,
	start: Start,
	goal: number,
	until: number,
): Generator<RollState, boolean, void> {
	const { skyline, stream } = search;
	const { order } = start;
	skyline.looks += order.length; // so that a start no change helps spends the budget all the same
	let idle = 0;
	while (idle < PATIENCE * order.length && spent(search) < until) {
		const move = change(order, stream);
		skyline.looks += 1;
		const laid = move === null ? null : skyline.lay(order, goal, start.mode, start.area);
		if (laid !== null && laid.left === 0) {
			offer(search, laid);
			return true;
		}
		idle += 1;
		if (laid !== null && laid.area >= start.area) {
			if (laid.area > start.area) idle = 0;
			start.area = laid.area;
			if (search.best.left > 0) offer(search, laid);
		} else if (move !== null) move();
		if (spent(search) - search.reported >= REPORT_EVERY) {
			search.reported = spent(search);
			yield state(search);
		}
	}
	return false;
}

/** Swap two blanks, or move one elsewhere. Returns how to undo it; null when the two are alike. */
function change(order: Int32Array, stream: Random): (() => void) | null {
	const a = stream.int(order.length);
	const b = stream.int(order.length);
	if (order[a] === order[b]) return null;
	if (stream.int(2) === 0) {
		swap(order, a, b);
		return () => swap(order, a, b);
	}
	shift(order, a, b);
	return () => shift(order, b, a);
}

function swap(order: Int32Array, a: number, b: number): void {
	const held = order[a]!;
	order[a] = order[b]!;
	order[b] = held;
}

function shift(order: Int32Array, from: number, to: number): void {
	const held = order[from]!;
	if (from < to) order.copyWithin(from, from + 1, to + 1);
	else order.copyWithin(to + 1, to, from);
	order[to] = held;
}
