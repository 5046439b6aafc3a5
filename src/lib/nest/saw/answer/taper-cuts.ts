import type { Rect } from '../../../geometry';
import { cutDirection, type OpenGives, type Slant } from './cuts';
import type { SlantedSide, PairPoint } from '../pairs';
import type { Gives, Piece, Placed } from '../../types';

/*
 * The slanted cuts on tapered pieces: what falls off at the corners of each, marked out on the
 * sheet and cut last, when the rectangle is small enough to be guided along a line.
 */

/**
 * Brings a point of what is `size` large, turned to the left by `turn`, to its place on the sheet.
 */
export function spotOn(
	at: PairPoint,
	turn: Placed['turn'],
	size: { readonly length: number; readonly width: number },
): (p: PairPoint) => PairPoint {
	const { length, width } = size;
	const turned = ({ x, y }: PairPoint): readonly [number, number] => {
		if (turn === 90) return [width - y, x];
		if (turn === 180) return [length - x, width - y];
		return turn === 270 ? [y, length - x] : [x, y];
	};
	return (p) => {
		const [x, y] = turned(p);
		return { x: at.x + x, y: at.y + y };
	};
}

/**
 * Cuts that take the corners off a piece in its rectangle, one after the other; `of` is the strip
 * that gave it, if any.
 */
export function cornersOff(
	piece: Piece,
	sides: readonly SlantedSide[],
	rect: Rect,
	turn: Placed['turn'],
	of: OpenGives | null,
): Slant[] {
	const spot = spotOn(rect, turn, piece);
	let board = of;
	return sides.map((side, i) => {
		const [from, to, corner] = [spot(side.from), spot(side.to), spot(side.corner)];
		const waste: Gives = { kind: 'waste', rect: around([from, to, corner]) };
		const last = i === sides.length - 1;
		const kept: OpenGives = last ? { kind: 'piece', rect, id: piece.id } : { kind: 'strip', rect };
		const gives: Slant['gives'] = isBefore(corner, from, to) ? [waste, kept] : [kept, waste];
		const slant = { of: board, from, to, gives };
		board = kept;
		return slant;
	});
}

function around(spots: readonly PairPoint[]): Rect {
	const [xs, ys] = [spots.map((s) => s.x), spots.map((s) => s.y)];
	const [x, y] = [Math.min(...xs), Math.min(...ys)];
	return { x, y, length: Math.max(...xs) - x, width: Math.max(...ys) - y };
}

/**
 * Does a corner lie to the left of a slanted cut, or below one that runs rather along the sheet?
 */
function isBefore(corner: PairPoint, from: PairPoint, to: PairPoint): boolean {
	return cutDirection(from, to) === 'x'
		? 2 * corner.y < from.y + to.y
		: 2 * corner.x < from.x + to.x;
}
