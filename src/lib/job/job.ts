import { BENCH_CHAPTERS } from './bench-pages';
import { handPlace } from './by-hand';
import { field, z } from './zod';
import { pulledClothIn, tookMaterial, tookTime, usedSundry } from './booked';
import { box } from './box';
import { amount, type AmountField, amountIn, name, note, USUAL_CURRENCY } from './fields';
import { handover } from './handover';
import { loosePart } from './loose-part';
import { jobOption, sentQuoteIn } from './options';
import { panel } from './panel';
import { carriedPictures, MOST_PHOTOGRAPHS, photograph } from './photographs';
import { pinnedLayout } from './pinned';
import { runs } from './run';
import { shopIn } from './shop';
import { stockIn } from './stock';
import { VERSION } from './upgrades';

const cutNumber = field(z.number().int().min(1), { label: 'Cut' });

const workIn = (amount: AmountField) =>
	z.strictObject({
		what: field(name, { label: 'Work' }),
		hours: field(z.number().min(0).max(10_000), { label: 'Hours', unit: 'h' }),
		hour: field(amount.nullable().default(null), {
			label: 'Price of an hour',
			help: "Empty for the shop's.",
		}),
	});

const jobWith = (amount: AmountField) =>
	z.strictObject({
		format: field(z.literal('kerf-and-nap job').default('kerf-and-nap job'), { label: 'Format' }),
		version: field(z.literal(VERSION).default(VERSION), { label: 'Version' }),
		name: field(name.default('New job'), { label: 'Name' }),
		number: field(z.string().max(40).default(''), { label: 'Job number' }),
		revision: field(z.string().max(10).default('A'), { label: 'Revision' }),
		date: field(z.string().max(30).default(''), { label: 'Date' }),
		customer: field(z.string().max(200).default(''), { label: 'Customer' }),
		vehicle: field(z.string().max(200).default(''), { label: 'Vehicle' }),
		notes: field(note.default(''), { label: 'Notes' }),
		shop: field(shopIn(amount).prefault({}), { label: 'Shop' }),
		stock: field(stockIn(amount).prefault({}), { label: 'Rack' }),
		boxes: field(z.array(box).max(60).default([]), { label: 'Boxes' }),
		panels: field(z.array(panel).max(200).default([]), { label: 'Panels' }),
		parts: field(z.array(loosePart).max(3000).default([]), { label: 'Parts' }),
		runs: field(runs, { label: 'Runs of cable, loom and hose' }),
		/** Chapters of the bench pack that are printed, in their order; all when absent. */
		pages: field(z.array(z.enum(BENCH_CHAPTERS)).min(1).max(BENCH_CHAPTERS.length).optional(), {
			label: 'Pages of the bench pack',
			help: 'Chapters in the order they are printed; empty for all.',
		}),
		/** Work nobody can count from the drawings. */
		work: field(z.array(workIn(amount)).max(60).default([]), { label: 'Hours of work' }),
		/** Alternatives, each planned by itself and priced as a difference. */
		options: field(z.array(jobOption).max(40).default([]), { label: 'Options in the quote' }),
		/** Quotes as they were sent, the last one at the end. */
		sent: field(z.array(sentQuoteIn(amount)).max(60).default([]), { label: 'Quotes sent' }),
		/** Nothing of it changes the plan. */
		handover: field(handover.prefault({}), { label: 'Handover' }),
		/** Nothing of them changes the plan. */
		photographs: field(z.array(photograph).max(MOST_PHOTOGRAPHS).default([]), {
			label: 'Photographs',
		}),
		/** Only in a file by itself, which carries its pictures along; never in a job in hand. */
		pictures: field(carriedPictures.optional(), { label: 'Pictures' }),
		/** Layouts printed or partly cut, which later edits leave alone. */
		pinned: field(z.array(pinnedLayout).max(200).default([]), { label: 'Pinned' }),
		/** Parts laid by hand, which every plan leaves where they lie. */
		byHand: field(z.array(handPlace).max(2000).default([]), { label: 'Laid by hand' }),
		/** Cloth pulled and sundries used, booked like sheets that are cut. */
		pulled: field(z.array(pulledClothIn(amount)).max(200).default([]), { label: 'Cloth pulled' }),
		used: field(z.array(usedSundry).max(400).default([]), { label: 'Sundries used' }),
		/** What it took, entered after the work; nothing of it changes the plan. */
		took: field(
			z
				.strictObject({
					times: field(z.array(tookTime).max(200).default([]), { label: 'Times' }),
					materials: field(z.array(tookMaterial).max(600).default([]), { label: 'Materials' }),
				})
				.prefault({}),
			{ label: 'What it took' },
		),
		/** Cut numbers ticked off at the bench, by layout key. */
		ticked: field(z.record(z.string(), z.array(cutNumber)).default({}), {
			label: 'Ticked',
		}),
		/** Search chosen by the person with 'keep looking'. */
		seed: field(z.number().int().min(0).max(0xffffffff).default(1), { label: 'Seed' }),
		/**
		 * How long that search went on, and the report at which it was ended; absent for the usual
		 * one.
		 */
		look: field(
			z
				.strictObject({
					effort: field(z.number().int().min(1).max(1_000_000), { label: 'Effort' }),
					stopped: field(z.number().int().min(1).max(1_000_000_000).nullable().default(null), {
						label: 'Stopped',
					}),
				})
				.nullable()
				.default(null),
			{ label: 'Look' },
		),
	});

/** Everything one job file holds; its amounts are read in the usual currency. */
export const job = jobWith(amount);

/** As {@link job}, its amounts read in this currency. */
export function jobIn(currency: string): typeof job {
	return currency === USUAL_CURRENCY ? job : jobWith(amountIn(currency));
}

/** What a file may hold (lengths as numbers of millimetres or texts). */
export type JobFile = z.input<typeof job>;
/** What was read: lengths on the grid, every default filled in. */
export type Job = z.output<typeof job>;
