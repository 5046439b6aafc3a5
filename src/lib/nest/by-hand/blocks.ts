import { nth, type Length } from '../../measure';
import type { Rect } from '../../geometry';
import { pairOnSheet, taperOf } from '../saw';
import type { Piece, Placed } from '../types';

/** A piece where a hand has laid it: measured as {@link Placed}, with what it is. */
export interface HandPiece extends Placed {
	readonly piece: Piece;
}

/**
 * What a straight cut goes round as one: a piece in its rectangle, or two tapered ones that share
 * one. `of`: places among the pieces laid.
 */
export interface HandBlock {
	readonly rect: Rect;
	readonly of: readonly [number] | readonly [number, number];
}

/** The pieces of a sheet as blocks; tapered ones head to tail, as the search lays them, are one. */
export function blocksOf(laid: readonly HandPiece[], kerf: Length): HandBlock[] {
	const taken = new Set<number>();
	const blocks: HandBlock[] = [];
	laid.forEach((one, i) => {
		if (taken.has(i)) return;
		const j = laid.findIndex((other, at) => at > i && !taken.has(at) && pairs(one, other, kerf));
		taken.add(i);
		if (j < 0) return void blocks.push({ rect: one, of: [i] });
		taken.add(j);
		const isFirst = pairedAs(one, nth(laid, j), kerf);
		blocks.push({ rect: around(one, nth(laid, j)), of: isFirst ? [i, j] : [j, i] });
	});
	return blocks;
}

const pairs = (a: HandPiece, b: HandPiece, kerf: Length): boolean =>
	lieNear(a, b, kerf) && (pairedAs(a, b, kerf) || pairedAs(b, a, kerf));

/** Do they lie as the first and the second of a pair in the rectangle round both? */
function pairedAs(first: HandPiece, second: HandPiece, kerf: Length): boolean {
	if (!alike(first.piece, second.piece)) return false;
	const laid = pairOnSheet([first, second], around(first, second), kerf);
	const expected = laid?.placed ?? [];
	return expected.length === 2 && lies(first, nth(expected, 0)) && lies(second, nth(expected, 1));
}

const alike = (a: Piece, b: Piece): boolean =>
	a.length === b.length && a.width === b.width && taperOf(a)?.key === taperOf(b)?.key;

const lies = (a: Placed, b: Placed): boolean => a.x === b.x && a.y === b.y && a.turn === b.turn;

/** Nearer than a blade, along and across; tapered ones may be and still be parted by a slant. */
const lieNear = (a: Rect, b: Rect, gap: Length): boolean =>
	a.x < b.x + b.length + gap &&
	b.x < a.x + a.length + gap &&
	a.y < b.y + b.width + gap &&
	b.y < a.y + a.width + gap;

function around(a: Rect, b: Rect): Rect {
	const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
	return {
		x,
		y,
		length: Math.max(a.x + a.length, b.x + b.length) - x,
		width: Math.max(a.y + a.width, b.y + b.width) - y,
	};
}

/** A piece as large as it lies once it is turned. */
export function laidAt(
	piece: Piece,
	at: Pick<Placed, 'x' | 'y' | 'turn'>,
	copy: number,
): HandPiece {
	const quarter = at.turn % 180 !== 0;
	const [length, width] = quarter ? [piece.width, piece.length] : [piece.length, piece.width];
	const { x, y, turn } = at;
	return { id: piece.id, copy, x, y, turn, length, width, piece };
}
