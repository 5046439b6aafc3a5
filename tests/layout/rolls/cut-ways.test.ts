import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labourLines } from '../../../src/lib/estimate/labour';
import { job as schema, type JobFile } from '../../../src/lib/job/job';
import { layCloth } from '../../../src/lib/layout/rolls/lay-cloth';
import type { ClothLayouts } from '../../../src/lib/layout/layouts';
import { mm, ticks, toMm } from '../../../src/lib/measure/length';
import type { Blank } from '../../../src/lib/wrap/blank';
import { runs } from '../../depth';
import { clothBlank } from './make';

type ClothFile = NonNullable<NonNullable<JobFile['stock']>['cloths']>[number];
type RollFile = NonNullable<NonNullable<JobFile['stock']>['rolls']>[number];

/** Half of a rectangle, cut from corner to corner. */
const wedge = (id: string, length: number, width: number, count: number): Blank => ({
	...clothBlank(id, mm(length), mm(width), { count }),
	outline: [
		{ x: 0, y: 0 },
		{ x: mm(length), y: 0 },
		{ x: 0, y: mm(width) },
	],
});

interface Asked {
	readonly cut: ClothFile['cut'];
	/** Minutes for a metre along an outline. */
	readonly minutes?: number;
	readonly roll?: Partial<RollFile>;
	readonly effort?: number;
}

function jobOf({ cut, minutes = 0, roll = {} }: Asked) {
	const one = { id: 'r', cloth: 'felt', width: 1400, usable: 600, price: 10, step: 1, ...roll };
	return schema.parse({
		shop: { labour: { hour: 60, minutes: { outlineMetre: minutes } } },
		stock: {
			cloths: [{ id: 'felt', name: 'Felt', loose: 3, pressed: 2, nap: 'none', cut }],
			rolls: [one],
		},
	});
}

async function lay(blanks: readonly Blank[], asked: Asked): Promise<ClothLayouts> {
	const job = jobOf(asked);
	const budget = { seed: 1, effort: asked.effort ?? 500 };
	return layCloth(job, job.stock.cloths[0]!, blanks, budget, () => true);
}

describe('rectangles, outlines, or the cheaper of both', () => {
	// Two wedges of 800 x 600 on cloth 600 wide at 10.00 a metre: 1600 mm as rectangles, 16.00;
	// head to tail in one rectangle 800 mm and what the slant needs more, 8.00; along their sides
	// 2 x (800 + 600 + 1000) = 4.8 m, at an hour of 60.00 one minute costs 1.00.
	const two = [wedge('w', 800, 600, 2)];

	it('are told with length and money, the one taken first (worked by hand)', async () => {
		const { ways, rolls } = await lay(two, { cut: 'cheaper', minutes: 1 });
		expect(ways!.map((w) => w.by)).toEqual(['outline', 'rectangle']);
		const [outline, rectangle] = ways as [CutWayOf, CutWayOf];
		expect(rectangle).toMatchObject({ pull: mm(1600), cost: 1600, along: 0, cutCost: 0 });
		expect(outline).toMatchObject({ along: mm(4800), cutCost: 480, fits: true });
		expect(toMm(outline.pull)).toBeGreaterThanOrEqual(800);
		expect(toMm(outline.pull)).toBeLessThan(802);
		expect(outline.cost).toBe(Math.ceil(toMm(outline.pull)));
		expect(rolls[0]).toMatchObject({ pull: outline.pull, along: mm(4800), faults: [] });
	});

	it('take the rectangles where the time to cut along outlines eats what the cloth saves', async () => {
		const { ways, rolls } = await lay(two, { cut: 'cheaper', minutes: 2 });
		expect(ways!.map((w) => w.by)).toEqual(['rectangle', 'outline']);
		expect(rolls[0]!.along).toBeUndefined();
		expect(rolls[0]!.pull).toBe(mm(1600));
	});

	it('keep to outlines where those are asked for, whatever they take to cut', async () => {
		const { ways } = await lay(two, { cut: 'outline', minutes: 100 });
		expect(ways!.map((w) => w.by)).toEqual(['outline', 'rectangle']);
	});

	it('go by the pull alone on a roll without a price', async () => {
		const { ways } = await lay(two, { cut: 'cheaper', minutes: 100, roll: { price: 0 } });
		expect(ways!.map((w) => w.by)).toEqual(['outline', 'rectangle']);
	});

	it('are not compared where all blanks are rectangles, or rectangles are asked for', async () => {
		const plain = [clothBlank('p', mm(500), mm(300), { count: 3 })];
		expect((await lay(plain, { cut: 'cheaper' })).ways).toBeUndefined();
		expect((await lay(two, { cut: 'rectangle' })).ways).toBeUndefined();
	});

	it('fill a remnant that their rectangles would not fit on', async () => {
		const { rolls } = await lay(two, { cut: 'outline', roll: { left: 900 } });
		expect(rolls.map((r) => [r.owned, r.answer.placed.length])).toEqual([[true, 2]]);
	});

	it('are work in the quote, at the shop’s minutes', async () => {
		const job = jobOf({ cut: 'outline', minutes: 1.5 });
		const cloths = [await lay(two, { cut: 'outline', minutes: 1.5 })];
		const none = {
			parts: [],
			blanks: [],
			boards: [],
			boxes: 0,
			panels: 0,
			reels: [],
			seamLength: ticks(0),
		};
		const [line] = labourLines(job, { ...none, cloths });
		expect(line).toMatchObject({ amount: 4.8, unit: 'm', cost: 720 });
		expect(line!.what).toBe('Cloth cut along outlines');
	});

	it('never pull more than rectangles, never cost more than either way', async () => {
		const sizes = fc.record({
			length: fc.integer({ min: 60, max: 700 }),
			width: fc.integer({ min: 60, max: 590 }),
			count: fc.integer({ min: 1, max: 3 }),
		});
		const law = fc.asyncProperty(
			fc.array(sizes, { minLength: 1, maxLength: 4 }),
			fc.integer({ min: 0, max: 4 }),
			async (all, minutes) => {
				const effort = 60;
				const blanks = all.map((s, i) => wedge(`w${i}`, s.length, s.width, s.count));
				const [taken, other] = (await lay(blanks, { cut: 'outline', minutes, effort })).ways!;
				expect(taken!.pull).toBeLessThanOrEqual(other!.pull);
				const [cheaper, dearer] = (await lay(blanks, { cut: 'cheaper', minutes, effort })).ways!;
				const sum = (w: CutWayOf): number => w.cost + w.cutCost;
				expect(sum(cheaper!)).toBeLessThanOrEqual(sum(dearer!));
			},
		);
		await fc.assert(law, { numRuns: runs(40) });
	});
});

type CutWayOf = NonNullable<ClothLayouts['ways']>[number];
