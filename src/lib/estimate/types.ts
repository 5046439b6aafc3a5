import type { Money } from '../measure/money';

/** One line of the order, in the seller's units. */
export interface OrderLine {
	readonly group: 'sheets' | 'cloth' | 'sundries';
	readonly what: string;
	readonly code: string;
	/** What the work takes, in words with its unit: '2 sheets', '2.13 m'. */
	readonly need: string;
	readonly rack: string; // what is on the rack of it
	readonly buy: number; // packs, sheets or steps
	readonly unit: string; // what `buy` counts: 'sheet 2440 x 1220', 'step of 100 mm', 'pack of 200'
	readonly each: Money;
	readonly total: Money;
	readonly spare: string; // what is left over, in words; '' for none
}

export interface Order {
	readonly lines: readonly OrderLine[];
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

/** The cost sheet (workings) and the quote (what the customer sees). */
export interface Quote {
	readonly bought: Money; // whole sheets, steps and packs
	readonly used: Money; // the share of them that is in the work
	readonly credit: Money; // offcuts credited, 0 unless asked
	readonly labour: readonly LabourLine[];
	readonly labourCost: Money;
	readonly cost: Money;
	readonly profit: Money;
	readonly markup: number; // per cent of cost
	readonly margin: number; // per cent of price
	readonly net: Money;
	readonly tax: Money;
	readonly total: Money;
	/** Customer's lines: one a box, panel set or list, adding up to `net`. */
	readonly lines: readonly { readonly what: string; readonly price: Money }[];
}
