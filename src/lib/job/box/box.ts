import { field, z } from '../zod';
import { driver, terminal } from './driver';
import { boardKey, litresBetween } from './fields';
import { brace, cleats, divider, doubler, lining, stuffing } from './inside';
import { carpet, opening, boxSpace } from './place';
import { solvedDimension, boxShape } from './shape';
import { boxDevice } from './device';
import { tieDown } from './tie-down';
import { radiator } from './radiator';
import { vent } from './vent';
import { count, distanceField, id, name, note, size } from '../fields';

/** What one board has of its own. */
const ownBoard = z.strictObject({
	material: field(id.optional(), {
		label: 'Board',
		help: 'its material; the one of the box when empty.',
		refersTo: 'materials',
	}),
	grain: field(z.enum(['along', 'across', 'any']).optional(), {
		label: 'Grain',
		options: { any: 'any way' },
		help: 'along the width of the box, across it, or no matter.',
	}),
});

const first = field(boardKey, { label: 'First' });
const second = field(boardKey, { label: 'Second' });

const corner = z.strictObject({
	between: field(z.tuple([first, second]), {
		label: 'Corner',
		help: 'the two boards that meet.',
	}),
	joint: field(z.enum(['first-past', 'second-past', 'mitre']), {
		label: 'Joint',
		options: {
			'first-past': 'the first runs past',
			'second-past': 'the second runs past',
			mitre: 'all mitred',
		},
		help: 'which board runs past the other, or both mitred.',
	}),
});

const ends = z.strictObject({
	fit: field(z.enum(['over', 'between', 'rabbet']).default('over'), {
		label: 'Ends',
		help: 'over the other boards, between them, or let into a rabbet.',
	}),
	rabbet: field(size.prefault(8), {
		label: 'Rabbet depth',
		help: 'how deep it is cut into the boards.',
	}),
});

const target = z.strictObject({
	litres: field(litresBetween(0.1, 5000), {
		label: 'Net volume',
		help: 'the air wanted after every deduction, litres.',
	}),
	chamber: field(z.number().int().min(1).max(8).default(1), {
		label: 'Chamber',
		help: 'the one the volume is wanted in.',
	}),
	solve: field(solvedDimension.nullable().default(null), {
		label: 'Solve',
		help: 'the dimension to work out. Empty: keep the sizes and compare.',
	}),
});

/** What the response is worked out for. */
const response = z.strictObject({
	power: field(z.number().min(0.1).max(50000).nullable().default(null), {
		label: 'Power',
		help: 'into all drivers of a chamber together, W. Empty: what they are rated for, or 100 W.',
		unit: 'W',
	}),
	losses: field(z.number().min(1).max(100).default(7), {
		label: 'Box losses',
		help: 'QL of a chamber with vents or passive radiators: 7 is usual, 5 to 10 measured (Small 1973).',
	}),
});

const fasteners = z.strictObject({
	screwSpacing: field(size.prefault(125), {
		label: 'Screw spacing',
		help: 'along a seam. Common practice, no source: 100 to 150 mm (4 to 6 in).',
	}),
	bradSpacing: field(size.nullable().default(null), {
		label: 'Brad spacing',
		help: 'brads that hold while the glue sets; empty for none.',
	}),
	sealant: field(z.boolean().default(true), {
		label: 'Sealant',
		help: 'a bead along every inside seam.',
	}),
});

/**
 * A box as the person describes it. Only id, name, material and shape are needed; all else has a
 * default.
 */
