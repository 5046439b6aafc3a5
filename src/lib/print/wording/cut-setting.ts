import type { Cut } from '../../nest';
import { cutKind, givesText, type SheetAt } from './cut-text';
import type { Figures } from './figures';

/** How one cut is set and what it gives, in words. */
export interface CutSetting {
	readonly n: number;
	readonly kind: string;
	/** '' for a cut along a marked line. */
	readonly fence: string;
	/** The edge the fence is set from, or that the cut follows its line. */
	readonly from: string;
	/** Where the marked line runs; '' for a cut along the fence. */
	readonly line: string;
	readonly gives: string;
}

export function cutSetting(at: SheetAt, cut: Cut, figures: Figures): CutSetting {
	const slant = cut.kind === 'slant';
	return {
		n: cut.n,
		kind: cutKind(cut),
		fence: slant ? '' : figures.bench(cut.fence),
		from: slant ? 'marked line' : `${cut.fenceEdge} edge`,
		line: slant ? lineText(cut, figures) : '',
		gives: givesText(at, cut, figures),
	};
}

function lineText(cut: Cut, figures: Figures): string {
	const spot = (p: Cut['from']): string =>
		p === undefined ? '' : `${figures.bench(p.x)}, ${figures.bench(p.y)}`;
	return `from ${spot(cut.from)} to ${spot(cut.to)} (from the datum)`;
}

/** What a row of a table of cuts says of the line and what comes off. */
export function cutGives({ line, gives }: CutSetting): string {
	return line === '' ? gives : `${line}: ${gives}`;
}
