import type { Bevel, FaceSize, Part } from '../../design';
import type { Figures } from './figures';

/*
 * Words for a board whose faces lie one beside the other, because two of its bevels lean the same
 * way: it has no LONG face, and what is cut from the sheet is a blank larger than either.
 */

type Pair = readonly [number, number];

/** Both faces and the offset, in the two directions they are printed in. Ticks. */
export interface ShiftedFaces {
	readonly outside: Pair;
	readonly inside: Pair;
	readonly offset: Pair;
}

/** 'both faces 640 × 371.9, 7.1 apart'. */
export function facesText({ outside, inside, offset }: ShiftedFaces, figures: Figures): string {
	const out = figures.size(...outside);
	const into = figures.size(...inside);
	const by = offset
		.filter((l) => l > 0)
		.map((l) => figures.bench(l))
		.join(' and ');
	return out === into
		? `both faces ${out}, ${by} apart`
		: `outside face ${out}, inside face ${into}, the blank ${by} longer`;
}

/** The same of a part, length first; empty for one that has a LONG face. */
export function partFacesText(part: Part, figures: Figures): string {
	if (part.shift === undefined) return '';
	const pair = ({ length, width }: FaceSize): Pair => [length, width];
	const { outside, inside, offset } = part.shift;
	const pairs = { outside: pair(outside), inside: pair(inside), offset: pair(offset) };
	return facesText(pairs, figures);
}

/** Does a bevel lean the same way as the one across from it, so that neither face is LONG there? */
export function leansAlike(part: Pick<Part, 'shift'>, side: Bevel['side']): boolean {
	const level = side === 'left' || side === 'right';
	return (part.shift?.offset[level ? 'length' : 'width'] ?? 0) > 0;
}

/** At a bevel of a part: 'LONG outside', or where neither face is, 'sharp edge outside'. */
export function longText(part: Pick<Part, 'shift'>, bevel: Pick<Bevel, 'side' | 'long'>): string {
	return `${leansAlike(part, bevel.side) ? 'sharp edge' : 'LONG'} ${bevel.long}`;
}

/** What the sizes in a list of parts are. */
export function sizesNote(parts: readonly Part[]): string {
	const blanks = parts.some((p) => p.shift) ? ', or of the blank round both faces' : '';
	return `sizes of the LONG face${blanks}`;
}
