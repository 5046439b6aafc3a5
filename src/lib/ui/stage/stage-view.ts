import type { Outline, Point, Rect } from '../../geometry';
import type { Path } from '../../job';
import type { Length } from '../../measure';

/*
 * What the drawing that is the form is made of: plain data in ticks, x right, y up, the lower left
 * corner of the thing itself at 0. Each measure and each grip names the place in the job it stands
 * for, so that drawing and list never need to know each other.
 */

/** One flat view of a box or a panel. */
export interface StageView {
	/** 'front', 'side', 'above'. */
	readonly key: string;
	readonly title: string;
	/** Round all that is drawn, and round the thing itself, which its measures stand off. */
	readonly around: Rect;
	readonly shapes: readonly StageShape[];
	readonly measures: readonly Measure[];
	readonly grips: readonly Grip[];
}

/** `space`: what is there already, as measured. */
export type StageLine = 'wide' | 'narrow' | 'dashed' | 'space' | 'warn';

export interface StageShape {
	/** The first is the outline, the others are holes in it. */
	readonly outlines: readonly Outline[];
	readonly line: StageLine;
	readonly fill?: 'sheet' | 'sunk' | 'chalk-wash' | 'bench';
	/** What is taken in hand by a click on it. */
	readonly at?: Path;
}

/** A dimension of the drawing: typed in place where it stands for one field of the job. */
export interface Measure {
	readonly label: string;
	readonly from: Point;
	readonly to: Point;
	/** Which side of the view its line stands on; `in`: at its middle, without a line. */
	readonly off: 'left' | 'right' | 'above' | 'below' | 'in';
	/** 0 next to the thing, 1 farther out. */
	readonly row: number;
	readonly value: Length;
	/** Null where it only follows from others. */
	readonly path: Path | null;
	/** Said before the figure: '⌀'. */
	readonly sign?: string;
	/** Shown only while this thing is in hand. */
	readonly only?: Path;
}

/** What a grip moves: a field, and which way it grows. */
export interface Move {
	readonly path: Path;
	readonly along: 'x' | 'y';
	readonly grows: 1 | -1;
	readonly value: number;
	readonly least: number;
}

/** Something that can be dragged, or moved with the arrow keys. */
export interface Grip {
	readonly label: string;
	readonly at: Point;
	/** The edge it moves, lit while it is in hand; none for a thing moved whole. */
	readonly edge?: readonly [Point, Point];
	readonly moves: readonly Move[];
	/** Shown only while this thing is in hand. */
	readonly only?: Path;
}
