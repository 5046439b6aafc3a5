import { z } from '../zod';
import { boardKey } from './fields';
import { distanceField, id, size } from '../fields';

/** The room in the vehicle, bare. */
export const boxSpace = z.strictObject({
	width: size.describe('Space width: from wall to wall.'),
	height: size.describe('Space height: from the floor up.'),
	depth: size.describe('Space depth: along the floor.'),
	depthTop: size
		.nullable()
		.default(null)
		.describe('Depth at the top: where the seat leans into the space. Empty: as at the floor.'),
	clearance: distanceField
		.prefault(5)
		.describe('Clearance: left free on every side so that nothing rubs or rattles.'),
});

/** The hole the box goes in through: a hatch, a door, a boot lid. */
export const opening = z.strictObject({
	width: size.describe('Opening width: at its narrowest.'),
	height: size.describe('Opening height: at its narrowest.'),
});

/** The carpet on a box. */
export const carpet = z.strictObject({
	cloth: id.describe('Cloth: from the rack.'),
	way: z
		.enum(['band', 'faces', 'cheaper'])
		.default('cheaper')
		.describe(
			'Way: a band round the box with two ends, each face by itself, or whichever takes less cloth.',
		),
	cover: z
		.array(boardKey)
		.max(24)
		.default([])
		.describe('Cover: the faces that get cloth. None named: all.'),
	show: z.array(boardKey).max(24).default([]).describe('Show: faces that may carry no seam.'),
	overlap: distanceField
		.prefault(20)
		.describe('Seam overlap: cloth over cloth where a seam is cut through both layers.'),
	margin: distanceField
		.prefault(40)
		.describe('Turn-under: cloth that goes round on to a face left bare.'),
});

export type Space = z.output<typeof boxSpace>;
export type Opening = z.output<typeof opening>;
export type Carpet = z.output<typeof carpet>;
