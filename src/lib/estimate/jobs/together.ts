import type { Length, Money } from '../../measure';

/*
 * Several jobs planned in one go: what each has to bear, and what that saves against planning them
 * one after the other.
 */

/** How the sheets of a board, or the rolls of a cloth, were laid out for several jobs. */
export type LaidWay =
	/** All their pieces in one layout. */
	| 'together'
	/** Each job's as it would be by itself: one layout for all was no cheaper. */
	| 'apart'
	/** One job alone takes it. */
	| 'alone';

/** A board or a cloth, and how much of it the jobs take. */
export interface Joined {
	/** Mark of the board or cloth in the plan of them all. */
	readonly id: string;
	readonly name: string;
	/** The jobs that take it, by their tags. */
	readonly jobs: readonly string[];
	readonly way: LaidWay;
}

export interface JoinedBoards extends Joined {
	/** Sheets and offcuts taken, and what it would be job by job. */
	readonly sheets: number;
	readonly apart: number;
}

export interface JoinedCloth extends Joined {
	/** Length pulled, and what it would be job by job. */
	readonly pull: Length;
	readonly apart: Length;
}

/** What a way of planning comes to. */
export interface Tally {
	/** Sheets and offcuts laid out; those cut already are not counted. */
	readonly sheets: number;
	/** Sheets ordered. */
	readonly bought: number;
	/** Cloth pulled. */
	readonly pull: Length;
	/** What is ordered. */
	readonly ordered: Money;
	/** What is taken off the rack, at list price. */
	readonly fromRack: Money;
	readonly minutes: number;
	readonly labour: Money;
}

/** One of the jobs, and its share of all that they cost. */
export interface JobShare {
	/** What its marks begin with: its number, or a letter. */
	readonly tag: string;
	readonly number: string;
	readonly name: string;
	readonly customer: string;
	readonly vehicle: string;
	/** Area of its pieces of board and of its blanks, mm2. */
	readonly boardArea: number;
	readonly clothArea: number;
	/** The shares of all jobs add up to what is ordered, comes off the rack, and labour costs. */
	readonly ordered: Money;
	readonly fromRack: Money;
	readonly labour: Money;
}

export interface Together {
	readonly jobs: readonly JobShare[];
	readonly boards: readonly JoinedBoards[];
	readonly cloths: readonly JoinedCloth[];
	/** Planned in one go, and each job by itself with what the one before left on the rack. */
	readonly now: Tally;
	readonly apart: Tally;
}