export const box = z.strictObject({
	id,
	name: field(name, { label: 'Name', help: 'what the box is called on the drawings.' }),
	count: field(count.max(100).default(1), { label: 'Boxes', help: 'how many alike.' }),
	material: field(id, {
		label: 'Board',
		help: 'the material of every board that names no other.',
		refersTo: 'materials',
	}),
	shape: field(boxShape, {
		label: 'Form',
		options: {
			slanted: 'slanted face',
			stepped: 'stepped over a wheel arch',
			truncated: 'corner cut off',
			free: 'free corners',
			tapered: 'tapered both ways',
		},
		help: 'plain, slanted, stepped, with a corner cut off, free corners, or tapered.',
	}),
	sizes: field(z.enum(['outer', 'inner']).default('outer'), {
		label: 'Sizes are',
		options: { outer: 'outside', inner: 'inside, between the boards' },
		help: 'outside, or inside between the boards.',
	}),
	boards: field(z.record(boardKey, ownBoard).default({}), {
		label: 'Boards',
		help: 'those that differ from the rest.',
	}),
	joint: field(z.enum(['level-past', 'upright-past', 'mitre']).default('level-past'), {
		label: 'Joints',
		options: {
			'level-past': 'top and bottom run past',
			'upright-past': 'front and back run past',
			mitre: 'all mitred',
		},
		help: 'top and bottom run past, front and back run past, or all mitred.',
	}),
	corners: field(z.array(corner).max(48).default([]), {
		label: 'Corners',
		help: 'those jointed in another way.',
	}),
	ends: field(ends.prefault({}), { label: 'Ends', help: 'how the end boards close the box.' }),
	doublers: field(z.array(doubler).max(12).default([]), {
		label: 'Doublers',
		help: 'boards made thicker.',
	}),
	dividers: field(z.array(divider).max(7).default([]), {
		label: 'Dividers',
		help: 'walls that make chambers.',
	}),
	target: field(target.nullable().default(null), {
		label: 'Wanted volume',
		help: 'and the dimension that gives it.',
	}),
	drivers: field(z.array(driver).max(12).default([]), {
		label: 'Drivers',
		help: 'their cut-outs and room.',
	}),
	qtc: field(z.number().min(0.3).max(2).nullable().default(null), {
		label: 'Wanted Qtc',
		help: 'for the sealed check; 0.707 is the flattest. Empty: only report what comes out.',
	}),
	response: field(response.prefault({}), {
		label: 'Response',
		help: 'the power its curves are drawn for, and the losses of the box.',
	}),
	vents: field(z.array(vent).max(6).default([]), { label: 'Vents', help: 'tubes and slots.' }),
	radiators: field(z.array(radiator).max(6).default([]), {
		label: 'Passive radiators',
		help: 'cones without a motor, in place of vents.',
	}),
	braces: field(z.array(brace).max(24).default([]), {
		label: 'Braces',
		help: 'frames, shelves and rods inside.',
	}),
	braceFit: field(distanceField.prefault(0.3), {
		label: 'Fit of crossing braces',
		help: 'how much wider the slots of braces halved over each other are than the board that goes in. Common practice, no source: 0.2 to 0.5 mm (about 1/64 in).',
	}),
	cleats: field(cleats.nullable().default(null), {
		label: 'Cleats',
		help: 'strips in the corners.',
	}),
	terminal: field(terminal.nullable().default(null), {
		label: 'Terminal',
		help: 'the cup for the wires.',
	}),
	tieDowns: field(z.array(tieDown).max(12).default([]), {
		label: 'Tie-down points',
		help: 'where it is held to the vehicle. How strong each must be is not worked out here.',
	}),
	devices: field(z.array(boxDevice).max(20).default([]), {
		label: 'Devices',
		help: 'amplifiers, crossovers, distribution blocks screwed to a board.',
	}),
	lining: field(lining.nullable().default(null), {
		label: 'Lining',
		help: 'felt or fibre on the walls.',
	}),
	stuffing: field(stuffing.nullable().default(null), {
		label: 'Stuffing',
		help: 'loose fibre in the air.',
	}),
	fasteners: field(fasteners.prefault({}), {
		label: 'Fasteners',
		help: 'screws, brads and sealant.',
	}),
	space: field(boxSpace.nullable().default(null), {
		label: 'Space',
		help: 'where the box has to go.',
	}),
	opening: field(opening.nullable().default(null), {
		label: 'Opening',
		help: 'the hole it has to pass on the way in.',
	}),
	standOff: field(distanceField.prefault(0), {
		label: 'Stand-off',
		help: 'air left behind the back for cooling or for a vent, taken off the space.',
	}),
	carpet: field(carpet.nullable().default(null), { label: 'Carpet', help: 'the cloth outside.' }),
	note: field(note.default(''), { label: 'Note', help: 'printed with the box.' }),
});

export type Box = z.output<typeof box>;
export type BoxFile = z.input<typeof box>;
