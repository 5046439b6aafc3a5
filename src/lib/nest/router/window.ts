import { random, type Random } from '../random';
import { inflate } from '../inflated';
import { type RollDeck, Skyline } from '../roll';
import {
	fits,
	isCheaper,
	isLesser,
	planCost,
	type RouterModel,
	type RouterPlan,
	type RouterSheet,
	type RouterSpot,
} from './model';
import type { Budget } from '../types';

/** Blanks looked at for one unit of work, as in the roll search. */
const LOOKS_PER_UNIT = 400;
/**
 * Steps without gain before the goal is started again from the best plan with another sheet left
 * out.
 */
const PATIENCE = 4000;
/**
 * Late acceptance: a step is judged against the cost this many steps ago (E.K. Burke, Y. Bykov,
 * 2017).
 */
const HISTORY = 100;
/** What ordering and noting one piece costs beside the looks: measured. */
const LOOKS_A_PIECE = 30;
const REPORT_EVERY = 1000;

interface Improved {
	readonly best: RouterPlan;
	readonly effort: number;
}

interface RouterSearch {
	readonly model: RouterModel;
	// one per kind of sheet
	readonly tables: readonly { readonly deck: RollDeck; readonly skyline: Skyline }[];
	readonly keys: readonly Float64Array[]; // sizes of the types by which they may be ordered
	readonly stream: Random;
	readonly effort: number;
	looks: number;
	reported: number;
}

/**
 * Improve a plan: leave out one sheet, then lay the pieces of one or two sheets and what is left
 * over again in another order, keeping what leaves less over, until nothing is left over. Yields
 * the work done and the best plan so far.
 */
export function* improvePlan(
	model: RouterModel,
	first: RouterPlan,
	goal: { readonly sheets: number; readonly cost: number },
	budget: Budget,
): Generator<Improved, Improved, void> {
	const search = openSearch(model, budget);
	let best = first;
	while (effort(search) < budget.effort && best.sheets.length > 0 && !reached(model, best, goal)) {
		const steps = refill(search, best);
		let step = steps.next();
		while (step.done !== true) {
			yield { best, effort: effort(search) };
			step = steps.next();
		}
		if (step.value !== null && isCheaper(model, step.value, best)) best = step.value;
	}
	return { best, effort: effort(search) };
}

function reached(
	model: RouterModel,
	plan: RouterPlan,
	goal: { readonly sheets: number; readonly cost: number },
): boolean {
	if (plan.left.some((n) => n > 0)) return false;
	return plan.sheets.length <= goal.sheets && planCost(model, plan) <= goal.cost;
}

function openSearch(model: RouterModel, budget: Budget): RouterSearch {
	const pieces = model.types.reduce((sum, type) => sum + type.piece.count, 0);
	const tables = model.kinds.map((_, kind) => {
		const deck = deckOf(model, kind);
		return { deck, skyline: new Skyline(deck, pieces) };
	});
	return {
		model,
		tables,
		keys: sizeKeys(model),
		stream: random(budget.seed),
		effort: budget.effort,
		looks: 0,
		reported: 0,
	};
}

function effort(search: RouterSearch): number {
	const looks = search.tables.reduce((sum, table) => sum + table.skyline.looks, search.looks);
	return Math.ceil(looks / LOOKS_PER_UNIT);
}

/** A sheet as a stretch of roll: the skyline lays pieces along it. */
function deckOf(model: RouterModel, kind: number): RollDeck {
	const sheet = model.kinds[kind]!;
	const { bit } = model.problem;
	return {
		width: sheet.width,
		gap: bit,
		limit: sheet.length,
		pattern: { repeat: 0, across: 0 },
		refused: [],
		kinds: model.types.map((type) => ({
			id: type.piece.id,
			count: type.piece.count,
			orientations: type.orientations.flatMap((o) => {
				const reach = inflate(o.length, bit);
				const sizes = { length: o.length, width: o.width, wide: inflate(o.width, bit) };
				return fits(o, sheet, bit) ? [{ turn: o.turn, ...sizes, reach, tall: reach }] : [];
			}),
		})),
	};
}

/**
 * The goal: one sheet left out or made a cheaper one; or, when stock is short, the same sheets with
 * less left over.
 */
function nextGoal(
	search: RouterSearch,
	from: RouterPlan,
): { sheets: RouterSheet[]; left: number[] } {
	const over = from.left.flatMap((n, t) => new Array<number>(n).fill(t));
	if (over.length > 0) return { sheets: [...from.sheets], left: over };
	const out = search.stream.int(from.sheets.length);
	const sheets = from.sheets.filter((_, i) => i !== out);
	const instead = cheaperKind(search, from, out);
	if (instead !== null) sheets.push({ kind: instead, spots: [] });
	return { sheets, left: from.sheets[out]!.spots.map((spot) => spot.type) };
}

