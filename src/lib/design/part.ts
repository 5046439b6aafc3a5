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

/** Size of a face or of what is cut: `length` runs along the grain of the part. */
export interface FaceSize {
	readonly length: Length;
	readonly width: Length;
}

/**
 * Faces that lie one beside the other because two bevels lean the same way. Then neither is what is
 * cut from the sheet: that is the rectangle round both, longer than the longer face by `offset`,
 * which is 0 in a direction where one face reaches over the other.
 */
export interface FaceShift {
	readonly outside: FaceSize;
	readonly inside: FaceSize;
	readonly offset: FaceSize;
}

/**
 * What is cut into a face of a part besides its outline and its holes right through, in the frame
 * of the part as its face is looked at. A groove is told by its middle line.
 */
export interface FaceWork {
	readonly kind: 'groove' | 'pocket' | 'rabbet' | 'drill';
	readonly name: string;
	/** The face it is cut from: the one the drawing of the part looks at, or the one behind it. */
	readonly from: 'near' | 'far';
	readonly line: Outline;
	readonly closed: boolean;
	/** Of a groove. */
	readonly width?: Length;
	/** From its face; absent where what is screwed or clipped in decides. */
	readonly depth?: Length;
}

/**
 * A piece of board at its true size. `length` runs along the grain. Sizes are those of
 * what has to be cut from the sheet: the LONG face, or with a `shift` the rectangle round both
 * faces; `short` gives the shorter face where an edge is bevelled.
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
	readonly short?: FaceSize;
	readonly shift?: FaceShift; // absent where one face is as long as what is cut
	readonly outline?: Outline; // inside length x width, corner at 0,0; absent: the rectangle
	readonly holes: readonly Outline[];
	/** Absent where nothing is cut into its faces. */
	readonly faceWork?: readonly FaceWork[];
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
