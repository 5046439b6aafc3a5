import { z } from '../zod';
import { driver, terminal } from './driver';
import { boardKey, litresBetween } from './fields';
import { brace, cleats, divider, doubler, lining, stuffing } from './inside';
import { carpet, opening, boxSpace } from './place';
import { solvedDimension, boxShape } from './shape';
import { vent } from './vent';
import { count, distanceField, id, name, note, size } from '../fields';

/** What one board has of its own. */
const ownBoard = z.strictObject({
	material: id.optional().describe('Board: its material; the one of the box when empty.'),
	grain: z
		.enum(['along', 'across', 'any'])
		.optional()
		.describe('Grain: along the width of the box, across it, or no matter.'),
});

const corner = z.strictObject({
	between: z.tuple([boardKey, boardKey]).describe('Corner: the two boards that meet.'),
	joint: z
		.enum(['first-past', 'second-past', 'mitre'])
		.describe('Joint: which board runs past the other, or both mitred.'),
});

const ends = z.strictObject({
	fit: z
		.enum(['over', 'between', 'rabbet'])
		.default('over')
		.describe('Ends: over the other boards, between them, or let into a rabbet.'),
	rabbet: size.prefault(8).describe('Rabbet depth: how deep it is cut into the boards.'),
});

const target = z.strictObject({
	litres: litresBetween(0.1, 5000).describe(
		'Net volume: the air wanted after every deduction, litres.',
	),
	chamber: z
		.number()
		.int()
		.min(1)
		.max(8)
		.default(1)
		.describe('Chamber: the one the volume is wanted in.'),
	solve: solvedDimension
		.nullable()
		.default(null)
		.describe('Solve: the dimension to work out. Empty: keep the sizes and compare.'),
});

const fasteners = z.strictObject({
	screwSpacing: size
		.prefault(125)
		.describe('Screw spacing: along a seam. Common practice, no source: 100 to 150 mm.'),
	bradSpacing: size
		.nullable()
		.default(null)
		.describe('Brad spacing: brads that hold while the glue sets; empty for none.'),
	sealant: z.boolean().default(true).describe('Sealant: a bead along every inside seam.'),
});

/** A box as the person describes it. Only id, name, material and shape are needed; all else has a default. */
export const box = z.strictObject({
	id,
	name: name.describe('Name: what the box is called on the drawings.'),
	count: count.max(100).default(1).describe('Boxes: how many alike.'),
	material: id.describe('Board: the material of every board that names no other.'),
	shape: boxShape.describe(
		'Form: plain, slanted, stepped, with a corner cut off, free corners, or tapered.',
	),
	sizes: z
		.enum(['outer', 'inner'])
		.default('outer')
		.describe('Sizes are: outside, or inside between the boards.'),
	boards: z
		.record(boardKey, ownBoard)
		.default({})
		.describe('Boards: those that differ from the rest.'),
	joint: z
		.enum(['level-past', 'upright-past', 'mitre'])
		.default('level-past')
		.describe('Joints: top and bottom run past, front and back run past, or all mitred.'),
	corners: z.array(corner).max(48).default([]).describe('Corners: those jointed in another way.'),
	ends: ends.prefault({}).describe('Ends: how the end boards close the box.'),
	doublers: z.array(doubler).max(12).default([]).describe('Doublers: boards made thicker.'),
	dividers: z.array(divider).max(7).default([]).describe('Dividers: walls that make chambers.'),
	target: target
		.nullable()
		.default(null)
		.describe('Wanted volume: and the dimension that gives it.'),
	drivers: z.array(driver).max(12).default([]).describe('Drivers: their cut-outs and room.'),
	qtc: z
		.number()
		.min(0.3)
		.max(2)
		.nullable()
		.default(null)
		.describe(
			'Wanted Qtc: for the sealed check; 0.707 is the flattest. Empty: only report what comes out.',
		),
	vents: z.array(vent).max(6).default([]).describe('Vents: tubes and slots.'),
	braces: z.array(brace).max(24).default([]).describe('Braces: frames, shelves and rods inside.'),
	cleats: cleats.nullable().default(null).describe('Cleats: strips in the corners.'),
	terminal: terminal.nullable().default(null).describe('Terminal: the cup for the wires.'),
	lining: lining.nullable().default(null).describe('Lining: felt or fibre on the walls.'),
	stuffing: stuffing.nullable().default(null).describe('Stuffing: loose fibre in the air.'),
	fasteners: fasteners.prefault({}).describe('Fasteners: screws, brads and sealant.'),
	space: boxSpace.nullable().default(null).describe('Space: where the box has to go.'),
	opening: opening
		.nullable()
		.default(null)
		.describe('Opening: the hole it has to pass on the way in.'),
	standOff: distanceField
		.prefault(0)
		.describe(
			'Stand-off: air left behind the back for cooling or for a vent, taken off the space.',
		),
	carpet: carpet.nullable().default(null).describe('Carpet: the cloth outside.'),
	note: note.default('').describe('Note: printed with the box.'),
});

export type Box = z.output<typeof box>;
export type BoxFile = z.input<typeof box>;
export type BoxCorner = z.output<typeof corner>;
