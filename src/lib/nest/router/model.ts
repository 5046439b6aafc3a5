import { nth, ticks, type Length } from '../../measure';
import { inflate, type Actual, type Inflated } from '../inflated';
import type { Piece, RouterProblem, Sheet } from '../types';

/*
 * The router problem as its searches see it. The bit takes its width between two pieces and nowhere
 * else: a piece that lies at the edge of the usable sheet keeps that edge (with no trim it is the
 * factory edge; with a trim the bit runs in the trim). So every piece and every sheet is made one
 * bit longer and wider, and from here on there is no bit.
 */

export interface RouterOrientation {
	readonly turn: 0 | 90;
	readonly length: Actual; // as laid
	readonly width: Actual;
}

export interface RouterType {
	readonly piece: Piece;
	readonly orientations: readonly RouterOrientation[];
	readonly area: number; // with the bit
}

export interface RouterKind {
	readonly sheet: Sheet;
	readonly length: Inflated; // usable
	readonly width: Inflated;
	readonly count: number; // Infinity: as many as needed
}

export interface RouterModel {
	readonly problem: RouterProblem;
	readonly types: readonly RouterType[];
	readonly kinds: readonly RouterKind[]; // in the order in which they are taken
	readonly refused: readonly {
		readonly id: string;
		readonly count: number;
		readonly why: string;
	}[];
}

/** A piece laid on a sheet; x, y from the corner of the usable sheet. */
export interface RouterSpot {
	readonly type: number;
	readonly orientation: number;
	readonly x: number;
	readonly y: number;
	/** The turn of an outline; absent for a rectangle, whose orientation says enough. */
	readonly turn?: 0 | 90 | 180 | 270;
}

export interface RouterSheet {
	readonly kind: number;
	readonly spots: readonly RouterSpot[];
}

/** Open sheets, and how many of each type are on none of them. */
export interface RouterPlan {
	readonly sheets: readonly RouterSheet[];
	readonly left: readonly number[];
}

export function readyRouter(problem: RouterProblem): RouterModel {
	const kinds = problem.sheets
		.map((sheet) => kindOf(sheet, problem.bit))
		.filter((kind) => kind.length > problem.bit && kind.width > problem.bit && kind.count > 0)
		.sort((a, b) => takenFirst(a, b));
	const types: RouterType[] = [];
	const refused: { id: string; count: number; why: string }[] = [];
	for (const piece of problem.pieces) {
		if (piece.count <= 0) continue;
		const orientations = orientationsOf(piece).filter((o) =>
			kinds.some((kind) => fits(o, kind, problem.bit)),
		);
		const area = inflate(piece.length, problem.bit) * inflate(piece.width, problem.bit);
		if (orientations.length > 0) types.push({ piece, orientations, area });
		else
			refused.push({ id: piece.id, count: piece.count, why: refusal(piece, kinds, problem.bit) });
	}
	return { problem, types, kinds, refused };
}

function kindOf(sheet: Sheet, bit: Length): RouterKind {
	const { trim } = sheet;
	return {
		sheet,
		length: inflate(ticks(sheet.length - trim.left - trim.right), bit),
		width: inflate(ticks(sheet.width - trim.bottom - trim.top), bit),
		count: sheet.count ?? Infinity,
	};
}

/** Owned before bought, by rank; then the dearest last; then larger before smaller. */
function takenFirst(a: RouterKind, b: RouterKind): number {
	const area = (kind: RouterKind): number => kind.length * kind.width;
	return (
		Math.sign(a.sheet.price) - Math.sign(b.sheet.price) ||
		a.sheet.rank - b.sheet.rank ||
		a.sheet.price / area(a) - b.sheet.price / area(b) ||
		area(b) - area(a)
	);
}

function orientationsOf(piece: Piece): RouterOrientation[] {
	const plain: RouterOrientation = { turn: 0, length: piece.length, width: piece.width };
	if (piece.turns !== 'any' || piece.length === piece.width) return [plain];
	return [plain, { turn: 90, length: piece.width, width: piece.length }];
}

export function fits(orientation: RouterOrientation, kind: RouterKind, bit: Length): boolean {
	return (
		inflate(orientation.length, bit) <= kind.length && inflate(orientation.width, bit) <= kind.width
	);
}

function refusal(piece: Piece, kinds: readonly RouterKind[], bit: Length): string {
	const quarter: RouterOrientation = { turn: 90, length: piece.width, width: piece.length };
	if (kinds.length === 0) return 'There is no sheet to lay it on.';
	if (kinds.some((kind) => fits(quarter, kind, bit)))
		return 'It would fit only turned by a quarter, and its grain does not allow that.';
	return 'It is larger than every sheet less its trim.';
}

/**
 * Is a sheet of kind `a` better spent than one of kind `b`: cheaper, or owned rather than bought,
 * or smaller?
 */
export function isLesser(a: RouterKind, b: RouterKind): boolean {
	const price = a.sheet.price - b.sheet.price;
	const rank = a.sheet.rank - b.sheet.rank;
	return (price || rank || a.length * a.width - b.length * b.width) < 0;
}

/**
 * Money first; then as little owned board as can be, offcuts not counted; then the fewest sheets.
 */
export function isCheaper(model: RouterModel, a: RouterPlan, b: RouterPlan): boolean {
	const other = figures(model, b);
	const more = figures(model, a).map((n, i) => n - nth(other, i));
	return (more.find((n) => n !== 0) ?? 0) < 0;
}

function figures(model: RouterModel, plan: RouterPlan): number[] {
	const left = plan.left.reduce((sum, n, t) => sum + n * nth(model.types, t).area, 0);
	let cost = 0;
	let board = 0;
	for (const { kind } of plan.sheets) {
		const { sheet, length, width } = nth(model.kinds, kind);
		cost += sheet.price;
		if (sheet.rank > 0) board += length * width;
	}
	return [left, cost, board, plan.sheets.length];
}

export function planCost(model: RouterModel, plan: RouterPlan): number {
	return plan.sheets.reduce((sum, { kind }) => sum + nth(model.kinds, kind).sheet.price, 0);
}

/** How many of each type lie on some sheets. */
export function laidOn(model: RouterModel, sheets: readonly RouterSheet[]): number[] {
	const counts = model.types.map(() => 0);
	for (const sheet of sheets)
		for (const { type } of sheet.spots) counts[type] = nth(counts, type) + 1;
	return counts;
}
