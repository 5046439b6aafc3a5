import { nth, ticks } from '../../../measure';
import type { Rect } from '../../../geometry';
import { cutPlan, worthKeeping, type SawRegion } from '../cutting';
import { SawBench, type Content } from './cuts';
import type { LayoutSnapshot } from '../search';
import { slantedSides } from '../pairs';
import { pairOnSheet } from './pair-on-sheet';
import type { SawModel } from '../model';
import { typeOf, type SlackTree } from '../tree';
import { cornersOff } from './taper-cuts';
import { trimCuts } from './trims';
import type { Piece, Placed, SheetLayout, SheetsAnswer } from '../../types';

/** Hands out the pieces of each type, copy by copy, in the order of their ids. */
class CopyCounter {
	private readonly given: number[];

	constructor(private readonly model: SawModel) {
		this.given = model.types.map(() => 0);
	}

	next(type: number): { piece: Piece; copy: number } {
		let n = nth(this.given, type);
		this.given[type] = n + 1;
		for (const piece of nth(this.model.types, type).pieces) {
			if (n < piece.count) return { piece, copy: n };
			n -= piece.count;
		}
		throw new Error('bug: more pieces laid than asked for');
	}

	/** What is left of each piece. */
	rest(type: number): { piece: Piece; count: number }[] {
		let given = nth(this.given, type);
		return nth(this.model.types, type)
			.pieces.map((piece) => {
				const taken = Math.min(given, piece.count);
				given -= taken;
				return { piece, count: piece.count - taken };
			})
			.filter((r) => r.count > 0);
	}
}

/** What one sheet turns into: places and cuts, as they are made. */
class SheetMaker {
	readonly placed: Placed[] = [];
	readonly offcuts: Rect[] = [];

	constructor(
		private readonly model: SawModel,
		private readonly counter: CopyCounter,
	) {}

	content(region: SawRegion, rect: Rect): Content {
		if (region.leaf >= 0) {
			const type = typeOf(region.leaf);
			return nth(this.model.types, type).member >= 0
				? this.pair(type, rect)
				: this.single(type, rect);
		}
		if (rect.length === 0 || rect.width === 0) return { kind: 'nothing' };
		if (!worthKeeping(ticks(rect.length), ticks(rect.width), this.model.problem.keep))
			return { kind: 'waste' };
		this.offcuts.push(rect);
		return { kind: 'offcut' };
	}

	private single(type: number, rect: Rect): Content {
		const { piece, copy } = this.counter.next(type);
		const turn = rect.length === piece.length && rect.width === piece.width ? 0 : 90;
		this.placed.push({ ...rect, id: piece.id, copy, turn });
		const sides = slantedSides(piece);
		if (sides.length === 0) return { kind: 'piece', id: piece.id };
		return { kind: 'tapered', slants: cornersOff(piece, sides, rect, turn, null) };
	}

	private pair(type: number, rect: Rect): Content {
		const { member } = nth(this.model.types, type);
		const pieces = [this.counter.next(member), this.counter.next(member)] as const;
		const laid = pairOnSheet(pieces, rect, this.model.kerf);
		if (!laid) throw new Error('bug: a pair of another size than its rectangle');
		this.placed.push(...laid.placed);
		return { kind: 'tapered', slants: laid.slants };
	}
}

function layoutOf(
	model: SawModel,
	counter: CopyCounter,
	tree: SlackTree,
	copy: number,
): SheetLayout {
	const { problem } = model;
	const kind = nth(model.kinds, tree.kind);
	const plan = cutPlan(tree, problem);
	if (!plan) throw new Error('bug: a sheet that the saw cannot cut');
	const { cuts: trims, rest, kept } = trimCuts(kind.sheet, problem);
	const maker = new SheetMaker(model, counter);
	const bench = new SawBench(problem, (region, rect) => maker.content(region, rect));
	bench.cuts.push(...trims);
	bench.cutUp(plan.region, rest.x, rest.y, kept);
	return {
		sheet: kind.sheet.id,
		copy,
		length: kind.sheet.length,
		width: kind.sheet.width,
		placed: maker.placed,
		cuts: bench.cuts,
		offcuts: maker.offcuts,
	};
}

