import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { plan } from '../../src/lib/plan';
import { printPack } from '../../src/lib/print/pack';
import { stepsOf } from '../steps';
import { sequenceOf } from '../../src/lib/nest/saw/cutting/fence';
import { inflate } from '../../src/lib/nest/inflated';
import { mm } from '../../src/lib/measure/length';
import { BOXES } from './boxes';
import { LISTS } from './lists';
import { PANELS } from './panels';

/* Single cases that the net has found. */

const named = (jobs: readonly JobFile[], name: string): JobFile => {
	const found = jobs.find((job) => job.name === name);
	if (!found) throw new Error(`no job ${name}`);
	return structuredClone(found);
};
const told = async (file: JobFile, path: string): Promise<string[]> =>
	(await plan(file, { effort: 1 })).problems
		.filter((p) => p.path.join('.') === path)
		.map((p) => p.what);

describe('a sheet that is pinned', () => {
	it('prints with a part that the job has no more, and says so', async () => {
		const file = named(LISTS, 'Half cut');
		file.parts = [{ id: 'B', material: 'ply', length: 300, width: 200 }];
		const made = await plan(file, { effort: 1 });
		expect(printPack(made).length).toBeGreaterThan(0);
		expect(await told(file, 'pinned.0.placed.0.id')).toEqual([
			'A sheet that is cut holds part.A, which is no part of the job now.',
		]);
	});

	it('says nothing of the parts there are', async () => {
		expect(await told(named(LISTS, 'Half cut'), 'pinned.0.placed.0.id')).toEqual([]);
	});
});

describe('figures past all reason', () => {
	it('minutes of work that would be no amount are refused', async () => {
		const file: JobFile = { ...named(LISTS, 'Half cut') };
		file.shop = { labour: { minutes: { sheet: 1e308 } } };
		expect(await told(file, 'shop.labour.minutes.sheet')).toHaveLength(1);
	});

	it('a driver 100 m deep is told and ends no plan', async () => {
		const file = named(BOXES, 'With a slot');
		for (const box of file.boxes ?? [])
			for (const driver of box.drivers ?? []) driver.depth = 100_000;
		expect(await told(file, 'boxes.0.drivers.0.depth')).not.toEqual([]);
	});

	it('a fence that reaches no way costs no search through every slice of the leftover', () => {
		const kerf = mm(3.2);
		const region = (w: number, leaf: number) => ({
			axis: null,
			w: inflate(mm(w), kerf),
			h: inflate(mm(400), kerf),
			parts: [],
			leaf,
		});
		const whole = {
			axis: 'x' as const,
			w: inflate(mm(2000), kerf),
			h: inflate(mm(400), kerf),
			parts: [region(700, 0), region(2000 - 700 - 3.2, -1)],
			leaf: -1,
		};
		const limits = { fenceLimit: mm(1), narrowestRip: null, kerf };
		expect(stepsOf(() => expect(sequenceOf(whole, limits)).toBeNull())).toBeLessThan(100_000);
	});
});

describe('the same thing named twice', () => {
	it('an edge that differs', async () => {
		const file = named(PANELS, 'Trim panel');
		for (const panel of file.panels ?? []) panel.edges?.own?.push({ edge: 4, clearance: 2 });
		expect(await told(file, 'panels.0.edges.own.4.edge')).toEqual([
			'Edge 4 is given twice; what is said here is not heeded.',
		]);
	});

	it('a corner of a box, whichever board comes first', async () => {
		const file = named(BOXES, 'Sealed and filled');
		for (const box of file.boxes ?? [])
			box.corners?.push({ between: ['front', 'bottom'], joint: 'mitre' });
		expect(await told(file, 'boxes.0.corners.1.between')).toEqual([
			'The corner of front and bottom is named twice; the later one goes.',
		]);
	});
});
