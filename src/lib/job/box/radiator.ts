import { field, z } from '../zod';
import { boardKey, litresBetween } from './fields';
import { size } from '../fields';
import { holdFields, placeFields } from './mounted';

/** Figures of the maker's data sheet: two of resonance, mass and suspension say the third. */
const data = z.strictObject({
	fs: field(z.number().min(1).max(500).optional(), {
		label: 'Resonance',
		help: 'free air resonance without added mass, Hz.',
		unit: 'Hz',
	}),
	mms: field(z.number().min(0.1).max(20000).optional(), {
		label: 'Moving mass',
		help: 'Mms without added mass, g.',
		unit: 'g',
	}),
	cms: field(z.number().min(0.001).max(100).optional(), {
		label: 'Compliance',
		help: 'Cms of the suspension, mm/N; Vas says the same.',
		unit: 'mm/N',
	}),
	vas: field(litresBetween(0.05, 5000).optional(), {
		label: 'Vas',
		help: 'volume of air as stiff as the suspension, litres.',
	}),
	sd: field(z.number().min(5).max(5000).optional(), {
		label: 'Cone area',
		help: 'cm2; mass in grams and excursion need it.',
		unit: 'cm²',
	}),
	qms: field(z.number().min(0.2).max(100).optional(), {
		label: 'Mechanical Q',
		help: 'Qms without added mass. Empty: its own losses are not counted, and said.',
	}),
	xmax: field(z.number().min(0.1).max(200).optional(), {
		label: 'Excursion',
		help: 'one way, mm.',
		unit: 'mm',
	}),
});

const goal = z.discriminatedUnion('by', [
	z.strictObject({
		by: z.literal('mass'),
		grams: field(z.number().min(0).max(20000).default(0), {
			label: 'Added mass',
			help: 'fixed to the cone of each, g; the tuning follows.',
			unit: 'g',
		}),
	}),
	z.strictObject({
		by: z.literal('tuning'),
		hertz: field(z.number().min(5).max(200), {
			label: 'Tuning',
			help: 'the frequency wanted, Hz; the mass to be added follows.',
			unit: 'Hz',
		}),
	}),
]);

/** Cones without a motor that a chamber breathes through instead of a vent. */
export const radiator = z.strictObject({
	...placeFields('radiator', 'radiators', {
		board: field(boardKey.default('front'), {
			label: 'Board',
			help: 'the one the radiator is mounted on.',
		}),
	}),
	depth: field(size, {
		label: 'Mounting depth',
		help: 'from the face the flange sits on to the rear of the cone or its basket.',
	}),
	...holdFields('radiator', 'rear'),
	goal: field(goal.default({ by: 'mass', grams: 0 }), {
		label: 'Wanted',
		help: 'a tuning, or a mass you have.',
		options: { tuning: 'the tuning wanted', mass: 'the mass there is' },
	}),
	data: field(data.prefault({}), {
		label: 'Data sheet',
		help: 'for the tuning, the mass to be added and the response.',
	}),
});

export type Radiator = z.output<typeof radiator>;
