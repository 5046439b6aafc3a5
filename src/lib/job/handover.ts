import { name, note } from './fields';
import { field, z } from './zod';

const text = z.string().max(300);

/** What is reached without taking the build out, and how. */
const reached = z.strictObject({
	thing: field(
		z.enum([
			'battery',
			'spare-wheel',
			'jack',
			'fuses',
			'distribution',
			'tow-eye',
			'filler',
			'other',
		]),
		{
			label: 'What',
			options: {
				'spare-wheel': 'spare wheel',
				'tow-eye': 'tow eye',
				filler: 'filler or its release',
			},
		},
	),
	how: field(text.min(1, 'It is not said how.|Say how it is reached.'), {
		label: 'How it is reached',
		help: 'Which cover or floor comes off first, and from which side.',
	}),
});

/** A size as it was built, beside the plan's. */
const built = z.strictObject({
	what: field(name, { label: 'What' }),
	size: field(text, { label: 'As built', help: 'With its unit, or in words.' }),
});

/** For whoever has the vehicle next, and for the shop itself. */
export const handover = z.strictObject({
	reached: field(z.array(reached).max(40).default([]), { label: 'What is reached where' }),
	off: field(note.default(''), {
		label: 'What comes off first',
		help: 'In words, where the order of taking it out matters.',
	}),
	clear: field(note.default(''), {
		label: 'Not to block or drill',
		help: 'Lines, tanks, airbags, drains and vents behind the build.',
	}),
	built: field(z.array(built).max(100).default([]), { label: 'Sizes as built' }),
	settings: field(note.default(''), {
		label: 'Settings used',
		help: 'For the shop: blade, tilt, bit, pressure, glue time.',
	}),
	next: field(note.default(''), { label: 'Next time', help: 'What to do otherwise.' }),
});
