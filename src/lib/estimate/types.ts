import type { MoreBecause, Sundry } from '../job';
import type { Money } from '../measure';

/** An amount of something, in the unit it is counted in. */
export interface Amount {
	readonly number: number;
	readonly unit: 'sheets' | 'offcuts' | 'm' | 'm2' | 'L' | 'pieces' | 'packs';
}

/** One line of the order, in the seller's units. */
export interface OrderLine {
	readonly group: 'sheets' | 'cloth' | 'sundries';
	/** Stock line it stands for, by id; '' for something the stock does not list. */
	readonly id: string;
	readonly what: string;
	readonly code: string;
	/** Mark of who sells it; '' for anybody. */
	readonly supplier: string;
	/** The day its price was given; '' when nobody knows. */
	readonly priced: string;
	/** What the work takes, spare not counted. */
	readonly need: Amount;
	/** What of it is on the rack, and how much of that the work uses. */
	readonly rack: Amount;
	readonly fromRack: Amount;
	/** How many of `unit` to buy: sheets, steps off a roll, packs. */
	readonly buy: number;
	/** Why it is more than the work takes, beyond the seller's own unit. */
	readonly more: MoreBecause;
	readonly unit: string;
	/**
	 * Length of one step off a roll, ticks; what one pack holds, in the unit of `need`; 1 for
	 * sheets.
	 */
	readonly pack: number;
	readonly each: Money;
	readonly total: Money;
	/**
	 * Bought and not used, in the unit of `need`; waste on sheets is not counted here but in the
	 * layouts.
	 */
	readonly spare: Amount;
	/** Per cent asked for on top of the need. */
	readonly sparePercent: number;
	readonly kind?: Sundry['kind'];
	/** What it is for, in words. */
	readonly for: readonly string[];
}

/** What is bought from one supplier. */
export interface SupplierOrder {
	/** Mark and name; '' for what anybody sells. */
	readonly id: string;
	readonly name: string;
	readonly total: Money;
	/** They send no order that comes to less. */
	readonly least: Money;
}

export interface Order {
	readonly lines: readonly OrderLine[];
	/** Those that something is bought from, in the order of the rack; what anybody sells last. */
	readonly suppliers: readonly SupplierOrder[];
	readonly total: Money;
}

/** One kind of work: how much of it there is and what it takes. */
export interface LabourLine {
	readonly what: string;
	readonly amount: number;
	readonly unit: string;
	readonly minutes: number;
	readonly cost: Money;
}

/**
 * What it costs in all that pieces were spoiled, spent already or not: the difference to the same
 * job with none of them spoiled. Material is what is bought and taken off the rack, less offcuts
 * credited.
 */
export interface Spoil {
	/** Parts and blanks that were spoiled so far. */
	readonly pieces: number;
	/** Worth of what was spoiled, at the list price of its board or cloth; in no sum. */
	readonly lost: Money;
	readonly material: Money;
	readonly labour: Money;
	readonly overhead: Money;
	readonly cost: Money; // material + labour + overhead
}

/** What of a job is neither bought, taken off the rack nor done yet. */
export interface Left {
	readonly bought: Money;
	readonly fromRack: Money;
	readonly labour: readonly LabourLine[];
	readonly labourCost: Money;
}

/**
 * The cost sheet (workings) and the quote (what the customer sees): of the whole job, whether or
 * not any of it is cut, pulled or used already.
 */
export interface Quote {
	readonly bought: Money; // whole sheets, steps and packs
	readonly fromRack: Money; // owned sheets and cloth at their list price
	readonly used: Money; // the share of all of it that is in the work
	readonly credit: Money; // offcuts credited, 0 unless asked
	readonly labour: readonly LabourLine[];
	readonly labourCost: Money;
	readonly overhead: Money; // on labour
	readonly cost: Money; // bought + from the rack - credit + labour + overhead
	readonly materialMarkup: Money; // on bought + from the rack - credit
	readonly profit: Money; // on the cost, beside the markup on material
	readonly markup: number; // markup on material and profit, per cent of cost
	readonly margin: number; // the same, per cent of price
	readonly net: Money; // before tax: cost + markup on material + profit
	readonly taxed: Money; // the part of `net` that tax is due on
	readonly tax: Money;
	readonly total: Money;
	/** Of what is bought and off the rack, what is cut, pulled or used already. */
	readonly booked: Money;
	/** What is still to come, with what is cut again: all of it where nothing is booked. */
	readonly left: Left;
	/** What spoiled pieces cost on top of all this: the shop's own, in no other figure here. */
	readonly spoil: Spoil;
	/** Customer's lines: one a box, panel or list of parts, adding up to `net`. */
	readonly lines: readonly { readonly what: string; readonly price: Money }[];
}
