import type { PathMark } from '../drawing';

/** By its middle from the template's upper left corner, mm. */
export interface StruckCircle {
	readonly x: number;
	readonly y: number;
	readonly across: number;
}

/** Something drawn full size: marks in millimetres from its upper left corner. */
export interface Template {
	readonly id: string;
	/** What its pieces are called by: the part's or the blank's own. */
	readonly mark: string;
	readonly name: string;
	readonly width: number;
	readonly height: number;
	/** What the template shows: 'front, seen from outside'. */
	readonly seen: string;
	readonly marks: readonly PathMark[];
	/** Those of the marks that a pattern is needed for where they are no long straight run. */
	readonly traced: readonly PathMark[];
	/** Struck with a compass, not traced. */
	readonly circles: readonly StruckCircle[];
	/** What each kind of line is. */
	readonly legend: string;
	/** Which way up in the vehicle lies, degrees to the left from the right; null: any way. */
	readonly top: number | null;
}
