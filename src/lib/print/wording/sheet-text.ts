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

/** 'Sheets 1 to 3 and 7 of 9', for those that are cut by one page; 'Sheet 2 of 9'. */
export function sheetsNamed({ answer }: BoardLayouts, alike: readonly number[]): string {
	const which = alike.length === 1 ? 'Sheet' : 'Sheets';
	return `${which} ${ranges(alike)} of ${answer.layouts.length}`;
}

/** '1 to 3, 5 and 7', counted from 1. */
function ranges(indexes: readonly number[]): string {
	const runs: { from: number; to: number }[] = [];
	for (const n of indexes.map((i) => i + 1)) {
		const last = runs.at(-1);
		if (last?.to === n - 1) last.to = n;
		else runs.push({ from: n, to: n });
	}
	const said = runs.map(({ from, to }) => (from === to ? String(from) : `${from} to ${to}`));
	return [said.slice(0, -1).join(', '), ...said.slice(-1)].filter((t) => t !== '').join(' and ');
}

/** How often a page is cut by, and where its marks are then another sheet's; '' for one sheet. */
export function alikeText({ answer }: BoardLayouts, alike: readonly number[]): string {
	if (alike.length === 1) return '';
	const racked = alike.some((i) => nth(answer.layouts, i).offcuts.length > 0);
	const labels = racked
		? ` Offcuts are marked here as those of sheet ${nth(alike, 0) + 1}: the others carry the labels printed for their own sheets.`
		: '';
	return `Cut ${alike.length} sheets by this page: they are alike in every part and cut. Count them off as they are done.${labels}`;
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
		spoiledNote(source?.spoiled.length ?? 0),
		boundText(boards),
	]
		.filter((t) => t !== '')
		.join('  ·  ');
}

const spoiledNote = (count: number): string => (count === 0 ? '' : `${count} of its parts spoiled`);

/** What stands over the parts of a board that are on no sheet. */
export function unplacedTitle(plan: Plan, boards: BoardLayouts): string {
	return `Not laid out: ${materialName(plan.job, boards.material)}`;
}

/** 'B1 Front baffle'; the id alone of a part that is gone. */
export function partTitle(plan: Plan, id: string): string {
	const part = partWithId(plan, id);
	return part === undefined ? id : `${part.label} ${part.name}`;
}
