import { z } from './zod';
import { box } from './box';
import { name, note } from './fields';
import { loosePart } from './loose-part';
import { panel } from './panel';
import { pinnedLayout } from './pinned';
import { shop } from './shop';
import { stock } from './stock';
import { VERSION } from './upgrades';

/** Everything one job file holds. */
export const job = z.strictObject({
	format: z.literal('kerf-and-nap job').default('kerf-and-nap job'),
	version: z.literal(VERSION).default(VERSION),
	name: name.default('New job'),
	number: z.string().max(40).default(''),
	revision: z.string().max(10).default('A'),
	date: z.string().max(30).default(''),
	customer: z.string().max(200).default(''),
	vehicle: z.string().max(200).default(''),
	notes: note.default(''),
	shop: shop.prefault({}),
	stock: stock.prefault({}),
	boxes: z.array(box).max(60).default([]),
	panels: z.array(panel).max(200).default([]),
	parts: z.array(loosePart).max(3000).default([]),
	/** Layouts printed or partly cut, which later edits leave alone. */
	pinned: z.array(pinnedLayout).max(200).default([]),
	/** Cut numbers ticked off at the bench, by layout key. */
	ticked: z.record(z.string(), z.array(z.number().int().min(1))).default({}),
	/** Search chosen by the person with 'keep looking'. */
	seed: z.number().int().min(0).max(0xffffffff).default(1),
	/** How long that search went on, and the report at which it was ended; absent for the usual one. */
	look: z
		.strictObject({
			effort: z.number().int().min(1).max(1_000_000),
			stopped: z.number().int().min(1).max(1_000_000_000).nullable().default(null),
		})
		.nullable()
		.default(null),
});

/** What a file may hold (lengths as numbers of millimetres or texts). */
export type JobFile = z.input<typeof job>;
/** What was read: lengths on the grid, every default filled in. */
export type Job = z.output<typeof job>;
