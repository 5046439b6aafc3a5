import { field, z } from '../zod';
import { distanceField, id, name, note, position, size } from '../fields';
import { placedShape } from './outline';

const side = z.enum(['left', 'right', 'bottom', 'top']);

/** A device on an equipment board, before turning: length to the right, width upwards. */
export const device = z.strictObject({
	id,
	name: field(name.default('Device'), { label: 'Name' }),
	length: field(size, { label: 'Length', help: 'Length of the device' }),
	width: field(size, { label: 'Width', help: 'Width of the device' }),
	height: field(size.prefault(50), { label: 'Height', help: 'Height above the board' }),
	x: field(position, {
		label: 'From the left',
		help: 'Its lower left corner, from the left of the board',
	}),
	y: field(position, {
		label: 'From the bottom',
		help: 'Its lower left corner, from the bottom of the board',
	}),
	turn: field(z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]).default(0), {
		label: 'Turned left',
		help: 'Turned left on the board, degrees',
		unit: '°',
	}),
	clear: field(
		z
			.strictObject({
				left: field(distanceField.prefault(0), {
					label: 'Free at its left end',
					help: 'cooling or connectors',
				}),
				right: field(distanceField.prefault(0), { label: 'Right', help: 'Free at its right end' }),
				bottom: field(distanceField.prefault(0), { label: 'Bottom', help: 'Free below' }),
				top: field(distanceField.prefault(0), { label: 'Top', help: 'Free above' }),
				over: field(distanceField.prefault(0), { label: 'Free over it', help: 'cooling' }),
			})
			.prefault({}),
		{ label: 'Free space', help: 'Free space the device asks for' },
	),
	reach: field(z.array(side).max(4).default([]), {
		label: 'Reach from',
		help: 'Sides that must be reached with the panel in: fuses, switches, plugs',
	}),
	reachDepth: field(size.prefault(80), {
		label: 'Room for a hand',
		help: 'Room a hand needs there',
	}),
	holes: field(
		z
			.array(
				z.strictObject({
					x: field(position, { label: 'From the left', help: 'From the left of the device' }),
					y: field(position, { label: 'From the bottom', help: 'From its lower edge' }),
					diameter: field(size.prefault(4), { label: 'Diameter', help: 'Drill' }),
				}),
			)
			.max(200)
			.default([]),
		{ label: 'Holes', help: 'Fixing holes' },
	),
	mass: field(z.number().min(0).max(200).default(0), {
		label: 'Mass',
		help: 'Mass in kg',
		unit: 'kg',
	}),
	note: field(note.default(''), { label: 'Note', help: 'Note for the bench' }),
});

/** A zone the panel or its fixings must leave alone. */
export const zone = z.strictObject({
	id,
	name: field(name.default('Zone'), { label: 'Name' }),
	kind: field(z.enum(['battery', 'spare', 'belt', 'airbag', 'other']).default('other'), {
		label: 'Kind',
		help: 'Battery, spare wheel, seat belt, airbag or other',
	}),
	outline: field(placedShape, { label: 'Outline', help: 'Where it is, seen from the front' }),
});

export type Device = z.output<typeof device>;
export type Zone = z.output<typeof zone>;
