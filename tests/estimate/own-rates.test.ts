import { describe, expect, it } from 'vitest';
import { takeOwnTime } from '../../src/lib/estimate/after-work';
import { labourLines } from '../../src/lib/estimate/labour';
import { type JobFile, readJob } from '../../src/lib/job';
import { plan } from '../../src/lib/plan';
import { JOB, WORK } from './worked-job';

/** Foam and cloth each at a rate of its own, and lengths of cable that are cut. */

type Minutes = NonNullable<NonNullable<NonNullable<JobFile['shop']>['labour']>['minutes']>;
const rated = (minutes: Minutes): JobFile => ({ shop: { labour: { minutes } } });
const taken = (file: JobFile, what: string, minutes: number): JobFile =>
	takeOwnTime(file, readJob(file).job, { what, minutes });
const minutesIn = (file: JobFile) => readJob(file).job.shop.labour.minutes;

describe('minutes for foam', () => {
	const work = { ...WORK, boxes: 3, panels: 4 };
	const minutes = (foamSquareMetre: number | null) => {
		const labour = {
			...JOB.shop.labour,
			minutes: { ...JOB.shop.labour.minutes, foamSquareMetre },
		};
		const lines = labourLines({ ...JOB, shop: { ...JOB.shop, labour } }, work);
		return ['Foam bonded', 'Cloth bonded'].map(
			(what) => lines.find((l) => l.what === what)?.minutes,
		);
	};

	it('are those of cloth until they are said, and then no other line moves', () => {
		// 0.1 m2 of foam at 13, then at 41 and at nothing.
		const [foam, cloth] = minutes(null);
		expect(foam).toBeCloseTo(1.3, 9);
		expect(minutes(41)).toEqual([expect.closeTo(4.1, 9), cloth]);
		expect(minutes(0)).toEqual([0, cloth]);
	});

	it('stay what they were when those of cloth are taken, and each offer is kept', () => {
		const old = rated({ bondedSquareMetre: 25 });
		const cloth = taken(old, 'Cloth bonded', 12);
		expect(minutesIn(cloth)).toMatchObject({ bondedSquareMetre: 12, foamSquareMetre: 25 });
		for (const both of [
			taken(cloth, 'Foam bonded', 7),
			taken(taken(old, 'Foam bonded', 7), 'Cloth bonded', 12),
		])
			expect(minutesIn(both)).toMatchObject({ bondedSquareMetre: 12, foamSquareMetre: 7 });
		expect(taken(old, 'Rust', 3)).toBe(old);
	});
});

describe('minutes for lengths of cable, loom and hose', () => {
	const wired = (run: number, used: JobFile['used'] = []): JobFile => ({
		...rated({ run }),
		stock: {
			sundries: [
				{ id: 'c', name: 'Cable', kind: 'cable', pack: 10, price: 20, owned: 5, lengths: 'cut' },
			],
		},
		runs: [
			{ id: 'r1', name: 'Front', from: 'c', count: 3, slack: 0, stretches: [{ length: 1000 }] },
			{ id: 'r2', name: 'Rear', from: 'c', slack: 0, stretches: [{ length: 2000 }] },
		],
		used,
	});
	const line = async (file: JobFile) => {
		const { quote } = await plan(file, { effort: 10 });
		return quote.labour.find((l) => l.what.startsWith('Cables'));
	};

	it('are for each length: four at two minutes are eight, and none where nobody said', async () => {
		expect(await line(wired(2))).toMatchObject({
			amount: 4,
			unit: 'lengths',
			minutes: 8,
			cost: 600,
		});
		expect(await line(wired(0))).toMatchObject({ amount: 4, minutes: 0, cost: 0 });
		const silent = { ...wired(0), shop: {} };
		expect((await plan(silent, { effort: 10 })).quote.labourCost).toBe(0);
	});

	it('stay in the price of the whole job when the lengths are cut, and leave what is left', async () => {
		// Three of 1.3 m (1 m and 150 mm at each end) are 0.39 of a pack.
		const used = [{ sundry: 'c', name: 'Cable', packs: 0.39, bought: 0, counted: 0.39 }];
		const { quote } = await plan(wired(2, used), { effort: 10 });
		const of = (lines: typeof quote.labour) => lines.find((l) => l.what.startsWith('Cables'));
		expect(of(quote.labour)?.amount).toBe(4);
		expect(of(quote.left.labour)?.amount).toBe(1);
	});
});
