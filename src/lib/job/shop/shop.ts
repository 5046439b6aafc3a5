import { z } from '../zod';
import { LABEL_SHEETS } from './label-sheets';
import { amount, degreesField, distanceField, id, name, percent, size } from '../fields';

/** A currency code of ISO 4217. */
export const CURRENCY = /^[A-Z]{3}$/;

export const saw = z.strictObject({
	id,
	name,
	kerf: size,
	/** First trim of each factory edge, kerf included. */
	trim: distanceField.prefault(0),
	/** Farthest the blade tilts from square. */
	tiltLimit: degreesField(0, 60).default(45),
	fenceLimit: size.nullable().default(null),
	narrowestRip: size.nullable().default(null),
	stages: z.number().int().min(2).max(9).nullable().default(null),
	first: z.enum(['any', 'rip', 'cross']).default('any'),
	packet: size
		.nullable()
		.default(null)
		.describe('Packet: highest stack of equal sheets cut together; empty for one at a time'),
});

export const labour = z.strictObject({
	hour: amount.prefault(45),
	/** Minutes for each of the things the plan can count. */
	minutes: z
		.strictObject({
			sheet: z.number().min(0).default(6),
			cut: z.number().min(0).default(0.7),
			cutMetre: z.number().min(0).default(0.4),
			setting: z.number().min(0).default(1.5),
			routedMetre: z.number().min(0).default(4),
			bondedSquareMetre: z.number().min(0).default(25),
			corner: z.number().min(0).default(4),
			relief: z.number().min(0).default(0.5),
			panel: z.number().min(0).default(30),
			box: z.number().min(0).default(120),
			part: z.number().min(0).default(3),
		})
		.prefault({}),
});

export const shop = z.strictObject({
	name: z.string().max(120).default(''),
	ruler: z
		.strictObject({
			unit: z.enum(['mm', 'cm', 'in']).default('mm'),
			/** Inches are shown in fractions down to one over this. */
			fraction: z.union([z.literal(16), z.literal(32), z.literal(64)]).default(32),
			decimal: z.enum(['.', ',']).default('.'),
		})
		.prefault({}),
	paper: z.enum(['a4', 'letter']).default('a4'),
	labels: id
		.optional()
		.describe(
			`Label sheets: one of ${LABEL_SHEETS.map((s) => s.id).join(', ')}; empty for the first of the paper`,
		),
	currency: z
		.string()
		.regex(CURRENCY, 'This is no currency code.|Use the three letters of ISO 4217, such as EUR.')
		.default('EUR'),
	saws: z
		.array(saw)
		.min(1)
		.max(20)
		.prefault([{ id: 'table-saw', name: 'Table saw', kerf: 3.2, trim: 5 }]),
	/** The saw in use, by its id; the first one when absent. */
	saw: id.optional(),
	/** How sheets are cut: edge to edge by saw, or free shapes by router. */
	method: z.enum(['saw', 'router']).default('saw'),
	router: z
		.strictObject({ bit: size.prefault(6), useHoles: z.boolean().default(false) })
		.prefault({}),
	/** The knife groove's cutter and where it runs. */
	groove: z
		.strictObject({
			width: size.prefault(4),
			depth: size.prefault(5),
			offset: distanceField.prefault(12),
		})
		.prefault({}),
	/** The smallest offcut worth racking. */
	keep: z.strictObject({ length: size.prefault(300), width: size.prefault(150) }).prefault({}),
	labour: labour.prefault({}),
	/** How contact adhesive is put on, and how long it stays bondable: large panels are glued in stages. */
	adhesive: z
		.strictObject({
			way: z
				.enum(['brushed', 'sprayed'])
				.default('brushed')
				.describe('Adhesive: brushed or rolled, or sprayed.'),
			open: z
				.number()
				.min(5)
				.max(240)
				.nullable()
				.default(null)
				.describe('Open time: minutes, from the tin. Empty: the usual for that way.'),
		})
		.prefault({}),
	/** One of the two; both are shown. */
	profit: z
		.discriminatedUnion('by', [
			z.strictObject({ by: z.literal('markup'), percent }),
			z.strictObject({ by: z.literal('margin'), percent: z.number().min(0).max(95) }),
		])
		.default({ by: 'markup', percent: 30 }),
	tax: z
		.strictObject({ percent: percent.default(0), labour: z.boolean().default(false) })
		.prefault({}),
	creditOffcuts: z.boolean().default(false),
	/** Spare bought over what is needed, in per cent of the need, for sundries sold by measure. */
	spare: percent.default(10),
});

export type Shop = z.output<typeof shop>;
export type Saw = z.output<typeof saw>;
