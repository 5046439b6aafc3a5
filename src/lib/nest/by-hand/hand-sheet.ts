import { nth, ticks, type Length } from '../../measure';
import type { Rect } from '../../geometry';
import { inflate } from '../inflated';
import {
	type Content,
	SawBench,
	pairOnSheet,
	cornersOff,
	trimCuts,
	bestPlan,
	worthKeeping,
	type SawRegion,
	slantedSides,
} from '../saw';
import type { Cut, Placed, RouterProblem, SawProblem, Sheet, SheetLayout } from '../types';
import { blocksOf, type HandBlock, type HandPiece } from './blocks';
import { HandParting, type Parted, type Uncut } from './regions';

export type HandProblem = SawProblem | RouterProblem;

/** A sheet laid by hand, and the rectangles of it that nothing lies on. */
export interface HandSheet {
	readonly layout: SheetLayout;
	readonly free: readonly Rect[];
}

/** Why the saw cannot make it: see {@link Uncut}, or it can but not within its limits. */
export type Refused = Uncut | { readonly why: 'limits' };

export const gapOf = (problem: HandProblem): Length =>
	'kerf' in problem ? problem.kerf : problem.bit;

/**
 * The layout of a sheet whose pieces lie inside it and apart. By saw with its cuts, or why there
 * are none; by router as it lies, with nothing free where no straight cut parts it.
 */
export function handSheet(
	problem: HandProblem,
	sheet: Sheet,
	laid: readonly HandPiece[],
): HandSheet | { readonly refused: Refused } {
	const kerf = gapOf(problem);
	const blocks = 'kerf' in problem ? blocksOf(laid, kerf) : laid.map(alone);
	const ways = waysOf(sheet, blocks, kerf);
	if (!('kerf' in problem)) return routed(problem, sheet, laid, ways);
	const regions = ways.flatMap((w) => ('region' in w ? [w.region] : []));
	const [way] = ways;
	if (regions.length === 0 && way && 'uncut' in way)
		return { refused: { ...way.uncut, of: way.uncut.of.flatMap((i) => nth(blocks, i).of) } };
	const best = bestPlan(regions, problem);
	if (!best) return { refused: { why: 'limits' } };
	return new HandCutting(problem, sheet, blocks, laid).cut(best.region);
}

const alone = (piece: HandPiece, i: number): HandBlock => ({ rect: piece, of: [i] });

function waysOf(sheet: Sheet, blocks: readonly HandBlock[], kerf: Length): Parted[] {
	const { left, right, bottom, top } = sheet.trim;
	const room = {
		x: left,
		y: bottom,
		w: inflate(ticks(sheet.length - left - right), kerf),
		h: inflate(ticks(sheet.width - bottom - top), kerf),
	};
	const parting = new HandParting(blocks, inflate(ticks(0), kerf));
	return [parting.part(room, 'x'), parting.part(room, 'y')];
}

/** Hands out the pieces of the regions as the saw comes to them. */
class HandCutting {
	readonly #placed: Placed[] = [];
	readonly #free: Rect[] = [];

	constructor(
		private readonly problem: SawProblem,
		private readonly sheet: Sheet,
		private readonly blocks: readonly HandBlock[],
		private readonly laid: readonly HandPiece[],
	) {}

	cut(region: SawRegion): HandSheet {
		const { sheet, problem } = this;
		const { cuts: trims, rest, kept } = trimCuts(sheet, problem);
		const bench = new SawBench(problem, (part, rect) => this.#content(part, rect));
		bench.cuts.push(...trims);
		bench.cutUp(region, rest.x, rest.y, kept);
		const { length, width } = sheet;
		const placed = this.#placed;
		const offcuts = this.#free.filter((rect) => isWorth(rect, problem));
		const cuts: readonly Cut[] = bench.cuts;
		const layout = { sheet: sheet.id, copy: 0, length, width, placed, cuts, offcuts };
		return { layout, free: this.#free };
	}

	#content(region: SawRegion, rect: Rect): Content {
		if (region.leaf >= 0) return this.#block(nth(this.blocks, region.leaf), rect);
		if (rect.length === 0 || rect.width === 0) return { kind: 'nothing' };
		this.#free.push(rect);
		return { kind: isWorth(rect, this.problem) ? 'offcut' : 'waste' };
	}

	#block({ of }: HandBlock, rect: Rect): Content {
		const one = nth(this.laid, of[0]);
		if (of.length === 2) {
			const laid = pairOnSheet([one, nth(this.laid, of[1])], rect, this.problem.kerf);
			if (!laid) throw new Error('bug: a pair of another size than its rectangle');
			this.#placed.push(...laid.placed);
			return { kind: 'tapered', slants: laid.slants };
		}
		const { piece, ...placed } = one;
		this.#placed.push(placed);
		const sides = slantedSides(piece);
		if (sides.length === 0) return { kind: 'piece', id: piece.id };
		return { kind: 'tapered', slants: cornersOff(piece, sides, rect, one.turn, null) };
	}
}

function isWorth({ length, width }: Rect, { keep }: HandProblem): boolean {
	return worthKeeping(ticks(length), ticks(width), keep);
}

function routed(
	problem: RouterProblem,
	sheet: Sheet,
	laid: readonly HandPiece[],
	ways: readonly Parted[],
): HandSheet {
	const way = ways.find((w) => 'region' in w);
	const at = { x: sheet.trim.left, y: sheet.trim.bottom };
	const free = way ? freeIn(way.region, at, problem.bit) : [];
	const { id, length, width } = sheet;
	const placed = laid.map(({ piece, ...p }) => (void piece, p));
	const offcuts = free.filter((rect) => isWorth(rect, problem));
	return { layout: { sheet: id, copy: 0, length, width, placed, cuts: [], offcuts }, free };
}

/** Where nothing lies, by the regions that straight cuts would make. */
function freeIn(r: SawRegion, at: { x: number; y: number }, bit: Length): Rect[] {
	if (r.leaf >= 0) return [];
	const rect = { ...at, length: r.w - bit, width: r.h - bit };
	if (r.axis === null) return rect.length > 0 && rect.width > 0 ? [rect] : [];
	let { x, y } = at;
	return r.parts.flatMap((part) => {
		const free = freeIn(part, { x, y }, bit);
		if (r.axis === 'x') x += part.w;
		else y += part.h;
		return free;
	});
}
