import { buyLength, clothName, rollOf, type Job } from '../job';
import type { ClothLayouts, RollLayout } from '../layout';
import { toMm } from '../measure';
import type { Amount, OrderLine } from './types';

const metres = (ticks: number): Amount => ({ number: toMm(ticks) / 1000, unit: 'm' });

/**
 * Cloth to pull off each roll: remnants from the rack, the rest in the steps it is sold in. What is
 * pulled already was paid for and booked: it is not ordered.
 */
export function clothLines(job: Job, cloths: ClothLayouts): OrderLine[] {
	const name = clothName(job, cloths.cloth);
	return cloths.rolls
		.filter((layout) => layout.pull > 0 && !layout.pulled)
		.map((layout) => rollLine(job, name, layout));
}

function rollLine(job: Job, name: string, layout: RollLayout): OrderLine {
	const roll = rollOf(job, layout.roll);
	if (!roll)
		throw new Error(`bug: a layout on roll '${layout.roll}', which the stock does not hold`);
	const wanted = layout.owned ? 0 : layout.pull;
	const { count: buy, each, total, more } = buyLength(roll, wanted, job.shop.ruler);
	return {
		group: 'cloth',
		id: roll.id,
		what: name,
		code: roll.code,
		supplier: roll.supplier ?? '',
		priced: roll.priced,
		need: metres(layout.answer.length),
		rack: metres(roll.left ?? 0),
		fromRack: metres(layout.owned ? layout.answer.length : 0),
		buy,
		more,
		unit: 'step',
		pack: roll.step,
		each,
		total,
		spare: metres(layout.owned ? 0 : buy * roll.step - layout.answer.length),
		sparePercent: 0,
		for: [],
	};
}
