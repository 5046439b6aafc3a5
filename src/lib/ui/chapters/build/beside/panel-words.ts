import type { PanelDetail } from '../../../../design';
import { clothOf, materialOf, type Panel } from '../../../../job';
import type { Ruler } from '../../../../measure';
import type { Plan } from '../../../../plan';
import { figuresOn } from '../../../../print';

/** A planned panel as the words speak of it. */
export interface SaidPanel {
	readonly panel: Panel;
	readonly detail: PanelDetail;
	readonly plan: Plan;
	readonly ruler: Ruler;
}

const joined = (parts: readonly string[], none: string): string =>
	parts.filter((p) => p !== '').join(', ') || none;
const names = (all: readonly { readonly name: string }[]): string =>
	all.length > 3 ? `${all.length}` : all.map((t) => t.name).join(', ');

/** What the panel is, in a sentence. */
export function panelSentence({ panel, detail, plan, ruler }: SaidPanel): string {
	const f = figuresOn(ruler);
	const board = materialOf(plan.job, panel.material);
	const cloth = clothOf(plan.job, panel.cloth);
	const { opening, board: cut, finished } = detail.fit.sizes;
	const size = (r: typeof cut): string => f.size(r.length, r.width);
	const of = joined(
		[
			board ? `${board.name} (${f.length(board.measured)} measured)` : '',
			cloth ? `in ${cloth.name}` : 'bare',
		],
		'',
	);
	return `Opening ${size(opening)}, board ${size(cut)}, finished ${size(finished)}; ${of}.`;
}

/** What each group of a panel holds, in a line. */
export function panelLines({
	panel,
	detail,
	plan,
	ruler,
}: SaidPanel): Readonly<Record<string, string>> {
	const f = figuresOn(ruler);
	const { opening } = detail.fit.sizes;
	const cloth = clothOf(plan.job, panel.cloth);
	const ends = [...new Set(detail.fit.edges.map((e) => e.end))];
	return {
		opening: f.size(opening.length, opening.width),
		edges: ends.join(', '),
		cloth: joined([cloth?.name ?? 'bare', detail.groove ? 'knife groove' : ''], ''),
		layers: joined([names(panel.layers)], 'none'),
		windows: joined([names(panel.windows), names(panel.rings)], 'none'),
		covers: joined(
			[names(panel.covers), panel.hinges.length > 0 ? `${panel.hinges.length} fold` : ''],
			'none',
		),
		devices: joined([names(panel.devices), names(panel.zones)], 'none'),
		fixing: panel.fixings
			? `${panel.fixings.kind}, at most ${f.bench(panel.fixings.spacing)} apart`
			: 'none',
		name: joined(
			[
				panel.count > 1 ? `${panel.count} alike` : '',
				panel.pair === null ? '' : panel.pair === 'both' ? 'left and right' : panel.pair,
			],
			panel.id,
		),
	};
}
