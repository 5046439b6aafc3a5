import type { Outline, Point } from '../../geometry';
import type { Length } from '../../measure';
import type { Bevel, Part } from '../part';
import type { OutlineForm } from './form';

/** A face of a part as it lies before you. */
export type PartFace = Part['face'];

/**
 * Something done to a part after the saw. Places are ticks to the right and up, from the lower left
 * corner of what lies before you.
 */
export type Operation =
	| { readonly kind: 'outline'; readonly form: OutlineForm }
	| { readonly kind: 'edge'; readonly edge: EdgeName; readonly line: CutLine }
	| BevelCut
	| RabbetCut
	| CutOut
	| DrillHoles
	| KnifeGroove
	| PlacingLine;

/** The side an edge lies on as its face is drawn, and the letter it shares with its neighbour. */
export interface EdgeName {
	readonly letter: string;
	readonly side: Bevel['side'];
}

export type CutLine = readonly [Point, Point];

export interface BevelCut {
	readonly kind: 'bevel';
	readonly edge: EdgeName;
	/** Degrees from square, and the turn of the mitre gauge; 0 for none. */
	readonly tilt: number;
	readonly mitre: number;
	/** The face that is longer here or has the sharp edge: it lies up. */
	readonly up: PartFace;
	/** Neither face is LONG: a sharp edge. */
	readonly sharp: boolean;
	/** Absent where only the part's own list of bevels is known. */
	readonly set: Fence | AlongLine | null;
}

/** From the fence to the blade at the table, the edge named lying at the fence. */
interface Fence {
	readonly by: 'fence';
	readonly distance: number;
	readonly against: EdgeName;
	/** The sharp edge of a bevel cut before lies on the table there. */
	readonly slips: boolean;
}

/** Its sharp edge on the face that lies up, as that face is seen. */
interface AlongLine {
	readonly by: 'line';
	readonly line: CutLine;
}

/** An outline as it is drawn, and how it is marked. */
export interface Marked {
	readonly outline: Outline;
	readonly form: OutlineForm;
}

export interface RabbetCut extends Marked {
	readonly kind: 'rabbet';
	readonly n: number;
	readonly depth: number;
}

/** A window, a cut-out, a seat or a slot. */
export interface CutOut extends Marked {
	readonly kind: 'cut';
	readonly n: number;
	readonly name: string;
	/** Null right through. */
	readonly depth: number | null;
}

/** Round holes alike, numbered from `n` on. */
export interface DrillHoles {
	readonly kind: 'holes';
	readonly n: number;
	readonly name: string;
	readonly diameter: number;
	readonly depth: number | null;
	/** How deep in words, where only what goes into it knows. */
	readonly deep?: string;
	readonly at: readonly Point[];
}

export interface KnifeGroove {
	readonly kind: 'groove';
	readonly offset: Length;
	readonly width: Length;
	readonly depth: Length;
	/** Both ends of each stretch that does not close on itself, on its middle line. */
	readonly ends: readonly CutLine[];
	/** What it stops at, in words. */
	readonly stops: readonly string[];
	/** Middle lines, for the drawing. */
	readonly runs: readonly (readonly Point[])[];
	/** Names of the windows it runs round as well as the edge. */
	readonly round: readonly string[];
}

/** Where something else is set. */
export interface PlacingLine extends Marked {
	readonly kind: 'place';
	readonly n: number;
	readonly name: string;
	/** Room round it that is to stay free. */
	readonly space?: Outline;
}
