import { expect, it } from 'vitest';
import { plan } from '../../../src/lib/plan';
import { standardScale } from '../../../src/lib/print/marks/scales';
import { printPack } from '../../../src/lib/print/pack';
import { sample } from '../../plan/samples';
import { wordsOn } from '../words-on';

// ISO 5455: 1:2, 1:5, 1:10 and their tens. For inches the halves a rule is divided in: common
// practice, no source.
const ISO_5455 = [1, 2, 5, 10, 20, 50, 100, 200, 500];
const HALVES = [1, 2, 4, 8, 16, 32, 64, 128, 256, 512];

it('a drawing is as large as the standard scales let it be', () => {
	for (const [unit, scales] of [
		['mm', ISO_5455],
		['cm', ISO_5455],
		['in', HALVES],
	] as const)
		for (let most = 1.3; most > 1 / 400; most *= 0.93) {
			const one = Math.round(1 / standardScale(most, unit));
			expect(scales).toContain(one);
			expect(1 / one).toBeLessThanOrEqual(most);
			const larger = scales[scales.indexOf(one) - 1];
			if (larger !== undefined) expect(1 / larger).toBeGreaterThan(most);
		}
});

it.each([
	['camper-bench.json', ISO_5455],
	['hatchback-pair.json', HALVES],
	['box-double-tapered.json', HALVES],
] as const)('every scale named in the pack of %s is a standard one', async (file, scales) => {
	const pages = printPack(await plan(sample(file), { effort: 20, seed: 1 }));
	const named = pages
		.flatMap((page) => wordsOn(page.marks))
		.flatMap((text) => /^(?:scale )?1 : (\S+)$/.exec(text)?.[1] ?? []);
	expect(named.length).toBeGreaterThan(1);
	for (const scale of named) expect(scales).toContain(Number(scale));
});
