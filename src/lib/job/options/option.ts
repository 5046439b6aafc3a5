import { id, name, note } from '../fields';
import { field, z } from '../zod';

/** One change an option makes to the job. */
const change = z.strictObject({
	do: field(z.enum(['set', 'add', 'remove']).default('set'), {
		label: 'Change',
		options: { set: 'set a field', add: 'add to a list', remove: 'take out' },
	}),
	path: field(z.string().min(1, 'It names no field.|Write the way to one.').max(200), {
		label: 'Way to it',
		help: 'As in a job file, things by their marks: panels/cover-panel/cloth.',
	}),
	value: field(z.string().max(20_000).default(''), {
		label: 'Value',
		help: 'As in a job file: a mark, a number of millimetres, or a whole thing as JSON.',
	}),
});

/** An alternative offered in the quote: the same job with some things otherwise. */
export const jobOption = z.strictObject({
	id,
	name,
	note: field(note.default(''), { label: 'Note' }),
	changes: field(z.array(change).max(200).default([]), { label: 'Changes' }),
});

export type JobOption = z.output<typeof jobOption>;
