import { field, z } from '../zod';
import { amount, type AmountField, distanceField, id, name, owned, percent, size } from '../fields';
import { atOnce, boughtFrom, breaksIn, soldBy, supplierIn } from './supplied';

/**
 * A kind of board: what a part is made of. Its measured thickness is what every size is worked out
 * from.
 */
export const material = z.strictObject({
	id,
	name,
	kind: field(
		z
			.enum(['plywood', 'mdf', 'particleboard', 'hardboard', 'solid', 'plastic', 'other'])
			.default('plywood'),
		{ label: 'Kind', options: { mdf: 'MDF' } },
	),
	nominal: field(size, { label: 'Nominal thickness', help: 'What the seller calls it.' }),
	measured: field(size, {
		label: 'Measured thickness',
		help: 'What the caliper says; every size is worked out from this.',
	}),
	/** Holds for this very value: another one measured is told again. */
	accepted: field(size.nullable().default(null), {
		label: 'Accepted thickness',
		help: 'A measured thickness that is far from the nominal one and right all the same.',
	}),
	/** Does the face have a grain that parts must follow? */
	grain: field(z.boolean().default(false), { label: 'Grain' }),
	/** Gives the mass of each part. */
	density: field(z.number().min(10).max(9000).default(680), { label: 'Density', unit: 'kg/m³' }),
});

const sheetIn = (amount: AmountField) =>
	z.strictObject({
		id,
		material: field(id, { label: 'Board', refersTo: 'materials' }),
		length: field(size, { label: 'Length' }), // along the grain
		width: field(size, { label: 'Width' }),
		price: field(amount.prefault(0), { label: 'Price' }),
		owned: field(owned.default(0), { label: 'On the rack', help: 'How many are on the rack.' }),
		/** Null for as many as needed, 0 for none. */
		buy: field(owned.nullable().default(null), {
			label: 'Most to buy',
			help: 'How many more can be bought; empty for as many as needed.',
		}),
		least: field(owned.default(0), {
			label: 'Least to buy',
			help: 'The seller sends no fewer; what is over is spare. 0 for any number.',
		}),
		soldBy,
		...boughtFrom,
		breaks: breaksIn(amount, atOnce),
		factoryEdges: field(z.boolean().default(true), {
			label: 'Factory edges',
			help: 'Off for a sheet whose edges are cut square already.',
		}),
	});

/** Any thickness a cloth may have. */
export const clothThickness = distanceField;

export const offcut = z.strictObject({
	/** The label it carries on the rack. */
	id,
	material: field(id, { label: 'Board', refersTo: 'materials' }),
	length: field(size, { label: 'Length' }),
	width: field(size, { label: 'Width' }),
	count: field(z.number().int().min(1).max(1000).default(1), { label: 'How many' }),
});

export const cloth = z.strictObject({
	id,
	name,
	kind: field(z.enum(['carpet', 'vinyl', 'cloth', 'foam-backed', 'stretch']).default('carpet'), {
		label: 'Kind',
		options: { stretch: 'stretch cloth' },
	}),
	loose: field(clothThickness, { label: 'Thickness loose', help: 'As it lies on the roll.' }),
	pressed: field(clothThickness, {
		label: 'Thickness pressed',
		help: 'As it is pressed into a gap; the fit is worked out from this.',
	}),
	nap: field(z.enum(['one-way', 'two-way', 'none']).default('none'), { label: 'Nap' }),
	repeat: field(distanceField.prefault(0), {
		label: 'Repeat along',
		help: 'Length of the pattern along the roll; 0 for a plain cloth.',
	}),
	repeatAcross: field(distanceField.prefault(0), {
		label: 'Repeat across',
		help: 'Width of the pattern across the roll; 0 when it need not match across.',
	}),
	halfDrop: field(z.boolean().default(false), {
		label: 'Half drop',
		help: 'The pattern starts half a repeat later in every second width of it.',
	}),
	/** How far it gives under the hand. */
	stretchAlong: field(percent.default(3), { label: 'Stretch along', unit: '%' }),
	stretchAcross: field(percent.default(5), { label: 'Stretch across', unit: '%' }),
	shrink: field(percent.default(2), {
		label: 'Shrink',
		help: 'How far it lets itself be pushed together at an outside corner.',
		unit: '%',
	}),
	tightest: field(distanceField.prefault(0), {
		label: 'Tightest edge',
		help: 'Tightest edge it goes round without cracking or showing white.',
	}),
	relief: field(z.number().min(0.5).max(5).default(1), {
		label: 'Relief cut',
		help: 'Relief cuts stop this many cloth thicknesses short of the edge.',
	}),
	standOff: field(size.prefault(0.5), {
		label: 'Stand-off at curves',
		help: 'Farthest a flat tab may stand off a curve.',
	}),
	massPerArea: field(z.number().min(0).max(20).default(0.5), {
		label: 'Mass per area',
		unit: 'kg/m²',
	}),
	cut: field(z.enum(['rectangle', 'outline', 'cheaper']).default('rectangle'), {
		label: 'Blanks cut',
		help: 'Off the roll as rectangles, nested by their outlines, or whichever is cheaper once the time to cut along outlines is counted.',
		options: {
			rectangle: 'as rectangles',
			outline: 'by their outlines',
			cheaper: 'the cheaper of both',
		},
	}),
});

