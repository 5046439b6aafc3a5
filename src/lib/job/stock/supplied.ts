import { amount, type AmountField, id, name } from '../fields';
import { field, z } from '../zod';

/*
 * Who sells a thing of the rack, under which code, in what numbers, at which price and since when.
 */

const DAY = 86_400_000; // ms

/** A day counted from 1970, of a text that is one of the calendar; null of any other. */
export function dayNumber(text: string): number | null {
	if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return null;
	const time = Date.parse(`${text}T00:00:00Z`);
	if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== text) return null;
	return time / DAY;
}

/** Where it is bought; a thing of the rack that says nothing of it is bought anywhere. */
export const boughtFrom = {
	code: field(z.string().max(60).default(''), { label: 'Supplier code' }),
	supplier: field(id.optional(), {
		label: 'Supplier',
		help: 'Who sells it; empty for anybody.',
		refersTo: 'suppliers',
	}),
	priced: field(z.string().max(30).default(''), {
		label: 'Price of',
		help: 'The day the price was given, as 2026-11-30; empty when nobody knows.',
	}),
};

/** How many are bought at once. */
export const atOnce = z.number().int().min(1).max(10_000);

export const soldBy = field(atOnce.default(1), {
	label: 'Sold by',
	help: 'Bought in whole multiples of this many; 1 for any number.',
});

/**
 * Lower prices from so many on: `from` counts what the price is for, a length along a roll.
 */
export const breaksIn = <From extends z.ZodType>(price: AmountField, from: From) =>
	field(
		z
			.array(
				z.strictObject({
					from: field(from, { label: 'From', help: 'Bought at once, this much or more.' }),
					price: field(price, { label: 'Price' }),
				}),
			)
			.max(20)
			.default([]),
		{ label: 'Price breaks' },
	);

export const supplierIn = (money: AmountField = amount) =>
	z.strictObject({
		id,
		name,
		least: field(money.prefault(0), {
			label: 'Least order',
			help: 'They send no order that comes to less; 0 for any.',
		}),
		contact: field(z.string().max(300).default(''), {
			label: 'Contact',
			help: 'Address for the mail, telephone, customer number.',
		}),
	});
