import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../../depth';
import { stepsOf } from '../../steps';
import { mm, ticks } from '../../../src/lib/measure/length';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import { sequenceOf } from '../../../src/lib/nest/saw/cutting/fence';
import type { SawRegion } from '../../../src/lib/nest/saw/cutting/regions';
import { inflate } from '../../../src/lib/nest/inflated';
import { finish, piece, sawProblem, sheet, untrimmed } from './samples';

const KERF = ticks(1);

interface Limits {
	readonly fenceLimit: number;
	readonly narrowestRip: number | null;
}

/** A strip cut across into pieces of these lengths, with what is left over behind them. */
function strip(pieces: readonly number[], spare: number): SawRegion {
	const part = (size: number, leaf: number): SawRegion => ({
		axis: null,
		w: inflate(ticks(size), KERF),
		h: inflate(ticks(50), KERF),
		parts: [],
		leaf,
	});
	const parts = [...pieces.map((size) => part(size, 0)), ...(spare > 0 ? [part(spare, -1)] : [])];
	const w = parts.reduce((sum, p) => sum + p.w, 0) as SawRegion['w'];
	return { axis: 'x', w, h: inflate(ticks(50), KERF), parts, leaf: -1 };
}

/** Sizes with a blade each, as they come off one by one; null when some part cannot be held. */
function oneByOne(pieces: readonly number[], spare: number, l: Limits): string[] | null {
	const holds = (size: number): boolean =>
		size > 0 && size <= l.fenceLimit && (l.narrowestRip === null || size >= l.narrowestRip);
	const solid = [...pieces].sort((a, b) => b - a).map((n) => ({ n: n + KERF, spare: false }));
	const whole = [...solid, ...(spare > 0 ? [{ n: spare + KERF, spare: true }] : [])];
	const slices: typeof whole = [];
	let rest = spare > 0 ? spare + KERF : 0;
	for (; rest > l.fenceLimit + KERF; rest -= l.fenceLimit + KERF)
		slices.push({ n: l.fenceLimit + KERF, spare: true });
	if (rest > 0) slices.push({ n: rest, spare: true });
	const tried = (waiting: typeof whole, last: number): string[] | null => {
		const left = waiting.filter((_, i) => i !== last);
		let total = waiting.reduce((sum, w) => sum + w.n, 0);
		const off: string[] = [];
		while (left.length > 0) {
			const at = left.findIndex(({ n }) => holds(n - KERF) || holds(total - n - KERF));
			if (at < 0) return null;
			const { n } = left.splice(at, 1)[0]!;
			off.push(`${n - KERF} at ${holds(n - KERF) ? n - KERF : total - n - KERF}`);
			total -= n;
		}
		return [...off, `${waiting[last]!.n - KERF} stays`];
	};
	const plainly = tried(whole, whole.length - 1);
	if (plainly) return plainly;
	const all = [...solid, ...slices];
	for (let last = all.length - 1; last >= 0; last--) {
		const found = tried(all, last);
		if (found) return found;
	}
	return null;
}

const size = fc.integer({ min: 3, max: 60 });

describe('the order in which the parts of a strip come off', () => {
	it('is that found by taking slice after slice of the leftover', () => {
		fc.assert(
			fc.property(
				fc.array(size, { minLength: 1, maxLength: 4 }),
				fc.integer({ min: 0, max: 200 }),
				fc.integer({ min: 8, max: 45 }),
				fc.option(fc.integer({ min: 1, max: 20 })),
				(pieces, spare, fenceLimit, narrowestRip) => {
					const slow = oneByOne(pieces, spare, { fenceLimit, narrowestRip });
					const limits = {
						fenceLimit: ticks(fenceLimit),
						narrowestRip: narrowestRip === null ? null : ticks(narrowestRip),
						kerf: KERF,
					};
					const quick = sequenceOf(strip(pieces, spare), limits);
					const said = quick && [
						...quick.steps.map((s) => `${s.part.w - KERF} at ${s.fence}`),
						`${quick.last.w - KERF} stays`,
					];
					expect(said).toEqual(slow);
				},
			),
			{ numRuns: runs(2000) },
		);
	});

	it('is looked for once for all parts of one size', () => {
		const limits = { fenceLimit: ticks(180), narrowestRip: null, kerf: KERF };
		const steps = (count: number): number =>
			stepsOf(() => void sequenceOf(strip(Array<number>(count).fill(700), 0), limits));
		// Nothing of it can be held, whichever remains: each is looked at a few times.
		expect(steps(200)).toBeLessThan(10_000);
	});

	it('takes no more work for a leftover of a hundred metres than for one of ten', () => {
		const limits = { fenceLimit: ticks(180), narrowestRip: null, kerf: KERF };
		const steps = (spare: number): number =>
			stepsOf(() => void sequenceOf(strip([700, 300], spare), limits));
		expect(steps(100_000) - 100_000 / 180).toBeLessThan(2 * (steps(10_000) - 10_000 / 180));
	});
});

describe('a fence that reaches 180 mm', () => {
	it('lays few parts on a sheet of a hundred metres in no more work than on one of ten', () => {
		const steps = (long: number): number => {
			const stock = [sheet('long', mm(long), mm(1220), { trim: untrimmed })];
			const parts = [piece('p', mm(300), mm(100), 6), piece('q', mm(700), mm(333), 4)];
			const problem = sawProblem(stock, parts, { kerf: mm(3.2), fenceLimit: mm(180) });
			return stepsOf(() => void finish(nestSaw(problem, { seed: 1, effort: 200 })));
		};
		expect(steps(100_000)).toBeLessThan(2 * steps(10_000));
	});
});
