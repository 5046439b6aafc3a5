import { z } from '../zod';
import { degreesField, distanceField, position, size } from '../fields';
import { outlineCorner } from '../loose-part';

/*
 * The ways a person gives an outline. Whatever the kind, the outline is seen from the FRONT, x to the right and y up, as
 * the panel stands in the vehicle.
 */

/** What happens at one corner of a shape given by numbers. */
const cornerCut = z
	.union([
		z.strictObject({ radius: size.describe('Radius of the rounded corner') }),
		z.strictObject({ chamfer: size.describe('Cut off each side of the corner') }),
	])
	.nullable()
	.default(null);

const point = z.strictObject({
	x: position.describe('To the right'),
	y: position.describe('Upwards'),
});

const rectangle = z.strictObject({
	kind: z.literal('rectangle'),
	length: size.describe('Width of the opening, left to right'),
	width: size.describe('Height of the opening'),
	corners: cornerCut.describe('All four corners'),
});

const trapezoid = z.strictObject({
	kind: z.literal('trapezoid'),
	bottom: size.describe('Length of the bottom edge'),
	top: size.describe('Length of the top edge'),
	height: size.describe('Height, square to the bottom'),
	shift: position
		.prefault(0)
		.describe('How far the top edge starts to the right of the bottom edge'),
	corners: cornerCut.describe('All four corners'),
});

const polyline = z.strictObject({
	kind: z.literal('polyline'),
	points: z
		.array(point.extend({ cut: cornerCut.describe('Rounded or cut off') }))
		.min(3)
		.max(5000)
		.describe('Corners in order round the opening'),
});

const circle = z.strictObject({ kind: z.literal('circle'), diameter: size.describe('Diameter') });

const oval = z.strictObject({
	kind: z.literal('oval'),
	length: size.describe('Overall length'),
	width: size.describe('Overall height'),
	ends: z
		.enum(['round', 'ellipse'])
		.default('round')
		.describe('Straight sides with half-round ends, or an ellipse all the way'),
});

const corners = z.strictObject({
	kind: z.literal('corners'),
	corners: z
		.array(
			outlineCorner.extend({
				through: point
					.nullable()
					.default(null)
					.describe('A point the edge to the next corner curves through'),
			}),
		)
		.min(2)
		.max(5000)
		.describe('Corners in order; each edge straight, with a bulge, or through a third point'),
});

const drawingUnit = z.enum(['mm', 'cm', 'm', 'in', 'pt', 'px']);

/** A length the person has measured on the thing itself, to catch a wrong unit or scale. */
const known = z
	.strictObject({
		of: z.enum(['length', 'width', 'edge']).describe('Overall length, overall height or one edge'),
		edge: z.number().int().min(1).max(5000).default(1).describe('Number of that edge'),
		is: size.describe('What the tape says'),
	})
	.nullable()
	.default(null);

const imported = {
	unit: drawingUnit.describe('Unit the drawing is in'),
	scale: z
		.number()
		.min(1e-4)
		.max(1e4)
		.default(1)
		.describe('Times this: 10 for a drawing made at 1 to 10'),
	known: known.describe('One known length to check the drawing against'),
	join: distanceField.prefault(0.2).describe('Loose ends nearer than this are joined'),
};
/** Longer than a drawing of 100,000 entities; what is longer is no outline. */
const drawingText = z.string().min(1).max(40_000_000);

const svg = z.strictObject({ kind: z.literal('svg'), text: drawingText, ...imported });
const dxf = z.strictObject({
	kind: z.literal('dxf'),
	text: drawingText,
	layer: z.string().max(255).default('').describe('Only this drawing layer; empty for all'),
	...imported,
});
const pasted = z.strictObject({
	kind: z.literal('pasted'),
	text: z.string().min(1).max(400_000).describe('One corner a line: x and y'),
	decimal: z.enum(['.', ',']).default('.').describe('Decimal sign'),
	...imported,
});

/** An outline out of a file or a list, without any photograph. */
export const drawing = z.discriminatedUnion('kind', [svg, dxf, pasted]);

const pixel = z.strictObject({
	x: z.number().min(-1e6).max(1e6),
	y: z.number().min(-1e6).max(1e6),
});

/** Clicked over a photograph of a cardboard template with a sheet of paper lying on it. */
const traced = z.strictObject({
	kind: z.literal('traced'),
	picture: z.string().max(200).default('').describe('Name of the picture'),
	paper: z.enum(['a4', 'letter']).describe('Paper lying on the template'),
	lying: z
		.enum(['upright', 'across'])
		.default('upright')
		.describe('Is its short or its long side at the top of the picture?'),
	sheet: z
		.tuple([pixel, pixel, pixel, pixel])
		.describe('Corners of the paper: top left, top right, bottom right, bottom left'),
	points: z
		.array(pixel.extend({ cut: cornerCut }))
		.min(3)
		.max(2000)
		.describe('The outline, corner by corner'),
	known: known.describe('One known length to check the picture against'),
});

/** The shape of an opening or a piece. */
export const outlineShape = z.discriminatedUnion('kind', [
	rectangle,
	trapezoid,
	polyline,
	circle,
	oval,
	corners,
	svg,
	dxf,
	pasted,
	traced,
]);

/**
 * Where a shape lies on the panel. Its own origin (the lower left corner of a rectangle, trapezoid or imported drawing,
 * the centre of a circle or oval) is put at x, y after turning.
 */
export const placedShape = z.strictObject({
	shape: outlineShape.describe('The shape'),
	x: position.prefault(0).describe('From the left of the panel'),
	y: position.prefault(0).describe('From the bottom of the panel'),
	turn: degreesField(-360, 360).default(0).describe('Turned left, degrees'),
	mirror: z.boolean().default(false).describe('Mirrored left to right'),
});

export type OutlineShape = z.output<typeof outlineShape>;
export type OutlineDrawing = z.output<typeof drawing>;
export type PlacedShape = z.output<typeof placedShape>;
export type CornerCut = z.output<typeof cornerCut>;
