import type { Plan } from '../../plan';
import { drawnPages, type Leaf } from '../page';
import { figuresOn } from '../wording';
import { panelDrawings } from './drawings';

/** Opening, board and finished sizes, section, layers and back of each panel. */
export function panelPages(plan: Plan): Leaf[] {
	return plan.panels.flatMap((panel, i) => {
		const figures = figuresOn(plan.job.shop.ruler);
		return drawnPages(plan, {
			name: panel.name,
			note: 'panel',
			drawings: panelDrawings(plan, panel, figures),
			where: 'panel',
			about: [`panel:${panel.id}`],
			first: i === 0,
			figures,
		});
	});
}
