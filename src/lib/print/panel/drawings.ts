import { type PanelDetail, type PanelPlan, panelSectionOf } from '../../design';
import type { Plan } from '../../plan';
import { type Drawing, orStandIn } from '../drawing';
import { figuresOn, type Figures } from '../wording';
import { partDrawings } from '../parts';
import { frontView } from './front';
import { sectionView } from './section';

/** All drawings of one panel: as a whole, then each of its parts as it is worked. */
export function panelDrawings(plan: Plan, panel: PanelPlan): Drawing[] {
	return [...panelViews(plan, panel), ...pieceDrawings(plan, panel)];
}

/** Each part of a panel as it is worked. */
export function pieceDrawings({ job }: Plan, panel: PanelPlan): Drawing[] {
	const of = { boxes: [], panels: [panel] };
	return partDrawings(job, panel.parts, of, figuresOn(job.shop.ruler));
}

/** How tall a front may be drawn, mm. */
const ROOMY = 170;
export const TIGHT = 105;

/**
 * The panel as a whole: its front, and a section through its steps; for a pair the mirrored one
 * after the one drawn. Empty when there is no board.
 */
export function panelViews(
	plan: Plan,
	panel: PanelPlan,
	figures: Figures = figuresOn(plan.job.shop.ruler),
	height: number = ROOMY,
): Drawing[] {
	const d = panel.detail;
	if (!d) return [];
	const hands: readonly (readonly [string, boolean])[] = d.both
		? [
				[', left (L)', false],
				[', right (R)', true],
			]
		: [[d.hand === 'L' ? ', left (L)' : d.hand === 'R' ? ', right (R)' : '', false]];
	return hands.flatMap(([hand, mirror]) =>
		views(plan, panel.name + hand, d, figures, { mirror, height }),
	);
}

function views(
	plan: Plan,
	name: string,
	d: PanelDetail,
	figures: Figures,
	look: { readonly mirror: boolean; readonly height: number },
): Drawing[] {
	const section = panelSectionOf(d);
	const view = (what: string, make: (title: string) => Drawing): Drawing => {
		const title = `${name}: ${what}`;
		return orStandIn(title, () => make(title));
	};
	return [
		view('opening, board, finished', (t) => frontView(d, section, t, figures, look)),
		...(section
			? [
					view('section A–A', (t) =>
						sectionView(d, section, { title: t, job: plan.job }, figures, look.mirror),
					),
				]
			: []),
	];
}
