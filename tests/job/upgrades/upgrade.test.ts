import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inches, mm } from '../../../src/lib/measure/length';
import { job } from '../../../src/lib/job/job';
import { readJob } from '../../../src/lib/job/reading/read';
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
				version: 1,
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
