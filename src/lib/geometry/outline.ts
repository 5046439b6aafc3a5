/**
 * A point in ticks (see measure/length). Points of job data sit on the grid; points on the way
 * through a formula may be fractions of a tick and are snapped once, by the room's own functions.
 */
export interface Point {
	readonly x: number;
	readonly y: number;
}

/**
 * A corner of an outline and the edge that leaves it. `bulge` is tan(angle / 4) of the arc to the
 * next corner, positive when the arc turns left (counter-clockwise), 0 or absent for a straight
 * edge: the convention of the open drawing exchange format, which keeps an arc an arc through every
 * move, turn and mirror.
 */
export interface Corner extends Point {
	readonly bulge?: number;
}

/** A closed outline, counter-clockwise, y up; the last corner joins the first. */
export type Outline = readonly Corner[];

/** An upright rectangle, ticks. */
export interface Rect {
	readonly x: number;
	readonly y: number;
	readonly length: number; // along x
	readonly width: number; // along y
}
