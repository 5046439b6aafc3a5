import type { Plan } from '../../plan';
import {
	type Leaf,
	leavesOf,
	widthOf,
	cautionBlock,
	HALF_PAGE,
	heading,
	inPairs,
	paragraph,
} from '../page';

/** All cautions of the plan together, with where each comes from. */
export function cautionPages(plan: Plan): Leaf[] {
	if (plan.cautions.length === 0) return [];
	const width = widthOf(plan);
	return leavesOf(plan, { name: 'Cautions', title: 'Cautions' }, [
		heading(
			'Cautions',
			width,
			plan.cautions.length === 1
				? 'one belongs to this plan'
				: `${plan.cautions.length} belong to this plan`,
		),
		paragraph(
			'They are reminders, not a substitute for the manuals of your machines and products, for local rules, or for licensed work where the law asks for it.',
			width,
			{ ink: 'pencil' },
		),
		{ height: 1, marks: [] },
		...inPairs(
			plan.cautions.map((c) => cautionBlock(c, HALF_PAGE)),
			width,
		),
	]);
}
