import type { Cut, Gives } from '../../../nest/types';
import type { Plan } from '../../../plan';
import { partLabel } from '../../../print/cutting-table';
import type { Figures } from '../../../print/figures';

/** What one cut is set to and gives, in the words of the printed cutting list. */
export interface CutWords {
	readonly n: number;
	readonly kind: string;
	readonly fence: string;
	/** The edge the fence is set from. */
	readonly from: string;
	/** True when the fence stands there already. */
	readonly same: boolean;
	readonly gives: string;
	/** Labels of the parts that come off with this cut. */
	readonly parts: readonly string[];
}

export function cutWords(
	plan: Plan,
	cut: Cut,
	before: Cut | undefined,
	figures: Figures,
): CutWords {
	const slant = cut.kind === 'slant';
	const same =
		before?.fence === cut.fence && before.runs === cut.runs && before.fenceEdge === cut.fenceEdge;
	return {
		n: cut.n,
		kind: cut.kind === 'cross' ? 'crosscut' : cut.kind,
		fence: slant ? '' : figures.bench(cut.fence),
		from: slant ? slantLine(cut, figures) : `${cut.fenceEdge} edge`,
		same: same && !slant,
		gives: givesText(plan, cut, figures),
		parts: cut.gives.flatMap((g) => (g.kind === 'piece' ? [partLabel(plan, g.id ?? '')] : [])),
	};
}

function slantLine(cut: Cut, figures: Figures): string {
	const spot = (p: Cut['from']): string =>
		p === undefined ? '' : `${figures.bench(p.x)}, ${figures.bench(p.y)}`;
	return `line from ${spot(cut.from)} to ${spot(cut.to)}, from the datum`;
}

function givesText(plan: Plan, cut: Cut, figures: Figures): string {
	const sides = cut.runs === 'x' ? ['below', 'above'] : ['left', 'right'];
	return cut.gives
		.map((give, i) => [sides[i], giveText(plan, give, figures)] as const)
		.filter(([, what]) => what !== '')
		.map(([side, what]) => `${side}: ${what}`)
		.join('; ');
}

function giveText(plan: Plan, give: Gives, figures: Figures): string {
	switch (give.kind) {
		case 'piece':
			return partLabel(plan, give.id ?? '');
		case 'strip':
			return give.nextCut === undefined ? 'rest' : `strip for cut ${give.nextCut}`;
		case 'offcut':
			return `offcut ${figures.size(give.rect.length, give.rect.width)}`;
		case 'waste':
			return 'waste';
		case 'nothing':
			return '';
	}
}
