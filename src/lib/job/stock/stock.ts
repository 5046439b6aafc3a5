import { z } from '../zod';
import { amount, distanceField, id, name, owned, percent, size } from '../fields';

/** A kind of board: what a part is made of. Its measured thickness is what every size is worked out from. */
export const material = z.strictObject({
	id,
	name,
	kind: z
		.enum(['plywood', 'mdf', 'particleboard', 'hardboard', 'solid', 'plastic', 'other'])
		.default('plywood'),
	nominal: size,
	measured: size,
	/** Does the face have a grain that parts must follow? */
	grain: z.boolean().default(false),
	/** kg/m3; gives the mass of each part. */
	density: z.number().min(10).max(9000).default(680),
});

export const sheet = z.strictObject({
	id,
	material: id,
	length: size, // along the grain
	width: size,
	price: amount.prefault(0),
	owned: owned.default(0),
	/** How many more can be bought; null for as many as needed, 0 for none. */
	buy: owned.nullable().default(null),
	code: z.string().max(60).default(''),
	/** False for a sheet whose edges are cut square already. */
	factoryEdges: z.boolean().default(true),
});

export const offcut = z.strictObject({
	/** The label it carries on the rack. */
	id,
	material: id,
	length: size,
	width: size,
	count: z.number().int().min(1).max(1000).default(1),
});

export const cloth = z.strictObject({
	id,
	name,
	kind: z.enum(['carpet', 'vinyl', 'cloth', 'foam-backed', 'stretch']).default('carpet'),
	/** Thickness lying loose, and pressed into a gap. */
	loose: distanceField,
	pressed: distanceField,
	nap: z.enum(['one-way', 'two-way', 'none']).default('none'),
	/** Pattern repeat along and across the roll, 0 for a plain cloth. */
	repeat: distanceField.prefault(0),
	repeatAcross: distanceField.prefault(0),
	halfDrop: z.boolean().default(false),
	/** How far it gives under the hand, per cent. */
	stretchAlong: percent.default(3),
	stretchAcross: percent.default(5),
	/** How far it lets itself be pushed together, per cent: what an outside corner asks of it. */
	shrink: percent.default(2),
	/** Tightest edge it goes round without showing white or cracking. */
	tightest: distanceField.prefault(0),
	/** Relief cuts stop this many cloth thicknesses short of the edge. */
	relief: z.number().min(0.5).max(5).default(1),
	/** Widest a flat tab may stand off a curve when it is folded over it. */
	standOff: size.prefault(0.5),
	massPerArea: z.number().min(0).max(20).default(0.5), // kg/m2
	/** Blanks are cut off the roll as rectangles, or nested by their outlines. */
	cut: z.enum(['rectangle', 'outline']).default('rectangle'),
});

export const roll = z.strictObject({
	id,
	cloth: id,
	width: size,
	/** Width less the selvedges. */
	usable: size,
	/** Price of one metre along the roll. */
	price: amount.prefault(0),
	/** Sold in steps of this length. */
	step: size.prefault(100),
	/** What is left of an owned roll or remnant; null for cloth to be bought by the length. */
	left: size.nullable().default(null),
	lot: z.string().max(60).default(''),
	code: z.string().max(60).default(''),
});

export const sundry = z.strictObject({
	id,
	name,
	kind: z.enum([
		'contact-adhesive',
		'wood-glue',
		'screws',
		'brads',
		'sealant',
		'gasket',
		'dowel',
		't-nuts',
		'terminal',
		'lining',
		'stuffing',
		'damping',
		'foam',
		'clips',
		'magnets',
		'other',
	]),
	/** What one pack covers or holds, in the unit the kind is counted in: m2, m, litres or pieces. */
	pack: z.number().positive().max(1e6),
	price: amount.prefault(0),
	owned: z.number().min(0).max(1e6).default(0), // packs on the rack
	code: z.string().max(60).default(''),
	/** Of kind 'other': how many packs this job takes. */
	use: z.number().min(0).max(1e6).default(0),
	/** Sheets (damping, lining) lose this much to overlap, per cent. */
	overlap: percent.default(0),
	density: z
		.number()
		.min(10)
		.max(9000)
		.optional()
		.describe('Density: of rods, for the mass of the box; empty for beech, 720.'),
});

export const stock = z.strictObject({
	materials: z.array(material).max(200).default([]),
	sheets: z.array(sheet).max(400).default([]),
	offcuts: z.array(offcut).max(2000).default([]),
	cloths: z.array(cloth).max(200).default([]),
	rolls: z.array(roll).max(400).default([]),
	sundries: z.array(sundry).max(400).default([]),
});

export type Stock = z.output<typeof stock>;
export type Material = z.output<typeof material>;
export type StockSheet = z.output<typeof sheet>;
export type Offcut = z.output<typeof offcut>;
export type Cloth = z.output<typeof cloth>;
export type Roll = z.output<typeof roll>;
export type Sundry = z.output<typeof sundry>;
