import { z } from './zod';
import { distanceField, id, size } from './fields';

const rect = { x: distanceField, y: distanceField, length: size, width: size };
const turn = z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]);
/** What falls off one side of a cut may have been eaten up whole by the kerf. */
const region = z.strictObject({
	x: distanceField,
	y: distanceField,
	length: distanceField,
	width: distanceField,
});
const partId = z.string().max(200);

const gives = z.strictObject({
	kind: z.enum(['piece', 'strip', 'offcut', 'waste', 'nothing']),
	rect: region,
	id: partId.exactOptional(),
	nextCut: z.number().int().min(1).exactOptional(),
});

const spot = z.strictObject({ x: distanceField, y: distanceField });

/** One cut as it was printed; the fields are those of a cut in a layout. */
const cut = z.strictObject({
	n: z.number().int().min(1),
	kind: z.enum(['trim', 'rip', 'cross', 'slant']),
	runs: z.enum(['x', 'y']),
	region,
	at: distanceField,
	fence: distanceField,
	fenceEdge: z.enum(['left', 'right', 'bottom', 'top']),
	gives: z.tuple([gives, gives]),
	from: spot.exactOptional(),
	to: spot.exactOptional(),
});

/** A laid-out sheet that stays as it is: it has been printed, or the saw is in it. */
export const pinnedLayout = z.strictObject({
	material: id,
	/** Where the sheet came from and its id in the stock: 'buy/ply-18', 'owned/ply-18', 'offcut/R7'. */
	sheet: z
		.string()
		.max(80)
		.regex(
			/^(offcut|owned|buy)\/./,
			'This names no sheet.|Write where it came from and its mark: buy/ply-18.',
		),
	length: size,
	width: size,
	placed: z.array(z.strictObject({ id: partId, ...rect, turn })).max(2000),
	cuts: z.array(cut).max(4000).default([]),
	/** What goes back on the rack, each with the label printed on it. */
	offcuts: z
		.array(z.strictObject({ ...rect, label: id }))
		.max(500)
		.default([]),
	/** True once it is cut: its sheet is off the rack, its offcuts are on it, its parts are made. */
	cut: z.boolean().default(false),
});

export type PinnedLayout = z.output<typeof pinnedLayout>;
