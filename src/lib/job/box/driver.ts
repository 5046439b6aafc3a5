import { z } from '../zod';
import { boardKey, litresBetween, spot, thingName } from './fields';
import { count, distanceField, id, size } from '../fields';
import { outline } from '../loose-part';

const cutout = z.discriminatedUnion('kind', [
	z.strictObject({
		kind: z.literal('round'),
		diameter: size.describe('Cut-out: diameter of the hole.'),
	}),
	z.strictObject({
		kind: z.literal('oval'),
		length: size.describe(
			'Cut-out length: across the board; the ends are half circles of the shorter measure.',
		),
		width: size.describe('Cut-out width: up the board.'),
	}),
	z.strictObject({
		kind: z.literal('free'),
		outline: outline.describe(
			'Cut-out outline: corners round the hole; its middle is placed on the spot.',
		),
	}),
]);

/** How the frame of a driver sits: on the face, in a routed seat, or flush behind a ring glued on the face. */
const seat = z.discriminatedUnion('kind', [
	z.strictObject({ kind: z.literal('on') }),
	z.strictObject({
		kind: z.literal('routed'),
		depth: size.describe('Seat depth: thickness of the frame, routed into the face.'),
	}),
	z.strictObject({
		kind: z.literal('ring'),
		material: id.describe(
			'Ring board: the board the ring is cut from; its thickness is the depth of the seat.',
		),
		width: size.prefault(25).describe('Ring width: from the frame outward.'),
	}),
]);

/** Figures of the maker's data sheet, each optional; the checks that need them are made when they are there. */
const data = z.strictObject({
	fs: z.number().min(5).max(500).optional().describe('Resonance: free air resonance, Hz.'),
	qts: z.number().min(0.05).max(5).optional().describe('Total Q: Qts of the driver.'),
	vas: litresBetween(0.05, 2000)
		.optional()
		.describe('Vas: volume of air as stiff as the suspension, litres.'),
	sd: z.number().min(5).max(5000).optional().describe('Cone area: cm2.'),
	xmax: z.number().min(0.1).max(100).optional().describe('Excursion: one way, mm.'),
});

export const driver = z.strictObject({
	name: thingName,
	board: boardKey.default('front').describe('Board: the one the driver is mounted on.'),
	at: spot.describe('Place: centre of the driver, or of the row of drivers.'),
	count: count.max(12).default(1).describe('Drivers: how many alike, in a row along the width.'),
	pitch: size.optional().describe('Pitch: centre to centre in the row.'),
	cutout: cutout.describe('Cut-out: from the mounting sheet of the driver, not the driver itself.'),
	frame: size.describe('Frame diameter: outside of the mounting flange.'),
	depth: size.describe(
		'Mounting depth: from the face the flange sits on to the rear of the magnet.',
	),
	magnet: size.optional().describe('Magnet diameter: taken as the cut-out when empty.'),
	magnetHeight: size
		.optional()
		.describe('Magnet height: how much of the mounting depth the magnet takes.'),
	behind: distanceField
		.prefault(12)
		.describe(
			'Air behind: least distance from the magnet to anything behind it. Common practice, no source: 12 mm.',
		),
	displacement: litresBetween(0, 100)
		.default(0)
		.describe('Displacement: volume one driver takes, litres.'),
	seat: seat
		.default({ kind: 'on' })
		.describe('Seat: on the face, in a routed seat, or flush behind a ring.'),
	bolts: z.number().int().min(0).max(24).default(8).describe('Bolts: one T-nut each.'),
	mass: z
		.number()
		.min(0)
		.max(200)
		.default(0)
		.describe('Mass: one driver, kg; counts for lifting only.'),
	data: data.prefault({}).describe('Data sheet: optional, for the sealed check and the air speed.'),
});

export const terminal = z.strictObject({
	board: boardKey.default('back').describe('Board: where the terminal cup sits.'),
	at: spot.describe('Place: centre of the hole.'),
	hole: z
		.discriminatedUnion('kind', [
			z.strictObject({ kind: z.literal('round'), diameter: size.describe('Hole: diameter.') }),
			z.strictObject({
				kind: z.literal('rectangle'),
				width: size.describe('Hole width: across the board.'),
				height: size.describe('Hole height: up the board.'),
			}),
		])
		.describe('Hole: round or rectangular.'),
	displacement: litresBetween(0, 5)
		.default(0)
		.describe('Displacement: volume of the cup inside the box, litres.'),
	screws: z.number().int().min(0).max(12).default(4).describe('Screws: that hold the cup.'),
});

export type Driver = z.output<typeof driver>;
export type Terminal = z.output<typeof terminal>;
