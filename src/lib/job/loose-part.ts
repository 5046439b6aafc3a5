import { field, z } from './zod';
import { count, id, name, note, position, size } from './fields';

/**
 * A corner of an outline as a file holds it: x, y and the bulge of the edge that leaves it (tan of
 * a quarter of the arc's angle).
 */
export const outlineCorner = z.strictObject({
	x: field(position, { label: 'From the left' }),
	y: field(position, { label: 'From the bottom' }),
	bulge: field(z.number().min(-1e3).max(1e3).exactOptional(), { label: 'Bulge' }),
});
export const outline = z.array(outlineCorner).min(2).max(5000);

/** A part the person lists by hand: a rectangle, or an outline. */
export const loosePart = z.strictObject({
	id,
	name: field(name.optional(), { label: 'Name' }),
	material: field(id, { label: 'Board', refersTo: 'materials' }),
	length: field(size, { label: 'Length' }),
	width: field(size, { label: 'Width' }),
	count: field(count.default(1), { label: 'How many' }),
	grain: field(z.enum(['length', 'width', 'any']).default('length'), {
		label: 'Grain',
		options: { width: 'across the width', any: 'any way' },
	}),
	outline: field(outline.optional(), { label: 'Outline' }),
	note: field(note.default(''), { label: 'Note' }),
});

export type LoosePart = z.output<typeof loosePart>;
