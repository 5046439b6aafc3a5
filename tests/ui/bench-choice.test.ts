import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BENCH_CHAPTERS, type BenchChapter } from '../../src/lib/job';
import { choices, placedAt, tickedOrNot } from '../../src/lib/ui/chapters/print/bench-choice';
import { runs } from '../depth';

const names = fc.shuffledSubarray([...BENCH_CHAPTERS], { minLength: 1 });
const one = fc.constantFrom(...BENCH_CHAPTERS);
const after = (kept: readonly BenchChapter[] | undefined) => kept ?? BENCH_CHAPTERS;

describe('chapters of the bench pack', () => {
	it('are all in their usual order until something is chosen', () => {
		expect(choices(undefined).map((c) => c.name)).toEqual(BENCH_CHAPTERS);
		expect(choices(undefined).every((c) => c.on)).toBe(true);
		expect(choices(['cloth', 'parts']).slice(0, 3)).toEqual([
			{ name: 'cloth', on: true },
			{ name: 'parts', on: true },
			{ name: 'summary', on: false },
		]);
	});

	it('come back to what they were when one is left out and put in again', () => {
		expect(tickedOrNot(tickedOrNot(undefined, 'order'), 'order')).toBeUndefined();
		expect(tickedOrNot(['parts', 'cloth'], 'sheets')).toEqual(['sheets', 'parts', 'cloth']);
	});

	it('are each listed once, whatever is turned and moved', () => {
		const law = fc.property(names, one, fc.integer({ min: -9, max: 9 }), (chosen, name, by) => {
			const next = after(tickedOrNot(chosen, name));
			expect(next.includes(name)).toBe(!chosen.includes(name));
			expect(next.filter((n) => n !== name)).toEqual(chosen.filter((n) => n !== name));
			if (!chosen.includes(name)) return;
			const put = after(placedAt(chosen, name, by));
			expect([...put].sort()).toEqual([...chosen].sort());
			const place = chosen.indexOf(name) + by;
			expect(put.indexOf(name)).toBe(Math.min(chosen.length - 1, Math.max(0, place)));
			expect(choices(put)).toHaveLength(BENCH_CHAPTERS.length);
		});
		fc.assert(law, { numRuns: runs(200) });
	});
});
