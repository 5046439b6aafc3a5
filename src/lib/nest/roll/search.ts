import { random, type Random } from '../random';
import { raisedBound, rollBound } from './bound';
import type { RollDeck } from './kinds';
import { Skyline, type Laid, type Mode } from './skyline';
import type { Budget } from '../types';

/** Blanks looked at for one unit of work: measured, about 10 microseconds on a desk computer. */
const LOOKS_PER_UNIT = 400;
/** The least step between two goals, as a share of the bound, when the lengths of the blanks allow finer ones. */
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

/** A blank laid down: kind and lay in the deck, lower left corner. */
export interface DeckPlacement {
	readonly kind: number;
	readonly lay: number;
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
 * Shortest layout of the deck's rectangles: a first one from plain orders, then goals. A goal is a length a little
 * under the best; the order is changed two blanks at a time, keeping what lays no less area within the goal, until
 * everything lies within it.
 */
export function* searchRoll(deck: RollDeck, budget: Budget): Generator<RollState, RollState, void> {
	const desk = openDesk(deck, budget);
	if (desk.starts.length === 0) return state(desk);
	yield state(desk);
	if (desk.best.left === 0 && !solved(desk))
		desk.bound = raisedBound(deck, desk.bound, desk.best.length, desk.unit);
	if (desk.best.left > 0) yield* attempt(desk, deck.limit, desk.effort);
	if (desk.best.left === 0) {
		yield* halve(desk);
		yield* shorten(desk);
	}
	return state(desk);
}

function spent(desk: RollSearch): number {
	return Math.ceil(desk.skyline.looks / LOOKS_PER_UNIT);
}

function state(desk: RollSearch): RollState {
	return { best: desk.best, bound: desk.bound, effort: spent(desk) };
}

function openDesk(deck: RollDeck, budget: Budget): RollSearch {
	const orders = plainOrders(deck);
	const blanks = orders[0]!.length;
	const bound = rollBound(
		deck,
		deck.kinds.map((kind) => kind.count),
	);
	const desk: RollSearch = {
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
	for (const start of desk.starts) {
		offer(desk, desk.skyline.lay(start.order, deck.limit, start.mode, 0));
		if (solved(desk) || (spent(desk) > budget.effort && desk.best.area >= 0)) break;
	}
	return desk;
}

/** Units that it takes to lay every order of so many blanks several times over. */
function mostFor(blanks: number): number {
	let orders = 2; // one a mode
	for (let n = 2; n <= blanks; n++) orders *= n;
	return 1 + Math.ceil((EACH_ORDER * orders * blanks * blanks) / LOOKS_PER_UNIT);
}

/** The greatest length of which all lengths along the roll are multiples: no goal in between need be tried. */
function commonMeasure(deck: RollDeck): number {
	const lays = deck.kinds.flatMap((kind) => kind.lays);
	return lays.reduce((g, lay) => common(common(g, lay.tall), lay.reach), 0);
}

function common(a: number, b: number): number {
	return b === 0 ? a : common(b, a % b);
}

/** Orders that make good first layouts: by area, width, length, their sum, the longer side; falling. */
function plainOrders(deck: RollDeck): Int32Array[] {
	const keys = deck.kinds.map(({ lays }) => {
		const { wide, reach } = lays[0] ?? { wide: 0, reach: 0 };
		return [wide * reach, wide, reach, wide + reach, Math.max(wide, reach)];
	});
	return [0, 1, 2, 3, 4].map((key) => {
		const kinds = deck.kinds.map((_, k) => k);
		kinds.sort((a, b) => keys[b]![key]! - keys[a]![key]! || keys[b]![0]! - keys[a]![0]! || a - b);
		return Int32Array.from(kinds.flatMap((k) => new Array<number>(deck.kinds[k]!.count).fill(k)));
	});
}

/** Keep what was just laid if it is better than the best. */
function offer(desk: RollSearch, laid: Laid): boolean {
	const { best, skyline } = desk;
	if (laid.area < 0 || laid.left > best.left) return false;
	const better =
		laid.left === 0
			? best.left > 0 || laid.length < best.length
			: laid.area > best.area || best.area < 0;
	if (!better) return false;
	const spots: DeckPlacement[] = [];
	for (let i = 0; i < skyline.laidCount; i++) {
		const kind = skyline.laidKind[i]!;
		spots.push({ kind, lay: skyline.laidLay[i]!, x: skyline.laidX[i]!, y: skyline.laidY[i]! });
	}
	desk.best = { spots, left: laid.left, area: laid.area, length: laid.length };
	return true;
}

function solved(desk: RollSearch): boolean {
	return desk.best.left === 0 && desk.best.length <= desk.bound;
}

function over(desk: RollSearch): boolean {
	return spent(desk) >= desk.effort;
}

/** Halve the range between bound and best; a goal that cannot be met soon raises the lower end. */
function* halve(desk: RollSearch): Generator<RollState, void, void> {
	let low = desk.bound;
	while (!solved(desk) && !over(desk) && low < desk.best.length - step(desk)) {
		const middle = Math.floor((low + desk.best.length) / 2 / desk.unit) * desk.unit;
		const goal = Math.max(desk.bound, Math.min(middle, desk.best.length - 1));
		const met = yield* attempt(desk, goal, spent(desk) + HALVING_SHARE * desk.effort);
		if (!met) low = goal + desk.unit;
	}
}

function step(desk: RollSearch): number {
	return Math.max(desk.unit, Math.round(desk.bound * FINEST));
}

function* shorten(desk: RollSearch): Generator<RollState, void, void> {
	while (!solved(desk) && !over(desk)) {
		const goal = Math.max(desk.bound, desk.best.length - step(desk));
		if (!(yield* attempt(desk, goal, desk.effort))) return;
	}
}

/** Try to lay everything within a goal until `end` units are spent. True when it was met. */
function* attempt(
	desk: RollSearch,
	goal: number,
	end: number,
): Generator<RollState, boolean, void> {
	const { skyline } = desk;
	const until = Math.min(end, spent(desk) + desk.most);
	const wasLeft = desk.best.left > 0;
	const starts = desk.starts.map(({ order, mode }) => {
		const laid = skyline.lay(order, goal, mode, 0);
		const met = offer(desk, laid) && laid.left === 0;
		return { order: order.slice(), mode, area: laid.area, met };
	});
	if (starts.some((start) => start.met)) return true;
	starts.sort((a, b) => b.area - a.area);
	for (let round = 0; spent(desk) < until; round++) {
		for (const start of starts) {
			if (round > 0) kick(desk, start, goal);
			const met = yield* improve(desk, start, goal, until);
			if (met) return true;
			if (spent(desk) >= until || (wasLeft && desk.best.left === 0)) return false;
		}
	}
	return false;
}

interface Start {
	readonly order: Int32Array;
	readonly mode: Mode;
	area: number;
}

/** Some blanks change places for better or worse, so that a start that has come to rest moves again. */
function kick(desk: RollSearch, start: Start, goal: number): void {
	const n = start.order.length;
	const times = 2 + desk.stream.int(Math.max(1, Math.ceil(n * KICK)));
	for (let k = 0; k < times; k++) change(start.order, desk.stream);
	start.area = desk.skyline.lay(start.order, goal, start.mode, 0).area;
}

function* improve(
	desk: RollSearch,
	start: Start,
	goal: number,
	until: number,
): Generator<RollState, boolean, void> {
	const { skyline, stream } = desk;
	const { order } = start;
	skyline.looks += order.length; // so that a start no change helps spends the budget all the same
	let idle = 0;
	while (idle < PATIENCE * order.length && spent(desk) < until) {
		const move = change(order, stream);
		skyline.looks += 1;
		const laid = move === null ? null : skyline.lay(order, goal, start.mode, start.area);
		if (laid !== null && laid.left === 0) {
			offer(desk, laid);
			return true;
		}
		idle += 1;
		if (laid !== null && laid.area >= start.area) {
			if (laid.area > start.area) idle = 0;
			start.area = laid.area;
			if (desk.best.left > 0) offer(desk, laid);
		} else if (move !== null) move();
		if (spent(desk) - desk.reported >= REPORT_EVERY) {
			desk.reported = spent(desk);
			yield state(desk);
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
