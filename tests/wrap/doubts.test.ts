import { describe, expect, it } from 'vitest';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mm } from '../../src/lib/measure/length';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { plan } from '../../src/lib/plan';
import { sample } from '../plan/samples';
import { carpet, covering, outline, SHOP } from './make';

/** A raised or recessed step of 6 mm with corners as given, the second layer of its panel. */
const stepped = (raised: boolean, shape = rectangle(mm(100), mm(80), mm(300), mm(150))) =>
	covering({
		outline: rectangle(0, 0, mm(600), mm(300)),
		steps: [{ outline: shape, height: mm(6), raised, layer: { name: 'Field', index: 1 } }],
	});
const problems = (c: ReturnType<typeof stepped>, cloth = {}) =>
	wrapCovering(c, carpet({ shrink: 5, stretchAlong: 10, stretchAcross: 20, ...cloth }), SHOP, [
		'panels',
		3,
	]).problems;

describe('a step the cloth does not take', () => {
	it('is among the problems, at its layer, with what it asks and gives and what would help', () => {
		expect(problems(stepped(true))).toEqual([
			{
				path: ['panels', 3, 'layers', 1],
				kind: 'check',
				what: 'Tray face: Field, outside corners. The cloth must shrink by 100 % and gives 5 %.',
				fix: 'Round them to 114 mm, or cut a relief there, or wrap the layer by itself.',
			},
		]);
		const [inside] = problems(stepped(false));
		expect(inside!.what).toContain('Field, inside corners. The cloth must stretch by more than');
		expect(inside!.fix).toMatch(/^Round them to 66 mm, or slit the cloth there/);
	});

	it('is none of them once its corners are round enough, or the cloth gives enough', () => {
		// 114 mm of radius at every corner, as told: 6 / (114 + 6) is 5 %.
		const r = 114;
		const b = Math.tan(Math.PI / 8);
		const round = outline(
			[100 + r, 20],
			[500 - r, 20, b],
			[500, 20 + r],
			[500, 260 - r, b],
			[500 - r, 260],
			[100 + r, 260, b],
			[100, 260 - r],
			[100, 20 + r, b],
		);
		expect(problems(stepped(true, round))).toEqual([]);
		expect(problems(stepped(true, round), { shrink: 4.9 })).toHaveLength(1);
		expect(problems(stepped(true), { shrink: 100 })).toEqual([]);
	});

	it('of a cloth that gives next to nothing is told no radius', () => {
		for (const least of [Number.MIN_VALUE, 1e-300, 0.09]) {
			const [outside] = problems(stepped(true), { shrink: least });
			expect(outside?.fix).toBe('Cut a relief there, or wrap the layer by itself.');
			const [inside] = problems(stepped(false), { stretchAlong: least });
			expect(inside?.fix).toBe('Slit the cloth there, or wrap the layer by itself.');
		}
		expect(problems(stepped(true), { shrink: 0.1 })[0]?.fix).toContain('Round them to 5994 mm');
	});

	it('is counted with the problems of a job, once for both hands of a pair', async () => {
		const made = await plan(sample('panel-quarter-pair.json'), { effort: 5 });
		const told = made.problems.filter((p) => p.what.includes('shrink'));
		expect(told.map((p) => p.path)).toEqual([['panels', 0, 'layers', 1]]);
	});
});
