import type { JobFile } from '../../src/lib/job/job';
import { CLOTHS, RACK } from './rack';

/** Cloth is pulled and adhesive used of a panel whose second copy was asked for since. */
const done: JobFile = {
	name: 'Half done',
	stock: {
		...RACK,
		...CLOTHS,
		sundries: [
			{ id: 'glue', name: 'Glue', kind: 'contact-adhesive', pack: 5, price: 8 },
			{ id: 'other', name: 'Other glue', kind: 'other', pack: 5, price: 8, use: 1 },
		],
	},
	panels: [
		{
			...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'vinyl', count: 2 },
			opening: { kind: 'rectangle', length: 400, width: 300 },
		},
	],
	pulled: [
		{
			...{ cloth: 'vinyl', roll: 'vinyl-roll', owned: false, usable: 1380, lot: '7' },
			...{ length: 385, pull: 400 },
			placed: [{ id: 'p.face', x: 0, y: 0, length: 385, width: 485, turn: 0 }],
		},
	],
	used: [{ sundry: 'glue', name: 'Glue', packs: 0.02, bought: 1, counted: 0.01 }],
};

export const DONE: readonly JobFile[] = [done];
