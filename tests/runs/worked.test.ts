import { describe, expect, it } from 'vitest';
import { countedUses, sundryBooking } from '../../src/lib/estimate';
import type { JobFile } from '../../src/lib/job/job';
import { bookedIn } from '../../src/lib/layout';
import { toMm } from '../../src/lib/measure/length';
import { plan } from '../../src/lib/plan';

/* A few runs, every figure worked out by hand and written out here. */

type Runs = NonNullable<JobFile['runs']>;

const RACK: NonNullable<JobFile['stock']> = {
	sundries: [
		{ id: 'ring', name: 'Feed cable', kind: 'cable', pack: 5, price: 12, owned: 0.5 },
		{ id: 'hose', name: 'Drain hose', kind: 'hose', pack: 1, price: 2.4, lengths: 'cut' },
		{ id: 'screws', name: 'Screws', kind: 'screws', pack: 100, price: 3 },
	],
};

const FEED: Runs[number] = {
	...{ id: 'W1', name: 'Feed', from: 'ring', count: 2, slack: 10 },
	stretches: [{ name: 'sill', length: 1850 }, { length: 620 }],
	one: { name: 'Battery', extra: 150 },
	other: { name: 'Distribution', extra: 200 },
};
const LIGHT: Runs[number] = {
	...{ id: 'W2', name: 'Light', from: 'ring', slack: 12.5 },
	...{ stretches: [{ length: 1203.5 }], one: { extra: 0 }, other: { extra: 0 } },
};
const DRAIN: Runs[number] = {
	...{ id: 'H1', name: 'Drain', from: 'hose', slack: 5 },
	...{ stretches: [{ length: 3200 }], one: { extra: 50 }, other: { extra: 50 } },
};

const made = (runs: Runs, more: Partial<JobFile> = {}) => plan({ stock: RACK, runs, ...more });
const said = async (runs: unknown, more: Partial<JobFile> = {}): Promise<string[]> =>
	(await plan({ stock: RACK, runs, ...more })).problems.map(
		(p) => `${p.kind} ${p.path.join('.')}: ${p.what} ${p.fix}`,
	);
const orderOf = async (runs: Runs, id: string, more: Partial<JobFile> = {}) =>
	(await made(runs, more)).order.lines.find((l) => l.id === id);

describe('a run', () => {
	it('is its stretches with their slack and both ends, up to the next millimetre', async () => {
		const { runs } = await made([FEED, LIGHT, DRAIN]);
		// 1850 + 620 = 2470, with a tenth 2717, and 350 at the ends.
		// 1203.5 with an eighth of it is 1353.9375.
		// 3200 with a twentieth is 3360, and 100 at the ends.
		expect(runs.map((r) => [r.label, toMm(r.measured), toMm(r.cut)])).toEqual([
			['W1', 2470, 3067],
			['W2', 1203.5, 1354],
			['H1', 3200, 3460],
		]);
		expect(runs[0]?.ends.map((e) => e.name)).toEqual(['Battery', 'Distribution']);
		expect(runs[1]?.ends.map((e) => e.name)).toEqual(['end A', 'end B']);
	});

	it('is cut to the mark of an inch ruler', async () => {
		const shop = { ruler: { unit: 'in', fraction: 32, decimal: '.' } } as const;
		const stretches = [{ length: '10 1/16 in' }];
		const { runs } = await made([{ ...LIGHT, slack: 10, stretches }], { shop });
		// 10 1/16 in with a tenth is 11.06875 in: 354.2 marks of 1/32 in.
		expect(toMm(runs[0]!.cut)).toBeCloseTo((355 / 32) * 25.4, 9);
	});

	it('takes usual slack and usual ends where it says nothing', async () => {
		const { runs } = await made([{ id: 'W', name: 'W', stretches: [{ length: 1000 }] }]);
		expect(toMm(runs[0]!.cut)).toBe(1400); // a tenth, and 150 at either end
	});
});

