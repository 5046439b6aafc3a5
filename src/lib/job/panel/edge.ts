import { z } from '../zod';
import { distanceField, id, size } from '../fields';

/** How the panel ends at one edge of its opening. */
export const edge = z.strictObject({
	end: z
		.enum(['wrapped', 'bare', 'tucked'])
		.default('wrapped')
		.describe('Cloth goes round it, it shows the board, or it slips behind its neighbour'),
	clearance: distanceField
		.prefault(0.5)
		.describe('Gap to be seen between the finished edge and its neighbour'),
	beside: z
		.enum(['fixed', 'panel', 'unwrapped'])
		.default('fixed')
		.describe(
			'Measured to something as it stands; another panel on a shared line, each giving half the gap; or something still to be wrapped',
		),
	neighbourCloth: id.nullable().default(null).describe('Cloth on that neighbour'),
	tuck: size.prefault(12).describe('How far a tucked edge slips behind its neighbour'),
});

/** The edges of an outline: all alike but for those named. */
export const edges = z.strictObject({
	all: edge.prefault({}).describe('Every edge not named below'),
	own: z
		.array(edge.extend({ edge: z.number().int().min(1).max(5000).describe('Number of the edge') }))
		.max(500)
		.default([])
		.describe('Edges that differ; edge 1 leaves corner 1'),
});

export type EdgeChoice = z.output<typeof edge>;
export type EdgeChoices = z.output<typeof edges>;
