import {
	clothOf,
	materialOf,
	pathText,
	materialName,
	notesOf,
	type Problem,
	troublesOf,
} from '../../job';
import { nth, toMm, showMass } from '../../measure';
import { boundText } from '../../layout';
import { pullIn } from '../../estimate';
import type { Plan } from '../../plan';
import { amountText, figuresOn, type Figures, patternText } from '../wording';
import {
	cautionBlocks,
	space,
	type Block,
	type Cell,
	type ChapterOn,
	type Column,
	type Leaf,
	leavesOf,
	widthOf,
	table,
	contents,
	heading,
	paragraph,
	wholePlan,
} from '../page';
import { type Mark, line, shortened, textWidth } from '../drawing';
import { templateLength } from '../templates';
import { jobsBlocks } from '../together';

/**
 * The job in figures, its problems, and what lies in the pack behind this page. `chapters` are
 * those with the pages they stand on: the summary is as long whatever these are.
 */
export function summaryPages(plan: Plan, chapters: readonly ChapterOn[]): Leaf[] {
	const figures = figuresOn(plan.job.shop.ruler);
	const { job } = plan;
	const width = widthOf(plan);
	const about = [job.number && `Job ${job.number}`, job.customer, job.vehicle].filter(Boolean);
	const blocks = [
		title(job.name, about.join('  ·  '), width),
		...strip(liveFigures(plan), width),
		...(job.notes === '' ? [] : [paragraph(job.notes, width), space(3)]),
		...jobsBlocks(plan, width),
		...problemBlocks(plan, width),
		...boardBlocks(plan, width, figures),
		...clothBlocks(plan, width, figures),
		...cautionsHere(plan, chapters, width),
		...templateBlocks(plan, width),
		...contents(chapters, width),
	];
	return leavesOf(plan, { name: 'Summary', title: 'Summary' }, blocks, figures);
}

/** Where the cautions are told in full; in short here where no page of this pack does. */
function cautionsHere(plan: Plan, chapters: readonly ChapterOn[], width: number): Block[] {
	const full = chapters.find(({ name }) => name === 'Cautions');
	if (full === undefined)
		return [...cautionBlocks(plan, wholePlan(plan, 'summary'), width), space(2)];
	const count = plan.cautions.length;
	const they =
		count === 1
			? '1 caution belongs to this plan; it stands'
			: `${count} cautions belong to this plan; they stand`;
	const text = `${they} in full from page ${full.from} on, and in short where the work is.`;
	return [paragraph(text, width, { weight: 'semibold' }), space(1)];
}

/** Where the patterns are, and how much paper they take, before anyone sends them to a printer. */
function templateBlocks(plan: Plan, width: number): Block[] {
	const pages = templateLength(plan);
	if (pages === 0) return [];
	return [
		paragraph(
			`Full-size templates of what cannot be laid out from figures are in templates.pdf, ${pages} ${pages === 1 ? 'page' : 'pages'}; cloth is drawn from the back, a mirror of what shows.`,
			width,
		),
		space(3),
	];
}

function title(name: string, about: string, width: number): Block {
	const marks: Mark[] = [
		{
			kind: 'text',
			x: 0,
			y: 7,
			text: shortened(name, width, 8, 'semibold'),
			size: 8,
			weight: 'semibold',
		},
	];
	if (about !== '')
		marks.push({
			kind: 'text',
			x: 0,
			y: 13,
			text: shortened(about, width, 3.6),
			size: 3.6,
			ink: 'pencil',
		});
	return { height: about === '' ? 12 : 17, marks, keep: true };
}

interface Live {
	readonly label: string;
	readonly value: string;
}

function liveFigures(plan: Plan): Live[] {
	const { ruler } = plan.job.shop;
	const sources = plan.boards.flatMap((b) => b.sources).filter((s) => !s.cut);
	const racked = sources.filter((s) => s.kind !== 'buy').length;
	const ordered = plan.order.lines.filter((l) => l.group === 'sheets');
	const bought = ordered.reduce((sum, l) => sum + l.buy, 0);
	const pull = plan.cloths.reduce((sum, c) => sum + pullIn(c), 0);
	const metres = { number: toMm(pull) / 1000, unit: 'm' } as const;
	const mass = plan.parts.reduce((sum, p) => sum + p.mass * p.count, 0);
	return [
		{ label: 'Sheets to buy', value: String(bought) },
		{ label: 'Sheets off the rack', value: String(racked) },
		{ label: 'Cloth to pull', value: amountText(metres, ruler) || 'none' },
		{ label: 'Boards weigh', value: showMass(mass, ruler) },
		{ label: 'Problems', value: String(troublesOf(plan.problems).length) },
		{ label: 'Notes', value: String(notesOf(plan.problems).length) },
		{ label: 'Cautions', value: String(plan.cautions.length) },
	];
}

/**
 * Figures side by side, each as wide as it needs, the rest shared out: the title block's manner,
 * larger.
 */