describe('the order', () => {
	it('counts lengths, not metres, where each pack is one piece', async () => {
		// 3067 twice need a ring each; 1354 fits beside one of them.
		expect(await orderOf([FEED, LIGHT], 'ring')).toMatchObject({
			...{ group: 'sundries', unit: 'pack', pack: 5, buy: 2, each: 12_00, total: 24_00 },
			...{ need: { number: 7.488, unit: 'm' }, rack: { number: 2.5, unit: 'm' } },
			...{ fromRack: { number: 0, unit: 'm' }, spare: { unit: 'm' }, sparePercent: 0 },
			for: ['run W1', 'run W2'],
		});
		// 9.201 m would go into two rings by the metre; three runs of 3067 take three.
		expect(await orderOf([{ ...FEED, count: 3 }], 'ring')).toMatchObject({
			...{ buy: 3, need: { number: 9.201 }, total: 36_00 },
		});
	});

	it('takes the rest on the rack where that saves a length', async () => {
		// Three of 3067 leave 1933 of each ring: 1934 has to come from the rest of 2500.
		const short = { ...LIGHT, slack: 0, stretches: [{ length: 1934 }] };
		const { reels, order } = await made([{ ...FEED, count: 3 }, short]);
		expect(reels[0]?.lengths.map((l) => [l.source, l.runs, toMm(l.left)])).toEqual([
			['rack', ['W2'], 566],
			['buy', ['W1'], 1933],
			['buy', ['W1'], 1933],
			['buy', ['W1'], 1933],
		]);
		expect(order.lines[0]).toMatchObject({ buy: 3, fromRack: { number: 1.934 } });
	});

	it('buys what is cut off by its metres in all', async () => {
		const two = [DRAIN, { ...DRAIN, id: 'H2' }];
		// 6.92 m, in seven.
		const line = await orderOf(two, 'hose');
		expect(line).toMatchObject({ buy: 7, total: 16_80, need: { number: 6.92 } });
		expect(line?.spare.number).toBeCloseTo(0.08, 9);
	});

	it('takes what is cut off from the rest on the rack first', async () => {
		const stock = {
			sundries: RACK.sundries!.map((s) => ({ ...s, owned: s.id === 'hose' ? 4 : 0 })),
		};
		const long = { ...DRAIN, id: 'H2', stretches: [{ length: 4800 }] };
		// 5140 is bought in six metres and leaves 860; 3460 comes off the rest of 4 m.
		expect(await orderOf([long, DRAIN], 'hose', { stock })).toMatchObject({
			...{ buy: 6, fromRack: { number: 3.46 }, need: { number: 8.6 } },
		});
		const short = { ...DRAIN, stretches: [{ length: 600 }] };
		// 730 would fit beside the 5140 in its six metres, and is on the rack all the same.
		expect(await orderOf([long, short], 'hose', { stock })).toMatchObject({
			...{ buy: 6, fromRack: { number: 0.73 } },
		});
	});

	it('adds packs typed for the job', async () => {
		const stock = { sundries: RACK.sundries!.map((s) => ({ ...s, use: 1 })) };
		// 2.5 m of the ring typed lie on the rack, so one more is bought.
		expect(await orderOf([FEED], 'ring', { stock })).toMatchObject({
			...{ buy: 3, need: { number: 11.134 }, fromRack: { number: 2.5 } },
		});
	});

	it('keeps to least and multiple of the seller', async () => {
		const stock = { sundries: RACK.sundries!.map((s) => ({ ...s, soldBy: 3 })) };
		expect(await orderOf([FEED], 'ring', { stock })).toMatchObject({ buy: 3, more: 'multiple' });
	});

	it('has a line of the quote by itself', async () => {
		const { quote } = await made([FEED]);
		expect(quote.lines).toEqual([{ what: 'Cables, looms and hoses', price: quote.net }]);
		expect(quote.bought).toBe(24_00);
	});
});

