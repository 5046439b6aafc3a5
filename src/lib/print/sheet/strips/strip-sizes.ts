import type { Rect } from '../../../geometry';
import { toMm } from '../../../measure';
import type { Cut } from '../../../nest';
import { type Mark, onPaper, textWidth, type View } from '../../drawing';
import { dimension, FIGURE } from '../../marks';
import type { Figures } from '../../wording';

/**
 * Sizes of what falls from the cuts that go right through, waste left out: under the drawing, or to
 * its left, as far off as `offset`. A figure that has no room between its arrows is left to the
 * list.
 */
export function sizesOfCuts(
	cuts: readonly Cut[],
	view: View,
	offset: number,
	figures: Figures,
): Mark[] {
	const first = cuts.find((c) => c.kind !== 'trim');
	if (first === undefined || first.kind === 'slant') return [];
	const chain = cuts.filter(
		(c) => c.runs === first.runs && c.kind === first.kind && across(c) === across(first),
	);
	const numbers = new Set(chain.map((c) => c.n));
	return chain
		.flatMap((c) => c.gives)
		.filter((g) => g.kind !== 'waste' && g.kind !== 'nothing')
		.filter((g) => g.nextCut === undefined || !numbers.has(g.nextCut))
		.flatMap((g) => sizeMarks(g.rect, first.runs, view, offset, figures));
}

/** Where a cut's board lies across the way it is parted: the same for all cuts that part it on. */
function across({ runs, region: r }: Cut): string {
	return runs === 'y' ? `${r.y} ${r.width}` : `${r.x} ${r.length}`;
}

function sizeMarks(
	rect: Rect,
	runs: Cut['runs'],
	view: View,
	offset: number,
	figures: Figures,
): Mark[] {
	const size = runs === 'y' ? rect.length : rect.width;
	const text = figures.bench(size);
	const long = toMm(size) * view.scale;
	if (textWidth(text, FIGURE) + 1 > long || long < 8) return [];
	const spot = (x: number, y: number) => onPaper(runs === 'y' ? { x, y: 0 } : { x: 0, y }, view);
	const from = spot(rect.x, rect.y);
	const to = spot(rect.x + rect.length, rect.y + rect.width);
	return dimension(from, to, runs === 'y' ? offset : -offset, text);
}
