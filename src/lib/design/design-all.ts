import type { Job, Places, Problem } from '../job';
import { type BoxPlan, planBox } from './box';
import { planLoose } from './loose';
import type { Need } from './need';
import { type PanelPlan, planPanel } from './panel';
import type { Part } from './part';

/** Everything of a job at its true size, with what it takes beside boards and cloth. */
export interface Design {
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
	readonly parts: readonly Part[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
}

/** Boxes, panels and listed parts at their true sizes. */
export function designAll(job: Job, places: Places): Design {
	const boxes = job.boxes.map((b, i) => planBox(b, job, places.of('boxes', b.id, i)));
	const panels = job.panels.map((p, i) => planPanel(p, job, places.of('panels', p.id, i)));
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
