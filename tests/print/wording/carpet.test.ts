import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { plan } from '../../../src/lib/plan';
import { costPack } from '../../../src/lib/print/pack';
import { carpetWays } from '../../../src/lib/print/wording/cloth/carpet-text';
import { figuresOn } from '../../../src/lib/print/wording/figures';
import { wordsOn } from '../words-on';

type Way = 'band' | 'faces' | 'cheaper';

const file = new URL('../../../shared/jobs/camper-bench.json', import.meta.url);

async function planned(way: Way) {
	const job = JSON.parse(readFileSync(file, 'utf8')) as JobFile;
	const boxes = job.boxes!.map((box) => ({ ...box, carpet: { ...box.carpet!, way } }));
	return plan({ ...job, boxes }, { effort: 200 });
}

describe('both ways of carpeting a box', () => {
	it.each(['band', 'faces', 'cheaper'] as const)(
		'stand side by side, asked for %s',
		async (way) => {
			const made = await planned(way);
			const [carpet] = made.carpets;
			const [said] = carpetWays(made, figuresOn(made.job.shop.ruler));
			expect(said!.title).toBe('Carpet of Bench box');
			expect(said!.rows.map((r) => r[0])).toEqual(['band and two ends', 'face by face']);
			said!.rows.forEach((row, i) => {
				const { cost, seamCost } = carpet!.ways[i]!;
				const euros = row.slice(3).map((text) => Math.round(Number(text) * 100));
				expect(euros).toEqual([cost, seamCost, cost + seamCost].map(Math.round));
			});
			const [band, faces] = carpet!.ways.map((w) => w.cost + w.seamCost) as [number, number];
			const taken = carpet!.chosen === 'band' ? band : faces;
			const other = carpet!.chosen === 'band' ? faces : band;
			if (way !== 'cheaper') expect(carpet!.chosen).toBe(way);
			else expect(taken).toBeLessThanOrEqual(other);
			const apart = (Math.abs(other - taken) / 100).toFixed(2);
			expect(said!.taken).toContain(apart);
			expect(said!.taken).toMatch(
				taken < other ? /cheaper by EUR/ : /as asked; the other costs EUR/,
			);
		},
	);

	it('on the cost sheet, which is for the shop alone', async () => {
		const pages = costPack(await planned('cheaper'));
		const on = pages.filter((p) => wordsOn(p.marks).includes('Carpet of Bench box'));
		expect(on.map((p) => p.name)).toEqual([expect.stringMatching(/^Cost sheet\b/)]);
	});
});
