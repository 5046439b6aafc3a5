import type { Plan } from '../../plan';
import {
	type Block,
	type Leaf,
	leavesOf,
	widthOf,
	cautionBlock,
	HALF_PAGE,
	halves,
	heading,
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

/**
 * Two beside each other, so that they take half the paper: each has beside it the one of those to
 * come that is most nearly as tall.
 */
function inPairs(blocks: readonly Block[], width: number): Block[] {
	const waiting = [...blocks];
	const rows: Block[] = [];
	for (let left = waiting.shift(); left !== undefined; left = waiting.shift()) {
		const tall = left.height;
		const off = waiting.map((b) => Math.abs(b.height - tall));
		const right = waiting.splice(off.indexOf(Math.min(...off)), 1);
		rows.push(halves([left], right, width));
	}
	return rows;
}
