import { materialOf } from '../../job';
import { type PanelDetail, type PanelPlan, panelSectionOf } from '../../design';
import type { Plan } from '../../plan';
import { type Drawing, orStandIn } from '../drawing';
import { figuresOn, type Figures } from '../wording';
import { backView } from './back';
import { boardView } from './board';
import { frontView } from './front';
import { coverView, ringView } from './pieces';
import { sectionView } from './section';
import { drillView } from './template';

/**
 * All drawings of one panel: front, section through the steps, board, back with the groove,
 * drilling template, covers and rings; for a pair the mirrored one after the one drawn. Empty when
 * there is no board.
 */
export function panelDrawings(
	plan: Plan,
	panel: PanelPlan,
	figures: Figures = figuresOn(plan.job.shop.ruler),
): Drawing[] {
	const d = panel.detail;
	if (!d) return [];
	const hands: readonly (readonly [string, boolean])[] = d.both
		? [
				[', left (L)', false],
				[', right (R)', true],
			]
		: [[d.hand === 'L' ? ', left (L)' : d.hand === 'R' ? ', right (R)' : '', false]];
	return hands.flatMap(([hand, mirror]) => views(plan, panel.name + hand, d, figures, mirror));
}

function views(
	plan: Plan,
	name: string,
	d: PanelDetail,
	figures: Figures,
	mirror: boolean,
): Drawing[] {
	const material = materialOf(plan.job, d.material);
	if (!material) throw new Error(`bug: no board '${d.material}'`);
	const section = panelSectionOf(d);
	const carries =
		d.layers.length + d.windows.length + d.covers.length + d.rings.length + d.hinges.length > 0;
	const back = d.groove !== null || d.fixings !== null || d.covers.length > 0;
	const view = (what: string, make: (title: string) => Drawing): Drawing => {
		const title = `${name}: ${what}`;
		return orStandIn(title, () => make(title));
	};
	return [
		view('opening, board, finished', (t) => frontView(d, section, t, figures, mirror)),
		...(section
			? [
					view('section A–A', (t) =>
						sectionView(d, section, { title: t, job: plan.job }, figures, mirror),
					),
				]
			: []),
		...(carries
			? [view(`board, ${material.name}`, (t) => boardView(d, material, t, figures, mirror))]
			: []),
		...(back ? [view('back', (t) => backView(d, t, figures, mirror))] : []),
		...(d.devices.length > 0
			? [view('drilling template', (t) => drillView(d, t, figures, mirror))]
			: []),
		...d.covers.map((c) => view(c.name, (t) => coverView(c, t, figures, mirror))),
		...d.rings.map((r) => view(r.name, (t) => ringView(r, t, figures, mirror))),
	];
}
