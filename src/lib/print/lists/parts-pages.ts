import { materialName } from '../../job';
import { nth, showMass } from '../../measure';
import type { Part } from '../../design';
import type { Plan } from '../../plan';
import {
	cautionBlocks,
	type Block,
	type Leaf,
	leavesOf,
	pageArea,
	paperOf,
	paragraph,
	space,
	widthOf,
	table,
	widest,
	type Row,
	heading,
	subheading,
} from '../page';
import { workBlocks } from '../parts';
import { ownerName } from '../together';
import { figuresOn, type Figures, pairTexts, partFacesText, sizesNote } from '../wording';

/**
 * All parts by what they belong to: LONG and SHORT face (blank and both faces where neither is
 * LONG), mass, notes; then what is done to each after the saw.
 */
export function partsPages(plan: Plan): Leaf[] {
	if (plan.parts.length === 0) return [];
	const width = widthOf(plan);
	const figures = figuresOn(plan.job.shop.ruler);
	const owners = [...new Set(plan.parts.map((p) => p.owner))];
	const pieces = plan.parts.reduce((sum, p) => sum + p.count, 0);
	const blocks: Block[] = [
		heading(
			'Parts',
			width,
			`${pieces} ${pieces === 1 ? 'piece' : 'pieces'}  ·  length along the grain  ·  ${sizesNote(plan.parts)}`,
		),
	];
	for (const owner of owners) {
		const parts = plan.parts.filter((p) => p.owner === owner);
		blocks.push(
			subheading(ownerName(plan, owner), width),
			...partsTable(plan, parts, width, figures),
		);
		blocks.push({ height: 4, marks: [] });
	}
	const shown = { where: 'parts', about: partRefs(plan), first: true } as const;
	blocks.push(...cautionBlocks(plan, shown, width));
	const worked = figuresOn(plan.job.shop.ruler);
	const work = workOf(plan, owners, width, worked);
	// What needs no work needs no page of its own.
	const idle = work.every((w) => w.idle);
	if (idle) blocks.push(space(2), ...work.flatMap((w) => w.blocks));
	const list = leavesOf(plan, { name: 'Parts', title: 'Parts list' }, blocks, figures);
	return idle ? list : [...list, ...workPages(plan, work, width, worked)];
}

const HOW =
	'Places run to the right (→) and up (↑) from the lower left corner of what lies before you; mark a face before a bevel is cut. ' +
	'At a bevel the blade leans away from the fence; the figure is from fence to blade at the table. ' +
	'Bevels across the grain come first, and a sharp edge runs along a strip that leaves no gap under it: common practice, no source.';

const SAWN =
	'Where a slanted cut at the sheet has made an outline already, its corners are there to check it.';

const hasSlants = ({ answer }: Plan['boards'][number]): boolean =>
	answer.layouts.some(({ cuts }) => cuts.some((cut) => cut.kind === 'slant'));

type Work = ReturnType<typeof workBlocks> & { readonly owner: string };

function workOf(plan: Plan, owners: readonly string[], width: number, figures: Figures): Work[] {
	const { height } = pageArea(paperOf(plan));
	return owners.map((owner) => {
		const parts = plan.parts.filter((p) => p.owner === owner);
		return { owner, ...workBlocks(plan.job, parts, plan, { width, height }, figures) };
	});
}

/** What is done to each part after the saw, owner by owner. */
function workPages(plan: Plan, work: readonly Work[], width: number, figures: Figures): Leaf[] {
	const blocks = [
		heading('After the saw', width, 'part by part, in order'),
		// What is told of them stands over the first of them, never at the foot of a page.
		{
			...paragraph(plan.boards.some(hasSlants) ? `${HOW} ${SAWN}` : HOW, width, {
				size: 2.7,
				ink: 'pencil',
			}),
			keep: true,
		},
		{ ...space(2), keep: true },
		...work.flatMap((w) => [subheading(ownerName(plan, w.owner), width), ...w.blocks]),
	];
	const titled = { name: 'After the saw', title: 'After the saw' };
	const fault = work.find((w) => w.fault !== undefined)?.fault;
	const leaves = leavesOf(plan, titled, blocks, figures);
	return fault === undefined ? leaves : leaves.map((leaf) => ({ ...leaf, fault }));
}

function partRefs(plan: Plan): string[] {
	return plan.parts.flatMap((p) => [`part:${p.label}`, `part:${p.id}`]);
}

function partsTable(plan: Plan, parts: readonly Part[], width: number, figures: Figures): Block[] {
	const long = parts.map((p) => longSize(p, figures));
	const short = parts.map((p) => shortText(p, figures));
	const anyShort = short.some((t) => t !== '');
	const pairs = pairTexts(plan, figures);
	const rows = parts.map((part, i): Row => ({
		of: `part:${part.id}`,
		cells: [
			{ tick: true },
			{ text: part.label, weight: 'semibold' },
			[part.name, partFacesText(part, figures), ...part.notes, pairs.get(part.id) ?? '']
				.filter((t) => t !== '')
				.join('\n'),
			materialText(plan, part, figures),
			String(part.count),
			nth(long, i),
			...(anyShort ? [nth(short, i)] : []),
			showMass(part.mass, plan.job.shop.ruler),
		],
	}));
	return table(
		{
			columns: [
				{ head: '', width: 3.6 },
				{ head: 'Mark', width: widest(['Mark', ...parts.map((p) => p.label)]) },
				{ head: 'Part', width: { share: 3 } },
				{ head: 'Board, thickness', width: { share: 2 } },
				{ head: 'Pcs', width: 6, align: 'end' },
				{
					head: anyShort ? 'LONG face' : 'Size',
					width: widest(['LONG face', ...long]),
					align: 'end',
				},
				...(anyShort
					? [{ head: 'SHORT face', width: widest(['SHORT face', ...short]), align: 'end' as const }]
					: []),
				{ head: 'Each', width: 14, align: 'end' },
			],
			rows,
		},
		width,
	);
}

function longSize(part: Part, figures: Figures): string {
	const size = figures.size(part.length, part.width);
	return part.shift === undefined ? size : `blank ${size}`;
}

/** The shorter face; a part whose faces lie one beside the other tells of both under its name. */
function shortText(part: Part, figures: Figures): string {
	if (part.short === undefined || part.shift !== undefined) return '';
	return figures.size(part.short.length, part.short.width);
}

function materialText(plan: Plan, part: Part, figures: Figures): string {
	const name = materialName(plan.job, part.material);
	return `${name}, ${figures.length(part.thickness)}`;
}
