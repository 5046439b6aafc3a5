import { z } from './zod';
import { count, id, name, note, position, size } from './fields';

/** A corner of an outline as a file holds it: x, y and the bulge of the edge that leaves it (tan of a quarter of the arc's angle). */
export const outlineCorner = z.strictObject({
	x: position,
	y: position,
	bulge: z.number().min(-1e3).max(1e3).exactOptional(),
});
export const outline = z.array(outlineCorner).min(2).max(5000);

/** A part the person lists by hand: a rectangle, or an outline. */
export const loosePart = z.strictObject({
	id,
	name: name.optional(),
	material: id,
	length: size,
	width: size,
	count: count.default(1),
	grain: z.enum(['length', 'width', 'any']).default('length'),
	outline: outline.optional(),
	note: note.default(''),
});

export type LoosePart = z.output<typeof loosePart>;
