import { nth } from '../../measure';
import {
	fillColumns,
	type Strip,
	columnOf,
	GapCheck,
	SpanTables,
	firstOrders,
	readyShapes,
	type FreeKind,
	type FreePiece,
	type FreeShape,
} from '../shapes';
import { deflate } from '../inflated';
import { random } from '../random';
import {
	isCheaper,
	isLesser,
	type RouterModel,
	type RouterPlan,
	type RouterSheet,
	type RouterSpot,
} from './model';
import type { Budget, Piece } from '../types';

/** Work of the column filler for one unit, as in the roll search. */
const STRETCHES_PER_UNIT = 400;

interface Improved {
	readonly best: RouterPlan;
	readonly effort: number;
}

/** Does the plan gain from the true shapes: outlines, or holes that may be used? */
export function hasShapes(model: RouterModel): boolean {
	return model.types.some(
		({ piece }) => piece.outline !== undefined || holesOf(model, piece).length > 0,
	);
}

function holesOf(model: RouterModel, piece: Piece): Piece['holes'] & {} {
	return model.problem.useHoles ? (piece.holes ?? []) : [];
}

/**
 * Fill sheets one after another with true outlines, one bit apart, small pieces in the holes of
 * large ones where that is allowed; in several orders, then in orders changed at random, sheets of
 * each kind to buy first. Every plan that becomes the best was checked on the true outlines.
 */
export function* fillOutlines(
	model: RouterModel,
	first: RouterPlan,
	budget: Budget,
): Generator<Improved, Improved, void> {
	const filling = openFilling(model);
	const { kinds } = filling;
	const stream = random(budget.seed);
	let best = first;
	let spent = 0;
	let order = nth(firstOrders(kinds), 0);
	for (const tried of [...firstOrders(kinds), null]) {
		for (let again = true; again; again = tried === null && spent < budget.effort) {
			const next = tried ?? changed(order, stream.int(order.length), stream.int(order.length));
			const supply = supplyOf(model, stream.int(model.kinds.length));
			const filled = fillSheets(filling, next, supply);
			spent += filled.work;
			const better = isCheaper(model, filled.plan, best);
			if (better && isSound(filling, filled.plan)) {
				best = filled.plan;
				order = next;
			} else if (tried === null && !isCheaper(model, best, filled.plan)) order = next;
			yield { best, effort: spent };
		}
		if (spent >= budget.effort) break;
	}
	return { best, effort: spent };
}

/**
 * What every filling of sheets needs: the shapes, what is known of them, and the last look at what
 * was laid.
 */
interface Filling {
	readonly model: RouterModel;
	readonly kinds: readonly FreeKind[];
	readonly spans: SpanTables;
	readonly check: GapCheck;
}

function openFilling(model: RouterModel): Filling {
	const { bit } = model.problem;
	const pieces = model.types.map((type) => freePiece(model, type.piece));
	return {
		model,
		kinds: readyShapes(pieces, bit),
		spans: new SpanTables(),
		check: new GapCheck(pieces, bit),
	};
}

function freePiece(model: RouterModel, piece: Piece): FreePiece {
	const { id, length, width, count, outline } = piece;
	const turns = { any: [0, 90, 180, 270], half: [0, 180], none: [0] } as const;
	const plain = {
		id,
		length,
		width,
		count,
		turns: turns[piece.turns],
		holes: holesOf(model, piece),
	};
	return outline === undefined ? plain : { ...plain, outline };
}

function changed(order: readonly number[], a: number, b: number): number[] {
	const next = [...order];
	next.splice(b, 0, ...next.splice(a, 1));
	return next;
}

/** What is owned in its order, then the kinds to buy with one of them first. */
function supplyOf(model: RouterModel, first: number): number[] {
	const all = model.kinds.map((_, k) => k);
	const owned = all.filter((k) => nth(model.kinds, k).sheet.price === 0);
	const bought = all.filter((k) => nth(model.kinds, k).sheet.price > 0);
	return [...owned, ...bought.filter((k) => k === first), ...bought.filter((k) => k !== first)];
}

interface FilledSheets {
	readonly plan: RouterPlan;
	readonly work: number;
}

function fillSheets(
	filling: Filling,
	order: readonly number[],
	supply: readonly number[],
): FilledSheets {
	const { model } = filling;
	const sheets: RouterSheet[] = [];
	let rest = [...order];
	let work = 1;
	for (const kind of supply) {
		for (let n = 0; n < nth(model.kinds, kind).count && rest.length > 0; n++) {
			const filled = fillOne(filling, rest, kind);
			work += filled.work;
			if (filled.sheet.spots.length === 0) break;
			const lesser = exchanged(filling, filled, sheets);
			work += lesser.work;
			sheets.push(lesser.sheet);
			rest = filled.left;
		}
	}
	const left = model.types.map(() => 0);
	for (const type of rest) left[type] = nth(left, type) + 1;
	return { plan: { sheets, left }, work };
}

interface FilledSheet {
	readonly sheet: RouterSheet;
	readonly laid: readonly number[];
	readonly left: number[];
	readonly work: number;
}

function fillOne(
	{ model, kinds, spans }: Filling,
	order: readonly number[],
	kind: number,
): FilledSheet {
	const strip = stripOf(model, kind);
	const filled = fillColumns(kinds, order, strip, columnOf(strip), spans);
	const spots = filled.spots.map(({ kind: type, shape, x, y }) => spotOf(model, type, shape, x, y));
	return {
		sheet: { kind, spots },
		laid: filled.spots.map((spot) => spot.kind),
		left: [...filled.left],
		work: Math.ceil(filled.work / STRETCHES_PER_UNIT),
	};
}

function stripOf(model: RouterModel, kind: number): Strip {
	const { length, width } = nth(model.kinds, kind);
	const { bit } = model.problem;
	return { width: deflate(width, bit), limit: deflate(length, bit) };
}

function spotOf(
	model: RouterModel,
	type: number,
	shape: FreeShape,
	x: number,
	y: number,
): RouterSpot {
	const { orientations } = nth(model.types, type);
	const orientation = orientations.findIndex(
		(l) => l.length === shape.length && l.width === shape.width,
	);
	return { type, orientation, x, y, turn: shape.turn };
}

/** The last sheet filled is exchanged for the least kind in stock that takes the same pieces. */
function exchanged(
	filling: Filling,
	filled: FilledSheet,
	sheets: readonly RouterSheet[],
): Pick<FilledSheet, 'sheet' | 'work'> {
	const { model } = filling;
	let best = filled.sheet;
	let work = 0;
	if (filled.left.length > 0) return { sheet: best, work };
	model.kinds.forEach((kind, k) => {
		const used = sheets.filter((sheet) => sheet.kind === k).length;
		if (used >= kind.count || !isLesser(kind, nth(model.kinds, best.kind))) return;
		const tried = fillOne(filling, filled.laid, k);
		work += tried.work;
		if (tried.left.length === 0) best = tried.sheet;
	});
	return { sheet: best, work };
}

/** The search's own end check, on the true outlines. */
function isSound({ model, check }: Filling, plan: RouterPlan): boolean {
	return plan.sheets.every(({ spots }) =>
		check.passes(
			spots.map(({ type, orientation, x, y, turn }) => {
				const lies = nth(nth(model.types, type).orientations, orientation);
				return { piece: type, turn: turn ?? lies.turn, x, y };
			}),
		),
	);
}
