import type { Caution } from '../../cautions';
import { nth } from '../../measure';
import { partLabel, type SheetAt } from './cut-text';

/** The sheet itself and its cuts, as a caution names what it is about. */
function sheetAndCuts({ boards, index }: SheetAt): string[] {
	const layout = nth(boards.answer.layouts, index);
	return [
		`sheet:${boards.material}/${index}`,
		`sheet:${layout.sheet}/${layout.copy}`,
		...layout.cuts.map((cut) => `cut:${boards.material}/${index}/${cut.n}`),
	];
}

/** All that lies on the sheet and its board: what a caution may be about to be printed with it. */
export function shownOnSheet(at: SheetAt): string[] {
	const { plan, boards, index } = at;
	const ids = nth(boards.answer.layouts, index).placed.map((p) => p.id);
	return [
		...sheetAndCuts(at),
		`material:${boards.material}`,
		...ids.flatMap((id) => [`part:${partLabel(plan, id)}`, `part:${id}`]),
	];
}

/**
 * Cautions about this very sheet or its cuts; those about every saw or dust are said once for all.
 */
export function cautionsOfSheet(at: SheetAt): Caution[] {
	const mine = sheetAndCuts(at);
	return at.plan.cautions.filter((c) => c.about.some((a) => mine.includes(a)));
}
