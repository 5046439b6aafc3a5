import { materialOf, sawOf } from '../../job';
import type { Plan } from '../../plan';
import {
	type Block,
	heading,
	type Leaf,
	leavesOf,
	paragraph,
	space,
	subheading,
	table,
	widthOf,
} from '../page';
import { figuresOn } from '../wording';
import { photographBlocks } from './photographs';

/** For the shop: sizes as measured, settings as used, and what to do otherwise next time. */
export function shopCard(plan: Plan): Leaf[] {
	if (plan.parts.length === 0) return [];
	const width = widthOf(plan);
	const { job } = plan;
	const wanted = job.photographs.filter((photograph) => photograph.shopCard);
	const blocks: Block[] = [
		heading('For the shop: how it was built', width, 'not for the customer'),
		...boardBlocks(plan, width),
		...builtBlocks(plan, width),
		...settingBlocks(plan, width),
		...tookBlocks(plan, width),
		space(3),
		subheading('Next time', width),
		paragraph(job.handover.next.trim() || 'Nothing is entered yet.', width),
		...photographBlocks(plan, 'Photographs', wanted, width),
	];
	return leavesOf(plan, { name: 'Shop card', title: 'For the shop' }, blocks);
}

function boardBlocks(plan: Plan, width: number): Block[] {
	const figures = figuresOn(plan.job.shop.ruler);
	const rows = plan.boards.flatMap(({ material }) => {
		const board = materialOf(plan.job, material);
		if (!board) return [];
		const { name, nominal, measured } = board;
		return [{ cells: [name, figures.length(nominal), figures.length(measured)] }];
	});
	const columns = [
		{ head: 'Board', width: { share: 3 } },
		{ head: 'Nominal', width: { share: 1 }, align: 'end' as const },
		{ head: 'Measured', width: { share: 1 }, align: 'end' as const },
	];
	return [subheading('Boards as measured', width), ...table({ columns, rows }, width), space(3)];
}

function builtBlocks({ job }: Plan, width: number): Block[] {
	const { built } = job.handover;
	const title = subheading('Sizes as built', width);
	if (built.length === 0) return [title, paragraph('Nothing is entered yet.', width), space(3)];
	const columns = [
		{ head: 'What', width: { share: 2 } },
		{ head: 'As built', width: { share: 1 } },
	];
	const rows = built.map(({ what, size }) => ({ cells: [what, size] }));
	return [title, ...table({ columns, rows }, width), space(3)];
}

/** The estimate beside what it took, where it was entered. */
function tookBlocks({ job }: Plan, width: number): Block[] {
	const { times, materials } = job.took;
	if (times.length + materials.length === 0) return [];
	const { decimal } = job.shop.ruler;
	const say = (n: number): string => String(Number(n.toFixed(2))).replace('.', decimal);
	const rows = [
		...times.map(
			(t) =>
				[`${t.what}, ${say(t.amount)} ${t.unit}`, 'h', t.estimated / 60, t.taken / 60] as const,
		),
		...materials.map((m) => [m.what, m.unit, m.estimated, m.taken] as const),
	].map(([what, unit, estimated, taken]) => ({
		cells: [what, unit, say(estimated), taken > 0 ? say(taken) : 'not entered'],
	}));
	const columns = [
		{ head: 'What', width: { share: 3 } },
		{ head: 'In', width: { share: 1 } },
		{ head: 'Estimated', width: { share: 1 }, align: 'end' as const },
		{ head: 'Taken', width: { share: 1 }, align: 'end' as const },
	];
	const title = subheading('Estimated, and what it took', width);
	return [space(3), title, ...table({ columns, rows }, width)];
}

function settingBlocks(plan: Plan, width: number): Block[] {
	const { job } = plan;
	const { shop } = job;
	const figures = figuresOn(shop.ruler);
	const saw = sawOf(job);
	const cut =
		shop.method === 'saw'
			? [`${saw.name}: kerf ${figures.length(saw.kerf)}, first trim ${figures.length(saw.trim)}`]
			: [`Router: bit ${figures.length(shop.router.bit)}`];
	const { width: wide, depth, offset } = shop.groove;
	const grooved = plan.panels.some((p) => p.detail?.groove);
	const said = [
		...cut,
		...(grooved
			? [
					`Knife groove: ${figures.length(wide)} wide, ${figures.length(depth)} deep, ${figures.length(offset)} from the edge`,
				]
			: []),
		...(plan.blanks.length > 0 ? [`Contact adhesive: ${shop.adhesive.way}`] : []),
		...job.handover.settings.split('\n').map((line) => line.trim()),
	].filter((line) => line !== '');
	return [subheading('Settings', width), paragraph(said.join('\n'), width)];
}
