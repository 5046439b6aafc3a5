import type { Job, Places, Problem, Unsized } from '../job';
import type { BoxPlan } from './box';
import { planLoose } from './loose';
import type { Need } from './need';
import type { PanelPlan } from './panel';
import type { Part } from './part';
import { boxUnsized, panelUnsized } from './unsized';

/** Everything of a job at its true size, with what it takes beside boards and cloth. */
export interface Design {
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
	readonly parts: readonly Part[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
}

/**
 * Boxes, panels and listed parts at their true sizes. What hangs on a thickness nobody knows, one
 * that is `unsized`, is left out and said.
 */
export function designAll(job: Job, places: Places, unsized: readonly Unsized[] = []): Design {
	const boxes = job.boxes.map((b, i) => boxUnsized(b, job, places.of('boxes', b.id, i), unsized));
	const panels = job.panels.map((p, i) =>
		panelUnsized(p, job, places.of('panels', p.id, i), unsized),
	);
	const loose = planLoose(job);
	const all = [...boxes, ...panels];
	return {
		boxes,
		panels,
		parts: [...all.flatMap((a) => a.parts), ...loose.parts],
		problems: [...all.flatMap((a) => a.problems), ...loose.problems],
		needs: all.flatMap((a) => a.needs),
	};
}
