import type { Roll } from '../job';
import type { Length, Money } from '../measure';
import type {
	AuditFault,
	RollAnswer,
	RollProblem,
	RouterProblem,
	SawProblem,
	SheetsAnswer,
} from '../nest';

/** How a roll with a pattern along it is cut, and what the other way of counting would take. */
export interface PatternCut {
	readonly cuts: Roll['cuts'];
	readonly begins: Roll['begins'];
	/** The pull if it were cut the other way. */
	readonly other: Length;
}

/** Where a laid-out sheet comes from, in the words of the rack. */
export interface SheetSource {
	readonly kind: 'offcut' | 'owned' | 'buy';
	readonly id: string; // sheet or offcut id in the stock
	readonly name: string; // '2440 x 1220' or the offcut's label
	readonly pinned: boolean;
	readonly cut: boolean;
	/** The number that places laid by hand on this sheet go by; null where none are. */
	readonly byHand: number | null;
	/** Of a sheet that is cut: the places in its list of parts of those that were spoiled. */
	readonly spoiled: readonly number[];
	/** Of those that do not fit their part's design any more: they are cut again. */
	readonly misfit: readonly number[];
}

/** A place laid by hand that cannot be kept, by its index in the job, and why. */
export interface HandRefusal {
	readonly place: number;
	/** A sentence, with parts by their ids. */
	readonly what: string;
}

/** All sheets of one material. `sources` runs alongside `answer.layouts`. */
export interface BoardLayouts {
	readonly material: string;
	readonly problem:
		({ readonly method: 'saw' } & SawProblem) | ({ readonly method: 'router' } & RouterProblem);
	readonly answer: SheetsAnswer;
	readonly sources: readonly SheetSource[];
	/** Layouts that failed the audit are never printed. */
	readonly faults: readonly AuditFault[];
	/** Places laid by hand that were not kept: their parts are laid out with the rest. */
	readonly refused: readonly HandRefusal[];
}

/** One cloth on one of its rolls. */
export interface RollLayout {
	readonly roll: string; // id in the stock
	readonly problem: RollProblem;
	readonly answer: RollAnswer;
	/**
	 * Length to pull, in the steps the roll is sold in (the used length itself on an owned
	 * remnant).
	 */
	readonly pull: Length;
	/**
	 * How much of the pull may go by before the pattern starts: a repeat. Absent on a plain cloth.
	 */
	readonly lead?: Length;
	/** How a pattern along the roll is counted. Absent on a plain cloth. */
	readonly pattern?: PatternCut;
	/** What it would take if the nap were ignored. */
	readonly napless: Length;
	readonly owned: boolean;
	/** To be cut along outlines, where a straight cut will not do. Absent where none is. */
	readonly along?: Length;
	/**
	 * Present once it is pulled and booked: the lot it was, '' for none entered, and the places in
	 * its list of blanks of those that were spoiled.
	 */
	readonly pulled?: { readonly lot: string; readonly spoiled: readonly number[] };
	readonly faults: readonly AuditFault[];
}

/** What the blanks of one cloth take when they are all cut in one way. */
export interface CutWay {
	readonly by: RollProblem['by'];
	/** Of all rolls together. */
	readonly pull: Length;
	/** What is bought, and the worth of what comes off the rack. */
	readonly cost: Money;
	/** To be cut along outlines, and what that comes to at the shop's minutes. */
	readonly along: Length;
	readonly cutCost: Money;
	readonly fits: boolean;
}

export interface ClothLayouts {
	readonly cloth: string;
	readonly rolls: readonly RollLayout[];
	/** Rectangles beside outlines, where both were looked at; the first is the one taken. */
	readonly ways?: readonly CutWay[];
	readonly unplaced: readonly {
		readonly id: string;
		readonly count: number;
		readonly why: string;
	}[];
}
