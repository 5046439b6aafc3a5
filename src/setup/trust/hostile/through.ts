import { answerNest, type NestProblem, readNest } from '../../../cli/nest';
import { parseJobText, parseText, readPartsList } from '../../../lib/job';
import { mm } from '../../../lib/measure';
import {
	type AuditFault,
	auditRoll,
	auditSheets,
	nestRoll,
	nestRouter,
	nestSaw,
	type Search,
} from '../../../lib/nest';
import { plan as makePlan, type Plan } from '../../../lib/plan';
import {
	blankDrawings,
	boardDrawings,
	boxDrawings,
	drawingSvg,
	forPaper,
	type Fonts,
	panelDrawings,
	pdfFiles,
	plainFiles,
} from '../../../lib/print';
import { recordOf } from '../../../lib/record';
import { fileIn, SharedDocument } from '../../../lib/store';
import type { Case, Kind } from './cases';
import { bytesIn, type Merge } from './merge-cases';

/*
 * A case taken through reading, planning, drawing and printing, as the page and the command line
 * take it. Returns what should not be: empty when it was refused in words or planned whole.
 */

/** Work units of each search: what is tried is the way through, not how good the layout is. */
const EFFORT = 100;

export async function through(hostile: Case, fonts: Fonts): Promise<Way> {
	const { kind, text } = hostile;
	if (kind === 'nest') return ofNest(text);
	if (kind === 'merge') return ofMerge(hostile, fonts);
	return throughFile(
		kind === 'job' ? hostile : { ...hostile, text: JSON.stringify(jobAround(kind, text)) },
		fonts,
	);
}

/** A job's file, as text. */
async function throughFile(hostile: Case, fonts: Fonts): Promise<Way> {
	const read = parseJobText(hostile.text);
	if ('problems' in read) return refused(read.problems, hostile.text);
	return { end: 'planned', amiss: ofPlan(await planned(read), hostile, fonts) };
}

/** How far a case came, and what should not be. */
export interface Way {
	/** Refused where it was read; or planned and drawn, or laid out and answered. */
	readonly end: 'refused' | 'planned' | 'answered';
	readonly amiss: readonly string[];
}

const refused = (problems: Plan['problems'], text: string): Way => ({
	end: 'refused',
	amiss: wordsAmiss(problems, text),
});

async function planned({ file, twice }: { file: unknown; twice: Plan['problems'] }): Promise<Plan> {
	const made = await makePlan(file, { effort: EFFORT });
	return forPaper({ ...made, problems: [...twice, ...made.problems] }, file);
}

function ofPlan(plan: Plan, { text, paper }: Case, fonts: Fonts): string[] {
	const record = JSON.stringify(recordOf(plan));
	const drawn = drawingsOf(plan);
	const undrawn = paper ? PDFS.flatMap((kind) => undrawnOn(kind, plan, fonts)) : [];
	const audited = [...plan.boards, ...plan.cloths.flatMap((cloth) => cloth.rolls)];
	return [
		...[...drawn.faults, ...undrawn].map((fault) => `not drawn: ${fault}`),
		...audited.flatMap(({ faults }) => faults.map((fault) => `audit: ${JSON.stringify(fault)}`)),
		...wordsAmiss(plan.problems, text),
		...(NO_FIGURE.test(drawn.text + record) && !NO_FIGURE.test(text) && !ENDLESS.test(text)
			? ['a figure that is none']
			: []),
	];
}

const PDFS = ['print-pack', 'labels', 'templates', 'quote', 'cost-sheet'] as const;
const NO_FIGURE = /\b(NaN|undefined|Infinity)\b/;
/** Numbers that JSON writes and a program reads as endless: their words say so. */
const ENDLESS = /e\+?\d{3}|\d{300}/i;

const undrawnOn = (kind: (typeof PDFS)[number], plan: Plan, fonts: Fonts): readonly string[] =>
	pdfFiles(kind, plan, fonts).flatMap((file) => file.undrawn ?? []);

