import { priceOfLength, rollOf, sheetOf, type Job } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import { mm } from '../measure';
import type { Order } from './types';

/*
 * What the material is worth, in hundredths as fractions (rounded once, in the quote): taken from
 * the rack, in the work, and left over as offcuts. A sheet's worth is its list price; an offcut's
 * is its share of the material's sheet by area.
 */

/**
 * Price of one square tick of a material: its cheapest listed sheet by area, 0 when none has a
 * price.
 */
export function perArea(job: Job, material: string): number {
	const prices = job.stock.sheets
		.filter((s) => s.material === material && s.price > 0)
		.map((s) => s.price / (s.length * s.width));
	return prices.length > 0 ? Math.min(...prices) : 0;
}

/**
 * Owned sheets and cloth at list price. Offcuts were paid for by the job they fell off: their line
 * has no price.
 */
export function worthFromRack(job: Job, order: Order): number {
	return order.lines.reduce((sum, l) => sum + worthOf(job, l), 0);
}

/** What one line takes off the rack is worth. */
export function worthOf(job: Job, line: Order['lines'][number]): number {
	// At the list price of one: what is bought beside it may be cheaper for its number.
	if (line.group === 'sheets') return (sheetOf(job, line.id)?.price ?? 0) * line.fromRack.number;
	if (line.group === 'cloth') {
		const roll = rollOf(job, line.id);
		return roll ? priceOfLength(roll, mm(1000 * line.fromRack.number), job.shop.ruler) : 0;
	}
	const sundry = job.stock.sundries.find((s) => s.id === line.id);
	return ((sundry?.price ?? 0) * line.fromRack.number) / line.pack;
}

/**
 * Worth of what is really in the work: placed areas, the length of cloth used by area, sundries
 * without spare.
 */
export function worthUsed(
	job: Job,
	boards: readonly BoardLayouts[],
	cloths: readonly ClothLayouts[],
	order: Order,
): number {
	const board = boards.reduce((sum, b) => sum + placedArea(b) * perArea(job, b.material), 0);
	const cloth = cloths
		.flatMap((c) => c.rolls.filter((layout) => !layout.pulled))
		.reduce((sum, layout) => {
			const roll = rollOf(job, layout.roll);
			const area = layout.answer.placed.reduce((a, p) => a + p.length * p.width, 0);
			// Area over the roll's width is a length.
			return sum + (roll ? priceOfLength(roll, area / roll.usable, job.shop.ruler) : 0);
		}, 0);
	const sundries = order.lines
		.filter((l) => l.group === 'sundries')
		.reduce((sum, l) => sum + (l.each * l.need.number) / l.pack, 0);
	return board + cloth + sundries;
}

function placedArea(boards: BoardLayouts): number {
	return boards.answer.layouts
		.filter((_, i) => !boards.sources[i]?.cut)
		.flatMap((l) => l.placed)
		.reduce((sum, p) => sum + p.length * p.width, 0);
}

/** Worth of the offcuts that go back on the rack off sheets bought or owned (not off offcuts). */
export function worthOfOffcuts(job: Job, boards: readonly BoardLayouts[]): number {
	return boards.reduce((sum, b) => {
		const area = b.answer.layouts
			.filter((_, i) => b.sources[i]?.kind !== 'offcut' && !b.sources[i]?.cut)
			.flatMap((l) => l.offcuts)
			.reduce((a, r) => a + r.length * r.width, 0);
		return sum + area * perArea(job, b.material);
	}, 0);
}
