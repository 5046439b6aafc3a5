import type { Plan } from '../../plan';
import { type Gluing, gluingOf } from '../../wrap';
import {
	type Block,
	type Leaf,
	leavesOf,
	widthOf,
	heading,
	paragraph,
	type Row,
	table,
} from '../page';
import { amountText, figuresOn } from '../wording';

/** What is glued, stage by stage, with the minutes it takes and a box to tick. */
export function gluingPages(plan: Plan): Leaf[] {
	const glued = plan.blanks.map((blank) => ({ blank, stages: gluingOf(blank, plan.job) }));
	const rows = glued.flatMap(({ blank, stages }) =>
		Array.from({ length: blank.count }, () => stages)
			.flat()
			.map((stage): Row => ({
				of: `blank:${blank.id}`,
				cells: [
					{ tick: true },
					{ text: blank.label, weight: 'semibold' },
					`${blank.name}: ${stageText(stage)}`,
					amountText({ number: stage.area, unit: 'm2' }, plan.job.shop.ruler),
					minutes(stage.coat),
					minutes(stage.dry),
					minutes(stage.lay),
					{ text: minutes(stage.open), weight: 'semibold' },
				],
			})),
	);
	if (rows.length === 0) return [];
	const width = widthOf(plan);
	const number = (head: string) => ({ head, width: 17, align: 'end' as const });
	const columns = [
		{ head: '', width: 3.6 },
		{ head: 'Mark', width: 14 },
		{ head: 'Cloth, in the order of the plan', width: { share: 1 } },
		{ head: 'Face', width: 20, align: 'end' as const },
		...[number('Coat'), number('Dry'), number('Lay'), number('Closed by')],
	];
	return leavesOf(
		plan,
		{ name: 'Wrapping', title: 'Wrapping, stage by stage' },
		[
			heading('Wrapping', width, `adhesive ${plan.job.shop.adhesive.way}`),
			kept(
				'Minutes from the first stroke on both faces; the tin has the last word. What is set into another piece is wrapped before it is set in. Coat no more than one stage; work from the middle outwards; cut reliefs and turn under once the face lies.',
				width,
			),
			...table({ columns, rows }, width),
		],
		figuresOn(plan.job.shop.ruler),
	);
}

/** Words that stand on one page with the table under them. */
const kept = (text: string, width: number): Block => ({ ...paragraph(text, width), keep: true });

function stageText({ what, n, of }: Gluing): string {
	return of === 1 ? what : `${what}, stage ${n} of ${of}`;
}

const minutes = (n: number): string => `${Math.ceil(n)} min`;
