import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { placesIn } from '../../src/lib/job/problems/places';
import { readJob } from '../../src/lib/job/reading/read';
import { makeOrder } from '../../src/lib/estimate/order';
import { type LengthCut, packLengths } from '../../src/lib/runs/pack';
import { planRuns } from '../../src/lib/runs/plan-runs';
import { layReels } from '../../src/lib/runs/reels';
import { runs } from '../depth';

type Runs = NonNullable<JobFile['runs']>;

const length = fc.integer({ min: 1, max: 4000 });
const aRun = fc.record({
	from: fc.constantFrom('ring', 'hose'),
	count: fc.integer({ min: 1, max: 4 }),
	slack: fc.constantFrom(0, 7.5, 10),
	stretches: fc.array(fc.record({ length }), { minLength: 1, maxLength: 3 }),
	one: fc.record({ extra: fc.integer({ min: 0, max: 200 }) }),
});
const someRuns = fc
	.array(aRun, { minLength: 1, maxLength: 6 })
	.map((all): Runs => all.map((run, i) => ({ id: `W${i}`, name: 'Run', ...run })));
const owned = fc.constantFrom(0, 0.4, 1, 2.25);

function planned(list: Runs, onRack: number) {
	const reel = { price: 3, owned: onRack, pack: 5 };
	const sundries = [
		{ id: 'ring', name: 'Ring', kind: 'cable' as const, ...reel },
		{ id: 'hose', name: 'Hose', kind: 'hose' as const, ...reel, lengths: 'cut' as const },
	];
	const file = { stock: { sundries }, runs: list };
	const { job } = readJob(file);
	const { order } = makeOrder(job, [], [], ...needsOf(job, file));
	return { job, order, ...planRuns(job, placesIn(file)) };
}

function needsOf(job: Parameters<typeof planRuns>[0], file: unknown) {
	const { needs, reels } = planRuns(job, placesIn(file));
	return [needs, reels] as const;
}

describe('what runs are cut from', () => {
	it('holds every run once, and no more than its length', () => {
		const law = fc.property(someRuns, owned, (list, onRack) => {
			const { runs: all, reels } = planned(list, onRack);
			const cutOf = new Map(all.map((r) => [r.label, r.cut]));
			for (const reel of reels) {
				for (const { runs, length, left } of reel.lengths)
					expect(runs.reduce((sum, mark) => sum + cutOf.get(mark)!, 0) + left).toBe(length);
				expect(Math.min(...reel.lengths.map((l) => l.left))).toBeGreaterThanOrEqual(0);
			}
			const cut = reels.flatMap((r) => r.lengths.flatMap((l) => l.runs)).sort();
			const asked = all
				.filter((r) => r.uncut === '')
				.flatMap((r) => Array.from({ length: r.count }, () => r.label));
			expect(cut).toEqual(asked.sort());
		});
		fc.assert(law, { numRuns: runs(300) });
	});

	it('is ordered in full: what is bought and what lies there are no less than the need', () => {
		const law = fc.property(someRuns, owned, (list, onRack) => {
			const { runs: all, order, reels } = planned(list, onRack);
			for (const line of order.lines) {
				const mine = all.filter((r) => r.uncut === '' && r.reel === line.id);
				const sum = mine.reduce((n, r) => n + r.cut * r.count, 0) / 1_600_000;
				expect(line.need.number).toBeCloseTo(sum, 9);
				expect(line.fromRack.number).toBeLessThanOrEqual(line.rack.number + 1e-9);
				const bought = reels
					.find((r) => r.reel === line.id)!
					.lengths.filter((l) => l.source === 'buy')
					.reduce((n, l) => n + l.length, 0);
				expect(line.buy * line.pack).toBeCloseTo(bought / 1_600_000, 9);
				const got = line.buy * line.pack + line.fromRack.number;
				expect(got).toBeGreaterThanOrEqual(sum - 1e-9);
				expect(line.spare.number).toBeCloseTo(got - sum, 9);
			}
		});
		fc.assert(law, { numRuns: runs(300) });
	});

	it('is the same for one run of several alike and for each listed by itself', () => {
		const law = fc.property(someRuns, owned, (list, onRack) => {
			const apart = list.flatMap((run) =>
				Array.from({ length: run.count ?? 1 }, (_, i) => ({
					...run,
					id: `${run.id}-${i}`,
					count: 1,
				})),
			);
			const figures = (of: Runs) =>
				planned(of, onRack).order.lines.map((l) => [l.id, l.buy, l.total, l.fromRack.number]);
			expect(figures(apart)).toEqual(figures(list));
		});
		fc.assert(law, { numRuns: runs(150) });
	});

	it('takes no more packs for two jobs at once than for one after the other', () => {
		const law = fc.property(someRuns, someRuns, (first, second) => {
			const [a, b] = [planned(first, 0), planned(second, 0)];
			const packs = (groups: (typeof a.runs)[]) =>
				layReels(a.job, groups).reduce((sum, r) => sum + r.packs, 0);
			expect(packs([[...a.runs], [...b.runs]])).toBeLessThanOrEqual(
				packs([[...a.runs]]) + packs([[...b.runs]]),
			);
		});
		fc.assert(law, { numRuns: runs(150) });
	});
});

/** The fewest lengths, by trying every place of every cut. */
function fewest(cuts: readonly number[], bought: number): number {
	let best = cuts.length;
	const place = (at: number, left: readonly number[]): void => {
		if (left.length >= best) return;
		const cut = cuts[at];
		if (cut === undefined) {
			best = left.length;
			return;
		}
		left.forEach((room, i) => {
			if (room >= cut) place(at + 1, left.with(i, room - cut));
		});
		place(at + 1, [...left, bought - cut]);
	};
	place(0, []);
	return best;
}

describe('lengths cut from lengths', () => {
	it('are the fewest there can be of few cuts', () => {
		const cuts = fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 7 });
		const law = fc.property(cuts, (all) => {
			const asked = all.map((length, i): LengthCut => ({ run: String(i), length }));
			const packed = packLengths([asked], { rack: [], bought: 20 });
			expect(packed.length).toBe(fewest(all, 20));
		});
		fc.assert(law, { numRuns: runs(200) });
	});

	it('are found fewer by looking where the longest first is one too many', () => {
		// Tightest first: 6+4, 5+3, 2+2+... of ten: 6 5 4 3 2 by hand into two tens.
		const cuts = [6, 5, 3, 2, 2, 2].map((length, i): LengthCut => ({ run: String(i), length }));
		expect(packLengths([cuts], { rack: [], bought: 10 })).toHaveLength(2);
	});
});