/** Equal sheets next to each other, fullest first, kinds in the order in which they are used up. */
function inOrder(model: SawModel, trees: readonly SlackTree[]): SlackTree[] {
	const mark = (tree: SlackTree): string => JSON.stringify(cutPlan(tree, model.problem)?.region);
	return trees
		.map((tree) => ({ tree, mark: mark(tree) }))
		.sort(
			(a, b) =>
				nth(model.kinds, a.tree.kind).sheet.rank - nth(model.kinds, b.tree.kind).sheet.rank ||
				a.tree.kind - b.tree.kind ||
				b.tree.area - a.tree.area ||
				(a.mark < b.mark ? -1 : Number(a.mark > b.mark)),
		)
		.map((t) => t.tree);
}

function whyOut(model: SawModel, piece: Piece): string {
	const { stages, fenceLimit, narrowestRip } = model.problem;
	const finite = model.kinds.every((k) => k.count !== Infinity);
	const limits = stages !== null || fenceLimit !== null || narrowestRip !== null;
	if (finite)
		return `The sheets in the stock are used up: no room was found on them for piece ${piece.id}.`;
	if (limits)
		return `Piece ${piece.id} could not be cut within the limits of the saw: its stages, its fence or its narrowest safe rip.`;
	return `No room was found for piece ${piece.id} on the sheets of a kind large enough for it.`;
}

function moneyOf(model: SawModel, kept: LayoutSnapshot): number {
	return kept.trees.reduce((sum, tree) => sum + nth(model.kinds, tree.kind).sheet.price, 0);
}

/** Is this layout as cheap as any can be? Where nothing has to be paid, what counts is sheets. */
export function meetsBound(
	model: SawModel,
	kept: LayoutSnapshot,
	bound: SheetsAnswer['bound'],
): boolean {
	const cost = moneyOf(model, kept);
	return cost === bound.cost && (cost > 0 || kept.trees.length === bound.sheets);
}

/**
 * The bound once a proof has shown that nothing is cheaper than this layout. Of sheets it speaks
 * where they are all of one kind, or all free; else a dear sheet might do the work of two, and what
 * was known of sheets before still holds.
 */
export function boundMet(
	model: SawModel,
	kept: LayoutSnapshot,
	known: SheetsAnswer['bound'],
): SheetsAnswer['bound'] {
	const cost = moneyOf(model, kept);
	const alike = model.kinds.length === 1 || model.kinds.every((k) => k.sheet.price === 0);
	return { sheets: alike ? kept.trees.length : known.sheets, cost };
}

/** A layout of the search in the terms of the shop. `bound` is filled in by the caller. */
export function sawAnswer(
	model: SawModel,
	kept: LayoutSnapshot,
	bound: SheetsAnswer['bound'],
	effort: number,
): SheetsAnswer {
	const counter = new CopyCounter(model);
	const copies = model.kinds.map(() => 0);
	const nextCopy = (kind: number): number => {
		const copy = nth(copies, kind);
		copies[kind] = copy + 1;
		return copy;
	};
	const layouts = inOrder(model, kept.trees).map((tree) =>
		layoutOf(model, counter, tree, nextCopy(tree.kind)),
	);
	const unplaced = [
		...model.impossible.map(({ piece, why }) => ({ id: piece.id, count: piece.count, why })),
		...model.types.flatMap((t, type) =>
			t.member >= 0
				? []
				: counter
						.rest(type)
						.map(({ piece, count }) => ({ id: piece.id, count, why: whyOut(model, piece) })),
		),
	];
	const cost = moneyOf(model, kept);
	const proven = unplaced.length === 0 && meetsBound(model, kept, bound);
	return { layouts, unplaced, cost, bound, proven, effort };
}
