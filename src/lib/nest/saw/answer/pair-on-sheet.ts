import type { Rect } from '../../../geometry';
import { meeting, slantedSides, taperOf } from '../pairs';
import type { OpenGives, Slant } from './cuts';
import { cornersOff, spotOn } from './taper-cuts';
import type { Piece, Placed } from '../../types';

/** A piece and which of its count it is. */
export interface Numbered {
	readonly piece: Piece;
	readonly copy: number;
}

/** Two tapered pieces in one rectangle: where each lies, and the slanted cuts that part them. */
interface LaidPair {
	readonly placed: readonly Placed[];
	readonly slants: readonly Slant[];
}

/**
 * Two alike head to tail in a rectangle of the sheet; null where they make no pair of that size.
 */
export function pairOnSheet(
	pieces: readonly [Numbered, Numbered],
	rect: Rect,
	kerf: number,
): LaidPair | null {
	const { piece } = pieces[0];
	const pair = taperOf(piece)?.pair(piece, kerf);
	const meet = meeting(piece);
	if (!pair || !meet) return null;
	const quarter = rect.length !== pair.length || rect.width !== pair.width;
	if (quarter && (rect.length !== pair.width || rect.width !== pair.length)) return null;
	const spot = spotOn(rect, quarter ? 90 : 0, pair);
	const outer = slantedSides(piece).filter((side) => side.end === (meet.turned ? 1 : 0));
	const placed: Placed[] = [];
	const slants: Slant[] = [];
	const lay = (i: 0 | 1, a: number, b: number): OpenGives => {
		const corner = spot({ x: a, y: quarter ? b + piece.width : b });
		const [length, width] = quarter ? [piece.width, piece.length] : [piece.length, piece.width];
		const turn = turnBy((meet.turned ? 180 : 0) + 180 * i, quarter ? 90 : 0);
		const { piece: own, copy } = pieces[i];
		const box: Rect = { ...corner, length, width };
		placed.push({ ...box, id: own.id, copy, turn });
		if (outer.length === 0) return { kind: 'piece', rect: box, id: own.id };
		const strip: OpenGives = { kind: 'strip', rect: box };
		slants.push(...cornersOff(own, outer, box, turn, strip));
		return strip;
	};
	const gives = [lay(0, 0, 0), lay(1, pair.second.x, pair.second.y)] as const;
	const parting: Slant = { of: null, from: spot(pair.from), to: spot(pair.to), gives };
	return { placed, slants: [parting, ...slants] };
}

const turnBy = (a: number, b: number): Placed['turn'] => ((a + b) % 360) as Placed['turn'];
