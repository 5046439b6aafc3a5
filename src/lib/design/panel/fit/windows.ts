import { type Outline, setInAll } from '../../../geometry';
import type { PanelWindow } from '../../../job';
import type { Length } from '../../../measure';
import { clothAsked, complain, type Bench } from '../bench';
import { placeShape } from './draw-shape';
import type { WindowFigure } from '../figures';

/**
 * The outline grown (or, negative, shrunk) all round; null when nothing is left of it or a neck
 * closes.
 */
export function grownBy(outline: Outline, by: number): Outline | null {
	const set = setInAll(outline, -by);
	return set.closed.length > 0 ? null : set.outline;
}

/**
 * Windows grow by the rule the board shrinks by: what goes in (with its own cloth), the gap round
 * it, and the cloth of the panel turned in at the edge.
 */
export function windowFigures(bench: Bench, thickness: Length): WindowFigure[] {
	const pressed = clothAsked(bench, bench.panel.cloth, ['cloth'])?.pressed ?? 0;
	return bench.panel.windows.flatMap((w, i) => {
		const figure = windowFigure(bench, w, i, pressed, thickness);
		return figure ? [figure] : [];
	});
}

function windowFigure(
	bench: Bench,
	w: PanelWindow,
	i: number,
	pressed: number,
	build: Length,
): WindowFigure | null {
	const path = ['windows', i];
	const drawn = placeShape(w.outline, bench.job.shop.ruler);
	complain(bench, [...path, 'outline'], drawn.complaints);
	if (drawn.outline === null) return null;
	const wrapped = w.end === 'wrapped' && bench.panel.cloth !== null;
	const thing = clothAsked(bench, w.thingCloth, [...path, 'thingCloth'])?.pressed ?? 0;
	const finished = grownBy(drawn.outline, w.clearance + thing);
	const hole = finished && grownBy(finished, wrapped ? pressed : 0);
	if (!finished || !hole) {
		bench.log.stop(
			[...path, 'outline'],
			`${w.name} has a place so narrow that it closes up when cloth and clearance are added.`,
			'Open that place up, or give it less clearance.',
		);
		return null;
	}
	return { id: w.id, name: w.name, wanted: drawn.outline, hole, finished, wrapped, build };
}
