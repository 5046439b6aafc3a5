import { field, z } from '../zod';
import { litresBetween, spot, thingName } from './fields';
import { count, degreesField, distanceField, id, size } from '../fields';
import { outline } from '../loose-part';

/* What is mounted on a board over a cut-out, by a frame: drivers and passive radiators. */

export const drill = (label: string, help: string, usual: number) =>
	field(size.prefault(usual), { label, help });

/** Holes round a middle, all at one distance from it. */
export const circleOf = (what: string, hole: number) => ({
	diameter: field(size, { label: 'Circle', help: `through the middles of the ${what}.` }),
	angle: field(degreesField(0, 360).default(0), {
		label: 'First at',
		help: 'degrees from straight up, turned to the right as seen from outside.',
		unit: '°',
	}),
	hole: drill('Drill', 'diameter of each hole.', hole),
});

/** The holes for the bolts of a frame; how many there are is said by its bolts. */
const boltCircle = z.strictObject(circleOf('bolts', 7));

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
 * How a frame sits: on the face, in a routed seat, or flush behind a ring glued on
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

/** Where something stands, and what it takes of its board; `what`: 'driver'. */
export const placeFields = <C extends Record<'board', z.ZodType>>(
	what: string,
	many: string,
	carrier: C,
) => ({
	name: thingName,
	...carrier,
	at: field(spot, { label: 'Place', help: `centre of the ${what}, or of the row of ${many}.` }),
	count: field(count.max(12).default(1), {
		label: `${many[0]?.toUpperCase()}${many.slice(1)}`,
		help: 'how many alike, in a row along the width.',
	}),
	pitch: field(size.optional(), { label: 'Pitch', help: 'centre to centre in the row.' }),
	cutout: field(cutout, {
		label: 'Cut-out',
		help: `from the mounting sheet of the ${what}, not the ${what} itself.`,
	}),
	frame: field(size, { label: 'Frame diameter', help: 'outside of the mounting flange.' }),
});

/** Room for what is behind the flange, and how it is held. */
export const holdFields = (what: string, rear: string) => ({
	behind: field(distanceField.prefault(12), {
		label: 'Air behind',
		help: `least distance from the ${rear} to anything behind it. Common practice, no source: 12 mm (1/2 in).`,
	}),
	displacement: field(litresBetween(0, 100).optional(), {
		label: 'Displacement',
		help: `volume one ${what} takes, litres, from its data sheet. Empty: nothing is taken, and said.`,
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
		help: `one ${what}, kg; counts for lifting only.`,
		unit: 'kg',
	}),
});
