import { describe, expect, test } from 'vitest';
import { loadFonts } from '../../src/cli/fonts';
import { hostileCase, KINDS, type Kind } from '../../src/setup/trust/hostile/cases';
import { sampleJobs } from '../../src/setup/trust/hostile/sample-jobs';
import { through } from '../../src/setup/trust/hostile/through';
import { runs } from '../depth';

const jobs = sampleJobs();
const fonts = loadFonts();
const cases = (kind: Kind, count: number) =>
	kind === 'merge'
		? Array.from({ length: count }, (_, i) => hostileCase(700_000 + i, jobs, 'merges'))
		: Array.from({ length: 4000 }, (_, i) => hostileCase(700_000 + i, jobs))
				.filter((one) => one.kind === kind)
				.slice(0, count);

describe('hostile input is refused in words or planned, drawn and printed', () => {
	test.each(KINDS)('%s', async (kind) => {
		const tried = cases(kind, runs(40, 12));
		expect(tried.length).toBeGreaterThan(10);
		for (const one of tried)
			expect({ seed: one.seed, amiss: (await through(one, fonts)).amiss }).toEqual({
				seed: one.seed,
				amiss: [],
			});
	});

	test('to the end of the way: on paper', async () => {
		const onPaper = { ...cases('job', 1)[0]!, paper: true, text: jobs.whole[1]! };
		expect(await through(onPaper, fonts)).toEqual({ end: 'planned', amiss: [] });
	});
});

test('whether a case was refused, planned or laid out is told', async () => {
	const [job, nest] = [cases('job', 1)[0]!, cases('nest', 1)[0]!];
	const end = async (one: typeof job, text: string) =>
		(await through({ ...one, text, paper: false }, fonts)).end;
	expect(await end(job, '{')).toBe('refused');
	expect(await end(nest, '{')).toBe('refused');
	expect(await end(nest, '{"nest": "roll"}')).toBe('refused');
	expect(await end(job, jobs.parts[0]!)).toBe('planned');
	const roll = { nest: 'roll', width: 500, pieces: [{ id: 'a', length: 9, width: 9, count: 1 }] };
	expect(await end(nest, JSON.stringify(roll))).toBe('answered');
});

test('a case is the same whenever it is made, and another number is another case', () => {
	const twice = [1, 2].map(() => hostileCase(12, jobs));
	expect(twice[0]).toEqual(twice[1]);
	const texts = Array.from({ length: 50 }, (_, i) => hostileCase(i, jobs).text);
	expect(new Set(texts).size).toBeGreaterThan(45);
});
