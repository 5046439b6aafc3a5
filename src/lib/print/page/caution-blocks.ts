import type { CautionPage } from '../../cautions';
import type { Plan } from '../../plan';
import { space, type Block } from './flow';
import { cautionBlock } from './paragraphs';

/**
 * The cautions of a chapter that belong on a page: those about one of the things it shows, and, on the chapter's first
 * page, those about nothing in particular.
 */
export function cautionBlocks(
	plan: Plan,
	where: CautionPage,
	shown: readonly string[],
	first: boolean,
	width: number,
	set: (caution: Plan['cautions'][number], width: number) => Block = cautionBlock,
): Block[] {
	const chosen = plan.cautions.filter(
		(c) =>
			c.where.includes(where) &&
			(c.about.some((a) => shown.includes(a)) || (first && c.about.length === 0)),
	);
	if (chosen.length === 0) return [];
	return [space(3), ...chosen.map((c) => set(c, width))];
}