describe('what cannot be', () => {
	it('a run longer than a length is told, left out of the order, and no joint is made', async () => {
		const long = { ...LIGHT, stretches: [{ length: 5000 }] };
		expect(await said([long])).toEqual([
			'stop runs.0.from: The order leaves W2 Light out: it is 5625 mm long, and one length of "Feed cable" is 5000 mm. No joint is planned. Cut it from longer lengths, or say of the sundry that any length is cut off in one piece. If a joint is meant and allowed there, list two runs.',
		]);
		const { order, runs, reels } = await made([long]);
		expect([order.lines, reels, runs.length]).toEqual([[], [], 1]);
		const whole = { ...LIGHT, slack: 0, stretches: [{ length: 5000 }] };
		expect(await said([whole])).toEqual([]);
		expect(await said([{ ...whole, one: { extra: 0.1 } }])).toHaveLength(1);
	});

	it('speaks in inches where the ruler does', async () => {
		const shop = { ruler: { unit: 'in', fraction: 32, decimal: '.' } } as const;
		const all = (await said([{ ...LIGHT, stretches: [{ length: 5000 }] }], { shop })).join();
		expect(all).toContain('196 27/32 in');
		expect(all).not.toMatch(/\d mm\b/);
	});

	it('a run of nothing known, of a mark of nothing, of something else', async () => {
		const from = (mark: string | undefined) => said([{ ...LIGHT, from: mark }]);
		expect((await from(undefined))[0]).toMatch(
			/^check runs.0.from: .*not said what it is cut from/,
		);
		expect((await from('reel'))[0]).toMatch(/no sundry .* "reel". Use one of ring, hose\.$/);
		expect((await from('screws'))[0]).toMatch(/"Screws" is no cable, loom or hose. Use one of/);
		expect((await said([{ ...LIGHT, from: 'x' }], { stock: {} }))[0]).toMatch(/rack first\.$/);
	});

	it('no stretch, none of a length, far too long a one, marks twice: each said at its place', async () => {
		const bad = (more: object) => said([{ ...LIGHT, ...more }]);
		expect((await bad({ stretches: [] }))[0]).toMatch(
			/^stop runs.0.stretches: The run has no stretch. Give the lengths/,
		);
		expect((await bad({ stretches: [{ length: 0 }] }))[0]).toMatch(
			/^stop runs.0.stretches.0.length: 0 mm is out of reach/,
		);
		expect(await bad({ stretches: [{ length: -5 }] })).toHaveLength(1);
		expect((await bad({ stretches: [{ length: 1e9 }] }))[0]).toMatch(/out of reach/);
		expect(await bad({ slack: -1 })).toHaveLength(1);
		expect(await bad({ one: { extra: -1 } })).toHaveLength(1);
		expect(await bad({ count: 101 })).toHaveLength(1);
		expect(await bad({ name: 'n'.repeat(300) })).toHaveLength(1);
		expect(await bad({ one: { name: 'n'.repeat(300) } })).toHaveLength(1);
		const twice = await said([LIGHT, FEED, LIGHT]);
		expect(twice).toHaveLength(1);
		expect(twice[0]).toMatch(/^stop runs.2.id: The mark "W2" is taken already/);
	});

	it('points at its place in the file behind a run that is left out', async () => {
		const all = await said([
			{ ...FEED, stretches: [] },
			{ ...LIGHT, from: 'reel' },
		]);
		expect(all.map((t) => t.split(':')[0])).toEqual(['stop runs.0.stretches', 'check runs.1.from']);
	});
});

describe('a job without runs', () => {
	it('has none in its plan, and an old file reads the same', async () => {
		const { runs, reels, order, cautions } = await plan({ version: 1, stock: RACK });
		expect([runs, reels, order.lines, cautions]).toEqual([[], [], [], []]);
	});
});

describe('what was used for runs', () => {
	const booked = async (runs: Runs): Promise<JobFile> => {
		const file = { stock: RACK, runs };
		const { order } = await plan(file);
		return bookedIn(sundryBooking(file, countedUses(order.lines))!);
	};
	const ordered = async (file: JobFile): Promise<unknown> =>
		(await plan(file)).order.lines.map((l) => [l.id, Math.round(1000 * l.need.number), l.buy]);

	it('is not ordered again', async () => {
		const done = await booked([FEED, LIGHT, DRAIN]);
		expect(done.used).toHaveLength(2);
		expect(await ordered(done)).toEqual([]);
		expect((await plan(done)).reels).toEqual([]);
	});

	it('leaves what came later', async () => {
		const done = await booked([FEED, DRAIN]);
		// 0.5 + 2 rings less 2 x 3.067 m leave a ring and 1.366 m: enough for 1.354 m.
		expect(await ordered({ ...done, runs: [FEED, DRAIN, LIGHT] })).toEqual([['ring', 1354, 0]]);
		expect((await plan({ ...done, runs: [FEED, DRAIN, LIGHT] })).problems).toEqual([]);
	});

	it('counts none of the runs where they have changed since, and says so', async () => {
		const done = await booked([FEED, DRAIN]);
		const grown = { ...done, runs: [{ ...FEED, stretches: [{ length: 3000 }] }, DRAIN] };
		// Two of 3650 mm: one from the ring on the rack, one from a ring more.
		expect(await ordered(grown)).toEqual([['ring', 7300, 1]]);
		expect((await plan(grown)).problems.map((p) => `${p.kind} ${p.path.join()}`)).toEqual([
			'check runs',
		]);
	});
});
