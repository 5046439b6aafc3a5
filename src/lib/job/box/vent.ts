import { field, z } from '../zod';
import { carrierKey, intoField, spot, thingName } from './fields';
import { count, id, size } from '../fields';

const goal = field(
	z.discriminatedUnion('by', [
		z.strictObject({
			by: z.literal('tuning'),
			hertz: field(z.number().min(8).max(200), {
				label: 'Tuning',
				help: 'the frequency wanted, Hz; the length follows.',
				unit: 'Hz',
			}),
		}),
		z.strictObject({
			by: z.literal('length'),
			length: field(size, {
				label: 'Length',
				help: 'of the vent along its middle, board thickness included; the tuning follows.',
			}),
		}),
	]),
	{
		label: 'Wanted',
		help: 'a tuning, or a length you have.',
		options: { tuning: 'the tuning wanted', length: 'the length there is' },
	},
);

/** What the ends of a vent look like, which decides how much longer it acts than it is. */
const mouths = field(z.enum(['one-flanged', 'both-flanged', 'both-free']).default('one-flanged'), {
	label: 'Ends',
	help: 'one in the board and one free (usual); both in a board; or both standing free.',
});

const factor = field(z.number().min(0).max(4).nullable().default(null), {
	label: 'Own end correction',
	help: 'in radii, both ends together; overrides the choice of ends. Empty: as chosen.',
});

/** A bend in a tube. Its way is seen from outside the board, as the tube goes in. */
const elbow = z.strictObject({
	after: field(size, {
		label: 'Straight before it',
		help: 'along the middle; of the first elbow from the outer face of the board.',
	}),
	radius: field(size, { label: 'Bend radius', help: 'to the middle of the tube.' }),
	turn: field(z.enum(['left', 'right', 'up', 'down', 'in', 'out']), {
		label: 'Turns',
		options: { in: 'away from the board', out: 'back to the board' },
		help: 'by a quarter: which way the tube goes on, as seen from outside the board.',
	}),
});

/** Mouths that open in a quarter circle. */
const flare = z.strictObject({
	radius: field(size, { label: 'Flare radius', help: 'of the rounding.' }),
	ends: field(z.enum(['outer', 'inner', 'both']).default('outer'), {
		label: 'Flared',
		options: { outer: 'the outer end', inner: 'the inner end', both: 'both ends' },
		help: 'which mouths.',
	}),
});

const round = z.strictObject({
	kind: z.literal('round'),
	name: thingName,
	board: field(carrierKey.default('front'), {
		label: 'Board',
		help: 'the one the vent opens in, or a divider whose chambers it joins.',
	}),
	into: intoField('Tube lies', 'the side the tube lies on.'),
	at: field(spot, { label: 'Place', help: 'centre of the vent, or of the row of vents.' }),
	count: field(count.max(8).default(1), {
		label: 'Vents',
		help: 'how many alike share the tuning.',
	}),
	pitch: field(size.optional(), { label: 'Pitch', help: 'centre to centre in the row.' }),
	diameter: field(size, { label: 'Inside diameter', help: 'of the tube.' }),
	wall: field(size.prefault(3), { label: 'Wall', help: 'thickness of the tube.' }),
	elbows: field(z.array(elbow).max(3).default([]), {
		label: 'Elbows',
		help: 'bends by a quarter; their middle line counts in the length.',
	}),
	flare: field(flare.nullable().default(null), {
		label: 'Flare',
		help: 'rounded mouths; the length is from mouth to mouth, flares included.',
	}),
	goal,
	mouths,
	factor,
});

const slot = z.strictObject({
	kind: z.literal('slot'),
	name: thingName,
	along: field(z.enum(['bottom', 'top', 'left', 'right']).default('bottom'), {
		label: 'Along',
		help: 'the board that forms the outer wall of the slot; it opens in the front.',
	}),
	gap: field(size, {
		label: 'Slot height',
		help: 'clear distance between that board and the slot board.',
	}),
	run: field(size.nullable().default(null), {
		label: 'Slot width',
		help: 'clear; empty: from wall to wall.',
	}),
	bend: field(z.enum(['straight', 'L', 'U']).default('straight'), {
		label: 'Bend',
		options: { L: 'turned once', U: 'turned twice' },
		help: 'straight; turned once to follow the back; or turned twice, to come forward again along the board opposite.',
	}),
	material: field(id.optional(), {
		label: 'Slot board',
		help: 'its material; the one of the box when empty.',
		refersTo: 'materials',
	}),
	goal,
	mouths,
	factor,
});

export const vent = z.discriminatedUnion('kind', [round, slot]);

export type Vent = z.output<typeof vent>;
export type RoundVent = Extract<Vent, { kind: 'round' }>;
export type SlotVent = Extract<Vent, { kind: 'slot' }>;
