import type { Length, Ruler } from '../measure';
import type { Outline, Rect } from '../geometry';

/** A kind of piece to be cut `count` times. The nest never learns which job it came from. */
export interface Piece {
	readonly id: string;
	readonly length: Length; // along x before turning
	readonly width: Length; // along y before turning
	readonly count: number;
	/** any: quarter turns; half: 0 and 180; none: as given. */
	readonly turns: 'any' | 'half' | 'none';
	/**
	 * True shape inside the length x width rectangle, corner at 0,0. Absent: the rectangle itself.
	 */
	readonly outline?: Outline;
	readonly holes?: readonly Outline[];
}

/** A kind of sheet or offcut. `count` null: as many as needed. */
export interface Sheet {
	readonly id: string;
	readonly length: Length;
	readonly width: Length;
	// whole minor units of money that using one costs now; 0 for what is owned
	readonly price: number;
	readonly count: number | null;
	/**
	 * Taken first in this order when the price is equal: offcuts 0, owned sheets 1, sheets to
	 * buy 2.
	 */
	readonly rank: number;
	/** First trim per factory edge; an offcut usually has none. */
	readonly trim: {
		readonly left: Length;
		readonly right: Length;
		readonly bottom: Length;
		readonly top: Length;
	};
}

export interface SawProblem {
	readonly kerf: Length;
	readonly sheets: readonly Sheet[];
	readonly pieces: readonly Piece[];
	/** Most stages of parallel cuts, null for no limit. */
	readonly stages: number | null;
	/** Farthest the fence can be set, null for no limit. */
	readonly fenceLimit: Length | null;
	/** Narrowest strip the saw may rip safely, null for no limit. */
	readonly narrowestRip: Length | null;
	/** Smallest offcut worth racking. */
	readonly keep: { readonly length: Length; readonly width: Length };
	/** Which way the first cuts run: 'rip' along the length, 'cross' across it, 'any'. */
	readonly first: 'any' | 'rip' | 'cross';
	/** What lengths in its words are told on; in millimetres when absent. */
	readonly ruler?: Ruler;
}

export interface RouterProblem {
	readonly bit: Length;
	readonly sheets: readonly Sheet[];
	readonly pieces: readonly Piece[];
	/** May small pieces lie inside the holes of larger ones? */
	readonly useHoles: boolean;
	readonly keep: { readonly length: Length; readonly width: Length };
}

/**
 * A piece laid down. x,y: lower left of its bounding rectangle after turning; length, width as
 * placed.
 */
export interface Placed extends Rect {
	readonly id: string;
	readonly copy: number; // 0-based, which of the count
	readonly turn: 0 | 90 | 180 | 270; // counter-clockwise
}

/**
 * One straight cut through the whole of one region. The saw runs along x ('rip') or along y
 * ('cross'); kerf is lost from `at` to `at + kerf`, measured along the other axis. 'trim' squares a
 * factory edge. 'slant' parts a pair of tapered pieces laid head to tail in one rectangle, from
 * `from` to `to`.
 */
export interface Cut {
	readonly n: number; // order at the saw, from 1
	readonly kind: 'trim' | 'rip' | 'cross' | 'slant';
	readonly runs: 'x' | 'y';
	readonly region: Rect; // what is on the saw before the cut
	readonly at: Length;
	readonly fence: Length; // the setting: kept side, from fenceEdge to the blade
	readonly fenceEdge: 'left' | 'right' | 'bottom' | 'top';
	/**
	 * What falls on either side: lower or left first. Piece ids, 'offcut', 'waste', or 'strip' for
	 * a region cut again.
	 */
	readonly gives: readonly [Gives, Gives];
	readonly from?: { readonly x: number; readonly y: number };
	readonly to?: { readonly x: number; readonly y: number };
}

export interface Gives {
	readonly kind: 'piece' | 'strip' | 'offcut' | 'waste' | 'nothing';
	readonly rect: Rect;
	readonly id?: string; // of the piece
	readonly nextCut?: number; // a strip: the cut that takes it up again
}

export interface SheetLayout {
	readonly sheet: string; // Sheet id
	readonly copy: number; // 0-based, which of that kind
	readonly length: Length;
	readonly width: Length;
	readonly placed: readonly Placed[];
	readonly cuts: readonly Cut[]; // empty for a router layout
	readonly offcuts: readonly Rect[]; // worth racking
}

export interface SheetsAnswer {
	readonly layouts: readonly SheetLayout[];
	readonly unplaced: readonly {
		readonly id: string;
		readonly count: number;
		readonly why: string;
	}[];
	readonly cost: number; // minor units
	/** Sheets and money that no layout cut in this way can do without. */
	readonly bound: { readonly sheets: number; readonly cost: number };
	/** True only when the bound meets the answer and everything is placed. */
	readonly proven: boolean;
	readonly effort: number; // work units spent
}

export interface RollPiece {
	readonly id: string;
	readonly length: Length; // along the roll before turning
	readonly width: Length;
	readonly count: number;
	readonly turns: readonly (0 | 90 | 180 | 270)[];
	readonly outline?: Outline;
	/**
	 * Where in the pattern its lower left corner belongs, along and across: parts of one cloth that
	 * are seamed side by side go on with each other's pattern. Absent: where the pattern starts.
	 */
	readonly phase?: { readonly along: Length; readonly across: Length };
}

export interface RollProblem {
	readonly width: Length; // usable
	readonly gap: Length;
	readonly pieces: readonly RollPiece[];
	/** Longest stretch available, null for an endless roll. */
	readonly limit: Length | null;
	/** Starts of pieces along the roll fall on whole repeats of the pattern; 0 for none. */
	readonly repeat: Length;
	/**
	 * Lower sides of pieces fall on whole widths of the pattern, so that the motif matches across;
	 * absent or 0 for none.
	 */
	readonly across?: Length;
	/**
	 * A half-drop pattern: it repeats across in columns, each `across` wide, and in every second
	 * column it starts half a repeat later, and so does a blank that lies there. Its lower side
	 * falls on the start of a column. Absent: a straight pattern.
	 */
	readonly drop?: { readonly across: Length };
	/** Lay outlines as they are, or their rectangles. */
	readonly by: 'rectangle' | 'outline';
	/**
	 * A layout of all blanks to go on from, which passes the audit: the answer is never longer.
	 */
	readonly start?: readonly RollSpot[];
}

/** Where one blank lies: the corner of its rectangle as turned. */
export type RollSpot = Pick<Placed, 'id' | 'x' | 'y' | 'turn'>;

export interface RollAnswer {
	readonly length: Length; // used
	readonly placed: readonly Placed[];
	readonly unplaced: readonly {
		readonly id: string;
		readonly count: number;
		readonly why: string;
	}[];
	readonly bound: Length;
	readonly proven: boolean;
	readonly effort: number;
}

/**
 * Every search of the nest is a generator: it yields its best answer so far with the work done, and
 * returns the best one. Whoever drives it may stop between yields. Budgets count work, never
 * seconds, so the same seed and effort give the same answer on any machine.
 */
export type Search<Answer> = Generator<
	{ readonly best: Answer; readonly effort: number },
	Answer,
	void
>;

export interface Budget {
	readonly seed: number;
	/** Work units; about 10,000 are a tenth of a second on a desk computer. */
	readonly effort: number;
}

/** What the auditor found wrong with a layout; empty when it may be cut. */
export interface AuditFault {
	readonly where: string;
	readonly what: string;
}
