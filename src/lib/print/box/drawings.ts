import type { BoxPlan } from '../../design';
import type { Plan } from '../../plan';
import { boardDrawing } from './board';
import { exploded } from './exploded';
import { placingDrawings } from './placing';
import { threeViews } from './views';
import type { Drawing } from '../drawing';
import { figuresOn, type Figures } from '../wording';

/**
 * All drawings of one box: three views, the exploded view, then every board and
 * the placing lines on it. Empty when the form
 * cannot be made.
 */
export function boxDrawings(
	plan: Plan,
	box: BoxPlan,
	print: Figures = figuresOn(plan.job.shop.ruler),
): Drawing[] {
	const { figures } = box;
	if (!figures) return [];
	return [
		threeViews(box.name, figures, print),
		exploded(box.name, figures),
		...figures.boards.flatMap((b) => [
			boardDrawing(b, print, plan.job.shop.ruler),
			...placingDrawings(b, print),
		]),
	];
}
