import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { StoredJob } from '../../../src/lib/store';
import { plan } from '../../../src/lib/plan';
import { keepPicture, pictureOf } from '../../../src/lib/ui/pictures/kept';
import { pictureOfJob } from '../../../src/lib/ui/pictures/pictures';
import { sample } from '../../plan/samples';

const QUICK = { effort: 20 };

describe('small drawings', () => {
	/** What the page Jobs shows of the samples; `-u` writes it anew where a sample was changed. */
	it('of the samples are those of their plans', async () => {
		const names = readdirSync('shared/jobs').filter((name) => name.endsWith('.json'));
		const made: Record<string, unknown> = {};
		for (const name of names.sort())
			made[name.replace(/\.json$/, '')] = pictureOfJob(await plan(sample(name), QUICK));
		expect(Object.values(made).filter((lines) => (lines as []).length > 0).length).toBeGreaterThan(
			names.length - 3,
		);
		await expect(`${JSON.stringify(made, null, '\t')}\n`).toMatchFileSnapshot(
			'../../../src/lib/ui/pictures/samples.json',
		);
	});

	it('are kept with the record of a job, once', async () => {
		const made = await plan(sample('cabinet-list.json'), QUICK);
		let record: StoredJob = { id: 'a', name: 'A', file: {}, changed: 1, sharesRack: false };
		let written = 0;
		const store = {
			job: (id: string) => Promise.resolve(id === 'a' ? record : undefined),
			changeJob: (_: string, change: (job: StoredJob) => StoredJob | null) => {
				written++;
				record = change(record) ?? record;
				return Promise.resolve();
			},
		};
		await keepPicture(store, 'a', made);
		await keepPicture(store, 'a', made);
		await keepPicture(store, 'b', made);
		expect(written).toBe(1);
		expect(record.changed).toBe(1);
		expect(pictureOf(record)).toEqual(pictureOfJob(made).slice(0, 60));
		expect(pictureOf(record).length).toBeGreaterThan(2);
	});

	it('that are none are left out', () => {
		const torn = [{ d: 'M0 0', line: 'wide' }, 7, null, { d: 1 }, { d: '', line: '', fill: 'x;y' }];
		expect(pictureOf({ picture: torn })).toEqual([{ d: 'M0 0', line: 'wide' }]);
		expect(pictureOf({ picture: 'x' })).toEqual([]);
		expect(pictureOf({})).toEqual([]);
	});
});
