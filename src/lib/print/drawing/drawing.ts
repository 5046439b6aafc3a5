/**
 * A drawing is plain data in millimetres on paper, y down, origin top left. Two pens turn it into
 * marks: print/svg and print/pdf. Whatever the screen shows is one of these, so screen and paper
 * cannot disagree.
 */
export type Ink =
	| 'ink'
	| 'pencil'
	| 'rule'
	| 'chalk'
	| 'warn'
	| 'wood'
	| 'cloth'
	| 'sheet'
	| 'sunk'
	| 'chalk-wash'
	| 'warn-wash';

/**
 * Line kinds of ISO 128-2: wide for visible outlines, narrow for dimensions and hatching, dashed
 * for hidden edges, chain for centre lines, phantom for neighbours.
 */
export type LineKind = 'wide' | 'narrow' | 'dashed' | 'chain' | 'phantom' | 'cut' | 'hair';

export type PathStep =
	| readonly ['M', number, number]
	| readonly ['L', number, number]
	/** Cubic: two control points, end. */
	| readonly ['C', number, number, number, number, number, number]
	| readonly ['Z'];

export interface PathMark {
	readonly kind: 'path';
	readonly steps: readonly PathStep[];
	readonly line?: LineKind;
	readonly ink?: Ink;
	readonly fill?: Ink;
	/** Even-odd fill, for outlines with holes. */
	readonly evenOdd?: boolean;
	/** What it is, for picking on screen: 'part:B1', 'cut:3'. */
	readonly of?: string;
}

export interface TextMark {
	readonly kind: 'text';
	readonly x: number;
	readonly y: number; // baseline
	readonly text: string;
	readonly size: number; // mm, cap height is about 0.7 of it
	readonly anchor?: 'start' | 'middle' | 'end';
	readonly turn?: number; // degrees, counter-clockwise as seen
	readonly weight?: 'regular' | 'semibold';
	readonly ink?: Ink;
	/** A halo of paper behind the letters, for text over a hatch. */
	readonly halo?: boolean;
	readonly of?: string;
}

/** A photograph, upright. */
export interface PhotoMark {
	readonly kind: 'photo';
	readonly x: number; // top left
	readonly y: number;
	readonly width: number;
	readonly height: number;
	/** A bare JPEG as base64, looked through when the job was read. */
	readonly jpeg: string;
	/** Of its bytes: the same picture is written once. */
	readonly hash: string;
	/** What it shows. */
	readonly shows: string;
	readonly of?: string;
}

export type Mark = PathMark | TextMark | PhotoMark;

export interface Drawing {
	readonly width: number;
	readonly height: number;
	/** What the drawing shows, for the page title, the SVG title and a screen reader. */
	readonly title: string;
	readonly marks: readonly Mark[];
	/** What kept it from being drawn, where a box that says so stands in its place. */
	readonly fault?: string;
}

/** A page is a drawing the size of the paper. */
export interface Page extends Drawing {
	readonly name: string; // page label: 'Sheet 1 of 2'
	/** Pages of one chapter stand together in the outline; the page's own name when absent. */
	readonly chapter?: string;
	/** Chapters that begin further down on it. */
	readonly further?: readonly string[];
}
