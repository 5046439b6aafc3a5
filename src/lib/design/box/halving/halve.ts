import { area, boundsOfPoints, common, type Outline, without } from '../../../geometry';
import { mm, TICKS_PER_MM } from '../../../measure';
import type { Board, Hole } from '../board';
import { apart, type Point3 } from '../solid';
import {
	crossingPair,
	type CrossingPair,
	type Crossed,
	bandOnGrid,
	sharedStretches,
	type LineStretch,
	stretchesOf,
	TOUCH,
	woodIn,
} from './crossing-plates';

/*
 * Braces that cross are halved over each other: one slides on to the other along the line they
 * cross on. So one gives up its wood up to the middle of the crossing and the other what lies past
 * it, windows giving nothing; else two frames would be links of a chain.
 */

/** Why two braces that cross are left as they are. */
export type Unhalved = 'not square' | 'ends in it' | 'slots meet' | 'locked';

interface Halved {
	readonly axis: keyof Point3;
	/** The one that slides on from the far end of the line, open at its near end. */
	readonly over: Board;
	readonly under: Board;
}

/**
 * Cuts the slots of all braces that cross, in the order of the boards, `fit` wider than the other
 * board is thick; those that cannot be are told by `say` and left whole.
 */
export function halve(
	boards: readonly Board[],
	fit: number,
	say: (a: Board, b: Board, why: Unhalved) => void,
): void {
	const whole = boards.map((board) => ({ ...board, holes: [...board.holes] }));
	const done: Halved[] = [];
	boards.forEach((a, i) => {
		boards.slice(i + 1).forEach((b, k) => {
			const [p, q] = [whole[i], whole[i + 1 + k]];
			if (!p || !q || apart(a.solid, b.solid)) return;
			const why = halvePair([p, q], [a, b], fit, done);
			if (why) say(a, b, why);
		});
	});
}

/** Cuts one pair, looked at before any was cut; why not, or null when it is done or need not be. */
function halvePair(
	whole: readonly [Board, Board],
	boards: readonly [Board, Board],
	fit: number,
	done: Halved[],
): Unhalved | null {
	const crossing = crossingPair(...whole);
	if (!crossing) return 'not square';
	const met = meetings(crossing);
	if (met.length === 0) return null;
	if (!crossing.pair.every((one) => passes(one, met))) return 'ends in it';
	const ends = met.flat();
	const middle = Math.round((Math.min(...ends) + Math.max(...ends)) / 2);
	const ways = waysToCut(crossing, boards, { met, middle, fit });
	const square = ways.filter((w) => w.square);
	if (square.length === 0) return 'not square';
	const free = square.filter((w) => slides(w.halved, done) && w.cuts.every(staysWhole));
	if (free.length === 0) return 'locked';
	const way = free.find((w) => w.cuts.every(meetsNoSlot));
	if (!way) return 'slots meet';
	for (const { board, holes } of way.cuts) board.holes.push(...holes);
	done.push(way.halved);
	return null;
}

const EVERYWHERE: LineStretch = [-Infinity, Infinity];

const woodOnLine = (one: Crossed, band: Crossed['band'], within: LineStretch): Outline[] =>
	([0, 1] as const).flatMap((face) => woodIn(one, face, band, within));

/** Where on the line both have wood. */
function meetings({ pair: [a, b] }: CrossingPair): LineStretch[] {
	const on = (one: Crossed): LineStretch[] => stretchesOf(woodOnLine(one, one.band, EVERYWHERE));
	return sharedStretches(on(a), on(b));
}

/** Does a board reach right through the other wherever they meet? */
function passes(one: Crossed, met: readonly LineStretch[]): boolean {
	return met.every((stretch) => {
		const y = woodOnLine(one, one.band, stretch).flatMap((o) => o.map((p) => p.y));
		return Math.min(...y) - one.band[0] < TOUCH && one.band[1] - Math.max(...y) < TOUCH;
	});
}

