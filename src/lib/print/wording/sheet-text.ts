import { materialName, materialOf } from '../../job';
import { boundText, type BoardLayouts } from '../../layout';
import { nth } from '../../measure';
import type { Plan } from '../../plan';
import { partWithId, type SheetAt } from './cut-text';
import type { Figures } from './figures';

/* What is said of a sheet, the same on paper and on screen. */

/** 'Sheet 2 of 3: Birch plywood 18'. */
export function sheetTitle({ plan, boards, index }: SheetAt): string {
	return `Sheet ${index + 1} of ${boards.answer.layouts.length}: ${materialName(plan.job, boards.material)}`;
}

/** 'Birch plywood 18, sheet 2 of 3', for a list of sheets of several boards. */
export function sheetName({ plan, boards, index }: SheetAt): string {
	return `${materialName(plan.job, boards.material)}, sheet ${index + 1} of ${boards.answer.layouts.length}`;
}

/** Where a sheet comes from; an offcut's own name says what it is. */
const FROM = { offcut: 'from the rack', owned: 'from the rack', buy: 'to buy' } as const;

/**
 * Its size, what it is sawn with, where it comes from, and what is known of how well it is used.
 */
export function sheetNote({ plan, boards, index }: SheetAt, figures: Figures): string {
	const { length, width } = nth(boards.answer.layouts, index);
	const material = materialOf(plan.job, boards.material);
	const source = boards.sources[index];
	return [
		figures.size(length, width),
		material === null ? '' : `measured ${figures.length(material.measured)}`,
		boards.problem.method === 'saw'
			? `kerf ${figures.length(boards.problem.kerf)}`
			: `bit ${figures.length(boards.problem.bit)}`,
		source === undefined ? '' : `${source.name}, ${FROM[source.kind]}`,
		source?.cut === true ? 'already cut' : '',
		boundText(boards),
	]
		.filter((t) => t !== '')
		.join('  ·  ');
}

/** What stands over the parts of a board that are on no sheet. */
export function unplacedTitle(plan: Plan, boards: BoardLayouts): string {
	return `Not laid out: ${materialName(plan.job, boards.material)}`;
}

/** 'B1 Front baffle'; the id alone of a part that is gone. */
export function partTitle(plan: Plan, id: string): string {
	const part = partWithId(plan, id);
	return part === undefined ? id : `${part.label} ${part.name}`;
}
