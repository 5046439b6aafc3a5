import { nth } from '../../measure';
import type { Plan } from '../../plan';
import { drawnPages, type Leaf, setPages } from '../page';
import { figuresOn, panelMassText } from '../wording';
import { panelViews } from './drawings';

/** How tall the fronts may be, from as tall as panels get to small ones, mm. */
const HEIGHTS = [undefined, 115, 95] as const;

/**
 * Opening, board and finished sizes, section, layers and back of each panel, with the largest
 * fronts that need no page more than smaller ones.
 */
export function panelPages(plan: Plan): Leaf[] {
	const settings = HEIGHTS.map((tall) => panelLeaves(plan, tall));
	const taken = settings.map((leaves) => setPages(leaves).length);
	return nth(settings, taken.indexOf(Math.min(...taken)));
}

function panelLeaves(plan: Plan, tall: number | undefined): Leaf[] {
	return plan.panels.flatMap((panel, i) => {
		const figures = figuresOn(plan.job.shop.ruler);
		return drawnPages(plan, {
			name: panel.name,
			note: `panel  ·  ${panelMassText(plan, panel, plan.job.shop.ruler)}`,
			words: wordsOf(plan, panel.id),
			drawings: panelViews(plan, panel, figures, tall),
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
