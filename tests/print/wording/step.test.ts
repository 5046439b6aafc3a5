import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { plan } from '../../../src/lib/plan';
import { costPages } from '../../../src/lib/print/lists/cost-pages';
import { printPack } from '../../../src/lib/print/pack';
import { wordsOn } from '../words-on';

const read = (name: string): JobFile =>
	JSON.parse(
		readFileSync(new URL(`../../../shared/jobs/${name}.json`, import.meta.url), 'utf8'),
	) as JobFile;

/** The steps of putting together and the labour, as printed by a shop of either ruler. */
async function printed(unit: 'mm' | 'in'): Promise<string> {
	const job = read('box-slanted-sealed');
	const shop = { ...job.shop, ruler: { unit, fraction: 32 as const } };
	const made = await plan({ ...job, shop }, { effort: 200 });
	const cards = [
		...costPages(made).flatMap((leaf) => leaf.blocks),
		...printPack(made).filter((p) => /box/i.test(p.name)),
	];
	return cards.flatMap((p) => wordsOn(p.marks)).join('\n');
}

it('steps and labour say areas and lengths by the ruler of the shop', async () => {
	const metric = await printed('mm');
	expect(metric).toMatch(/glue \d+ cm²; \d+ screws about [\d.]+ mm apart/);
	expect(metric).toMatch(/\d m²\n/);
	const inches = await printed('in');
	expect(inches).toMatch(/glue \d+ in²; \d+ screws about [\d /]+ in apart/);
	expect(inches).not.toMatch(/cm²|\d m²|\d m\n|mm apart/);
	// One square inch is 6.4516 cm² (NIST SP 811, B.8): the same glue in both.
	const glue = (text: string): number[] =>
		[...text.matchAll(/glue (\d+)/g)].map((m) => Number(m[1]));
	glue(metric).forEach((cm2, i) => expect(glue(inches)[i]).toBeCloseTo(cm2 / 6.4516, -0.5));
	expect(metric).toMatch(/\n1 box\n/);
});
