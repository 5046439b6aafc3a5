import { field, z } from '../zod';
import { distanceField, id, name, position, size } from '../fields';
import { placedShape } from './outline';

const place = {
	x: field(position, { label: 'From the left', help: 'From the left of the panel' }),
	y: field(position, { label: 'From the bottom', help: 'From the bottom' }),
};

/** A service cover: comes off without tools. */
export const cover = z.strictObject({
	id,
	name: field(name.default('Cover'), { label: 'Name' }),
	outline: field(placedShape, { label: 'Outline', help: 'The line between cover and panel' }),
	gap: field(size.prefault(1), { label: 'Gap', help: 'Gap to be seen round it' }),
	cloth: field(id.nullable().default(null), {
		label: 'Cloth',
		help: 'Its cloth; none for the cloth of the panel',
		refersTo: 'cloths',
	}),
	lift: field(
		z
			.discriminatedUnion('by', [
				z.strictObject({
					by: z.literal('finger-hole'),
					diameter: field(size.prefault(25), {
						label: 'Diameter',
						help: 'Diameter of the finger hole',
					}),
					...place,
				}),
				z.strictObject({
					by: z.literal('magnets'),
					spacing: field(size.prefault(150), { label: 'Spacing', help: 'Farthest apart' }),
					diameter: field(size.prefault(15), { label: 'Diameter', help: 'Diameter of a magnet' }),
				}),
			])
			.prefault({ by: 'magnets' }),
		{ label: 'Taken off with', help: 'What it is taken off with' },
	),
	ledge: field(
		z.strictObject({
			material: field(id, { label: 'Board', help: 'Board of the ledge', refersTo: 'materials' }),
			inside: field(size.prefault(15), {
				label: 'Rests on it by',
				help: 'How far the cover rests on it',
			}),
			outside: field(size.prefault(25), {
				label: 'Glued behind by',
				help: 'How far it is glued behind the panel',
			}),
		}),
		{ label: 'Ledge', help: 'Frame behind the panel that the cover rests on' },
	),
});

/** A line across a floor or lid along which it folds, its cloth running through as the hinge. */
export const hinge = z.strictObject({
	id,
	from: field(z.strictObject(place), { label: 'From', help: 'A point at one edge' }),
	to: field(z.strictObject(place), { label: 'To', help: 'A point at the other edge' }),
	gap: field(distanceField.nullable().default(null), {
		label: 'Gap',
		help: 'Gap between the boards; none for twice the loose cloth',
	}),
});

/** A ring that trims an opening between two spaces. */
export const ring = z.strictObject({
	id,
	name: field(name.default('Ring'), { label: 'Name' }),
	outline: field(placedShape, { label: 'Outline', help: 'The hole it trims' }),
	lap: field(size.prefault(30), {
		label: 'Lap',
		help: 'How far the finished ring covers the wall round the hole',
	}),
	lip: field(distanceField.prefault(3), {
		label: 'Lip',
		help: 'How far it stands into the hole and hides the edge',
	}),
	material: field(id, { label: 'Board', help: 'Board of the ring', refersTo: 'materials' }),
	cloth: field(id.nullable().default(null), {
		label: 'Cloth',
		help: 'Its cloth; none for a bare ring',
		refersTo: 'cloths',
	}),
	sides: field(z.union([z.literal(1), z.literal(2)]).default(1), {
		label: 'Sides',
		help: 'On one side of the wall or on both',
	}),
	letIn: field(z.boolean().default(false), {
		label: 'Let in',
		help: 'Let into a rebate, flush with the wall',
	}),
	wallCloth: field(id.nullable().default(null), {
		label: 'Cloth on the wall',
		help: 'Cloth on the wall it is let into',
		refersTo: 'cloths',
	}),
});

export type Cover = z.output<typeof cover>;
export type Ring = z.output<typeof ring>;
