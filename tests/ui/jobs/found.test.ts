import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StoredJob } from '../../../src/lib/store';
import { foundJobs, jobWords } from '../../../src/lib/ui/jobs/finding/found';

const job = (id: string, name: string, file: object = {}): StoredJob => ({
	...{ id, name, changed: 0, sharesRack: false },
	file: { name, ...file },
});
const JOBS = [
	job('a', 'Bench box', { number: '10', customer: 'Übermann' }),
	job('b', 'Side panel', { number: '2', vehicle: 'Long van' }),
	job('c', 'bench lid', { notes: 'over the wheel arch' }),
	{ ...job('d', 'Torn'), file: null },
];
const ids = (words: string, order: Parameters<typeof foundJobs>[2] = 'changed') =>
	foundJobs(JOBS, words, order)
		.map((j) => j.id)
		.join('');

describe('jobs looked for', () => {
	it('hold every word in any of their words, whatever its case and marks', () => {
		expect(ids('')).toBe('abcd');
		expect(ids('  ')).toBe('abcd');
		expect(ids('BENCH')).toBe('ac');
		expect(ids('bench uber')).toBe('a');
		expect(ids('van')).toBe('b');
		expect(ids('wheel lid')).toBe('c');
		expect(ids('torn')).toBe('d');
		expect(ids('nothing')).toBe('');
	});

	it('are in the order asked for, numbers as numbers', () => {
		expect(ids('', 'name')).toBe('acbd');
		expect(ids('', 'number')).toBe('bacd');
	});

	it('are some of those there are, each once, and fewer with another word', () => {
		const some = fc.array(fc.string(), { maxLength: 6 });
		const word = fc.string({ maxLength: 3 });
		fc.assert(
			fc.property(
				some,
				word,
				word,
				fc.constantFrom('changed', 'name', 'number'),
				(names, a, b, by) => {
					const all = names.map((name, i) => job(String(i), name));
					const order = by;
					const one = foundJobs(all, a, order);
					const two = foundJobs(all, `${a} ${b}`, order);
					expect(new Set(one).size).toBe(one.length);
					expect(two.every((found) => one.includes(found))).toBe(true);
					expect(foundJobs(all, '', order)).toHaveLength(all.length);
				},
			),
		);
	});

	it('are told apart by number, customer and vehicle', () => {
		expect(jobWords(JOBS[0]!)).toEqual(['10', 'Übermann']);
		expect(jobWords(JOBS[3]!)).toEqual([]);
	});
});
