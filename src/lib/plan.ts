import { materialName } from './job';
import { cautionsFor, type Caution } from './cautions';
import {
	type BoxPlan,
	planBox,
	planLoose,
	type Need,
	type PanelPlan,
	planPanel,
	type Part,
} from './design';
import { items, makeOrder, makeQuote, type Order, type Quote } from './estimate';
import { type Job, placesIn, type Places, type Problem, readJob } from './job';
import {
	layBoards,
	complaints,
	type BoardLayouts,
	type ClothLayouts,
	SearchSession,
	type SearchRecord,
	type SearchOptions,
	type Watch,
	layCloth,
	boardSavings,
	type Saving,
	wrapAll,
	type Carpeting,
} from './layout';
import type { SheetsAnswer } from './nest';
import type { Blank } from './wrap';

/** Everything that can be shown or printed of a job. Plain data: it crosses to and from the worker as it is. */
export interface Plan {
	readonly job: Job;
	readonly problems: readonly Problem[];
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	/** The ways each box could be carpeted, priced, and the one taken. */
	readonly carpets: readonly Carpeting[];
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	readonly needs: readonly Need[];
	readonly order: Order;
	readonly quote: Quote;
	readonly cautions: readonly Caution[];
	/** The search that found the layouts. */
	readonly looked: SearchRecord;
}

/**
 * Seed and work units of each search (see nest/types Budget): the job's own when absent. `watch` is called between slices
 * of work and resolves to false to stop looking and take the best so far.
 */
export type PlanOptions = SearchOptions;

/**
 * From a job to everything that can be shown or printed of it. Takes whatever a file held: what is wrong comes back as
 * problems, and what can still be planned is planned. Same file, seed and effort: same plan.
 */
export async function plan(file: unknown, options: PlanOptions = {}): Promise<Plan> {
	const read = readJob(file);
	const { job } = read;
	const places = placesIn(file);
	const search = new SearchSession(job, options);
	const design = designAll(job, places);
	const cloth = await wrapAll(job, design, places, { ...search.budget, effort: QUICK });
	const boards = await everyBoard(job, design.parts, search);
	const cloths = await everyCloth(job, cloth.blanks, search);
	const needs = [...design.needs, ...cloth.needs];
	const { order, problems } = makeOrder(job, boards, cloths, needs);
	const { boxes, panels, parts } = design;
	const all = { boxes, panels, parts, blanks: cloth.blanks, boards, cloths, needs };
	const work = toBuild(job);
	const quote = makeQuote(job, { ...all, ...work, order, items: items(job, all) });
	const unlaid = complaints(job, places, all);
	return {
		job,
		...all,
		problems: once([read, design, cloth, { problems: unlaid }, { problems }]),
		carpets: cloth.carpets,
		order,
		quote,
		cautions: cautionsFor(job, all),
		looked: search.looked,
	};
}

/** What would save a sheet: small changes to the job, tried in earnest and ranked by what they save. */
export async function savings(of: Plan, options: PlanOptions = {}): Promise<Saving[]> {
	const search = new SearchSession(of.job, options);
	const found: Saving[] = [];
	for (const [i, boards] of of.boards.entries()) {
		const stage = `what would save: ${boards.material}`;
		const watch = () => search.tell({ stage, done: i / of.boards.length });
		found.push(...(await boardSavings(of.job, of.parts, boards, search.budget, watch)));
	}
	return found.sort((a, b) => b.money - a.money || b.sheets - a.sheets);
}

/** How many boxes and panels are put together; a pair is two panels. */
function toBuild(job: Job): { boxes: number; panels: number } {
	return {
		boxes: job.boxes.reduce((sum, b) => sum + b.count, 0),
		panels: job.panels.reduce((sum, p) => sum + p.count * (p.pair === 'both' ? 2 : 1), 0),
	};
}

/** All problems, each said once: the two hands of a pair have the same to say. */
function once(from: readonly { readonly problems: readonly Problem[] }[]): Problem[] {
	const said = new Map(
		from.flatMap((f) => f.problems).map((p) => [`${p.path.join('/')} ${p.what}`, p]),
	);
	return [...said.values()];
}

/** Enough to compare two ways of carpeting a box. */
const QUICK = 200;

interface Designed {
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
	readonly parts: readonly Part[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
}

/** Boxes, panels and listed parts at their true sizes. */
function designAll(job: Job, places: Places): Designed {
	const boxes = job.boxes.map((b, i) => planBox(b, job, places.of('boxes', b.id, i)));
	const panels = job.panels.map((p, i) => planPanel(p, job, places.of('panels', p.id, i)));
	const loose = planLoose(job);
	const all = [...boxes, ...panels];
	return {
		boxes,
		panels,
		parts: [...all.flatMap((a) => a.parts), ...loose.parts],
		problems: [...all.flatMap((a) => a.problems), ...loose.problems],
		needs: all.flatMap((a) => a.needs),
	};
}

async function everyBoard(
	job: Job,
	parts: readonly Part[],
	search: SearchSession,
): Promise<BoardLayouts[]> {
	const materials = [...new Set(parts.map((p) => p.material))].filter((id) =>
		job.stock.materials.some((m) => m.id === id),
	);
	const boards: BoardLayouts[] = [];
	// A sheet is dearer than a strip of cloth, and fewer of them are possible: boards are looked at four times as long.
	const budget = { ...search.budget, effort: 4 * search.budget.effort };
	for (const [i, material] of materials.entries()) {
		const name = materialName(job, material);
		const mine = parts.filter((p) => p.material === material);
		const watch: Watch<SheetsAnswer> = (best, effort) =>
			search.tell({
				stage: `boards: ${name}`,
				done: (i + Math.min(1, effort / budget.effort)) / (materials.length + 1),
				sheets: best.layouts.length,
			});
		boards.push(
			await search.once([material, mine, job.shop, job.stock, job.pinned], () =>
				layBoards(job, material, mine, budget, watch),
			),
		);
	}
	return boards;
}

async function everyCloth(
	job: Job,
	blanks: readonly Blank[],
	search: SearchSession,
): Promise<ClothLayouts[]> {
	const cloths: ClothLayouts[] = [];
	for (const cloth of job.stock.cloths) {
		const mine = blanks.filter((b) => b.cloth === cloth.id);
		if (mine.length === 0) continue;
		const watch = () => search.tell({ stage: `cloth: ${cloth.name}`, done: 0.95 });
		cloths.push(
			await search.once([cloth, mine, job.stock.rolls], () =>
				layCloth(job, cloth, mine, search.budget, watch),
			),
		);
	}
	return cloths;
}
