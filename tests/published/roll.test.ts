import { describe, expect, it } from 'vitest';
import { inches } from '../../src/lib/measure/length';
import { FREE, ONE_WAY, blank, lay, roll } from '../nest/roll/samples';
import { job as jobSchema } from '../../src/lib/job/job';
import { layCloth } from '../../src/lib/layout/rolls/lay-cloth';

/*
 * Nap makes you buy more. Roll 40 in wide (a width box carpet is sold in: common practice, no
 * source); three panels 34 x 15 in with 2 in turned under on every edge: blanks 38 x 19 in. Worked
 * by hand: turned freely they lie across, 38 of 40 in, one to a row, three rows of 19 in. With the
 * nap along the 38 in, two lie side by side (38 in), and three take two rows of 38 in. One-way
 * layout for napped cloth: a rule of dressmaking glossaries.
 */
describe('three 38 x 19 in blanks on a 40 in roll', () => {
	const blanks = (turns: typeof FREE) =>
		roll(inches(40), [blank('panel', inches(38), inches(19), 3, turns)]);

	it('take 57 in when they may turn: 1.583 yd', () => {
		const answer = lay(blanks(FREE));
		expect(answer.length).toBe(inches(57));
		expect(answer.proven).toBe(true);
		expect(answer.length / inches(36)).toBeCloseTo(1.583, 3);
	});

	it('take 76 in with a one-way nap: 2.111 yd', () => {
		const answer = lay(blanks(ONE_WAY));
		expect(answer.length).toBe(inches(76));
		// all three are longer than half of anything less: they would cross its middle
		expect(answer.proven).toBe(true);
		expect(answer.length / inches(36)).toBeCloseTo(2.111, 3);
	});
});

/*
 * Cut lengths rounded up to whole repeats: the worked examples of a curtain maker's guide (96 in on
 * a repeat of 27 in take four repeats, 108 in, of which 12 are waste; 116 in on 25 in take 125, 9
 * are waste), and its rule to buy one repeat more, because the cloth is cut off anywhere in its
 * pattern.
 */
describe('lengths of a patterned cloth', () => {
	const width = inches(54);
	const lengths = (cut: number, repeat: number, count: number, drop = false) =>
		roll(width, [blank('length', inches(cut), drop ? width / 2 : width, count, ONE_WAY)], {
			repeat: inches(repeat),
			...(drop ? { drop: { across: inches(27) } } : {}),
		});

	it.each([
		[96, 27, 108, 12],
		[116, 25, 125, 9],
	])('of %d in on a repeat of %d in follow each other every %d in', (cut, repeat, whole, waste) => {
		const [first, second, third] = lay(lengths(cut, repeat, 3)).placed;
		expect([first!.x, second!.x, third!.x]).toEqual([0, inches(whole), inches(2 * whole)]);
		expect(second!.x - first!.x - first!.length).toBe(inches(waste));
	});

	it('side by side on a half drop: each starts half a repeat later than its neighbour', () => {
		const placed = lay(lengths(96, 27, 4, true)).placed;
		const at = (x: number, y: number) => placed.some((p) => p.x === inches(x) && p.y === inches(y));
		expect([at(0, 0), at(13.5, 27), at(108, 0), at(121.5, 27)]).toEqual([true, true, true, true]);
	});

	it('are bought with one repeat more', async () => {
		const job = jobSchema.parse({
			stock: {
				cloths: [{ id: 'c', name: 'Cloth', loose: 1, pressed: 1, repeat: '27 in' }],
				rolls: [{ id: 'r', cloth: 'c', width: '54 in', usable: '54 in', price: 10, step: '1 in' }],
			},
		});
		const one = {
			...blank('length', inches(96), width, 2, ONE_WAY),
			...{ label: '', name: '', owner: '', covers: '', cloth: 'c', marks: [], notes: [], lot: '' },
			...{ anyWay: false, bonded: 0, reliefs: { notches: 0, slits: 0, corners: 0 } },
			outline: [
				{ x: 0, y: 0 },
				{ x: inches(96), y: 0 },
				{ x: inches(96), y: width },
				{ x: 0, y: width },
			],
		};
		const budget = { seed: 1, effort: 100 };
		const laid = await layCloth(job, job.stock.cloths[0]!, [one], budget, () => true);
		expect(laid.rolls[0]!.pull).toBe(inches(108 + 96 + 27));
	});
});
