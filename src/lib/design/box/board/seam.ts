import type { Point3 } from '../solid';

/** Where two boards are glued together. */
export interface Seam {
	/** The letter both edges carry. */
	readonly letter: string;
	readonly between: readonly [string, string];
	/**
	 * 'butt', 'mitre' or 'rabbet' for what holds the box shut; 'face' for a layer on a layer
	 * and for braces in each other's slots, 'strip' for a cleat.
	 */
	readonly kind: 'butt' | 'mitre' | 'rabbet' | 'face' | 'strip';
	/** Length along the seam, ticks. */
	readonly length: number;
	/** Glued area, square ticks. */
	readonly area: number;
	/** Its middle, in the box. */
	readonly at: Point3;
	/** True when it shuts air in, so that it gets a bead of sealant. */
	readonly seals: boolean;
}

/** Letters on a shop floor leave out I and O, which read as figures. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** A, B ... Z, AA, AB ... */
export function seamLetter(n: number): string {
	const last = LETTERS.charAt(n % LETTERS.length);
	return n < LETTERS.length ? last : seamLetter(Math.floor(n / LETTERS.length) - 1) + last;
}
