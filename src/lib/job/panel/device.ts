import { z } from '../zod';
import { distanceField, id, name, note, position, size } from '../fields';
import { placedShape } from './outline';

const side = z.enum(['left', 'right', 'bottom', 'top']);

/** A device on an equipment board, before turning: length to the right, width upwards. */
export const device = z.strictObject({
	id,
	name: name.default('Device'),
	length: size.describe('Length of the device'),
	width: size.describe('Width of the device'),
	height: size.prefault(50).describe('Height above the board'),
	x: position.describe('Its lower left corner, from the left of the board'),
	y: position.describe('Its lower left corner, from the bottom of the board'),
	turn: z
		.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)])
		.default(0)
		.describe('Turned left on the board, degrees'),
	clear: z
		.strictObject({
			left: distanceField.prefault(0).describe('Free at its left end: cooling or connectors'),
			right: distanceField.prefault(0).describe('Free at its right end'),
			bottom: distanceField.prefault(0).describe('Free below'),
			top: distanceField.prefault(0).describe('Free above'),
			over: distanceField.prefault(0).describe('Free over it: cooling'),
		})
		.prefault({})
		.describe('Free space the device asks for'),
	reach: z
		.array(side)
		.max(4)
		.default([])
		.describe('Sides that must be reached with the panel in: fuses, switches, plugs'),
	reachDepth: size.prefault(80).describe('Room a hand needs there'),
	holes: z
		.array(
			z.strictObject({
				x: position.describe('From the left of the device'),
				y: position.describe('From its lower edge'),
				diameter: size.prefault(4).describe('Drill'),
			}),
		)
		.max(200)
		.default([])
		.describe('Fixing holes'),
	mass: z.number().min(0).max(200).default(0).describe('Mass in kg'),
	note: note.default('').describe('Note for the bench'),
});

/** A zone the panel or its fixings must leave alone. */
export const zone = z.strictObject({
	id,
	name: name.default('Zone'),
	kind: z
		.enum(['battery', 'spare', 'belt', 'airbag', 'other'])
		.default('other')
		.describe('Battery, spare wheel, seat belt, airbag or other'),
	outline: placedShape.describe('Where it is, seen from the front'),
});

export type Device = z.output<typeof device>;
export type Zone = z.output<typeof zone>;