/** A plan that meets the next goal; null when none was found in time. */
function* refill(search: RouterSearch, from: RouterPlan): Generator<void, RouterPlan | null, void> {
	const { model } = search;
	const goal = nextGoal(search, from);
	const { sheets } = goal;
	const over = from.left.reduce((sum, n, t) => sum + n * model.types[t]!.area, 0);
	const enough = Math.max(0, over - 1);
	let { left } = goal;
	let cost = worth(model, left);
	let least = cost;
	const history = new Array<number>(HISTORY).fill(cost);
	for (let step = 0, idle = 0; idle < PATIENCE && effort(search) < search.effort; step++, idle++) {
		const tried = relay(search, sheets, left);
		const next = worth(model, tried.left);
		if (next <= cost || next <= history[step % HISTORY]!) {
			tried.sheets.forEach(([i, sheet]) => (sheets[i] = sheet));
			left = tried.left;
			cost = next;
		}
		history[step % HISTORY] = cost;
		if (cost < least) idle = 0;
		least = Math.min(least, cost);
		if (cost <= enough) return planOf(model, sheets, left);
		if (effort(search) - search.reported >= REPORT_EVERY) {
			search.reported = effort(search);
			yield;
		}
	}
	return null;
}

/**
 * A kind that costs less than the sheet left out and is still in stock, by chance; null for none at
 * all.
 */
function cheaperKind(search: RouterSearch, from: RouterPlan, out: number): number | null {
	const { kinds } = search.model;
	const was = from.sheets[out]!.kind;
	const choice = kinds.flatMap((kind, k) => {
		const used = from.sheets.filter((sheet) => sheet.kind === k).length;
		return used < kind.count && isLesser(kind, kinds[was]!) ? [k] : [];
	});
	const pick = search.stream.int(choice.length + 1);
	return choice[pick] ?? null;
}

function planOf(
	model: RouterModel,
	sheets: readonly RouterSheet[],
	left: readonly number[],
): RouterPlan {
	const counts = model.types.map(() => 0);
	for (const t of left) counts[t]! += 1;
	return { sheets: sheets.filter((sheet) => sheet.spots.length > 0), left: counts };
}

function worth(model: RouterModel, left: readonly number[]): number {
	return left.reduce((sum, t) => sum + model.types[t]!.area, 0);
}

interface Relaid {
	readonly sheets: readonly (readonly [number, RouterSheet])[];
	/** Types left over, one entry a copy. */
	readonly left: number[];
}

/** Lay one or two sheets and what is left over again. */
function relay(
	search: RouterSearch,
	sheets: readonly RouterSheet[],
	left: readonly number[],
): Relaid {
	const { stream } = search;
	if (sheets.length === 0) return { sheets: [], left: [...left] };
	const first = stream.int(sheets.length);
	const second = stream.int(sheets.length);
	const chosen = first === second || stream.int(3) === 0 ? [first] : [first, second];
	const relaid: [number, RouterSheet][] = [];
	let pool = [...left];
	for (const i of chosen) for (const spot of sheets[i]!.spots) pool.push(spot.type);
	search.looks += LOOKS_A_PIECE * (pool.length + 1);
	pool = shuffled(search, pool);
	for (const i of chosen) {
		const { kind } = sheets[i]!;
		const spots = layOne(search, kind, Int32Array.from(pool));
		pool = withoutLaid(pool, spots);
		relaid.push([i, { kind, spots }]);
	}
	return { sheets: relaid, left: pool };
}

function withoutLaid(pool: readonly number[], spots: readonly RouterSpot[]): number[] {
	const laid = new Map<number, number>();
	for (const { type } of spots) laid.set(type, (laid.get(type) ?? 0) + 1);
	return pool.filter((t) => {
		const n = laid.get(t) ?? 0;
		if (n > 0) laid.set(t, n - 1);
		return n === 0;
	});
}

function layOne(search: RouterSearch, kind: number, order: Int32Array): RouterSpot[] {
	const { deck, skyline } = search.tables[kind]!;
	skyline.lay(order, deck.limit, search.stream.int(2) === 0 ? 1 : 2, 0);
	const spots: RouterSpot[] = [];
	for (let n = 0; n < skyline.laidCount; n++) {
		const type = skyline.laidKind[n]!;
		const own = search.model.types[type]!.orientations;
		const { turn } = deck.kinds[type]!.orientations[skyline.laidOrientation[n]!]!;
		const orientation = own[0]!.turn === turn ? 0 : 1;
		spots.push({ type, orientation, x: skyline.laidX[n]!, y: skyline.laidY[n]! });
	}
	return spots;
}

/** The pool by a falling size with some noise: which size, and how much noise, by chance. */
function shuffled(search: RouterSearch, pool: readonly number[]): number[] {
	const { keys, stream } = search;
	const sizes = keys[stream.int(keys.length)]!;
	const noise = [0, 0.1, 0.4, 1][stream.int(4)]!;
	const noisy = pool.map((t) => ({ t, key: sizes[t]! * (1 + noise * (stream.unit() - 0.5)) }));
	noisy.sort((a, b) => b.key - a.key || a.t - b.t);
	return noisy.map(({ t }) => t);
}

function sizeKeys(model: RouterModel): Float64Array[] {
	const by = (key: (type: RouterModel['types'][number]) => number): Float64Array =>
		Float64Array.from(model.types, key);
	return [
		by(({ area }) => area),
		by(({ piece }) => Math.max(piece.length, piece.width)),
		by(({ piece }) => piece.length + piece.width),
		by(({ piece }) => piece.width),
		by(({ piece }) => piece.length),
	];
}
