import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inches, mm } from '../../../src/lib/measure/length';
import { job } from '../../../src/lib/job/job';
import { readJob } from '../../../src/lib/job/reading/read';
import { plan } from '../../../src/lib/plan';
import { VERSION, upgrade } from '../../../src/lib/job/upgrades/upgrade';

const folder = new URL('../../../shared/jobs/old/', import.meta.url);
const old = (name: string) =>
	JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Record<string, unknown>;

test('the upgrades lead to the version the schema reads', () => {
	expect(job.parse({}).version).toBe(VERSION);
});

test('every version that was ever written has its file, and opens without a problem', () => {
	const files = readdirSync(folder).sort();
	expect(files).toEqual(Array.from({ length: VERSION }, (_, n) => `version-${n}.json`));
	for (const file of files) expect(readJob(old(file)).problems).toEqual([]);
});

describe('version 0: a board with a single thickness', () => {
	test('before and after', () => {
		const before = old('version-0.json');
		const kept = structuredClone(before);
		const { job } = readJob(before);
		expect(before).toEqual(kept);
		expect(job.stock.materials.map((m) => [m.nominal, m.measured])).toEqual([
			[mm(14.8), mm(14.8)],
			[inches(0.5), inches(0.5)],
		]);
		expect(job.stock.materials[0]).toMatchObject({ kind: 'plywood', grain: true });
		expect(job.parts).toHaveLength(2);
		expect(job.stock.sheets[1]!.length).toBe(inches(97));
	});

	test('the step itself', () => {
		const lifted = upgrade({ stock: { materials: [{ id: 'a', thickness: 18 }, 7] } });
		expect(lifted).toEqual({
			file: {
				format: 'kerf-and-nap job',
				version: VERSION,
				stock: { materials: [{ id: 'a', nominal: 18, measured: 18 }, 7] },
			},
		});
	});

	test('a broken old file is lifted as far as it goes', () => {
		expect(upgrade({ version: 0, stock: 'x' })).toMatchObject({ file: { stock: 'x' } });
		expect(upgrade({ version: 0, stock: { materials: 3 } })).toMatchObject({
			file: { stock: { materials: 3 } },
		});
	});
});

describe('version 1: a roll priced by the metre, whatever the ruler', () => {
	const perRoll = (file: unknown) => readJob(file).job.stock.rolls.map((r) => r.per);

	test('before and after', async () => {
		const before = old('version-1.json');
		expect(perRoll(before)).toEqual(['metre']);
		const cloth = (await plan(before, { effort: 20 })).order.lines.find((l) => l.group === 'cloth');
		// Nine inches are 0.2286 m: at 12.50 the metre a step is 2.86, as it was before.
		expect(cloth).toMatchObject({ each: 2_86, total: 2_86 * cloth!.buy });
	});

	test('a file of today says nothing and follows the ruler', () => {
		expect(perRoll({ ...old('version-1.json'), version: VERSION })).toEqual([null]);
	});

	test('what was said stays, what is no roll too', () => {
		const rolls = [{ id: 'a', per: 'yard' }, { id: 'b', per: null }, 7];
		expect(upgrade({ version: 1, stock: { rolls } })).toMatchObject({ file: { stock: { rolls } } });
		expect(upgrade({ version: 1, stock: 'x' })).toEqual({ file: { version: 2, stock: 'x' } });
	});
});
