import { type BenchChapter, BENCH_CHAPTERS, letterPaper } from '../job';
import type { Plan } from '../plan';
import { boxPages } from './box';
import { rollPages } from './cloth';
import type { Page } from './drawing';
import { customerCard, shopCard } from './handover';
import {
	cautionPages,
	costPages,
	counterPages,
	fetchPages,
	orderPages,
	partsPages,
	quotePages,
	summaryPages,
} from './lists';
import {
	chaptersOn,
	framed,
	framedToRead,
	type Leaf,
	lettered,
	orUndrawn,
	setPages,
	sparing,
	type TitleBlock,
} from './page';
import { panelPages } from './panel';
import { runsPages } from './runs';
import { sheetPages } from './sheet';
import { sharePages } from './together';
import { blankTemplate, partTemplate, templateOf, templatesOf } from './templates';
import { roundedNote, rulerName } from './wording';

/*
 * A paper for each reader: the bench pack, the full-size templates, the customer's quote, the
 * shop's cost sheet, the lists for the seller's counter and the two cards of the handover.
 */

const CHAPTERS: Readonly<Record<Exclude<BenchChapter, 'summary'>, (plan: Plan) => Leaf[]>> = {
	cautions: cautionPages,
	order: fetchPages,
	sheets: sheetPages,
	parts: partsPages,
	boxes: boxPages,
	panels: panelPages,
	cloth: rollPages,
	runs: runsPages,
};

/**
 * What the bench needs, in the order of the work or the one the job asks for; no prices. Layouts
 * that failed their audit are refused in words, and so is a page that cannot be made.
 */
export function printPack(plan: Plan): Page[] {
	const chosen = [...new Set(plan.job.pages ?? BENCH_CHAPTERS)];
	const made = new Map(
		chosen
			.filter((name) => name !== 'summary')
			.map((name) => [name, orUndrawn(plan, name, () => CHAPTERS[name](plan))]),
	);
	const summary = (chapters: ReturnType<typeof chaptersOn>): readonly Leaf[] =>
		orUndrawn(plan, 'summary', () => summaryPages(plan, chapters));
	const rest = [...made.values()].flat();
	const unnumbered = rest.map((leaf) => ({ chapters: [leaf.chapter ?? leaf.name] }));
	const first = chosen.includes('summary') ? summary(chaptersOn(unnumbered)) : [];
	const leaves = sparing(
		plan,
		chosen.flatMap((name) => (name === 'summary' ? first : (made.get(name) ?? []))),
	);
	if (first.length === 0) return framed(leaves, titleBlock(plan));
	// The summary is as long whatever the page numbers in it are: set it once to learn them.
	const numbered = chaptersOn(setPages(leaves)).filter(({ name }) => name !== 'Summary');
	const again = summary(numbered);
	return framed(
		leaves.map((leaf) => again[first.indexOf(leaf)] ?? leaf),
		titleBlock(plan),
	);
}

/**
 * Full-size templates of the parts and blanks named, else of all that are cut by a pattern, however
 * many pages they take.
 */
export function templatePages(plan: Plan, ids?: readonly string[]): Page[] {
	const templates =
		ids === undefined
			? templatesOf(plan)
			: [
					...plan.parts.filter((p) => ids.includes(p.id)).map((p) => partTemplate(p, plan)),
					...plan.blanks.filter((b) => ids.includes(b.id)).map((b) => blankTemplate(b, plan)),
				];
	const leaves = templates.flatMap((t) =>
		orUndrawn(plan, `template ${t.name}`, () => templateOf(plan, t)),
	);
	return framed(leaves, titleBlock(plan));
}

/** The customer's paper; jobs planned together have one each, and none in common. */
export function quotePack(of: Plan): Page[] {
	const plan = onLetterPaper(of);
	if (plan.together) return [];
	const { name, number } = plan.job;
	return lettered(
		orUndrawn(plan, 'quote', () => quotePages(plan)),
		{ title: name, foot: number === '' ? 'Quote' : `Quote ${number}` },
	);
}

/** The shop's own paper: what it costs, and the order with its prices. */
export function costPack(of: Plan): Page[] {
	const plan = onLetterPaper(of);
	const leaves = [
		...orUndrawn(plan, 'cost sheet', () => (plan.together ? sharePages : costPages)(plan)),
		...orUndrawn(plan, 'order', () => orderPages(plan)),
	];
	return framed(leaves, titleBlock(plan));
}

/** What to buy from each supplier, without prices: what is laid on the counter. */
export function counterPack(of: Plan): Page[] {
	const plan = onLetterPaper(of);
	return lettered(
		orUndrawn(plan, 'counter lists', () => counterPages(plan)),
		{ title: plan.job.name, foot: 'To buy' },
	);
}

/** What goes with the vehicle. */
export function handoverPack(of: Plan): Page[] {
	const plan = onLetterPaper(of);
	if (plan.together) return [];
	return framedToRead(
		orUndrawn(plan, 'handover', () => customerCard(plan)),
		titleBlock(plan),
	);
}

/** What the shop keeps of the job. */
export function shopCardPack(of: Plan): Page[] {
	const plan = onLetterPaper(of);
	if (plan.together) return [];
	return framed(
		orUndrawn(plan, 'shop card', () => shopCard(plan)),
		titleBlock(plan),
	);
}

/** Large paper is for the bench and the patterns: what is read and filed is on its half. */
function onLetterPaper(plan: Plan): Plan {
	const { job } = plan;
	return { ...plan, job: { ...job, shop: { ...job.shop, paper: letterPaper(job.shop.paper) } } };
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
