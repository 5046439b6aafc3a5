import { field, z } from '../zod';
import { distanceField, id, name, note, size } from '../fields';
import { placedShape } from './outline';

/** Foam laid on a face before the cloth. */
const foam = z
	.strictObject({
		thickness: field(size, {
			label: 'Thickness',
			help: 'Thickness of the foam, as it lies under the cloth',
		}),
	})
	.nullable()
	.default(null);

/** An opening right through the panel. */
export const panelWindow = z.strictObject({
	id,
	name: field(name.default('Window'), { label: 'Name' }),
	outline: field(placedShape, {
		label: 'Outline',
		help: 'The clear opening wanted, or the size of what goes into it',
	}),
	end: field(z.enum(['wrapped', 'bare']).default('wrapped'), {
		label: 'Ends',
		help: 'Cloth turned in, or cut flush at the edge',
	}),
	clearance: field(distanceField.prefault(0), {
		label: 'Gap seen',
		help: 'Gap round what goes into it',
	}),
	thingCloth: field(id.nullable().default(null), {
		label: 'Cloth on what goes in',
		help: 'Cloth on what goes into it',
		refersTo: 'cloths',
	}),
});

/** A piece that makes the face step out, or a recess that makes it step in. */
export const layer = z.strictObject({
	id,
	name: field(name.default('Layer'), { label: 'Name' }),
	place: field(z.enum(['raised', 'recessed']).default('raised'), {
		label: 'Place',
		help: 'Stands out of the face, or is let into it',
	}),
	on: field(id.nullable().default(null), {
		label: 'On',
		help: 'The layer it belongs to; none for the board itself',
		refersTo: 'layers',
	}),
	outline: field(placedShape, {
		label: 'Outline',
		help: 'The piece of board as it is cut; of a recess, the hole in the board above',
	}),
	material: field(id, {
		label: 'Board',
		help: 'Board of the piece; of a recess, of the floor behind it',
		refersTo: 'materials',
	}),
	covering: field(z.enum(['with', 'own', 'bare']).default('with'), {
		label: 'Covered',
		options: { with: 'with what lies beneath', own: 'by itself, set in' },
		help: 'Covered with what lies beneath, wrapped by itself and set in, or left bare',
	}),
	cloth: field(id.nullable().default(null), {
		label: 'Cloth',
		help: 'Its own cloth when it is wrapped by itself; none for the cloth of the panel',
		refersTo: 'cloths',
	}),
	foam: field(foam, { label: 'Foam', help: 'Foam under its cloth' }),
	sink: field(distanceField.prefault(0), {
		label: 'Raised and set in',
		help: 'how deep its seat is; the whole board for a through seat',
	}),
	clearance: field(distanceField.prefault(0.5), {
		label: 'Gap seen',
		help: 'Gap round a piece that is set in',
	}),
	lap: field(size.prefault(20), {
		label: 'Lap',
		help: 'How far the floor of a recess laps behind the board',
	}),
	note: field(note.default(''), { label: 'Note', help: 'Note for the bench' }),
});

export const panelFoam = foam;
export type PanelWindow = z.output<typeof panelWindow>;
export type Layer = z.output<typeof layer>;
