import type { Length } from '../measure';
import type { SheetLayout } from './types';

/** Equal layouts, and how many of their sheets lie on the saw at a time. */
export interface Packet {
	/** Indexes of the layouts. */
	readonly layouts: readonly number[];
	/** Sheets in each run through the saw; they add up to the number of layouts. */
	readonly stacks: readonly number[];
}

/** Everything the saw sees; names of pieces may differ from sheet to sheet. */
function sawMark(layout: SheetLayout): string {
	const cuts = layout.cuts.map((c) => [
		c.kind,
		c.runs,
		c.region,
		c.at,
		c.fence,
		c.fenceEdge,
		c.from,
		c.to,
	]);
	return JSON.stringify([layout.length, layout.width, cuts]);
}

/**
 * Groups layouts that are cut alike, so that their sheets may be cut together in a packet no higher
 * than the saw takes. Left out, `highest` means one sheet at a time: cutting packets is for those
 * who ask for it.
 */
export function packets(
	layouts: readonly SheetLayout[],
	thickness: Length,
	highest: Length | null = null,
): Packet[] {
	const most = highest === null ? 1 : Math.max(1, Math.floor(highest / thickness));
	const groups = new Map<string, number[]>();
	layouts.forEach((layout, i) => {
		const mark = sawMark(layout);
		groups.set(mark, [...(groups.get(mark) ?? []), i]);
	});
	return [...groups.values()].map((group) => {
		const stacks: number[] = [];
		for (let left = group.length; left > 0; left -= most) stacks.push(Math.min(most, left));
		return { layouts: group, stacks };
	});
}