const rollIn = (amount: AmountField) =>
	z.strictObject({
		id,
		cloth: field(id, { label: 'Cloth', refersTo: 'cloths' }),
		width: field(size, { label: 'Width' }),
		usable: field(size, { label: 'Usable width', help: 'Width less the selvedges.' }),
		price: field(amount.prefault(0), { label: 'Price' }),
		/** Null follows the ruler of the job: metres, or yards where that measures in inches. */
		per: field(z.enum(['metre', 'yard', 'piece']).nullable().default(null), {
			label: 'Price is for',
			help: 'A metre or a yard along the roll, or a piece as long as one step. Empty: a metre, or a yard where the ruler measures in inches.',
			options: { metre: 'a metre', yard: 'a yard', piece: 'a piece (one step)' },
		}),
		step: field(size.prefault(100), {
			label: 'Sold in steps of',
			help: 'The seller cuts in steps of this length.',
		}),
		least: field(distanceField.prefault(0), {
			label: 'Least to buy',
			help: 'The seller cuts no shorter length; what is over is spare. 0 for any length.',
		}),
		left: field(size.nullable().default(null), {
			label: 'Left',
			help: 'What is left of a roll you own; empty for cloth bought by the length.',
		}),
		cuts: field(z.enum(['counted', 'whole']).default('counted'), {
			label: 'A pattern is cut',
			options: { counted: 'as counted', whole: 'every cut in whole repeats' },
			help: 'With a pattern along the roll: to the length the blanks take, or every cut in whole repeats.',
		}),
		begins: field(z.enum(['anywhere', 'pattern']).default('anywhere'), {
			label: 'The roll begins',
			options: { anywhere: 'anywhere in the pattern', pattern: 'where the pattern starts' },
			help: 'Begun anywhere, up to a repeat goes by before the pattern starts.',
		}),
		lot: field(z.string().max(60).default(''), { label: 'Dye lot' }),
		...boughtFrom,
		breaks: breaksIn(amount, size),
	});

/** Far less than anything is sold in: what is smaller comes to packs past all number. */
const LEAST_PACK = 0.001;
const NO_PACK = `One pack holds next to nothing.|Give at least ${LEAST_PACK} m2, m, litres or pieces, as the kind is counted.`;

const sundryIn = (amount: AmountField) =>
	z.strictObject({
		id,
		name,
		kind: field(
			z.enum([
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
				'cable',
				'loom',
				'hose',
				'other',
			]),
			{ label: 'Kind', options: { dowel: 'rod' } },
		),
		/**
		 * What one pack covers or holds, in the unit the kind is counted in: m2, m, litres or
		 * pieces.
		 */
		pack: field(z.number().min(LEAST_PACK, NO_PACK).max(1e6), {
			label: 'One pack holds',
			help: 'In m2, m, litres or pieces, as the kind is counted.',
		}),
		price: field(amount.prefault(0), { label: 'Price' }),
		/** In packs. */
		owned: field(z.number().min(0).max(1e6).default(0), {
			label: 'On the rack',
			help: 'How many are on the rack.',
		}),
		least: field(owned.default(0), {
			label: 'Least to buy',
			help: 'The seller sends no fewer packs; what is over is spare. 0 for any number.',
		}),
		soldBy,
		...boughtFrom,
		breaks: breaksIn(amount, atOnce),
		/** Whatever its kind: over what the plan counts. */
		use: field(z.number().min(0).max(1e6).default(0), {
			label: 'Packs for this job',
			help: 'Over what the plan counts by itself.',
		}),
		/** Of what runs are cut from; nothing else asks. */
		lengths: field(z.enum(['whole', 'cut']).default('whole'), {
			label: 'Lengths come',
			options: { whole: 'each pack in one piece', cut: 'cut off, any length in one piece' },
			help: 'Of cable, loom and hose: no run is longer than a pack that is one piece. On the rack a part of a pack is one rest.',
		}),
		/** Sheets (damping, lining) lose this much to overlap. */
		overlap: field(percent.default(0), { label: 'Overlap', unit: '%' }),
		density: field(z.number().min(10).max(9000).optional(), {
			label: 'Density',
			help: 'of rods, for the mass of the box; empty for beech, 720.',
			unit: 'kg/m³',
		}),
	});

/** The rack, its prices read by this field. */
export const stockIn = (amount: AmountField) =>
	z.strictObject({
		materials: field(z.array(material).max(200).default([]), { label: 'Boards' }),
		sheets: field(z.array(sheetIn(amount)).max(400).default([]), { label: 'Sheets' }),
		offcuts: field(z.array(offcut).max(6000).default([]), { label: 'Offcuts' }),
		cloths: field(z.array(cloth).max(200).default([]), { label: 'Cloths' }),
		rolls: field(z.array(rollIn(amount)).max(400).default([]), { label: 'Rolls and remnants' }),
		sundries: field(z.array(sundryIn(amount)).max(400).default([]), { label: 'Sundries' }),
		suppliers: field(z.array(supplierIn(amount)).max(100).default([]), { label: 'Suppliers' }),
	});

/** The rack, priced in the usual currency. */
export const stock = stockIn(amount);

export type Stock = z.output<ReturnType<typeof stockIn>>;
export type Material = z.output<typeof material>;
export type StockSheet = Stock['sheets'][number];
export type Offcut = z.output<typeof offcut>;
export type Cloth = z.output<typeof cloth>;
export type Roll = Stock['rolls'][number];
export type Sundry = Stock['sundries'][number];
export type Supplier = Stock['suppliers'][number];
