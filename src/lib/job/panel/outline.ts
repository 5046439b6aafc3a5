import { field, noted, z } from '../zod';
import { degreesField, PAPERS, position, size } from '../fields';
import { outlineCorner } from '../loose-part';
import { DRAWINGS, dxf, known, pasted, svg } from './drawing';

/*
 * The ways a person gives an outline. Whatever the kind, the outline is seen from the FRONT, x to
 * the right and y up, as the panel stands in the vehicle.
 */

/** What happens at one corner of a shape given by numbers. */
const cornerCut = noted(
	z.union([
		z.strictObject({
			radius: field(size, { label: 'Radius', help: 'Radius of the rounded corner' }),
		}),
		z.strictObject({
			chamfer: field(size, { label: 'Chamfer', help: 'Cut off each side of the corner' }),
		}),
	]),
	{ options: { radius: 'rounded', chamfer: 'cut off' } },
)
	.nullable()
	.default(null);

const point = z.strictObject({
	x: field(position, { label: 'From the left', help: 'To the right' }),
	y: field(position, { label: 'From the bottom', help: 'Upwards' }),
});

const rectangle = z.strictObject({
	kind: z.literal('rectangle'),
	length: field(size, { label: 'Length', help: 'Width of the opening, left to right' }),
	width: field(size, { label: 'Width', help: 'Height of the opening' }),
	corners: field(cornerCut, { label: 'Corners', help: 'All four corners' }),
});

const trapezoid = z.strictObject({
	kind: z.literal('trapezoid'),
	bottom: field(size, { label: 'Bottom', help: 'Length of the bottom edge' }),
	top: field(size, { label: 'Top', help: 'Length of the top edge' }),
	height: field(size, { label: 'Height', help: 'Height, square to the bottom' }),
	shift: field(position.prefault(0), {
		label: 'Top starts right by',
		help: 'How far the top edge starts to the right of the bottom edge',
	}),
	corners: field(cornerCut, { label: 'Corners', help: 'All four corners' }),
});

const polyline = z.strictObject({
	kind: z.literal('polyline'),
	points: field(
		z
			.array(
				point.extend({ cut: field(cornerCut, { label: 'Corner', help: 'Rounded or cut off' }) }),
			)
			.min(3)
			.max(5000),
		{ label: 'Corners', help: 'Corners in order round the opening' },
	),
});

const circle = z.strictObject({
	kind: z.literal('circle'),
	diameter: field(size, { label: 'Diameter', help: 'Diameter' }),
});

const oval = z.strictObject({
	kind: z.literal('oval'),
	length: field(size, { label: 'Length', help: 'Overall length' }),
	width: field(size, { label: 'Width', help: 'Overall height' }),
	ends: field(z.enum(['round', 'ellipse']).default('round'), {
		label: 'Ends',
		help: 'Straight sides with half-round ends, or an ellipse all the way',
	}),
});

const corners = z.strictObject({
	kind: z.literal('corners'),
	corners: field(
		z
			.array(
				outlineCorner.extend({
					through: field(point.nullable().default(null), {
						label: 'Curves through',
						help: 'A point the edge to the next corner curves through',
					}),
				}),
			)
			.min(2)
			.max(5000),
		{
			label: 'Corners',
			help: 'Corners in order; each edge straight, with a bulge, or through a third point',
		},
	),
});

const pixel = z.strictObject({
	x: field(z.number().min(-1e6).max(1e6), { label: 'From the left' }),
	y: field(z.number().min(-1e6).max(1e6), { label: 'From the bottom' }),
});

const pixels = z.number().int().min(1).max(100_000);

/** Clicked over a photograph of a cardboard template with a sheet of paper lying on it. */
const traced = z.strictObject({
	kind: z.literal('traced'),
	picture: field(z.string().max(200).default(''), {
		label: 'Picture',
		help: 'Name of the picture',
	}),
	paper: field(z.enum(['a4', 'letter']), {
		label: 'Paper',
		options: PAPERS,
		help: 'Paper lying on the template',
	}),
	lying: field(z.enum(['upright', 'across']).default('upright'), {
		label: 'Paper lies',
		help: 'Is its short or its long side at the top of the picture?',
	}),
	sheet: field(
		z.tuple([
			field(pixel, { label: 'Top left' }),
			field(pixel, { label: 'Top right' }),
			field(pixel, { label: 'Bottom right' }),
			field(pixel, { label: 'Bottom left' }),
		]),
		{
			label: 'Corners of the paper',
			help: 'top left, top right, bottom right, bottom left',
		},
	),
	along: field(z.array(pixel).max(40).default([]), {
		label: 'Along the edges of the paper',
		help: 'Marks along the edges of the paper, from which the bending of the lens is found',
	}),
	frame: field(
		z
			.strictObject({
				width: field(pixels, { label: 'Across' }),
				height: field(pixels, { label: 'Down' }),
			})
			.nullable()
			.default(null),
		{ label: 'Size of the picture', help: 'In pixels; the lens bends about its middle' },
	),
	points: field(
		z
			.array(
				pixel.extend({
					lies: field(z.enum(['corner', 'side', 'curve']).default('corner'), {
						label: 'Lies',
						help: 'A corner, or somewhere on the side between two corners',
						options: { corner: 'at a corner', side: 'on a straight side', curve: 'on a curve' },
					}),
					cut: field(cornerCut, { label: 'Corner' }),
				}),
			)
			.min(3)
			.max(2000),
		{ label: 'Marks', help: 'Marks in order round the outline' },
	),
	known: field(known, {
		label: 'Known length',
		help: 'One known length to check the picture against',
	}),
});

/** The shape of an opening or a piece. */
export const outlineShape = noted(
	z.discriminatedUnion('kind', [
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
	]),
	{
		options: {
			polyline: 'corners with a radius each',
			corners: 'corners, arcs by bulge or third point',
			...DRAWINGS,
			traced: 'traced over a photograph',
		},
	},
);

/**
 * Where a shape lies on the panel. Its own origin (the lower left corner of a rectangle, trapezoid
 * or imported drawing, the centre of a circle or oval) is put at x, y after turning.
 */
export const placedShape = z.strictObject({
	shape: field(outlineShape, { label: 'Form', help: 'The shape' }),
	x: field(position.prefault(0), { label: 'From the left', help: 'From the left of the panel' }),
	y: field(position.prefault(0), {
		label: 'From the bottom',
		help: 'From the bottom of the panel',
	}),
	turn: field(degreesField(-360, 360).default(0), {
		label: 'Turned left',
		help: 'Turned left, degrees',
		unit: '°',
	}),
	mirror: field(z.boolean().default(false), { label: 'Mirrored', help: 'Mirrored left to right' }),
});

export type OutlineShape = z.output<typeof outlineShape>;
export type PlacedShape = z.output<typeof placedShape>;
