import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import type { JobFile } from '../../../src/lib/job/job';
import { plan } from '../../../src/lib/plan';
import { labelPages } from '../../../src/lib/print/lists/labels/label-pages';
import { plainFiles } from '../../../src/lib/print/output-files';
import { printPack } from '../../../src/lib/print/pack';
import { recordOf } from '../../../src/lib/record/record';
import { wordsOn } from '../words-on';

const file: JobFile = {
	...{ name: 'Wired van', number: '12' },
	stock: {
		sundries: [
			{ id: 'ring', name: 'Feed cable', kind: 'cable', pack: 5, price: 12 },
			{ id: 'loom', name: 'Signal loom', kind: 'loom', pack: 1, price: 2, lengths: 'cut' },
		],
	},
	runs: [
		{
			...{ id: 'S1', name: 'Signal', from: 'loom', slack: 0, stretches: [{ length: 900 }] },
			...{ one: { name: 'Head unit', extra: 0 }, other: { name: 'Amplifier', extra: 100 } },
		},
		{
			...{ id: 'W1', name: 'Feed', from: 'ring', count: 2, stretches: [{ length: 1850 }] },
			...{ one: { name: 'Battery' }, other: { name: 'Distribution' } },
		},
		{ id: 'W2', name: 'Light', from: 'ring', stretches: [{ length: 600 }, { length: 400 }] },
		{ id: 'W3', name: 'Long way', from: 'ring', stretches: [{ length: 9000 }] },
	],
};
const made = (more: Partial<JobFile> = {}) => plan({ ...file, ...more });
const page = async (more: Partial<JobFile> = {}): Promise<string[]> =>
	printPack(await made({ pages: ['runs'], ...more })).flatMap((p) => wordsOn(p.marks));

describe('the page of runs', () => {
	it('lists each as it is cut, reel by reel and the longest first', async () => {
		const words = await page();
		const marks = words.filter((w) => /^[SW]\d$/.test(w));
		expect(marks.slice(0, 4)).toEqual(['W1', 'W2', 'S1', 'W3']);
		const all = words.join(' ');
		// 1850 and a tenth is 2035, 300 at the ends; 1000 likewise 1400; 900 + 100.
		for (const cut of ['2335', '1400', '1000']) expect(words).toContain(cut);
		expect(all).toContain('Battery to Distribution');
		expect(all).toContain('longer than one length of it');
		expect(all).toContain('W1 × 2');
	});

	it('says in words that nothing is sized, and whose work that is', async () => {
		const all = (await page()).join(' ');
		expect(all).toMatch(/No cable, fuse or hose is sized here/);
		expect(all).toMatch(/licensed person/);
		expect(all).toMatch(/Wiring\./);
	});

	it('is not there in a job without runs', async () => {
		expect(await page({ runs: [] })).toEqual([]);
	});

	it('prints no metric figure on a ruler of inches', async () => {
		const all = (await page({ shop: { ruler: { unit: 'in', fraction: 32, decimal: '.' } } })).join(
			' ',
		);
		expect(all.replace('100 mm 4 in', '')).not.toMatch(/\d (mm|m)\b/);
		expect(all).toMatch(/\d ft in all/);
	});
});

describe('labels of runs', () => {
	it('are two of each, and each says where the other end is', async () => {
		const plan = await made({ runs: file.runs!.slice(1, 2) });
		const words = labelPages(plan, 'a4-2x7')
			.slice(1)
			.flatMap((p) => wordsOn(p.marks));
		expect(words.filter((w) => w === 'W1')).toHaveLength(4);
		expect(words.filter((w) => w === '1 of 2')).toHaveLength(2);
		const all = words.join(' ');
		expect(all.match(/this end: Battery · other end: Distribution/g)).toHaveLength(2);
		expect(all.match(/this end: Distribution · other end: Battery/g)).toHaveLength(2);
		expect(all).toContain('2335 mm long');
		expect(all).toContain('12 Wired van');
		expect(all).toContain('12-W1-run');
	});
});

describe('files of runs', () => {
	it('hold each figure in a cell of its own', async () => {
		const [csv] = plainFiles('runs', await made());
		expect(csv?.name).toBe('runs.csv');
		const rows = String(csv?.data).trim().split(/\r?\n/);
		expect(rows[1]).toBe('W1,Feed,Feed cable,2,1850,10,Battery,150,Distribution,150,2335,mm');
		expect(rows).toHaveLength(5);
		expect(plainFiles('runs', await made({ runs: [] }))).toEqual([]);
	});

	it('tell of them in the plan for other programs, in millimetres', async () => {
		const record = recordOf(await made()) as {
			runs: { cut: number }[];
			reels: { packs: number }[];
		};
		expect(record.runs.map((r) => r.cut)).toEqual([1000, 2335, 1400, 10_200]);
		expect(record.reels.map((r) => r.packs)).toEqual([2, 1]);
		expect(readFileSync('shared/plan.schema.json', 'utf8')).toContain(
			'what is written on the runs',
		);
	});
});
