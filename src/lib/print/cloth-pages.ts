import type { ClothLayouts, RollLayout } from '../layout/layouts';
import type { Plan } from '../plan';
import { blankDrawings } from './blank-drawings';
import { drawnPages } from './drawing-pages';
import { figuresOn, type Figures } from './figures';
import type { Block } from './flow';
import type { Leaf } from './frame';
import { widthOf } from './leaves';
import { rollDrawing } from './roll-drawing';
import { paragraph } from './words';

/** How each cloth lies on its rolls, and every blank cut from it. A layout that failed its audit is refused in words. */
export function clothPages(plan: Plan): Leaf[] {
	return plan.cloths.flatMap((laid, i) => {
		const figures = figuresOn(plan.job.shop.ruler);
		const sound = laid.rolls.filter((r) => r.faults.length === 0);
		const name = plan.job.stock.cloths.find((c) => c.id === laid.cloth)?.name ?? laid.cloth;
		const blanks = plan.blanks.filter((b) => b.cloth === laid.cloth);
		return drawnPages(plan, {
			name,
			note: 'cloth',
			drawings: [
				...sound.map((r) => rollDrawing(r, plan, undefined, figures)),
				...blanks.flatMap((b) => blankDrawings(b, plan, figures)),
			],
			below: wordsOn(laid, plan, figures),
			where: 'cloth',
			about: [`cloth:${laid.cloth}`],
			first: i === 0,
			figures,
		});
	});
}

function wordsOn(laid: ClothLayouts, plan: Plan, figures: Figures): Block[] {
	const width = widthOf(plan);
	const says = [
		...laid.rolls.map((r) => (r.faults.length > 0 ? refusal(r) : pullText(r, figures))),
		...laid.unplaced.map((u) => `${u.count} of ${labelOf(plan, u.id)} found no place. ${u.why}`),
	];
	return says.map((text) => paragraph(text, width));
}

const labelOf = (plan: Plan, id: string): string =>
	plan.blanks.find((b) => b.id === id)?.label ?? id;

function refusal(roll: RollLayout): string {
	const first = roll.faults[0];
	return `The layout on roll ${roll.roll} failed its check and is not drawn: ${first?.where ?? ''} ${first?.what ?? ''}`;
}

function pullText(roll: RollLayout, figures: Figures): string {
	const from = roll.owned ? `from what is left of roll ${roll.roll}` : `off roll ${roll.roll}`;
	const pull = `Pull ${figures.bench(roll.pull)} ${from}; ${figures.bench(roll.answer.length)} of it is used.`;
	const nap = roll.answer.length - roll.napless;
	return nap > 0
		? `${pull} The nap costs ${figures.bench(nap)}: without it ${figures.bench(roll.napless)} would do.`
		: pull;
}
