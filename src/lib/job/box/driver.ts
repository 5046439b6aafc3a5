import { field, z } from '../zod';
import { boardKey, carrierKey, intoField, litresBetween, spot } from './fields';
import { size } from '../fields';
import { circleOf, drill, holdFields, placeFields } from './mounted';

/** The holes for the screws of a terminal cup. */
const screwHoles = z.discriminatedUnion('kind', [
	z.strictObject({ kind: z.literal('circle'), ...circleOf('screws', 3) }),
	z.strictObject({
		kind: z.literal('rectangle'),
		across: field(size, { label: 'Apart across', help: 'from middle to middle.' }),
		up: field(size, { label: 'Apart up', help: 'from middle to middle.' }),
		hole: drill('Drill', 'diameter of each hole.', 3),
	}),
]);

/**
 * Figures of the maker's data sheet, each optional; the checks that need them are made when they
 * are there.
 */
const data = z.strictObject({
	fs: field(z.number().min(5).max(500).optional(), {
		label: 'Resonance',
		help: 'free air resonance, Hz.',
		unit: 'Hz',
	}),
	qts: field(z.number().min(0.05).max(5).optional(), {
		label: 'Total Q',
		help: 'Qts of the driver. Empty: from the two below.',
	}),
	qes: field(z.number().min(0.05).max(20).optional(), {
		label: 'Electrical Q',
		help: 'Qes of the driver; level in dB, excursion and air speed need it.',
	}),
	qms: field(z.number().min(0.2).max(50).optional(), {
		label: 'Mechanical Q',
		help: 'Qms of the driver; stands in for Qts or Qes where one is missing.',
	}),
	vas: field(litresBetween(0.05, 2000).optional(), {
		label: 'Vas',
		help: 'volume of air as stiff as the suspension, litres.',
	}),
	sd: field(z.number().min(5).max(5000).optional(), {
		label: 'Cone area',
		help: 'cm2.',
		unit: 'cm²',
	}),
	xmax: field(z.number().min(0.1).max(100).optional(), {
		label: 'Excursion',
		help: 'one way, mm.',
		unit: 'mm',
	}),
	re: field(z.number().min(0.1).max(100).optional(), {
		label: 'Coil resistance',
		help: 'Re, to direct current, ohm.',
		unit: 'Ω',
	}),
	le: field(z.number().min(0).max(50).optional(), {
		label: 'Coil inductance',
		help: 'Le, mH; counted where the resistance is given too.',
		unit: 'mH',
	}),
	pe: field(z.number().min(0.1).max(20000).optional(), {
		label: 'Rated power',
		help: 'that one driver bears for long, W.',
		unit: 'W',
	}),
	mms: field(z.number().min(0.1).max(5000).optional(), {
		label: 'Moving mass',
		help: 'Mms, g; only compared with the other figures.',
		unit: 'g',
	}),
});

export const driver = z.strictObject({
	...placeFields('driver', 'drivers', {
		board: field(carrierKey.default('front'), {
			label: 'Board',
			help: 'the one the driver is mounted on, or a divider.',
		}),
		into: intoField('Magnet lies', 'the side its magnet lies on.'),
	}),
	depth: field(size, {
		label: 'Mounting depth',
		help: 'from the face the flange sits on to the rear of the magnet.',
	}),
	magnet: field(size.optional(), {
		label: 'Magnet diameter',
		help: 'taken as the cut-out when empty.',
	}),
	magnetHeight: field(size.optional(), {
		label: 'Magnet height',
		help: 'how much of the mounting depth the magnet takes.',
	}),
	...holdFields('driver', 'magnet'),
	data: field(data.prefault({}), {
		label: 'Data sheet',
		help: 'optional, for the sealed check, the response and the air speed.',
	}),
});

export const terminal = z.strictObject({
	board: field(boardKey.default('back'), { label: 'Board', help: 'where the terminal cup sits.' }),
	at: field(spot, { label: 'Place', help: 'centre of the hole.' }),
	hole: field(
		z.discriminatedUnion('kind', [
			z.strictObject({
				kind: z.literal('round'),
				diameter: field(size, { label: 'Hole', help: 'diameter.' }),
			}),
			z.strictObject({
				kind: z.literal('rectangle'),
				width: field(size, { label: 'Hole width', help: 'across the board.' }),
				height: field(size, { label: 'Hole height', help: 'up the board.' }),
			}),
		]),
		{ label: 'Hole', help: 'round or rectangular.' },
	),
	displacement: field(litresBetween(0, 5).default(0), {
		label: 'Displacement',
		help: 'volume of the cup inside the box, litres.',
	}),
	screws: field(z.number().int().min(0).max(12).default(4), {
		label: 'Screws',
		help: 'that hold the cup.',
	}),
	screwHoles: field(screwHoles.nullable().default(null), {
		label: 'Screw holes',
		options: { circle: 'on a circle', rectangle: 'four at the corners of a rectangle' },
		help: 'where the screws go. Empty: they are marked from the cup.',
	}),
});

export type Driver = z.output<typeof driver>;
export type Terminal = z.output<typeof terminal>;
