import type { Plan } from '../../plan';
import { drawnPages, type Leaf } from '../page';
import { figuresOn, panelMassText } from '../wording';
import { panelViews, TIGHT } from './drawings';

/** Opening, board and finished sizes, section, layers and back of each panel. */
export function panelPages(plan: Plan): Leaf[] {
	return plan.panels.flatMap((panel, i) => {
		const figures = figuresOn(plan.job.shop.ruler);
		return drawnPages(plan, {
			name: panel.name,
			note: `panel  ·  ${panelMassText(plan, panel, plan.job.shop.ruler)}`,
			words: wordsOf(plan, panel.id),
			drawings: panelViews(plan, panel, figures),
			smaller: () => panelViews(plan, panel, figures, TIGHT),
			where: 'panel',
			about: [`panel:${panel.id}`],
			first: i === 0,
			figures,
		});
	});
}

/** The notes of a panel, of its layers and of its devices. */
function wordsOf({ job }: Plan, id: string): string[] {
	const panel = job.panels.find((p) => p.id === id);
	if (!panel) return [];
	const ofThings = [...panel.layers, ...panel.devices]
		.filter(({ note }) => note !== '')
		.map(({ name, note }) => `${name}: ${note}`);
	return [panel.note, ...ofThings];
}
