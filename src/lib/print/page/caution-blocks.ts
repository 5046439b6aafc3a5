import type { CautionPage } from '../../cautions';
import type { Plan } from '../../plan';
import { HALF_PAGE, inPairs } from './beside';
import { space, type Block } from './flow';
import { shortCaution } from './paragraphs';

/** The chapter a page belongs to, and what of the plan it shows. */
export interface Shown {
	readonly where: CautionPage;
	/** What its cautions may be about. */
	readonly about: readonly string[];
	/** The first page of its chapter: cautions about nothing in particular are printed there. */
	readonly first: boolean;
}

/** The cautions of a chapter that belong on a page. */
export function cautionBlocks(plan: Plan, shown: Shown, width: number): Block[] {
	const chosen = plan.cautions.filter(
		(c) =>
			c.where.includes(shown.where) &&
			(c.about.some((a) => shown.about.includes(a)) || (shown.first && c.about.length === 0)),
	);
	if (chosen.length === 0) return [];
	const wide = chosen.map((c) => shortCaution(c, width));
	const pairs = inPairs(
		chosen.map((c) => shortCaution(c, HALF_PAGE)),
		width,
	);
	return [space(3), ...(heightOf(pairs) < heightOf(wide) ? pairs : wide)];
}

const heightOf = (blocks: readonly Block[]): number => blocks.reduce((sum, b) => sum + b.height, 0);

/** A page that speaks of the whole plan: the summary, the order. */
export function wholePlan(plan: Plan, where: CautionPage): Shown {
	return { where, about: plan.cautions.flatMap((c) => c.about), first: true };
}
