import type { Cut } from '../../types';

/**
 * What a person sets before a straight cut: where the fence stands, and which edge of the board
 * lies against it.
 */
export type FenceSetting = Pick<Cut, 'kind' | 'runs' | 'fence' | 'fenceEdge'>;

/**
 * Does the fence stand there already? The cut before has to run the same way, from the same edge,
 * at the same distance: a board turned to another edge is laid against another stop. A trim and a
 * rip may share a setting; a slanted cut follows a marked line and has none, so it neither takes
 * one over nor leaves one.
 */
export function sameSetting(a: FenceSetting, b: FenceSetting): boolean {
	return (
		a.kind !== 'slant' &&
		b.kind !== 'slant' &&
		a.fence === b.fence &&
		a.runs === b.runs &&
		a.fenceEdge === b.fenceEdge
	);
}

/**
 * How often the fence is set for the cuts of one sheet, in their order. Every sheet begins anew, as
 * its printed list does: sheets may be taken up in any order.
 */
export function settingsFor(cuts: readonly FenceSetting[]): number {
	return cuts.filter((cut, i) => {
		const before = cuts[i - 1];
		return cut.kind !== 'slant' && !(before && sameSetting(before, cut));
	}).length;
}
