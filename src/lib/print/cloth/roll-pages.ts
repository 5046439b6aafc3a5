import { clothName, clothOf, rollOf } from '../../job';
import type { ClothLayouts, RollLayout } from '../../layout';
import type { AuditFault } from '../../nest';
import type { Plan } from '../../plan';
import { blankDrawings, roomOnPage } from './blank-drawings';
import {
	drawnPages,
	type Block,
	type Leaf,
	leavesOf,
	widthOf,
	refusedBlocks,
	table,
	type Row,
	subheading,
} from '../page';
import { cutAsText, figuresOn, type Figures, patternText } from '../wording';
import { gluingPages } from './gluing';
import { rollDrawing, selvedgeOf, widthText } from './roll-drawing';

/** Each roll with the blanks laid on it, then each blank with its folds and relief cuts. */
export function rollPages(plan: Plan): Leaf[] {
	let first = true;
	const rolls = plan.cloths.flatMap((cloth) => [
		...cloth.rolls.flatMap((roll, i) => {
			if (roll.faults.length > 0) return refusedRoll(plan, cloth, roll.faults);
			const leaves = oneRoll(plan, cloth, roll, i, first);
			first = false;
			return leaves;
		}),
		...unplacedPages(plan, cloth),
	]);
	return [...rolls, ...blankPages(plan), ...gluingPages(plan)];
}

function nameOf(plan: Plan, cloth: ClothLayouts): string {
	return clothName(plan.job, cloth.cloth);
}

function oneRoll(
	plan: Plan,
	cloth: ClothLayouts,
	roll: RollLayout,
	i: number,
	first: boolean,
): Leaf[] {
	if (roll.answer.placed.length === 0) return [];
	const figures = figuresOn(plan.job.shop.ruler);
	const width = widthOf(plan);
	const nth = cloth.rolls.length > 1 ? `, roll ${i + 1} of ${cloth.rolls.length}` : '';
	return drawnPages(plan, {
		name: `${nameOf(plan, cloth)}${nth}`,
		note: noteOf(plan, cloth, roll, figures),
		drawings: [rollDrawing(roll, plan, { width, height: heightOf(roll) }, figures)],
		below: blanksTable(plan, roll, width, figures),
		where: 'cloth',
		about: [`cloth:${cloth.cloth}`, ...roll.answer.placed.map((p) => `blank:${p.id}`)],
		first,
		figures,
	});
}

/** A short pull off a wide roll is tall on paper and shows little. */
function heightOf({ pull, problem }: RollLayout): number {
	return pull < 0.6 * problem.width ? 56 : 110;
}

function noteOf(plan: Plan, cloth: ClothLayouts, roll: RollLayout, figures: Figures): string {
	const { lot: rackLot = '', code = '' } = rollOf(plan.job, roll.roll) ?? {};
	const lot = roll.pulled?.lot || rackLot;
	const saved = roll.napless < roll.answer.length;
	return [
		roll.pulled
			? pulledNote(roll.pulled.spoiled.length)
			: roll.owned
				? 'off an owned roll'
				: 'to buy',
		code === '' ? `roll ${roll.roll}` : `roll ${roll.roll}, code ${code}`,
		lot === '' ? '' : `dye lot ${lot}`,
		widthText(roll, plan, figures),
		`pull ${figures.bench(roll.pull)}`,
		patternText(roll, figures),
		roll.pulled ? '' : cutAsText(cloth, figures),
		saved ? `${figures.bench(roll.napless)} if the nap were ignored` : '',
		roll.answer.proven ? 'no layout is shorter' : '',
	]
		.filter((t) => t !== '')
		.join('  ·  ');
}

const pulledNote = (spoiled: number): string =>
	spoiled === 0 ? 'pulled' : `pulled, ${spoiled} of its blanks spoiled`;

/** The same numbers as the drawing, with boxes to tick. */
function blanksTable(plan: Plan, roll: RollLayout, width: number, figures: Figures): Block[] {
	const selvedge = selvedgeOf(roll, plan);
	const cloth = clothOf(plan.job, rollOf(plan.job, roll.roll)?.cloth);
	const straight = cloth?.nap === 'none' ? 'along the roll' : 'with the nap';
	const rows = [...roll.answer.placed]
		.sort((a, b) => a.x - b.x || a.y - b.y)
		.map((p): Row => {
			const blank = plan.blanks.find((b) => b.id === p.id);
			return {
				of: `blank:${p.id}`,
				cells: [
					{ tick: true },
					{ text: blank?.label ?? p.id, weight: 'semibold' },
					blank === undefined ? '' : wholeName(blank),
					figures.size(p.length, p.width),
					figures.bench(p.x),
					figures.bench(p.y + selvedge),
					p.turn === 0 ? straight : `turned ${p.turn}°`,
				],
			};
		});
	return table(
		{
			columns: [
				{ head: '', width: 3.6 },
				{ head: 'Mark', width: 14 },
				{ head: 'Blank', width: { share: 1 } },
				{ head: 'Size as it lies', width: 36, align: 'end' },
				{ head: 'Along', width: 20, align: 'end' },
				{ head: 'From edge', width: 20, align: 'end' },
				{ head: 'Lies', width: 22 },
			],
			rows,
		},
		width,
	);
}

/** 'Bench box: Band', and of what does not say it yet, which face: 'Side panel: its back'. */
function wholeName({ name, covers }: Plan['blanks'][number]): string {
	return name.endsWith(`: ${covers}`) ? name : `${name}: ${covers}`;
}

function blankPages(plan: Plan): Leaf[] {
	const figures = figuresOn(plan.job.shop.ruler);
	return drawnPages(plan, {
		name: 'Cloth blanks',
		note: 'drawn as the BACK of the cloth is seen',
		drawings: plan.blanks.flatMap((blank) =>
			blankDrawings(blank, plan, figures, roomOnPage(blank, figures)),
		),
		where: 'cloth',
		about: plan.blanks.map((b) => `blank:${b.id}`),
		first: false,
		figures,
	});
}

function refusedRoll(plan: Plan, cloth: ClothLayouts, faults: readonly AuditFault[]): Leaf[] {
	const blocks = refusedBlocks(nameOf(plan, cloth), faults, widthOf(plan));
	return leavesOf(plan, { name: 'Not printed', title: 'Layout refused' }, blocks);
}

function unplacedPages(plan: Plan, cloth: ClothLayouts): Leaf[] {
	if (cloth.unplaced.length === 0) return [];
	const width = widthOf(plan);
	const rows = cloth.unplaced.map((u) => {
		const blank = plan.blanks.find((b) => b.id === u.id);
		const name = blank === undefined ? u.id : `${blank.label} ${blank.name}`;
		return { cells: [name, String(u.count), u.why] };
	});
	const columns = [
		{ head: 'Blank', width: { share: 1 } },
		{ head: 'Count', width: 14, align: 'end' as const },
		{ head: 'Why', width: { share: 2 } },
	];
	return leavesOf(plan, { name: 'Cloth not laid out', title: 'Blanks without a roll' }, [
		subheading(`Not laid out: ${nameOf(plan, cloth)}`, width),
		...table({ columns, rows }, width),
	]);
}
