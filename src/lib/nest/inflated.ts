import type { Length } from '../measure';

/*
 * True sizes and grown ones. A search adds one blade (or bit, or gap) to every piece and every
 * sheet, and from there on knows no blade: sums and differences of grown sizes are grown sizes
 * again. To take one for the other is an error of one kerf, which no picture shows, so the two are
 * types of their own. Arrays of numbers hold grown sizes only.
 */

declare const grown: unique symbol;

/** A size in ticks with one blade added. */
export type Inflated = number & { readonly [grown]: true };

/** A true size: what is cut, and what a fence is set to. */
export type Actual = Length;

export function inflate(size: Actual, blade: Length): Inflated {
	return (size + blade) as Inflated;
}

/** Zero or less where the blade eats all of it. */
export function deflate(size: Inflated, blade: Length): Actual {
	return (size - blade) as Actual;
}

/** What of a grown size is left beside another. */
export function beside(whole: Inflated, part: Inflated): Inflated {
	return (whole - part) as Inflated;
}
