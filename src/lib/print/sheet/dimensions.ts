import { lastOf, toMm } from '../../measure';
import type { SheetLayout } from '../../nest';
import { FLAG_BAND } from './cuts-on-sheet';
import { type Mark, circlePath, type View } from '../drawing';
import type { Figures } from '../wording';
import { runningAxes, type RunningPlaces } from '../marks';

/** Where the cuts lie, and the edges of routed parts, from the datum corner. */
export function runningPlaces(layout: SheetLayout, figures: Figures): RunningPlaces {
	const rips = layout.cuts.filter((c) => c.runs === 'x' && c.kind !== 'slant').map((c) => c.at);
	const cross = layout.cuts.filter((c) => c.runs === 'y' && c.kind !== 'slant').map((c) => c.at);
	const routed = layout.cuts.length === 0 ? layout.placed : [];
	const place = (ats: readonly number[], whole: number) =>
		[...new Set([...ats, whole])].map((at) => ({ at, text: figures.bench(at) }));
	return {
		x: place([...cross, ...routed.map((p) => p.x)], layout.length),
		y: place([...rips, ...routed.map((p) => p.y)], layout.width),
	};
}

/**
 * As many figures as stand side by side along the edge; the table under the drawing has the rest.
 */
function thinned<T>(places: readonly T[], room: number): T[] {
	const most = Math.max(1, Math.floor(room / 3.3));
	if (places.length <= most) return [...places];
	return [...places.slice(0, most - 1), lastOf(places)];
}

export function dimensions(layout: SheetLayout, places: RunningPlaces, view: View): Mark[] {
	const length = toMm(layout.length) * view.scale;
	const width = toMm(layout.width) * view.scale;
	const shown = { x: thinned(places.x, length), y: thinned(places.y, width) };
	return runningAxes(shown, view, {
		x: [view.x + 2, view.x + length + FLAG_BAND - 2],
		y: [view.y - width - FLAG_BAND + 2, view.y - 2],
	});
}

/** The corner everything is measured from. */
export function datumMark(view: View): Mark[] {
	return [
		{ kind: 'path', steps: circlePath(view.x, view.y, 1), fill: 'ink' },
		{
			kind: 'text',
			x: view.x - 2,
			y: view.y + 6.5,
			text: 'datum',
			size: 2.7,
			anchor: 'end',
			ink: 'pencil',
		},
	];
}
