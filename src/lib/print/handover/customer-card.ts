import { LIFT_SOURCE } from '../../cautions';
import { clothName, clothOf, rollOf } from '../../job';
import type { Plan } from '../../plan';
import { boxPicture } from '../box';
import { type Drawing, orStandIn } from '../drawing';
import {
	type Block,
	cautionBlock,
	drawingBlock,
	heading,
	type Leaf,
	leavesOf,
	paragraph,
	space,
	subheading,
	table,
	widthOf,
} from '../page';
import { HELD_BY } from '../wording';
import { boxComesOff, type ComesOff, panelComesOff } from './comes-off';
import { photographBlocks } from './photographs';
import { letteredPanel } from './picture';

/**
 * For the customer and whoever has the vehicle next: what comes off and how, what is reached where,
 * what it weighs, what is not to be drilled, and the cloth for a later repair. Made from the job:
 * what nobody has entered is said to be missing, not left out.
 */
export function customerCard(plan: Plan): Leaf[] {
	if (plan.boxes.length + plan.panels.length === 0) return [];
	const width = widthOf(plan);
	const { job } = plan;
	const about = [job.vehicle, job.customer, job.date].filter((t) => t !== '').join('  ·  ');
	const built = job.photographs.filter(({ kind }) => kind === 'built');
	const blocks: Block[] = [
		heading(`To keep with the vehicle: ${job.name}`, width, job.number),
		...(about === '' ? [] : [paragraph(about, width)]),
		paragraph(`Built by ${job.shop.name || 'the shop that signs below'}.`, width),
		space(3),
		...reachedBlocks(plan, width),
		...offBlocks(plan, width),
		...liftBlocks(plan, width),
		...clearBlocks(plan, width),
		...clothBlocks(plan, width),
		...photographBlocks(plan, 'As built', built, width),
	];
	return leavesOf(plan, { name: 'Handover', title: 'To keep with the vehicle' }, blocks);
}

const WORDS: Readonly<Record<Plan['job']['handover']['reached'][number]['thing'], string>> = {
	battery: 'Battery',
	'spare-wheel': 'Spare wheel',
	jack: 'Jack',
	fuses: 'Fuses',
	distribution: 'Distribution',
	'tow-eye': 'Tow eye',
	filler: 'Filler or its release',
	other: 'Other',
};
/** Everybody who opens the vehicle looks for these. */
const ALWAYS = ['battery', 'spare-wheel', 'jack', 'fuses', 'distribution'] as const;

function reachedBlocks({ job }: Plan, width: number): Block[] {
	const { reached } = job.handover;
	const open = ALWAYS.filter((thing) => !reached.some((r) => r.thing === thing));
	const rows = [
		...reached.map(({ thing, how }) => ({ cells: [WORDS[thing], how] })),
		...open.map((thing) => ({
			cells: [
				WORDS[thing],
				{ text: 'not entered: fill in by hand  ____________________', ink: PENCIL },
			],
		})),
	];
	const columns = [
		{ head: 'What', width: { share: 1 } },
		{ head: 'How it is reached', width: { share: 3 } },
	];
	return [subheading('What is reached where', width), ...table({ columns, rows }, width), space(4)];
}

const PENCIL = 'pencil' as const;
const TALLEST = 56;

function offBlocks(plan: Plan, width: number): Block[] {
	const { ruler } = plan.job.shop;
	const boxes = plan.boxes.flatMap((box) => {
		const { figures } = box;
		const picture = figures ? orStandIn(box.name, () => boxPicture(box.name, figures)) : null;
		return thingBlocks(picture, [boxComesOff(plan, box, ruler)], width);
	});
	const panels = plan.panels.flatMap((panel) => {
		const { detail } = panel;
		const picture = detail ? orStandIn(panel.name, () => letteredPanel(panel, detail)) : null;
		return thingBlocks(picture, panelComesOff(plan, panel, ruler), width);
	});
	const first = plan.job.handover.off.trim();
	return [
		subheading('What comes off, and how', width),
		...(first === '' ? [] : [paragraph(first, width)]),
		...boxes,
		...panels,
	];
}

function thingBlocks(picture: Drawing | null, rows: readonly ComesOff[], width: number): Block[] {
	const columns = [
		{ head: '', width: 7 },
		{ head: 'What', width: { share: 4 } },
		{ head: 'How it comes off', width: { share: 5 } },
		{ head: 'Held by', width: { share: 4 } },
		{ head: 'Mass', width: { share: 4 } },
	];
	const cells = rows.map((r) => ({
		cells: [
			{ text: r.letter, weight: 'semibold' as const },
			r.what,
			r.how,
			r.held,
			r.persons > 1 ? { text: `${r.mass}: two people`, weight: 'semibold' as const } : r.mass,
		],
	}));
	return [
		...(picture ? [{ ...drawingBlock(picture, width, TALLEST), keep: true }] : []),
		...table({ columns, rows: cells }, width),
		space(4),
	];
}

function liftBlocks(plan: Plan, width: number): Block[] {
	return [
		cautionBlock(
			{
				title: 'Lifting.',
				text: 'One person lifts 23 kg (51 lb) at the very most, close to the body, with a straight back; out of a vehicle it is less. Whatever is marked here takes two.',
				source: LIFT_SOURCE,
			},
			width,
		),
		...plan.cautions
			.filter(({ id }) => id.startsWith('restraint-'))
			.map((c) => cautionBlock({ ...c, text: `${c.text} ${HELD_BY}` }, width)),
	];
}

function clearBlocks(plan: Plan, width: number): Block[] {
	const clear = plan.job.handover.clear.trim();
	const zones = plan.panels.flatMap((p) =>
		(p.detail?.zones ?? []).map((z) => `${p.name}: ${z.name}`),
	);
	const said = [clear, ...zones].filter((t) => t !== '').join('\n');
	return [
		space(2),
		subheading('Not to block or drill', width),
		paragraph(said === '' ? 'Nothing is entered: ask before drilling anywhere.' : said, width),
		...plan.cautions
			.filter(({ id }) => id === 'vehicle' || id === 'wiring')
			.map((c) => cautionBlock(c, width)),
	];
}

/** What a later repair has to match. */
function clothBlocks(plan: Plan, width: number): Block[] {
	const rows = plan.cloths.flatMap(({ cloth, rolls }) =>
		rolls.map(({ roll, pulled }) => {
			const from = rollOf(plan.job, roll);
			const supplier = plan.job.stock.suppliers.find((s) => s.id === from?.supplier)?.name ?? '';
			const nap = clothOf(plan.job, cloth)?.nap ?? 'none';
			const covers = plan.blanks.filter((b) => b.cloth === cloth).map((b) => b.covers);
			return {
				cells: [
					clothName(plan.job, cloth),
					pulled?.lot || from?.lot || 'not entered',
					[from?.code, supplier].filter((t) => t !== undefined && t !== '').join(', ') ||
						'not entered',
					nap === 'none' ? 'none' : nap,
					[...new Set(covers)].slice(0, 6).join(', '),
				],
			};
		}),
	);
	if (rows.length === 0) return [];
	const columns = [
		{ head: 'Cloth', width: { share: 4 } },
		{ head: 'Dye lot', width: { share: 2 } },
		{ head: 'Code and seller', width: { share: 4 } },
		{ head: 'Nap', width: { share: 2 } },
		{ head: 'Covers', width: { share: 5 } },
	];
	return [
		space(3),
		subheading('Cloth, for a later repair', width),
		...table({ columns, rows }, width),
	];
}
