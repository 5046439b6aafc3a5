import { materialName } from '../../job';
import { nth, printAngle, showMass } from '../../measure';
import type { Part } from '../../design';
import type { Plan } from '../../plan';
import {
	cautionBlocks,
	type Block,
	type Leaf,
	leavesOf,
	widthOf,
	table,
	widest,
	type Row,
	heading,
	subheading,
} from '../page';
import { figuresOn, type Figures, longText, pairTexts, partFacesText, sizesNote } from '../wording';

/**
 * All parts by what they belong to: LONG and SHORT face (blank and both faces where neither is
 * LONG), bevels, mass, notes.
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
			`${pieces} pieces  ·  length along the grain  ·  ${sizesNote(plan.parts)}`,
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
	return leavesOf(plan, { name: 'Parts', title: 'Parts list' }, blocks, figures);
}

function partRefs(plan: Plan): string[] {
	return plan.parts.flatMap((p) => [`part:${p.label}`, `part:${p.id}`]);
}

export function ownerName(plan: Plan, owner: string): string {
	const found = [...plan.job.boxes, ...plan.job.panels].find((thing) => thing.id === owner);
	return found?.name ?? 'Loose parts';
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
			[
				part.name,
				partFacesText(part, figures),
				...bevelLines(part, plan.job.shop.ruler.decimal),
				...part.notes,
				pairs.get(part.id) ?? '',
			]
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
	const size = `${figures.length(part.length)} × ${figures.length(part.width)}`;
	return part.shift === undefined ? size : `blank ${size}`;
}

/** The shorter face; a part whose faces lie one beside the other tells of both under its name. */
function shortText(part: Part, figures: Figures): string {
	if (part.short === undefined || part.shift !== undefined) return '';
	return `${figures.length(part.short.length)} × ${figures.length(part.short.width)}`;
}

/**
 * The saw's tilt at each bevelled edge, and which face is the longer one there or has its sharp
 * edge.
 */
function bevelLines(part: Part, decimal: '.' | ','): string[] {
	return part.bevels.map((b) => {
		const mitre = b.mitre === undefined ? '' : `, mitre gauge ${printAngle(b.mitre, decimal)}`;
		return `${b.edge}: ${b.side} edge tilt ${printAngle(b.tilt, decimal)}${mitre}, ${longText(part, b)}`;
	});
}

function materialText(plan: Plan, part: Part, figures: Figures): string {
	const name = materialName(plan.job, part.material);
	return `${name}, ${figures.length(part.thickness)}`;
}