interface Meeting {
	readonly met: readonly LineStretch[];
	readonly middle: number;
	readonly fit: number;
}

/**
 * How far a board is cut beyond the crossing, to either end of the line: to its edge, unless the
 * other one finds room between that wood and the crossing to slide out of both slots.
 */
function cutFrom(
	one: Crossed,
	other: Crossed,
	met: readonly LineStretch[],
	middle: number,
): LineStretch {
	const [own, its] = [one, other].map((c) => stretchesOf(woodOnLine(c, c.band, EVERYWHERE))) as [
		LineStretch[],
		LineStretch[],
	];
	const [low, high] = [Math.min(...met.flat()), Math.max(...met.flat())];
	const slide = middle - low;
	const before = own.filter((s) => s[0] < low - TOUCH).map((s) => Math.min(s[1], low));
	const after = own.filter((s) => s[1] > high + TOUCH).map((s) => Math.max(s[0], high));
	const [least, most] = [Math.max(...before), Math.min(...after)];
	return [
		Math.min(...its.flat()) - slide >= least ? (least + low) / 2 : -Infinity,
		Math.max(...its.flat()) + slide <= most ? (most + high) / 2 : Infinity,
	];
}

interface Cut {
	readonly board: Board;
	readonly holes: readonly Hole[];
}

interface Way {
	readonly halved: Halved;
	readonly cuts: readonly Cut[];
	/** Are the edges square where it is cut? */
	readonly square: boolean;
	readonly taken: number;
}

/** Both ways to halve a pair, the one that takes less wood first. */
function waysToCut(
	{ axis, pair }: CrossingPair,
	boards: readonly [Board, Board],
	{ met, middle, fit }: Meeting,
): Way[] {
	// Frames across the width are open in front, and what lies between them at the back: then a
	// whole grid of braces slides together.
	const first = rankOf(boards[0]) <= rankOf(boards[1]) ? 0 : 1;
	const ways = [first, 1 - first].map((over): Way => {
		const sides = ([0, 1] as const).map((k) => {
			const [one, other] = [pair[k], pair[k === 0 ? 1 : 0]];
			const [least, most] = cutFrom(one, other, met, middle);
			const side =
				k === over ? { end: 'low' as const, to: least } : { end: 'high' as const, to: most };
			return cutOf(one, boards[k], boards[k === 0 ? 1 : 0], { axis, fit, middle, ...side });
		});
		const [a, b] = boards;
		return {
			halved: over === 0 ? { axis, over: a, under: b } : { axis, over: b, under: a },
			cuts: sides.map((s) => s.cut),
			square: sides.every((s) => s.square),
			taken: sides.reduce((sum, s) => sum + s.taken, 0),
		};
	});
	return ways.sort((p, q) => (Math.abs(p.taken - q.taken) < ALIKE ? 0 : p.taken - q.taken));
}

/** Areas that differ by less are one, square ticks. */
const ALIKE = mm(10) ** 2;

/** Across the width, then the height, then the depth. */
const rankOf = ({ frame: { n } }: Board): number =>
	[n.x, n.z, n.y].findIndex((c) => Math.abs(c) > 0.5);

interface CutAsk {
	readonly axis: keyof Point3;
	readonly fit: number;
	readonly middle: number;
	/** Is it cut before the middle of the crossing, or past it; and how far from there. */
	readonly end: 'low' | 'high';
	readonly to: number;
}

/** The slots in one of the two. */
function cutOf(
	one: Crossed,
	board: Board,
	other: Board,
	{ axis, fit, middle, end, to }: CutAsk,
): { cut: Cut; square: boolean; taken: number } {
	const within = end === 'low' ? ([to, middle] as const) : ([middle, to] as const);
	const band = [one.band[0] - fit / 2, one.band[1] + fit / 2] as const;
	const [near, far] = ([0, 1] as const).map((face) => woodIn(one, face, band, within)) as [
		Outline[],
		Outline[],
	];
	const size = (list: readonly Outline[]): number =>
		list.reduce((sum, o) => sum + Math.abs(area(o)), 0);
	const [low, high] = bandOnGrid(band);
	const wide = high - low;
	const holes = near.map((outline) => slot(one, outline, { other, axis, end, wide, middle }));
	return {
		cut: { board, holes },
		// A bevel leaves more on one face than on the other; rounding leaves a tick at each end.
		square: Math.abs(size(near) - size(far)) <= 4 * wide,
		taken: size(near),
	};
}

