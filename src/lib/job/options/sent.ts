import type { AmountField } from '../fields';
import { field, z } from '../zod';

/** A quote as it was sent: its figures stay, whatever becomes of the job and the prices. */
export const sentQuoteIn = (amount: AmountField) =>
	z.strictObject({
		date: field(z.string().max(30), { label: 'Sent on' }),
		/** Another one took its place. */
		replaced: field(z.boolean().default(false), { label: 'Replaced' }),
		lines: field(
			z
				.array(
					z.strictObject({
						what: field(z.string().max(300), { label: 'What' }),
						price: field(amount, { label: 'Price' }),
					}),
				)
				.max(4000),
			{ label: 'Lines' },
		),
		net: field(amount, { label: 'Net' }),
		taxPercent: field(z.number().min(0).max(1000), { label: 'Tax', unit: '%' }),
		taxed: field(amount, { label: 'Taxed' }),
		tax: field(amount, { label: 'Tax' }),
		total: field(amount, { label: 'Total' }),
		options: field(
			z
				.array(
					z.strictObject({
						name: field(z.string().max(120), { label: 'Name' }),
						note: field(z.string().max(4000).default(''), { label: 'Note' }),
						/** Of the whole job with it. */
						total: field(amount, { label: 'Total' }),
					}),
				)
				.max(40)
				.default([]),
			{ label: 'Options' },
		),
	});
