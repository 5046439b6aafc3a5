import type { Plan } from '../plan';
import { boxPages } from './box';
import { cautionPages, costPages, orderPages, quotePages, partsPages, summaryPages } from './lists';
import { rollPages } from './cloth';
import { cuttingListPages, sheetPages } from './sheet';
import type { Page } from './drawing';
import { roundedNote, rulerName } from './wording';
import { framed, type Leaf, orUndrawn, type TitleBlock } from './page';
import { panelPages } from './panel';
import { blankTemplate, partTemplate, templateLeaves, templateOf, templatesOf } from './templates';

/**
 * The print pack in the order of the work: what it is, what is made, what is cut, what is bought,
 * what it costs. Layouts that failed their audit are refused in words, and so is a page that cannot
 * be made.
 */
export function printPack(plan: Plan): Page[] {
	const chapters: readonly (readonly [string, () => Leaf[]])[] = [
		['boxes', () => boxPages(plan)],
		['panels', () => panelPages(plan)],
		['parts', () => partsPages(plan)],
		['sheets', () => sheetPages(plan)],
		['cutting list', () => cuttingListPages(plan)],
		['cloth', () => rollPages(plan)],
		['order', () => orderPages(plan)],
		['quote', () => quotePages(plan)],
		['cost sheet', () => costPages(plan)],
		['cautions', () => cautionPages(plan)],
		['templates', () => templateLeaves(plan)],
	];
	const rest = chapters.flatMap(([name, make]) => orUndrawn(plan, name, make));
	const summary = orUndrawn(plan, 'summary', () => summaryPages(plan, rest));
	return framed([...summary, ...rest], titleBlock(plan));
}

/**
 * Full-size templates of the parts and blanks named, else of all that are cut by a pattern, however
 * many pages they take.
 */
export function templatePages(plan: Plan, ids?: readonly string[]): Page[] {
	if (ids === undefined)
		return framed(
			templatesOf(plan).flatMap((t) => templateOf(plan, t)),
			titleBlock(plan),
		);
	const parts = plan.parts.filter((p) => ids.includes(p.id)).map(partTemplate);
	const blanks = plan.blanks.filter((b) => ids.includes(b.id)).map(blankTemplate);
	return framed(
		[...parts, ...blanks].flatMap((t) => templateOf(plan, t)),
		titleBlock(plan),
	);
}

function titleBlock(plan: Plan): TitleBlock {
	const { job } = plan;
	return {
		job: job.name,
		number: job.number,
		revision: job.revision,
		date: job.date,
		shop: job.shop.name,
		customer: job.customer,
		vehicle: job.vehicle,
		ruler: rulerName(job.shop.ruler),
		roundedNote: roundedNote(job.shop.ruler),
	};
}
