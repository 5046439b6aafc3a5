import type { JobFile } from '../../src/lib/job/job';

type Stock = NonNullable<JobFile['stock']>;

/** Little of each thing, so that a plan takes no time, and two of what is chosen by its mark. */
export const RACK: Stock = {
	materials: [
		{ id: 'ply', name: 'Plywood 12', nominal: 12, measured: 12, grain: true },
		{ id: 'mdf', name: 'MDF 16', kind: 'mdf', nominal: 16, measured: 16, density: 740 },
	],
	sheets: [
		{ id: 'ply-full', material: 'ply', length: 2440, width: 1220, price: 50, owned: 1 },
		{
			...{ id: 'mdf-full', material: 'mdf', length: 2440, width: 1220, price: 40, code: 'M16' },
			...{ supplier: 'yard', priced: '2026-11-01', breaks: [{ from: 1, price: 36 }] },
		},
	],
	suppliers: [
		{ id: 'yard', name: 'Quayside Boards', least: 30, contact: 'Counter 2' },
		{ id: 'lane', name: 'Ferry Lane Trimmings' },
	],
};

/** Carpet with a nap and a plain vinyl, a roll of each. */
export const CLOTHS: Stock = {
	cloths: [
		{ id: 'felt', name: 'Felt', loose: 4, pressed: 3, nap: 'one-way', relief: 1 },
		{ id: 'vinyl', name: 'Vinyl', kind: 'vinyl', loose: 1, pressed: 1 },
	],
	rolls: [
		{
			...{ id: 'felt-roll', cloth: 'felt', width: 1400, usable: 1370, price: 10, step: 100 },
			...{ supplier: 'lane', priced: '2026-11-02', breaks: [{ from: 100, price: 9 }] },
		},
		{ id: 'vinyl-roll', cloth: 'vinyl', width: 1400, usable: 1380, price: 12, step: 100 },
	],
};

const PACKS = {
	'contact-adhesive': 5,
	'wood-glue': 4,
	screws: 200,
	brads: 500,
	sealant: 10,
	gasket: 10,
	dowel: 2,
	't-nuts': 50,
	terminal: 1,
	lining: 2,
	stuffing: 20,
	damping: 2,
	foam: 2,
	clips: 25,
	magnets: 20,
} as const;

/** A pack of everything that is counted. */
export const SUNDRIES: Stock = {
	sundries: [
		...Object.entries(PACKS).map(([kind, pack]) => ({
			id: kind,
			name: `Pack of ${kind}`,
			kind: kind as keyof typeof PACKS,
			pack,
			price: 8,
		})),
		{
			...{ id: 'tape', name: 'Masking tape', kind: 'other', pack: 1, price: 3, use: 2 },
			...{ supplier: 'lane', priced: '2026-11-03', breaks: [{ from: 2, price: 2 }] },
		},
	],
};
