import { z } from '../zod';
import { distanceField, id, name, note, size } from '../fields';
import { placedShape } from './outline';

/** Foam laid on a face before the cloth. */
const foam = z
	.strictObject({ thickness: size.describe('Thickness of the foam, as it lies under the cloth') })
	.nullable()
	.default(null);

/** An opening right through the panel. */
export const panelWindow = z.strictObject({
	id,
	name: name.default('Window'),
	outline: placedShape.describe('The clear opening wanted, or the size of what goes into it'),
	end: z
		.enum(['wrapped', 'bare'])
		.default('wrapped')
		.describe('Cloth turned in, or cut flush at the edge'),
	clearance: distanceField.prefault(0).describe('Gap round what goes into it'),
	thingCloth: id.nullable().default(null).describe('Cloth on what goes into it'),
});

/** A piece that makes the face step out, or a recess that makes it step in. */
export const layer = z.strictObject({
	id,
	name: name.default('Layer'),
	place: z
		.enum(['raised', 'recessed'])
		.default('raised')
		.describe('Stands out of the face, or is let into it'),
	on: id.nullable().default(null).describe('The layer it belongs to; none for the board itself'),
	outline: placedShape.describe(
		'The piece of board as it is cut; of a recess, the hole in the board above',
	),
	material: id.describe('Board of the piece; of a recess, of the floor behind it'),
	covering: z
		.enum(['with', 'own', 'bare'])
		.default('with')
		.describe('Covered with what lies beneath, wrapped by itself and set in, or left bare'),
	cloth: id
		.nullable()
		.default(null)
		.describe('Its own cloth when it is wrapped by itself; none for the cloth of the panel'),
	foam: foam.describe('Foam under its cloth'),
	sink: distanceField
		.prefault(0)
		.describe('Raised and set in: how deep its seat is; the whole board for a through seat'),
	clearance: distanceField.prefault(0.5).describe('Gap round a piece that is set in'),
	lap: size.prefault(20).describe('How far the floor of a recess laps behind the board'),
	note: note.default('').describe('Note for the bench'),
});

export const panelFoam = foam;
export type PanelWindow = z.output<typeof panelWindow>;
export type Layer = z.output<typeof layer>;
