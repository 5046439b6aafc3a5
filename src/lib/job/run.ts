import { distanceField, id, name, percent, size } from './fields';
import { field, z } from './zod';

/*
 * A cable, loom or hose by its length alone: for the order, the cutting list and a label at either
 * end. Nothing here chooses a cross-section, a fuse or a bore.
 */

/** Most alike, and most in a job: each brings two labels and a cut. */
const MOST_ALIKE = 100;
const MOST_RUNS = 200;

const stretch = z.strictObject({
	name: field(z.string().trim().max(120).default(''), {
		label: 'Name',
		help: 'Where it goes: along the sill, up the pillar.',
	}),
	length: field(size, { label: 'Length' }),
});

/** Common practice, no source. */
const USUAL_SLACK = 10; // per cent
const USUAL_EXTRA = 150; // mm

const end = z.strictObject({
	name: field(z.string().trim().max(60).default(''), {
		label: 'Name',
		help: 'What it is joined to; it stands on the labels of both ends.',
	}),
	extra: field(distanceField.prefault(USUAL_EXTRA), {
		label: 'Left for the joint',
		help: 'Length added at this end. What stands here at first is common practice, no source.',
	}),
});

const run = z.strictObject({
	id,
	name,
	from: field(id.optional(), {
		label: 'Cut from',
		help: 'A cable, loom or hose among the sundries of the rack; empty while nobody knows.',
		refersTo: 'reels',
	}),
	count: field(z.number().int().min(1).max(MOST_ALIKE).default(1), { label: 'How many' }),
	slack: field(percent.default(USUAL_SLACK), {
		label: 'Slack',
		help: 'Added to what the stretches come to, for bends and for hanging free. The usual tenth: common practice, no source.',
		unit: '%',
	}),
	stretches: field(
		z
			.array(stretch)
			.min(1, 'The run has no stretch.|Give the lengths it is made up of, one at least.')
			.max(60),
		{ label: 'Stretches' },
	),
	one: field(end.prefault({}), { label: 'One end' }),
	other: field(end.prefault({}), { label: 'Other end' }),
});

export const runs = z.array(run).max(MOST_RUNS).default([]);

export type Run = z.output<typeof run>;
