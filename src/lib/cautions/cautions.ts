import type { BoxPlan, Need, PanelPlan, Part } from '../design';
import type { Job } from '../job';
import type { BoardLayouts } from '../layout';
import type { Blank } from '../wrap';
import { boardCautions } from './board-cautions';
import type { Caution } from './caution';
import { workCautions } from './work-cautions';

/** What the cautions of a plan depend on. */
interface Dangers {
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	readonly boards: readonly BoardLayouts[];
	readonly needs: readonly Need[];
}

/** The safety notes that belong to this plan, and only those. */
export function cautionsFor(job: Job, of: Dangers): Caution[] {
	return [
		...boardCautions(job, of.parts, of.boards),
		...workCautions(job, of.boxes, of.panels, of.blanks, of.needs),
	];
}