/** Every drawing of the screen and of the files. */
function drawingsOf(plan: Plan): { readonly text: string; readonly faults: readonly string[] } {
	const drawings = [
		...plan.boxes.flatMap((box) => [...boxDrawings(plan, box), ...boardDrawings(plan, box)]),
		...plan.panels.flatMap((panel) => panelDrawings(plan, panel)),
		...plan.blanks.flatMap((blank) => blankDrawings(blank, plan)),
	];
	const files = (
		['layouts', 'order', 'cutting-list', 'parts', 'offcuts', 'machine'] as const
	).flatMap((k) => plainFiles(k, plan));
	const svgs = drawings.map((drawing) => drawingSvg(drawing, { colours: 'inline' }));
	return {
		text: [...svgs, ...files.map(({ data }) => String(data))].join('\n'),
		faults: drawings.flatMap(({ fault }) => fault ?? []),
	};
}

function ofNest(text: string): Way {
	const read = parseText(text);
	if ('problems' in read) return refused(read.problems, text);
	const nest = readNest(read.file);
	if ('problems' in nest) return refused(nest.problems, text);
	answerNest(nest.nest, { seed: 1, effort: EFFORT, seconds: null });
	const faults = auditedNest(nest.nest);
	return { end: 'answered', amiss: faults.map((fault) => `audit: ${JSON.stringify(fault)}`) };
}

/** What is answered, laid before the auditor: the command line prints it without. */
function auditedNest({ kind, problem }: NestProblem): readonly AuditFault[] {
	const budget = { seed: 1, effort: EFFORT };
	if (kind === 'roll') return auditRoll(problem, ended(nestRoll(problem, budget)));
	const search = kind === 'saw' ? nestSaw(problem, budget) : nestRouter(problem, budget);
	return auditSheets(problem, ended(search));
}

function ended<A>(search: Search<A>): A {
	for (;;) {
		const step = search.next();
		if (step.done) return step.value;
	}
}

/**
 * Merged here as it came, and on another device before what it was made from: both must hold the
 * same file, unless it was torn, and that is read and planned as any other. What is refused must
 * leave all as it was.
 */
async function ofMerge(hostile: Case, fonts: Fonts): Promise<Way> {
	const { stands, update, isTorn } = JSON.parse(hostile.text) as Merge;
	const [here, there] = [new SharedDocument(1), new SharedDocument(2)];
	here.take(bytesIn(stands));
	const before = JSON.stringify(fileIn(here));
	const isTaken = takes(here, bytesIn(update));
	const after = JSON.stringify(fileIn(here));
	if (!isTaken) return { end: 'refused', amiss: after === before ? [] : ['refused, and taken'] };
	const isTakenThere = takes(there, bytesIn(update)) && takes(there, bytesIn(stands));
	const isAlike = isTakenThere && JSON.stringify(fileIn(there)) === after;
	const way = await throughFile({ ...hostile, text: after ?? '' }, fonts);
	return { end: way.end, amiss: [...(isAlike || isTorn ? [] : ['merged apart']), ...way.amiss] };
}

function takes(doc: SharedDocument, update: Uint8Array): boolean {
	try {
		doc.take(update);
		return true;
	} catch {
		return false;
	}
}

/** Words for a person that were meant for nobody. */
function wordsAmiss(problems: Plan['problems'], text: string): string[] {
	return problems
		.map(({ what, fix }) => `${what} ${fix}`)
		.filter((said) => /bug:|\bNaN\b|undefined|\[object/.test(said))
		.filter(() => !/bug:|NaN|undefined|\[object/.test(text))
		.map((said) => `said: ${said.slice(0, 200)}`);
}

/** A job in good order about a drawing, a list or pasted corners. */
function jobAround(kind: Exclude<Kind, 'job' | 'nest' | 'merge'>, text: string): object {
	const stock = {
		materials: [
			{ id: 'birch', name: 'Birch 18', kind: 'plywood', nominal: 18, measured: 17.8, density: 680 },
		],
		sheets: [{ id: 'full', material: 'birch', length: 2500, width: 1250, price: 60 }],
	};
	const head = { format: 'kerf-and-nap job', version: 2, name: 'Tried', stock };
	if (kind === 'list') return { ...head, parts: listed(text) };
	const opening = { kind, text: text === '' ? ' ' : text, unit: 'mm' };
	return { ...head, panels: [{ id: 'p', name: 'P', material: 'birch', opening }] };
}

function listed(text: string): unknown[] {
	const boards = [{ id: 'birch', name: 'Birch 18', nominal: mm(18), measured: mm(17.8) }];
	const about = { hand: { unit: 'mm', decimal: '.' }, boards, taken: [] } as const;
	return readPartsList(text, about, { decimal: '.' }).rows.flatMap(({ part }) => part ?? []);
}
