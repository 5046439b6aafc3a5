import { field, noted, notes, z, type Note } from '../zod';
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

/** A field of an edge that differs: left out, it is as that of every edge. */
function asEvery<S extends z.ZodType>(schema: S, of: z.ZodType, usual: unknown) {
	const said: Note = { ...notes.get(of), inherits: { from: 'all', usual, as: 'as every edge' } };
	return noted<z.ZodOptional<S>>(schema.optional(), said);
}

const { end, clearance, beside, neighbourCloth, tuck } = edge.shape;

/** An edge that differs says in what; the rest is as every edge. */
const ownEdge = z.strictObject({
	edge: field(z.number().int().min(1).max(5000), {
		label: 'Edge number',
		help: 'Number of the edge',
	}),
	end: asEvery(end.unwrap(), end, 'wrapped'),
	clearance: asEvery(clearance.unwrap(), clearance, 0.5),
	beside: asEvery(beside.unwrap(), beside, 'fixed'),
	neighbourCloth: asEvery(neighbourCloth.unwrap(), neighbourCloth, null),
	tuck: asEvery(tuck.unwrap(), tuck, 12),
});

/** The edges of an outline: all alike but for those named. */
export const edges = z.strictObject({
	all: field(edge.prefault({}), { label: 'Every edge', help: 'Every edge not named below' }),
	own: field(z.array(ownEdge).max(500).default([]), {
		label: 'Edges that differ',
		help: 'Edges that differ: what one of them does not say is as every edge; edge 1 leaves corner 1',
	}),
});

export type EdgeChoice = z.output<typeof edge>;
export type EdgeChoices = z.output<typeof edges>;
