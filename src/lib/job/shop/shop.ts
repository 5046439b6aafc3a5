import { field, z } from '../zod';
import { LABEL_SHEETS } from './label-sheets';
import { BENCH_PAPERS } from './papers';
import {
	amount,
	type AmountField,
	DECIMALS,
	degreesField,
	distanceField,
	id,
	name,
	percent,
	size,
	USUAL_CURRENCY,
} from '../fields';
import { UNITS } from '../../measure';

/** A currency code of ISO 4217. */
export const CURRENCY = /^[A-Z]{3}$/;

export const saw = z.strictObject({
	id,
	name,
	kerf: field(size, { label: 'Kerf' }),
	trim: field(distanceField.prefault(0), {
		label: 'Trim cut',
		help: 'First trim of each factory edge, kerf included.',
	}),
	tiltLimit: field(degreesField(0, 60).default(45), {
		label: 'Tilt limit',
		help: 'Farthest the blade tilts from square.',
		unit: '°',
	}),
	fenceLimit: field(size.nullable().default(null), {
		label: 'Fence limit',
		help: 'Farthest the fence can be set; empty for no limit.',
	}),
	narrowestRip: field(size.nullable().default(null), {
		label: 'Narrowest safe rip',
		help: 'Narrowest strip this saw may rip safely; empty for no limit.',
	}),
	stages: field(z.number().int().min(2).max(9).nullable().default(null), {
		label: 'Most stages',
		help: 'How many times the direction of the cuts may change; empty for no limit.',
	}),
	first: field(z.enum(['any', 'rip', 'cross']).default('any'), {
		label: 'First cuts',
		options: { any: 'any way', rip: 'along the sheet', cross: 'across the sheet' },
	}),
	packet: field(size.nullable().default(null), {
		label: 'Packet',
		help: 'highest stack of equal sheets cut together; empty for one at a time',
	}),
});

/**
 * A week of work for one thing is more than any shop counts; far more would be no amount at all.
 */
const minutes = () => z.number().min(0).max(10_000);

const labourIn = (amount: AmountField) =>
	z.strictObject({
		hour: field(amount.prefault(45), { label: 'Price of an hour' }),
		/** Minutes for each of the things the plan can count. */
		minutes: field(
			z
				.strictObject({
					sheet: field(minutes().default(6), { label: 'Sheet', unit: 'min' }),
					cut: field(minutes().default(0.7), { label: 'Cut', unit: 'min' }),
					cutMetre: field(minutes().default(0.4), { label: 'Metre sawn', unit: 'min' }),
					setting: field(minutes().default(1.5), { label: 'Fence setting', unit: 'min' }),
					routedMetre: field(minutes().default(4), { label: 'Metre routed', unit: 'min' }),
					bondedSquareMetre: field(minutes().default(25), {
						label: 'Square metre bonded',
						unit: 'min',
					}),
					/** As of cloth where a shop never said: what was quoted stays. */
					foamSquareMetre: field(minutes().nullable().default(null), {
						label: 'Square metre of foam bonded',
						help: 'Empty: as a square metre of cloth.',
						unit: 'min',
					}),
					/** Lapped, cut through and pressed down: common practice, no source. */
					seamMetre: field(minutes().default(5), {
						label: 'Metre of seam cut',
						unit: 'min',
					}),
					/**
					 * Marked and cut, beyond a straight cut. None where a shop never said: what was
					 * quoted stays.
					 */
					outlineMetre: field(minutes().default(0), {
						label: 'Metre cut along an outline',
						help: 'More than a straight cut takes, marking counted.',
						unit: 'min',
					}),
					corner: field(minutes().default(4), { label: 'Corner wrapped', unit: 'min' }),
					relief: field(minutes().default(0.5), { label: 'Relief cut', unit: 'min' }),
					panel: field(minutes().default(30), { label: 'Panel', unit: 'min' }),
					box: field(minutes().default(120), { label: 'Box', unit: 'min' }),
					part: field(minutes().default(3), { label: 'Part', unit: 'min' }),
					/** None where a shop never said: what was quoted stays. */
					run: field(minutes().default(0), {
						label: 'Cable, loom or hose cut',
						help: 'For each length: measured off, cut, labelled at both ends. 0 counts none.',
						unit: 'min',
					}),
				})
				.prefault({}),
			{ label: 'Minutes for each' },
		),
	});

