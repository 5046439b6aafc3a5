import { describe, expect, it } from 'vitest';
import { cautionsFor } from '../../src/lib/cautions/cautions';
import { job as schema } from '../../src/lib/job/job';
import type { BoardLayouts } from '../../src/lib/layout/layouts';
import { inches, mm, ticks } from '../../src/lib/measure/length';
import type { Placed } from '../../src/lib/nest/types';

const job = schema.parse({
	stock: {
		materials: [
			{ id: 'mdf-19', name: 'MDF 19', kind: 'mdf', nominal: 19.05, measured: 19.05, density: 750 },
		],
		sheets: [{ id: 's', material: 'mdf-19', length: '96 in', width: '48 in', price: 30 }],
	},
});

function layout(
	placed: { length: number; width: number },
	sheet = { length: 96, width: 48 },
): BoardLayouts {
	const piece: Placed = {
		id: 'p',
		copy: 0,
		x: 0,
		y: 0,
		turn: 0,
		length: mm(placed.length),
		width: mm(placed.width),
	};
	const size = { length: inches(sheet.length), width: inches(sheet.width) };
	return {
		material: 'mdf-19',
		problem: {
			method: 'saw',
			kerf: mm(3),
			sheets: [],
			pieces: [],
			stages: null,
			fenceLimit: null,
			narrowestRip: null,
			keep: { length: mm(1), width: mm(1) },
			first: 'any',
		},
		answer: {
			layouts: [{ sheet: 'buy/s', copy: 0, ...size, placed: [piece], cuts: [], offcuts: [] }],
			unplaced: [],
			cost: ticks(0),
			bound: { sheets: 1, cost: 0 },
			proven: true,
			effort: 0,
		},
		sources: [
			{
				kind: 'buy',
				id: 's',
				name: 'sheet s',
				pinned: false,
				cut: false,
				byHand: null,
				spoiled: [],
				misfit: [],
			},
		],
		faults: [],
		refused: [],
	};
}

const none = { boxes: [], panels: [], parts: [], blanks: [], needs: [], runs: [] };

describe('cautions', () => {
	it('says nothing about work that is not there', () => {
		expect(cautionsFor(job, { ...none, boards: [] })).toEqual([]);
	});

	it('names the mass of a full sheet: 48 x 96 x 3/4 in at 750 kg/m3 is 42.5 kg, over the 23 kg of NIOSH 94-110', () => {
		const heavy = cautionsFor(job, { ...none, boards: [layout({ length: 600, width: 400 })] });
		expect(heavy.find((c) => c.id === 'heavy-sheet-mdf-19')?.text).toContain('about 42 kg');
	});

	it('lets one person lift half of half a sheet', () => {
		const light = layout({ length: 600, width: 400 }, { length: 48, width: 48 });
		const found = cautionsFor(job, { ...none, boards: [light] });
		expect(found.some((c) => c.id.startsWith('heavy'))).toBe(false);
	});

	it.each([
		[152, 400, true], // narrower than 6 in
		[153, 400, false],
		[200, 304, true], // shorter than 12 in
		[200, 305, false],
	])(
		'a part of %d x %d mm is small: %s (bench saw manual: 6 in, 12 in)',
		(width, length, small) => {
			const found = cautionsFor(job, { ...none, boards: [layout({ length, width })] });
			expect(found.some((c) => c.id === 'small-parts')).toBe(small);
		},
	);

	it('gives a source with every caution, or says that there is none', () => {
		const boxes = [
			{ id: 'b', name: 'Box', parts: [], problems: [], needs: [], skin: null, mass: 40 },
		];
		const needs = [{ kind: 'contact-adhesive' as const, amount: 1, for: 'box' }];
		const all = cautionsFor(job, {
			...none,
			boxes: boxes,
			needs,
			boards: [layout({ length: 90, width: 90 })],
		});
		expect(all.length).toBeGreaterThan(8);
		expect(all.every((c) => c.source.length > 10 && c.where.length > 0)).toBe(true);
	});

	it('speaks of hearing where a box has a driver, and only there', () => {
		const own = { id: 'b', name: 'Box', parts: [], problems: [], needs: [], skin: null, mass: 9 };
		const heard = (drivers: object[]) => {
			const boxes = [{ ...own, figures: { loadedMass: 9, drivers } }] as never;
			return cautionsFor(job, { ...none, boxes, boards: [] }).filter((c) => c.id === 'hearing');
		};
		expect(heard([])).toEqual([]);
		expect(heard([{ name: 'Driver 1' }, { name: 'Driver 2' }])).toEqual([
			expect.objectContaining({ about: ['box:b'], where: ['summary', 'box'] }),
		]);
	});

	it('counts the drivers in what a box weighs and pulls with, in the units of the ruler', () => {
		const box = (mass: number, loadedMass: number) => ({
			...{ id: 'b', name: 'Box', parts: [], problems: [], needs: [], skin: null, mass },
			figures: { loadedMass, drivers: [] },
		});
		const of = (asked: typeof job, mass: number, loadedMass: number) => {
			const boxes = [box(mass, loadedMass)] as never;
			const all = cautionsFor(asked, {
				...none,
				boxes,
				boards: [layout({ length: 90, width: 90 })],
			});
			const text = (id: string) => all.find((c) => c.id === id)?.text ?? '';
			return {
				heavy: text('heavy-box-b'),
				pull: text('restraint-b'),
				sheet: text('heavy-sheet-mdf-19'),
			};
		};
		const inch = {
			...job,
			shop: { ...job.shop, ruler: { ...job.shop.ruler, unit: 'in' as const } },
		};
		// 23 kg is the load constant (NIOSH 94-110): an empty box below it may be a loaded one
		// above.
		expect(of(job, 14, 22.9).heavy).toBe('');
		expect(of(job, 14, 23.1).heavy).toContain('about 23 kg with its drivers');
		expect(of(inch, 14, 40).heavy).toContain('about 88 lb with its drivers');
		expect(of(job, 30, 40).pull).toContain('about 7.8 kN'); // 40 kg x 20 x 9.80665 m/s2
		// 40 kg are 88.18 lb, 20 times over
		expect(of(inch, 30, 40).pull).toContain('about 1764 lbf');
		expect(of(job, 1, 1).sheet).toContain('about 42 kg'); // 96 x 48 in, 3/4 in of 750 kg/m3
		expect(of(inch, 1, 1).sheet).toContain('about 94 lb');
	});
});
