import type { Plan } from '../../plan';
import { inMetres } from '../../runs';
import {
	type Block,
	cautionBlocks,
	heading,
	type Leaf,
	leavesOf,
	type Row,
	space,
	subheading,
	table,
	wholePlan,
	widest,
	widthOf,
} from '../page';
import { type Figures, figuresOn } from '../wording';
import { cutFromText, endsText, inCuttingOrder, lengthRows, madeUpText, metresText } from './words';

/** Cables, looms and hoses: each as it is cut, the longest first, then what is cut from what. */
export function runsPages(plan: Plan): Leaf[] {
	if (plan.runs.length === 0) return [];
	const width = widthOf(plan);
	const figures = figuresOn(plan.job.shop.ruler);
	const count = plan.runs.reduce((sum, r) => sum + r.count, 0);
	return leavesOf(
		plan,
		{ name: 'Runs', title: 'Runs' },
		[
			heading('Runs', width, `${count} to cut  ·  a label for either end of each`),
			...cautionBlocks(plan, wholePlan(plan, 'runs'), width),
			space(4),
			...cuttingList(plan, figures, width),
			...plan.reels.flatMap((reel) => [
				space(4),
				subheading(
					`${reel.name}: ${metresText(inMetres(reel.need), plan.job.shop.ruler)} in all`,
					width,
				),
				...lengthTable(lengthRows(reel, figures), width),
			]),
		],
		figures,
	);
}

function cuttingList(plan: Plan, figures: Figures, width: number): Block[] {
	const runs = inCuttingOrder(plan.runs, plan.reels);
	const lengths = runs.map((run) => figures.bench(run.cut));
	const { decimal } = plan.job.shop.ruler;
	const rows = runs.map((run, i): Row => ({
		cells: [
			run.uncut === '' ? { tick: true } : '',
			{ text: run.label, weight: 'semibold' },
			[run.name, endsText(run), madeUpText(run, figures, decimal)].join('\n'),
			run.uncut === ''
				? cutFromText(run, plan.reels)
				: { text: cutFromText(run, plan.reels), ink: 'warn', weight: 'semibold' },
			String(run.count),
			{ text: lengths[i] ?? '', weight: 'semibold' },
		],
	}));
	const columns = [
		{ head: '', width: 3.6 },
		{ head: 'Mark', width: Math.min(30, widest(['Mark', ...runs.map((r) => r.label)])) },
		{ head: 'Run', width: { share: 5 } },
		{ head: 'Cut from', width: { share: 3 } },
		{ head: 'Pcs', width: 6, align: 'end' as const },
		{ head: 'Cut each', width: widest(['Cut each', ...lengths]), align: 'end' as const },
	];
	return table({ columns, rows }, width);
}

function lengthTable(lengths: ReturnType<typeof lengthRows>, width: number): Block[] {
	const rows = lengths.map((l): Row => ({
		cells: [{ tick: true }, l.source, l.length, l.runs, l.left],
	}));
	const columns = [
		{ head: '', width: 3.6 },
		{ head: 'Length', width: 20 },
		{ head: '', width: widest(lengths.map((l) => l.length)), align: 'end' as const },
		{ head: 'Runs cut from it', width: { share: 1 } },
		{ head: 'Left', width: widest(['Left', ...lengths.map((l) => l.left)]), align: 'end' as const },
	];
	return table({ columns, rows }, width);
}
