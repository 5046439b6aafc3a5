import type { BoardLayouts } from '../layout/layouts';

/**
 * The share of what was bought that is not in the work. 'Add 30 %' is something else: 100 and 30 % on top is 130, but 100 at
 * 30 % waste is 142.86 bought.
 */
export function wasteShare(used: number, bought: number): number {
	return bought > 0 ? 1 - used / bought : 0;
}

/** What has to be bought so that `net` is left at a waste share from 0 up to, not including, 1. */
export function grossFor(net: number, waste: number): number {
	if (!(waste >= 0 && waste < 1)) throw new Error(`bug: ${waste} is no waste share`);
	return net / (1 - waste);
}

/** Placed, racked as offcuts and lost (kerf, trim, waste) of all sheets of one material, as shares of their area. */
export function sheetShares(boards: BoardLayouts): {
	placed: number;
	racked: number;
	lost: number;
} {
	const sum = (of: (l: BoardLayouts['answer']['layouts'][number]) => number): number =>
		boards.answer.layouts.reduce((total, l) => total + of(l), 0);
	const area = sum((l) => l.length * l.width);
	if (area === 0) return { placed: 0, racked: 0, lost: 0 };
	const placed = sum((l) => l.placed.reduce((a, p) => a + p.length * p.width, 0)) / area;
	const racked = sum((l) => l.offcuts.reduce((a, r) => a + r.length * r.width, 0)) / area;
	return { placed, racked, lost: 1 - placed - racked };
}
