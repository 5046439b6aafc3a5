import { field, z } from '../zod';
import { boardKey } from './fields';
import { distanceField, id, size } from '../fields';

/** The room in the vehicle, bare. */
export const boxSpace = z.strictObject({
	width: field(size, { label: 'Space width', help: 'from wall to wall.' }),
	height: field(size, { label: 'Space height', help: 'from the floor up.' }),
	depth: field(size, { label: 'Space depth', help: 'along the floor.' }),
	depthTop: field(size.nullable().default(null), {
		label: 'Depth at the top',
		help: 'where the seat leans into the space. Empty: as at the floor.',
	}),
	clearance: field(distanceField.prefault(5), {
		label: 'Clearance',
		help: 'left free on every side so that nothing rubs or rattles.',
	}),
});

/** The hole the box goes in through: a hatch, a door, a boot lid. */
export const opening = z.strictObject({
	width: field(size, { label: 'Opening width', help: 'at its narrowest.' }),
	height: field(size, { label: 'Opening height', help: 'at its narrowest.' }),
});

/** The carpet on a box. */
export const carpet = z.strictObject({
	cloth: field(id, { label: 'Cloth', help: 'from the rack.', refersTo: 'cloths' }),
	way: field(z.enum(['band', 'faces', 'cheaper']).default('cheaper'), {
		label: 'Way',
		options: { band: 'band and two ends', faces: 'face by face', cheaper: 'whichever costs less' },
		help: 'a band round the box with two ends, each face by itself, or whichever costs less, cloth and the work of its seams.',
	}),
	cover: field(z.array(boardKey).max(24).default([]), {
		label: 'Cover',
		help: 'the faces that get cloth. None named: all.',
	}),
	other: field(
		z
			.array(
				z.strictObject({
					face: field(boardKey, { label: 'Face', help: 'that gets this cloth instead.' }),
					cloth: field(id, { label: 'Cloth', help: 'from the rack.', refersTo: 'cloths' }),
				}),
			)
			.max(24)
			.default([]),
		{
			label: 'Another cloth',
			help: 'faces in a cloth of their own: the one seen from the cabin, say. They are covered even where others are named to cover.',
		},
	),
	show: field(z.array(boardKey).max(24).default([]), {
		label: 'Show',
		help: 'faces that may carry no seam.',
	}),
	overlap: field(distanceField.prefault(20), {
		label: 'Seam overlap',
		help: 'cloth over cloth where a seam is cut through both layers.',
	}),
	margin: field(distanceField.prefault(40), {
		label: 'Turn-under',
		help: 'cloth that goes round on to a face left bare.',
	}),
});

export type Space = z.output<typeof boxSpace>;
export type Opening = z.output<typeof opening>;
export type Carpet = z.output<typeof carpet>;

/**
 * The mark of the cloth on a face of a box; null where it is left bare. Where a face is given two,
 * the first counts.
 */
export function clothOnFace(
	wish: Pick<Carpet, 'cloth' | 'cover' | 'other'>,
	face: string,
): string | null {
	const own = wish.other.find((o) => o.face === face);
	if (own) return own.cloth;
	return wish.cover.length === 0 || wish.cover.some((k) => k === face) ? wish.cloth : null;
}
