import type { Caution } from '../../../cautions';
import type { BoardLayouts } from '../../../layout';
import type { Plan } from '../../../plan';

/** Cautions about this very sheet or its cuts; those about every saw or dust stay with the title block. */
export function cautionsOf(plan: Plan, boards: BoardLayouts, index: number): Caution[] {
	const layout = boards.answer.layouts[index];
	const mine = [`sheet:${boards.material}/${index}`, `sheet:${layout?.sheet}/${layout?.copy}`];
	const cut = `cut:${boards.material}/${index}/`;
	return plan.cautions.filter((c) => c.about.some((a) => mine.includes(a) || a.startsWith(cut)));
}
