import type { Outline } from '../geometry';
import type { Length } from '../measure';

/** One bevelled edge of a part. */
export interface Bevel {
	/** The edge's letter; neighbours in an assembly carry the same one. */
	readonly edge: string;
	/** Which side of the part's rectangle it lies on. */
	readonly side: 'left' | 'right' | 'bottom' | 'top';
	/** Saw tilt from square, degrees, always positive. */
	readonly tilt: number;
	/** Mitre-gauge turn from square for a compound cut, degrees. */
	readonly mitre?: number;
	/** Which face is the longer one at this edge. */
	readonly long: 'outside' | 'inside';
}

/**
 * A piece of board at its true size. `length` runs along the grain. Sizes are those of the LONG
 * face, which is what has to be cut from the sheet; `short` gives the other face where an edge is
 * bevelled.
 */
export interface Part {
	/** Unique in the job, stable while the design is: 'bench-box.front'. */
	readonly id: string;
	/** The short mark written on it: 'B1'. */
	readonly label: string;
	readonly name: string;
	/** Box, panel or loose part it belongs to, by id. */
	readonly owner: string;
	readonly material: string;
	readonly thickness: Length; // measured
	readonly count: number;
	readonly length: Length;
	readonly width: Length;
	readonly short?: { readonly length: Length; readonly width: Length };
	readonly outline?: Outline; // inside length x width, corner at 0,0; absent: the rectangle
	readonly holes: readonly Outline[];
	/** 'length': the grain runs along the length; 'any': it does not matter. */
	readonly grain: 'length' | 'any';
	readonly bevels: readonly Bevel[];
	/** The face the drawing looks at. */
	readonly face: 'outside' | 'inside' | 'front' | 'back';
	readonly show: boolean; // is that face seen in the finished work?
	/**
	 * Metres of edge cut with a router rather than on the saw, for labour (cut-outs, curves,
	 * grooves).
	 */
	readonly routed: Length;
	readonly mass: number; // kg, one piece
	readonly notes: readonly string[];
}