function strip(cells: readonly Live[], width: number): Block[] {
	const needs = cells.map(
		(c) => Math.max(textWidth(c.label, 2.8), textWidth(c.value, 5, 'semibold')) + 5,
	);
	const spare = Math.max(0, width - needs.reduce((a, b) => a + b, 0)) / cells.length;
	const marks: Mark[] = [
		{ kind: 'path', steps: line(0, 0, width, 0), line: 'wide' },
		{ kind: 'path', steps: line(0, 13, width, 13), line: 'wide' },
	];
	let x = 0;
	cells.forEach((cell, i) => {
		if (i > 0) marks.push({ kind: 'path', steps: line(x, 0, x, 13), line: 'narrow' });
		const left = i === 0 ? 0 : x + 2;
		marks.push(
			{ kind: 'text', x: left, y: 4.4, text: cell.label, size: 2.8, ink: 'pencil' },
			{ kind: 'text', x: left, y: 10.6, text: cell.value, size: 5, weight: 'semibold' },
		);
		x += nth(needs, i) + spare;
	});
	return [{ height: 16, marks }];
}

function problemBlocks(plan: Plan, width: number): Block[] {
	const troubles = troublesOf(plan.problems);
	const notes = notesOf(plan.problems);
	return [
		...saidBlocks(['Problems', 'to be looked at before anything is cut'], troubles, width),
		...saidBlocks(['Notes', 'nothing is wrong; only to be known'], notes, width),
	];
}

function saidBlocks(
	[title, about]: readonly [string, string],
	problems: readonly Problem[],
	width: number,
): Block[] {
	if (problems.length === 0) return [];
	const columns: Column[] = [
		{ head: 'What', width: { share: 4 } },
		{ head: 'What would be right', width: { share: 3 } },
		{ head: 'Where', width: { share: 1 } },
	];
	const rows = problems.map((p) => ({ cells: [...kindCell(p), p.what, p.fix, pathText(p.path)] }));
	const marked = problems.some((p) => p.kind !== 'note');
	return [
		heading(title, width, about),
		...table({ columns: marked ? [{ head: '', width: 19 }, ...columns] : columns, rows }, width),
		space(3.5),
	];
}

/** A note refuses nothing, so it is not marked. */
function kindCell({ kind }: Problem): Cell[] {
	if (kind === 'note') return [];
	const text = kind === 'stop' ? 'not planned' : 'look first';
	return [{ text, weight: 'semibold', ink: 'warn' }];
}

function boardBlocks(plan: Plan, width: number, figures: Figures): Block[] {
	if (plan.boards.length === 0) return [];
	const rows = plan.boards.map((b) => {
		const { unplaced } = b.answer;
		const waiting = unplaced.reduce((sum, u) => sum + u.count, 0);
		const spoiled = b.sources.reduce((sum, s) => sum + s.spoiled.length, 0);
		const says = [
			boundText(b),
			spoiled > 0 ? `${spoiled} of the pieces spoiled, cut again` : '',
			waiting > 0 ? `${waiting} pieces not laid out` : '',
			b.faults.length > 0 ? 'layout refused by its check' : '',
		];
		const measured = materialOf(plan.job, b.material)?.measured ?? 0;
		return {
			cells: [
				materialName(plan.job, b.material),
				figures.length(measured),
				String(b.answer.layouts.reduce((sum, l) => sum + l.placed.length, 0)),
				String(b.sources.filter((s) => s.kind !== 'buy').length),
				String(b.sources.filter((s) => s.kind === 'buy').length),
				says.filter((t) => t !== '').join('; '),
			],
		};
	});
	return [
		heading('Boards', width),
		...table(
			{
				columns: [
					{ head: 'Board', width: { share: 3 } },
					{ head: 'Measured', width: 17, align: 'end' },
					{ head: 'Pieces', width: 13, align: 'end' },
					{ head: 'Off the rack', width: 19, align: 'end' },
					{ head: 'To buy', width: 13, align: 'end' },
					{ head: 'Sheets', width: { share: 3 } },
				],
				rows,
			},
			width,
		),
		space(3.5),
	];
}

const pulledText = ({ spoiled }: { readonly spoiled: readonly number[] }): string =>
	spoiled.length === 0 ? 'pulled' : `pulled; ${spoiled.length} spoiled`;

function clothBlocks(plan: Plan, width: number, figures: Figures): Block[] {
	const rows = plan.cloths.flatMap((c) =>
		c.rolls.map((r) => {
			const cloth = clothOf(plan.job, c.cloth);
			return {
				cells: [
					[cloth?.name ?? c.cloth, patternText(r, figures)].filter((t) => t !== '').join('\n'),
					cloth === null || cloth.nap === 'none' ? 'no nap' : `${cloth.nap} nap`,
					String(r.answer.placed.length),
					figures.bench(r.pull),
					figures.bench(r.napless),
					r.pulled ? pulledText(r.pulled) : r.owned ? 'owned roll' : 'to buy',
				],
			};
		}),
	);
	if (rows.length === 0) return [];
	return [
		heading('Cloth', width),
		...table(
			{
				columns: [
					{ head: 'Cloth', width: { share: 3 } },
					{ head: 'Nap', width: { share: 1 } },
					{ head: 'Blanks', width: 14, align: 'end' },
					{ head: 'Pull', width: 20, align: 'end' },
					{ head: 'If the nap were ignored', width: 36, align: 'end' },
					{ head: '', width: 20 },
				],
				rows,
			},
			width,
		),
		space(3.5),
	];
}
