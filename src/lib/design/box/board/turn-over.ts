import { nth } from '../../../measure';
import { type Outline, mirrored, moved, turned } from '../../../geometry';
import type { Material } from '../../../job';
import type { FaceWork, Part } from '../../part';
import type { Board } from './board';

/*
 * The two ends of a box are mirror images of each other. Seen from one side of the box both are the
 * same shape, so one of them is listed from its inside: then two tapered ends can be cut head to
 * tail from one rectangle, and one pattern does for both. Their edges are square, so turning one
 * over changes nothing but which way it is looked at.
 */

/**
 * Faces that look alike, so that it does not matter which one is cut from above. Common practice,
 * no source.
 */
const ALIKE: readonly Material['kind'][] = ['mdf', 'particleboard'];
/** Both outlines were rounded to the grid, each from its own corner. */
const ROUNDING = 2;

/**
 * The parts, with one end turned over where that makes both ends one shape. The right one, or the
 * left one if it must be.
 */
export function withTurnedEnd(parts: readonly Part[], boards: readonly Board[]): Part[] {
	const end = (key: string): { part: Part; board: Board } | null => {
		const i = boards.findIndex((b) => b.key === key && b.role === 'end');
		return i < 0 ? null : { part: nth(parts, i), board: nth(boards, i) };
	};
	const [left, right] = [end('left'), end('right')];
	if (!left || !right) return [...parts];
	const [over, stays] = mayTurn(right) ? [right, left] : [left, right];
	const part = mayTurn(over) ? turnedOver(over.part, over.board, stays.part) : null;
	return parts.map((p) => (part && p === over.part ? part : p));
}

/** A face that will be seen has to lie upward on the saw; a recess is cut from outside. */
function mayTurn({ part, board }: { part: Part; board: Board }): boolean {
	const faces = !part.show || ALIKE.includes(board.material.kind);
	return faces && part.bevels.length === 0 && board.holes.every((h) => h.recess === null);
}

/**
 * An end as it is seen from inside, if that is the shape of the other end and another one than from
 * outside.
 */
function turnedOver(part: Part, board: Board, other: Part): Part | null {
	if (!part.outline || !other.outline || part.material !== other.material) return null;
	if (part.length !== other.length || part.width !== other.width) return null;
	if (same(part.outline, other.outline)) return null;
	const flip = flipOf(part, board.grain === 'across');
	if (!same(flip(part.outline), other.outline)) return null;
	return {
		...part,
		outline: other.outline,
		holes: part.holes.map(flip),
		...(part.faceWork ? { faceWork: part.faceWork.map((w) => seenFromBehind(w, flip)) } : {}),
		face: 'inside',
		show: false,
		notes: [...part.notes, `Seen from inside: turned over it has the shape of ${other.label}.`],
	};
}

function seenFromBehind(work: FaceWork, flip: (outline: Outline) => Outline): FaceWork {
	return { ...work, line: flip(work.line), from: work.from === 'near' ? 'far' : 'near' };
}

/**
 * Mirrors what lies on a part left to right as the board stands; that is top to bottom where the
 * grain runs up.
 */
function flipOf(part: Part, upright: boolean): (outline: Outline) => Outline {
	if (!upright) return (o) => mirrored(o, part.length / 2);
	return (o) => moved(turned(mirrored(o), 180), 0, part.width);
}

function same(a: Outline, b: Outline): boolean {
	const near = (p: Outline[number], q: Outline[number]): boolean =>
		Math.max(Math.abs(p.x - q.x), Math.abs(p.y - q.y)) <= ROUNDING;
	return a.length === b.length && a.every((p) => b.some((q) => near(p, q)));
}