const FROM = {
	x: { low: 'left', high: 'right' },
	y: { low: 'front', high: 'back' },
	z: { low: 'bottom', high: 'top' },
} as const;

interface SlotAsk {
	readonly other: Board;
	readonly axis: keyof Point3;
	readonly end: 'low' | 'high';
	readonly wide: number;
	readonly middle: number;
}

function slot(one: Crossed, outline: Outline, { other, axis, end, wide, middle }: SlotAsk): Hole {
	const [from, to] = stretchesOf([outline])[0] ?? [0, 0];
	const points = outline.map(one.home);
	const { x, y, length, width } = boundsOfPoints(points);
	const blind = end === 'low' ? to >= middle - 1 : from <= middle + 1;
	return {
		outline: turnedRight(points),
		of: 'halving',
		name: `slot over ${other.name}`,
		recess: null,
		centre: { x: x + length / 2, y: y + width / 2 },
		size: [length, width],
		halving: { over: other.key, from: FROM[axis][end], wide, deep: to - from, through: !blind },
	};
}

/** Counter-clockwise, whichever way it was looked at. */
const turnedRight = (o: Outline): Outline => (area(o) < 0 ? [...o].reverse() : o);

/** Do new slots keep off those a board has already? Two that run into each other hold nothing. */
function meetsNoSlot({ board, holes }: Cut): boolean {
	const cut = board.holes.filter((h) => h.halving).map((h) => h.outline);
	const shared = holes.flatMap((h) => common([h.outline], cut));
	return shared.every((r) => Math.abs(area(r.outline)) <= TICKS_PER_MM ** 2);
}

/** Is a board still one piece with these slots? A frame cut through twice is two. */
function staysWhole({ board, holes }: Cut): boolean {
	const face = board.solid.outside.map((p) => {
		const { at, u, v } = board.frame;
		const d = { x: p.x - at.x, y: p.y - at.y, z: p.z - at.z };
		const along = (axis: Point3): number => Math.round(d.x * axis.x + d.y * axis.y + d.z * axis.z);
		return { x: along(u), y: along(v) };
	});
	const gone = [...board.holes, ...holes].map((h) =>
		h.outline.map((c) => ({ x: Math.round(c.x), y: Math.round(c.y) })),
	);
	const left = without([face], gone).filter((r) => Math.abs(area(r.outline)) > TICKS_PER_MM ** 2);
	return left.length === 1;
}

/**
 * Can the two slide together when the others are there? Braces held to each other already can only
 * slide along the line they slid on, and none may have to go on both before and after another.
 */
function slides({ axis, over, under }: Halved, done: readonly Halved[]): boolean {
	const group = heldTo(over, done);
	if (!group.has(under)) return true;
	const own = done.filter((h) => group.has(h.over));
	return own.every((h) => h.axis === axis) && !goesBefore(over, under, own);
}

/** All that is held to a board, however far about, and itself. */
function heldTo(board: Board, done: readonly Halved[]): Set<Board> {
	const group = new Set([board]);
	for (const one of group)
		for (const h of done) {
			if (h.over === one) group.add(h.under);
			if (h.under === one) group.add(h.over);
		}
	return group;
}

/** Is `first` under something, step by step, that ends over with `last`? */
function goesBefore(first: Board, last: Board, done: readonly Halved[]): boolean {
	const above = new Set([first]);
	for (const one of above) for (const h of done) if (h.under === one) above.add(h.over);
	return above.has(last);
}
