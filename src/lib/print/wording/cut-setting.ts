import type { Rect } from '../../geometry';
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

/**
 * @param strips names of strips by the number of their first cut, where they have any
 */
export function cutSetting(
	at: SheetAt,
	cut: Cut,
	figures: Figures,
	strips: ReadonlyMap<number, string> = new Map(),
): CutSetting {
	const slant = cut.kind === 'slant';
	return {
		n: cut.n,
		kind: cutKind(cut),
		fence: slant ? '' : figures.bench(cut.fence),
		from: slant ? 'marked line' : `${cut.fenceEdge} edge`,
		line: slant ? lineText(cut, figures) : '',
		gives: givesText(at, cut, figures, strips),
	};
}

/** From edge to edge of the piece as it lies on the saw then: what a tape can be held to. */
function lineText({ region, from, to }: Cut, figures: Figures): string {
	if (from === undefined || to === undefined) return '';
	return `from ${onEdge(region, from, figures)} to ${onEdge(region, to, figures)}`;
}

function onEdge(region: Rect, p: { x: number; y: number }, figures: Figures): string {
	const right = figures.bench(p.x - region.x);
	const up = figures.bench(p.y - region.y);
	if (p.y === region.y || p.y === region.y + region.width) {
		const edge = p.y === region.y ? 'bottom' : 'top';
		if (p.x === region.x) return `the ${edge} left corner`;
		if (p.x === region.x + region.length) return `the ${edge} right corner`;
		return `${right} from the left on the ${edge} edge`;
	}
	if (p.x === region.x) return `${up} up the left edge`;
	if (p.x === region.x + region.length) return `${up} up the right edge`;
	return `${right} from the left and ${up} up`;
}

/** What a row of a table of cuts says of the line and what comes off. */
export function cutGives({ line, gives }: CutSetting): string {
	return line === '' ? gives : `${line}: ${gives}`;
}
