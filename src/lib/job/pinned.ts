import { field, z } from './zod';
import { distanceField, id, size } from './fields';

const rect = {
	x: field(distanceField, { label: 'From the left' }),
	y: field(distanceField, { label: 'From the bottom' }),
	length: field(size, { label: 'Length' }),
	width: field(size, { label: 'Width' }),
};
export const turnField = z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]);
const turn = field(turnField, { label: 'Turned left', unit: '°' });
/**
 * Where a sheet came from and its id in the stock: 'buy/ply-18', 'owned/ply-18', 'offcut/R7'.
 */
export const sheetMark = z
	.string()
	.max(80)
	.regex(
		/^(offcut|owned|buy)\/./,
		'This names no sheet.|Write where it came from and its mark: buy/ply-18.',
	);
/** What falls off one side of a cut may have been eaten up whole by the kerf. */
const region = field(
	z.strictObject({
		x: field(distanceField, { label: 'From the left' }),
		y: field(distanceField, { label: 'From the bottom' }),
		length: field(distanceField, { label: 'Length' }),
		width: field(distanceField, { label: 'Width' }),
	}),
	{ label: 'Region' },
);
const partId = z.string().max(200);

const gives = z.strictObject({
	kind: field(z.enum(['piece', 'strip', 'offcut', 'waste', 'nothing']), { label: 'Kind' }),
	rect: region,
	id: field(partId.exactOptional(), { label: 'Mark' }),
	nextCut: field(z.number().int().min(1).exactOptional(), { label: 'Next cut' }),
});

const spot = z.strictObject({
	x: field(distanceField, { label: 'From the left' }),
	y: field(distanceField, { label: 'From the bottom' }),
});

/** One cut as it was printed; the fields are those of a cut in a layout. */
const cut = z.strictObject({
	n: field(z.number().int().min(1), { label: 'Number' }),
	kind: field(z.enum(['trim', 'rip', 'cross', 'slant']), { label: 'Kind' }),
	runs: field(z.enum(['x', 'y']), { label: 'Runs' }),
	region,
	at: field(distanceField, { label: 'Place' }),
	fence: field(distanceField, { label: 'Fence' }),
	fenceEdge: field(z.enum(['left', 'right', 'bottom', 'top']), { label: 'Fence edge' }),
	gives: field(z.tuple([field(gives, { label: 'First' }), field(gives, { label: 'Second' })]), {
		label: 'Gives',
	}),
	from: field(spot.exactOptional(), { label: 'From' }),
	to: field(spot.exactOptional(), { label: 'To' }),
});

const mark = z.string().max(20);

/** What a part was when it was cut; the same mark means the same. */
const madePart = z.strictObject({
	id: field(partId, { label: 'Mark' }),
	thickness: field(mark, { label: 'Thickness' }),
	outline: field(mark, { label: 'Outline' }),
	bevels: field(mark, { label: 'Bevels' }),
	holes: field(mark, { label: 'Holes' }),
	faces: field(mark, { label: 'Grooves' }),
});

/** A laid-out sheet that stays as it is: it has been printed, or the saw is in it. */
export const pinnedLayout = z.strictObject({
	material: field(id, { label: 'Board', refersTo: 'materials' }),
	sheet: field(sheetMark, { label: 'Sheet' }),
	length: field(size, { label: 'Length' }),
	width: field(size, { label: 'Width' }),
	placed: field(
		z
			.array(
				z.strictObject({
					id: field(partId, { label: 'Mark' }),
					...rect,
					turn,
					/** Of no use, its sheet cut or in the saw: the job needs one more of them. */
					spoiled: field(z.boolean().default(false), { label: 'Spoiled: cut again' }),
					/** It was made to fit what has changed since it was cut. */
					kept: field(z.boolean().default(false), { label: 'Worked over: it fits' }),
				}),
			)
			.max(2000),
		{ label: 'Placed' },
	),
	cuts: field(z.array(cut).max(4000).default([]), { label: 'Cuts' }),
	/** What goes back on the rack, each with the label printed on it. */
	offcuts: field(
		z
			.array(z.strictObject({ ...rect, label: field(id, { label: 'Label', edit: 'text' }) }))
			.max(500)
			.default([]),
		{ label: 'Offcuts' },
	),
	/** Its parts as they were designed when it was cut: a mark for each thing that may change. */
	made: field(z.array(madePart).max(2000).default([]), { label: 'As it was cut' }),
	/**
	 * True once it is cut: its sheet is off the rack, its offcuts are on it, its parts are made.
	 */
	cut: field(z.boolean().default(false), { label: 'Cut' }),
});

export type PinnedLayout = z.output<typeof pinnedLayout>;
