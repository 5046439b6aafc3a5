import type { BoxPlan } from '../../design';
import type { Plan } from '../../plan';
import { type Drawing, orStandIn } from '../drawing';
import { figuresOn, type Figures } from '../wording';
import { exploded } from './exploded';
import { threeViews } from './views';

/** The whole of one box: three views, and exploded. Empty when the form cannot be made. */
export function boxDrawings(
	plan: Plan,
	{ name, figures }: BoxPlan,
	print: Figures = figuresOn(plan.job.shop.ruler),
): Drawing[] {
	if (!figures) return [];
	return [
		orStandIn(`${name}: views`, () => threeViews(name, figures, print)),
		orStandIn(`${name}: exploded`, () => exploded(name, figures)),
	];
}
