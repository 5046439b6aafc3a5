import { describe, expect, it } from 'vitest';
import { pursue } from '../../src/lib/layout/pace';
import { inches, mm, ticks, type Length } from '../../src/lib/measure/length';
import { auditSheets } from '../../src/lib/nest/audit/audit';
import { nestSaw } from '../../src/lib/nest/saw/saw';
import type { SawProblem } from '../../src/lib/nest/types';

const none = { left: ticks(0), right: ticks(0), bottom: ticks(0), top: ticks(0) };

/** Strips as long as the sheet, as many as one sheet gives. */
async function strips(width: Length, strip: Length, kerf: Length): Promise<number> {
	const length = mm(2000);
	const problem: SawProblem = {
		kerf,
		sheets: [{ id: 's', length, width, price: 1, count: 1, rank: 2, trim: none }],
		pieces: [{ id: 'p', length, width: strip, count: 12, turns: 'none' }],
		stages: null,
		fenceLimit: null,
		narrowestRip: null,
		keep: { length: mm(1), width: mm(1) },
		first: 'any',
	};
	const answer = await pursue(nestSaw(problem, { seed: 1, effort: 100 }), () => true);
	expect(auditSheets(problem, answer)).toEqual([]);
	return answer.layouts.flatMap((l) => l.placed).length;
}

// Derived: n = floor((W + k) / (w + k)), n strips and n - 1 cuts between them.
describe('strips across a sheet with the kerf counted', () => {
	it.each([
		[48, 12, 1 / 8, 3],
		[48, 12, 0, 4],
		[49, 12, 1 / 8, 4],
		[96, 24, 1 / 8, 3],
		[97, 24, 1 / 8, 4],
	])('%d in wide, strips of %d in, kerf %d in: %d', async (width, strip, kerf, n) => {
		expect(await strips(inches(width), inches(strip), inches(kerf))).toBe(n);
	});

	it.each([
		[1220, 300, 3.2, 4],
		[1220, 305, 3.2, 3],
	])('%d mm wide, strips of %d mm, kerf %d mm: %d', async (width, strip, kerf, n) => {
		expect(await strips(mm(width), mm(strip), mm(kerf))).toBe(n);
	});
});
