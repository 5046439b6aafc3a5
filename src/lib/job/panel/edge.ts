import { field, z } from '../zod';
import { distanceField, id, size } from '../fields';

/** How the panel ends at one edge of its opening. */
export const edge = z.strictObject({
	end: field(z.enum(['wrapped', 'bare', 'tucked']).default('wrapped'), {
		label: 'Ends',
		help: 'Cloth goes round it, it shows the board, or it slips behind its neighbour',
	}),
	clearance: field(distanceField.prefault(0.5), {
		label: 'Gap seen',
		help: 'Gap to be seen between the finished edge and its neighbour',
	}),
	beside: field(z.enum(['fixed', 'panel', 'unwrapped']).default('fixed'), {
		label: 'Measured to',
		options: {
			fixed: 'something as it stands',
			panel: 'another panel, half the gap each',
			unwrapped: 'something still to be wrapped',
		},
		help: 'Measured to something as it stands; another panel on a shared line, each giving half the gap; or something still to be wrapped',
	}),
	neighbourCloth: field(id.nullable().default(null), {
		label: 'Cloth on the neighbour',
		help: 'Cloth on that neighbour',
		refersTo: 'cloths',
	}),
	tuck: field(size.prefault(12), {
		label: 'Tucked behind by',
		help: 'How far a tucked edge slips behind its neighbour',
	}),
});

/** The edges of an outline: all alike but for those named. */
export const edges = z.strictObject({
	all: field(edge.prefault({}), { label: 'Every edge', help: 'Every edge not named below' }),
	own: field(
		z
			.array(
				edge.extend({
					edge: field(z.number().int().min(1).max(5000), {
						label: 'Edge number',
						help: 'Number of the edge',
					}),
				}),
			)
			.max(500)
			.default([]),
		{ label: 'Edges that differ', help: 'Edges that differ; edge 1 leaves corner 1' },
	),
});

export type EdgeChoice = z.output<typeof edge>;
export type EdgeChoices = z.output<typeof edges>;
