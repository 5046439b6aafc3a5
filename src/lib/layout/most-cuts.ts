import type { Problem } from '../job';
import { nth } from '../measure';
import { alikeSheets } from './alike-sheets';
import type { BoardLayouts } from './layouts';

/**
 * Cuts that are drawn and listed at most: past these the pages are hundreds, take minutes and
 * gigabytes to make, and nobody saws by them.
 */
const MOST_CUTS = 10_000;

/** Sheets that are laid out and come with no page of their own, for all the cuts they take. */
interface LeftOut {
	readonly sheets: number;
	readonly cuts: number;
}

/**
 * The sheets that are drawn, of those that are alike the first: in turn, as long as all their cuts
 * together are no more than that; the first one always.
 */
export class DrawnSheets {
	private readonly drawn = new Set<object>();
	readonly undrawn: LeftOut;

	constructor(boards: readonly BoardLayouts[]) {
		let cuts = 0;
		const left = { sheets: 0, cuts: 0 };
		const groups = boards.flatMap((b) =>
			b.faults.length > 0
				? []
				: alikeSheets(b).map((alike) => alike.map((i) => nth(b.answer.layouts, i))),
		);
		for (const alike of groups) {
			const first = nth(alike, 0);
			const more = first.cuts.length;
			if (left.sheets === 0 && (cuts === 0 || cuts + more <= MOST_CUTS)) {
				cuts += more;
				this.drawn.add(first);
			} else {
				left.sheets += alike.length;
				left.cuts += more;
			}
		}
		this.undrawn = left;
	}

	has(layout: object): boolean {
		return this.drawn.has(layout);
	}
}

/** How many sheets have no page, in words for the page and for the problem; empty for none. */
export function undrawnText({ sheets, cuts }: LeftOut): string {
	if (sheets === 0) return '';
	const which = sheets === 1 ? '1 sheet is' : `${sheets} sheets are`;
	return `${which} not drawn: with ${cuts} more cuts they would come to more than the ${MOST_CUTS} that are printed.`;
}

/** That sheets are laid out and not drawn, told to the person. */
export function tooManyCuts(boards: readonly BoardLayouts[]): Problem[] {
	const what = undrawnText(new DrawnSheets(boards).undrawn);
	if (what === '') return [];
	return [
		{
			path: ['stock', 'sheets'],
			kind: 'check',
			what,
			fix: 'Plan fewer parts at a time, take shorter sheets, or a saw whose fence reaches farther.',
		},
	];
}
