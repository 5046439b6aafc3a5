import { z } from '../zod';
import { distanceField, id, name, position, size } from '../fields';
import { placedShape } from './outline';

const place = {
	x: position.describe('From the left of the panel'),
	y: position.describe('From the bottom'),
};

/** A service cover: comes off without tools. */
export const cover = z.strictObject({
	id,
	name: name.default('Cover'),
	outline: placedShape.describe('The line between cover and panel'),
	gap: size.prefault(1).describe('Gap to be seen round it'),
	cloth: id.nullable().default(null).describe('Its cloth; none for the cloth of the panel'),
	lift: z
		.discriminatedUnion('by', [
			z.strictObject({
				by: z.literal('finger-hole'),
				diameter: size.prefault(25).describe('Diameter of the finger hole'),
				...place,
			}),
			z.strictObject({
				by: z.literal('magnets'),
				spacing: size.prefault(150).describe('Farthest apart'),
				diameter: size.prefault(15).describe('Diameter of a magnet'),
			}),
		])
		.prefault({ by: 'magnets' })
		.describe('What it is taken off with'),
	ledge: z
		.strictObject({
			material: id.describe('Board of the ledge'),
			inside: size.prefault(15).describe('How far the cover rests on it'),
			outside: size.prefault(25).describe('How far it is glued behind the panel'),
		})
		.describe('Frame behind the panel that the cover rests on'),
});

/** A line across a floor or lid along which it folds, its cloth running through as the hinge. */
export const hinge = z.strictObject({
	id,
	from: z.strictObject(place).describe('A point at one edge'),
	to: z.strictObject(place).describe('A point at the other edge'),
	gap: distanceField
		.nullable()
		.default(null)
		.describe('Gap between the boards; none for twice the loose cloth'),
});

/** A ring that trims an opening between two spaces. */
export const ring = z.strictObject({
	id,
	name: name.default('Ring'),
	outline: placedShape.describe('The hole it trims'),
	lap: size.prefault(30).describe('How far the finished ring covers the wall round the hole'),
	lip: distanceField.prefault(3).describe('How far it stands into the hole and hides the edge'),
	material: id.describe('Board of the ring'),
	cloth: id.nullable().default(null).describe('Its cloth; none for a bare ring'),
	sides: z
		.union([z.literal(1), z.literal(2)])
		.default(1)
		.describe('On one side of the wall or on both'),
	letIn: z.boolean().default(false).describe('Let into a rebate, flush with the wall'),
	wallCloth: id.nullable().default(null).describe('Cloth on the wall it is let into'),
});

export type Cover = z.output<typeof cover>;
export type Ring = z.output<typeof ring>;
