import { expect, it } from 'vitest';
import { plan } from '../../../src/lib/plan';
import { printPack } from '../../../src/lib/print/pack';
import { sample } from '../../plan/samples';
import { wordsOn } from '../words-on';

it.each([
	'box-slanted-sealed.json',
	'camper-bench.json',
	'panel-quarter-pair.json',
	'panel-stepped-cover.json',
])('no heading stands over nothing at the foot of a page: %s', async (file) => {
	const made = await plan(sample(file), { effort: 20, seed: 1 });
	const pages = printPack(made).map((page) => wordsOn(page.marks));
	const after = pages.filter((words) => words.includes('part by part, in order'));
	expect(after).toHaveLength(1);
	expect(after[0]!.some((w) => /^\w+ up; → and ↑ from/.test(w))).toBe(true);
	const wrapping = pages.find((words) => words.includes('Wrapping') && words.includes('Coat'));
	expect(wrapping !== undefined).toBe(made.blanks.length > 0);
});
