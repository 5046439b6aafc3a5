import { z } from '../zod';
import { boardKey, spot, thingName } from './fields';
import { count, id, size } from '../fields';

const goal = z.discriminatedUnion('by', [
	z.strictObject({
		by: z.literal('tuning'),
		hertz: z
			.number()
			.min(8)
			.max(200)
			.describe('Tuning: the frequency wanted, Hz; the length follows.'),
	}),
	z.strictObject({
		by: z.literal('length'),
		length: size.describe(
			'Length: of the vent along its middle, board thickness included; the tuning follows.',
		),
	}),
]);

/** What the ends of a vent look like, which decides how much longer it acts than it is. */
const mouths = z
	.enum(['one-flanged', 'both-flanged', 'both-free'])
	.default('one-flanged')
	.describe('Ends: one in the board and one free (usual); both in a board; or both standing free.');

const factor = z
	.number()
	.min(0)
	.max(4)
	.nullable()
	.default(null)
	.describe(
		'Own end correction: in radii, both ends together; overrides the choice of ends. Empty: as chosen.',
	);

const round = z.strictObject({
	kind: z.literal('round'),
	name: thingName,
	board: boardKey.default('front').describe('Board: the one the vent opens in.'),
	at: spot.describe('Place: centre of the vent, or of the row of vents.'),
	count: count.max(8).default(1).describe('Vents: how many alike share the tuning.'),
	pitch: size.optional().describe('Pitch: centre to centre in the row.'),
	diameter: size.describe('Inside diameter: of the tube.'),
	wall: size.prefault(3).describe('Wall: thickness of the tube.'),
	goal: goal.describe('Wanted: a tuning, or a length you have.'),
	mouths,
	factor,
});

const slot = z.strictObject({
	kind: z.literal('slot'),
	name: thingName,
	along: z
		.enum(['bottom', 'top', 'left', 'right'])
		.default('bottom')
		.describe('Along: the board that forms the outer wall of the slot; it opens in the front.'),
	gap: size.describe('Slot height: clear distance between that board and the slot board.'),
	run: size.nullable().default(null).describe('Slot width: clear; empty: from wall to wall.'),
	bend: z
		.enum(['straight', 'L'])
		.default('straight')
		.describe('Bend: straight, or turned once to follow the back.'),
	material: id.optional().describe('Slot board: its material; the one of the box when empty.'),
	goal: goal.describe('Wanted: a tuning, or a length you have.'),
	mouths,
	factor,
});

export const vent = z.discriminatedUnion('kind', [round, slot]);

export type Vent = z.output<typeof vent>;
export type RoundVent = Extract<Vent, { kind: 'round' }>;
export type SlotVent = Extract<Vent, { kind: 'slot' }>;