/** The shop, its prices read by this field. */
export const shopIn = (amount: AmountField) =>
	z.strictObject({
		name: field(z.string().max(120).default(''), { label: 'Name' }),
		address: field(z.string().max(600).default(''), {
			label: 'Address',
			help: 'Stands at the head of the quote: street, town, telephone, tax number.',
			edit: 'note',
		}),
		/** What the customer's paper says beside the prices. */
		quote: field(
			z
				.strictObject({
					validDays: field(z.number().int().min(1).max(730).nullable().default(null), {
						label: 'Valid for',
						help: 'Counted from the date of the job; empty says nothing.',
						unit: 'days',
					}),
					terms: field(z.string().max(4000).default(''), {
						label: 'Terms',
						help: 'Payment, delivery, what is not included.',
						edit: 'note',
					}),
				})
				.prefault({}),
			{ label: 'Quote' },
		),
		ruler: field(
			z
				.strictObject({
					unit: field(z.enum(['mm', 'cm', 'in']).default('mm'), { label: 'Unit', options: UNITS }),
					/** Inches are shown in fractions down to one over this. */
					fraction: field(z.union([z.literal(16), z.literal(32), z.literal(64)]).default(32), {
						label: 'Inches to one over',
					}),
					decimal: field(z.enum(['.', ',']).default('.'), {
						label: 'Decimal sign',
						options: DECIMALS,
					}),
				})
				.prefault({}),
			{ label: 'Ruler' },
		),
		paper: field(z.enum(['a4', 'letter', 'a3', 'tabloid']).default('a4'), {
			label: 'Paper',
			options: BENCH_PAPERS,
			help: 'Of the bench pack and the templates; letters and labels are on A4 or Letter.',
		}),
		labels: field(id.optional(), {
			label: 'Label sheets',
			edit: 'text',
			help: `one of ${LABEL_SHEETS.map((s) => s.id).join(', ')}; empty for the first of the paper`,
		}),
		/** Of more pieces alike, one label goes on the pile. Common practice, no source. */
		labelEach: field(z.number().int().min(1).max(10_000).default(24), {
			label: 'A label on each piece, up to',
			help: 'Of more pieces alike one label is printed, for the pile: 1 to 40 of 40.',
			unit: 'alike',
		}),
		currency: field(
			z
				.string()
				.regex(
					CURRENCY,
					'This is no currency code.|Use the three letters of ISO 4217, such as EUR.',
				)
				.default(USUAL_CURRENCY),
			{ label: 'Currency', help: 'Three letters, such as EUR or USD.' },
		),
		saws: field(
			z
				.array(saw)
				.min(1)
				.max(20)
				.prefault([{ id: 'table-saw', name: 'Table saw', kerf: 3.2, trim: 5 }]),
			{ label: 'Saws' },
		),
		/** The saw in use, by its id; the first one when absent. */
		saw: field(id.optional(), { label: 'Saw in use', refersTo: 'saws' }),
		/** How sheets are cut: edge to edge by saw, or free shapes by router. */
		method: field(z.enum(['saw', 'router']).default('saw'), { label: 'Sheets are cut by' }),
		router: field(
			z
				.strictObject({
					bit: field(size.prefault(6), {
						label: 'Bit diameter',
						help: 'Parts cut by router lie this far apart.',
					}),
					useHoles: field(z.boolean().default(false), {
						label: 'Use holes',
						help: 'Let small parts lie inside the cut-outs of larger ones.',
					}),
				})
				.prefault({}),
			{ label: 'Router' },
		),
		/** The knife groove's cutter and where it runs. */
		groove: field(
			z
				.strictObject({
					width: field(size.prefault(4), { label: 'Width' }),
					depth: field(size.prefault(5), { label: 'Depth' }),
					offset: field(distanceField.prefault(12), { label: 'From the edge' }),
				})
				.prefault({}),
			{ label: 'Knife groove' },
		),
		/** The smallest offcut worth racking. */
		keep: field(
			z
				.strictObject({
					length: field(size.prefault(300), { label: 'Length' }),
					width: field(size.prefault(150), { label: 'Width' }),
				})
				.prefault({}),
			{ label: 'Smallest offcut worth racking' },
		),
		labour: field(labourIn(amount).prefault({}), { label: 'Labour' }),
		/**
		 * How contact adhesive is put on, and how long it stays bondable: large panels are glued in
		 * stages.
		 */
		adhesive: field(
			z
				.strictObject({
					way: field(z.enum(['brushed', 'sprayed']).default('brushed'), {
						label: 'Adhesive',
						help: 'brushed or rolled, or sprayed.',
					}),
					open: field(z.number().min(5).max(240).nullable().default(null), {
						label: 'Open time',
						help: 'minutes, from the tin. Empty: the usual for that way.',
					}),
				})
				.prefault({}),
			{ label: 'Adhesive' },
		),
		/** Both are reckoned from what the thing itself costs, and neither from the other. */
		materialMarkup: field(percent.default(0), {
			label: 'Markup on material',
			help: 'Earned on what material costs, beside the profit.',
			unit: '%',
		}),
		overhead: field(percent.default(0), {
			label: 'Overhead on labour',
			help: 'Rent, power, tools: a cost, in per cent of what labour costs.',
			unit: '%',
		}),
		/** One of the two; both are shown. */
		profit: field(
			z
				.discriminatedUnion('by', [
					z.strictObject({
						by: z.literal('markup'),
						percent: field(percent, { label: 'Per cent', unit: '%' }),
					}),
					z.strictObject({
						by: z.literal('margin'),
						percent: field(z.number().min(0).max(95), { label: 'Per cent', unit: '%' }),
					}),
				])
				.default({ by: 'markup', percent: 30 }),
			{ label: 'Profit' },
		),
		tax: field(
			z
				.strictObject({
					percent: field(percent.default(0), { label: 'Per cent', unit: '%' }),
					labour: field(z.boolean().default(false), { label: 'Labour' }),
				})
				.prefault({}),
			{ label: 'Tax' },
		),
		/** Counted from the date of the job, which is all a plan knows of today. */
		priceAge: field(z.number().int().min(1).max(3650).nullable().default(180), {
			label: 'Prices hold for',
			help: 'A price given longer before the date of the job is asked after; empty never asks.',
			unit: 'days',
		}),
		creditOffcuts: field(z.boolean().default(false), {
			label: 'Credit offcuts to the job',
			help: 'Take what goes back on the rack off the price.',
		}),
		/**
		 * Spare bought over what is needed, in per cent of the need, for sundries sold by measure.
		 */
		spare: field(percent.default(10), {
			label: 'Spare on sundries',
			help: 'Bought over what is needed, in per cent of the need.',
			unit: '%',
		}),
	});

/** The shop, priced in the usual currency. */
export const shop = shopIn(amount);

export type Shop = z.output<ReturnType<typeof shopIn>>;
export type Saw = z.output<typeof saw>;
