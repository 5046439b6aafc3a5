import { field, z } from '../zod';
import { boardKey, carrierKey, intoField, litresBetween, spot, thingName } from './fields';
import { count, degreesField, distanceField, id, size } from '../fields';
import { outline } from '../loose-part';

const drill = (label: string, help: string, usual: number) =>
	field(size.prefault(usual), { label, help });

/** Holes round a middle, all at one distance from it. */
const circleOf = (what: string, hole: number) => ({
	diameter: field(size, { label: 'Circle', help: `through the middles of the ${what}.` }),
	angle: field(degreesField(0, 360).default(0), {
		label: 'First at',
		help: 'degrees from straight up, turned to the right as seen from outside.',
		unit: '°',
	}),
	hole: drill('Drill', 'diameter of each hole.', hole),
});

/** The holes for the bolts of a driver; how many there are is said by its bolts. */
const boltCircle = z.strictObject(circleOf('bolts', 7));

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

const cutout = z.discriminatedUnion('kind', [
	z.strictObject({
		kind: z.literal('round'),
		diameter: field(size, { label: 'Cut-out', help: 'diameter of the hole.' }),
	}),
	z.strictObject({
		kind: z.literal('oval'),
		length: field(size, {
			label: 'Cut-out length',
			help: 'across the board; the ends are half circles of the shorter measure.',
		}),
		width: field(size, { label: 'Cut-out width', help: 'up the board.' }),
	}),
	z.strictObject({
		kind: z.literal('free'),
		outline: field(outline, {
			label: 'Cut-out outline',
			help: 'corners round the hole; its middle is placed on the spot.',
		}),
	}),
]);

/**
 * How the frame of a driver sits: on the face, in a routed seat, or flush behind a ring glued on
 * the face.
 */
const seat = z.discriminatedUnion('kind', [
	z.strictObject({ kind: z.literal('on') }),
	z.strictObject({
		kind: z.literal('routed'),
		depth: field(size, {
			label: 'Seat depth',
			help: 'thickness of the frame, routed into the face.',
		}),
	}),
	z.strictObject({
		kind: z.literal('ring'),
		material: field(id, {
			label: 'Ring board',
			help: 'the board the ring is cut from; its thickness is the depth of the seat.',
			refersTo: 'materials',
		}),
		width: field(size.prefault(25), { label: 'Ring width', help: 'from the frame outward.' }),
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
	name: thingName,
	board: field(carrierKey.default('front'), {
		label: 'Board',
		help: 'the one the driver is mounted on, or a divider.',
	}),
	into: intoField('Magnet lies', 'the side its magnet lies on.'),
	at: field(spot, { label: 'Place', help: 'centre of the driver, or of the row of drivers.' }),
	count: field(count.max(12).default(1), {
		label: 'Drivers',
		help: 'how many alike, in a row along the width.',
	}),
	pitch: field(size.optional(), { label: 'Pitch', help: 'centre to centre in the row.' }),
	cutout: field(cutout, {
		label: 'Cut-out',
		help: 'from the mounting sheet of the driver, not the driver itself.',
	}),
	frame: field(size, { label: 'Frame diameter', help: 'outside of the mounting flange.' }),
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
	behind: field(distanceField.prefault(12), {
		label: 'Air behind',
		help: 'least distance from the magnet to anything behind it. Common practice, no source: 12 mm.',
	}),
	displacement: field(litresBetween(0, 100).optional(), {
		label: 'Displacement',
		help: 'volume one driver takes, litres, from its data sheet. Empty: nothing is taken, and said.',
	}),
	seat: field(seat.default({ kind: 'on' }), {
		label: 'Seat',
		options: { on: 'on the face', routed: 'in a routed seat', ring: 'flush behind a ring' },
		help: 'on the face, in a routed seat, or flush behind a ring.',
	}),
	bolts: field(z.number().int().min(0).max(24).default(8), {
		label: 'Bolts',
		help: 'one T-nut each.',
	}),
	boltCircle: field(boltCircle.nullable().default(null), {
		label: 'Bolt circle',
		help: 'where the bolts go, from the mounting sheet. Empty: they are marked from the frame.',
	}),
	mass: field(z.number().min(0).max(200).default(0), {
		label: 'Mass',
		help: 'one driver, kg; counts for lifting only.',
		unit: 'kg',
	}),
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
