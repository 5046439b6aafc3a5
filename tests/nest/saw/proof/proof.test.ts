import fc from 'fast-check';
import { runs } from '../../../depth';
import { describe, expect, it } from 'vitest';
import { ticks } from '../../../../src/lib/measure/length';
import { auditSheets } from '../../../../src/lib/nest/audit/audit';
import { areaBound, boundOf } from '../../../../src/lib/nest/saw/bound';
import { limitsOf } from '../../../../src/lib/nest/saw/cutting/cut-plan';
import { firstLayout } from '../../../../src/lib/nest/saw/search/first-layout';
import { Generation } from '../../../../src/lib/nest/saw/proof/generation';
import type { LayoutSnapshot } from '../../../../src/lib/nest/saw/search/partial-layout';
import { searchState } from '../../../../src/lib/nest/saw/search/open-sheet';
import { Patterns } from '../../../../src/lib/nest/saw/proof/patterns';
import { Pricing } from '../../../../src/lib/nest/saw/proof/pricing';
import { Proof } from '../../../../src/lib/nest/saw/proof/proof';
import { random } from '../../../../src/lib/nest/random';
import { nestSaw } from '../../../../src/lib/nest/saw/saw';
import { sawAnswer } from '../../../../src/lib/nest/saw/answer/answer';
import { sawModel, type SawModel } from '../../../../src/lib/nest/saw/model';
import type { SawProblem } from '../../../../src/lib/nest/types';
import { cheapest } from './proof-check';
import { finish, piece, sawProblem, sheet, untrimmed } from '../samples';

function ended(model: SawModel, kept: LayoutSnapshot): Proof {
	const proof = new Proof(model, kept);
	while (proof.verdict === 'working') proof.step();
	return proof;
}

function moneyOf(model: SawModel, kept: LayoutSnapshot): number {
	return kept.trees.reduce((sum, tree) => sum + model.kinds[tree.kind]!.sheet.price, 0);
}

/** A first layout, then every cheaper one that a proof meets, and how the last proof ended. */
function driven(problem: SawProblem): { model: SawModel; all: LayoutSnapshot[]; proof: Proof } {
	const model = sawModel(problem);
	const all = [firstLayout(searchState(model, random(1), limitsOf(problem)))];
	for (;;) {
		const proof = ended(model, all.at(-1)!);
		const next = proof.laid();
		if (!next) return { model, all, proof };
		all.push(next);
	}
}

const whole = (min: number, max: number) => fc.integer({ min, max }).map(ticks);

/** Up to six pieces on one to three small kinds of sheet. */
const small: fc.Arbitrary<SawProblem> = fc
	.record({
		kerf: whole(0, 2),
		sheets: fc.array(
			fc.record({
				length: whole(5, 11),
				width: whole(4, 8),
				price: fc.integer({ min: 0, max: 7 }),
				count: fc.constantFrom(null, null, 1, 2),
				left: whole(0, 1),
			}),
			{ minLength: 1, maxLength: 3 },
		),
		pieces: fc.array(
			fc.record({
				length: whole(1, 8),
				width: whole(1, 6),
				count: fc.constantFrom(1, 1, 2, 3),
				turns: fc.constantFrom('any', 'half'),
			}),
			{ minLength: 1, maxLength: 6 },
		),
	})
	.map(({ kerf, sheets, pieces }) => {
		let room = 6;
		const few = pieces.flatMap((p, i) => {
			const count = Math.min(p.count, room);
			room -= count;
			return count > 0 ? [piece(`p${i}`, p.length, p.width, count, { turns: p.turns })] : [];
		});
		const stock = sheets.map(({ length, width, price, count, left }, i) =>
			sheet(`s${i}`, length, width, { price, count, trim: { ...untrimmed, left } }),
		);
		return sawProblem(stock, few, { kerf });
	});

/**
 * What the proof speaks of: sheets of one kind, money, or where none is spent, the number of owned
 * sheets.
 */
function amount(
	problem: SawProblem,
	model: SawModel,
	kept: LayoutSnapshot,
): { found: number; best: number } {
	const money = moneyOf(model, kept);
	if (model.kinds.length === 1) return { found: kept.trees.length, best: cheapest(problem).sheets };
	if (money > 0) return { found: money, best: cheapest(problem).money };
	const owned = { ...problem, sheets: problem.sheets.filter((s) => s.price === 0) };
	return { found: kept.trees.length, best: cheapest(owned).sheets };
}

describe('the proof that nothing is cheaper', () => {
	it('is found for few pieces, and never where trying everything finds something cheaper', () => {
		fc.assert(
			fc.property(small, (problem) => {
				const { model, all, proof } = driven(problem);
				fc.pre(all[0]!.missing === 0 && model.impossible.length === 0);
				expect(proof.verdict).toBe('proven');
				const { found, best } = amount(problem, model, all.at(-1)!);
				expect(found).toBe(best);
			}),
			{ numRuns: runs(200) },
		);
	});

	it('comes upon cheaper layouts that pass the audit', () => {
		let met = 0;
		fc.assert(
			fc.property(small, (problem) => {
				const { model, all } = driven(problem);
				fc.pre(all[0]!.missing === 0 && model.impossible.length === 0);
				met += all.length - 1;
				for (const kept of all) {
					const answer = sawAnswer(model, kept, areaBound(model), 0);
					expect(auditSheets(problem, answer)).toEqual([]);
					expect(answer.unplaced).toEqual([]);
				}
			}),
			{ numRuns: runs(300, 300) },
		);
		// About twenty are met; how many is chance, that there are any is not.
		expect(met).toBeGreaterThan(0);
	});

	it('offers no cheaper layout that the limits of the saw forbid', () => {
		let met = 0;
		fc.assert(
			fc.property(small, fc.integer({ min: 1, max: 3 }), (any, stages) => {
				const problem = { ...any, stages };
				const { model, all } = driven(problem);
				fc.pre(all[0]!.missing === 0 && model.impossible.length === 0);
				met += all.length - 1;
				const answer = sawAnswer(model, all.at(-1)!, areaBound(model), 0);
				expect(auditSheets(problem, answer)).toEqual([]);
			}),
			{ numRuns: runs(300, 300) },
		);
		expect(met).toBeGreaterThan(0);
	});
});

describe('what a proof that falls short still knows', () => {
	it('is never more than what trying everything finds, and often more than area and sides tell', () => {
		let more = 0;
		fc.assert(
			fc.property(small, (problem) => {
				const model = sawModel(problem);
				const kept = firstLayout(searchState(model, random(1), limitsOf(problem)));
				fc.pre(kept.missing === 0 && model.impossible.length === 0);
				const known = boundOf(model);
				const bound = ended(model, kept).bound(known);
				const best = cheapest(problem);
				expect(bound.cost).toBeLessThanOrEqual(best.money);
				expect(bound.sheets).toBeLessThanOrEqual(best.sheets);
				more += Number(bound.cost > known.cost || bound.sheets > known.sheets);
			}),
			{ numRuns: runs(600, 600) },
		);
		expect(more).toBeGreaterThan(0);
	});
});

describe('what a whole search claims', () => {
	it('is true of few pieces on any stock: least money where proven, and no more sheets than its bound allows to say', () => {
		let proven = 0;
		const cases = runs(120);
		fc.assert(
			fc.property(small, (problem) => {
				const answer = finish(nestSaw(problem, { seed: 1, effort: 1000 }));
				fc.pre(answer.unplaced.length === 0);
				const best = cheapest(problem);
				expect(answer.bound.cost).toBeLessThanOrEqual(best.money);
				expect(answer.bound.sheets).toBeLessThanOrEqual(best.sheets);
				if (!answer.proven) return;
				proven++;
				expect(answer.cost).toBe(best.money);
			}),
			{ numRuns: cases },
		);
		expect(proven).toBeGreaterThan(cases / 2);
	});
});

describe('the proof on plain cases', () => {
	const verdict = (problem: SawProblem): { verdict: string; sheets: number; bound: number } => {
		const { model, all, proof } = driven(problem);
		return {
			verdict: proof.verdict,
			sheets: all.at(-1)!.trees.length,
			bound: boundOf(model).sheets,
		};
	};

	it('sees that four pieces round a fifth fill one sheet and yet no saw can part them', () => {
		const round = [piece('A', 3, 2, 2), piece('B', 2, 3, 2), piece('C', 1, 1)];
		const fixed = sawProblem([sheet('S', 5, 5)], round);
		expect(verdict(fixed)).toEqual({ verdict: 'proven', sheets: 2, bound: 1 });
		const turned = sawProblem([sheet('S', 5, 5)], [piece('A', 3, 2, 4, { turns: 'any' })]);
		expect(verdict(turned)).toEqual({ verdict: 'proven', sheets: 2, bound: 1 });
	});

	/** Two uprights, or two shelves, fill a sheet; one of each do not go together. */
	const uprights = sawProblem([sheet('S', 10, 10)], [piece('A', 5, 10, 3), piece('B', 10, 5, 3)]);

	it('tells half sheets that do not go together from whole ones', () => {
		// worth one and a half sheets each, which makes three in parts and four in whole sheets
		expect(verdict(uprights)).toEqual({ verdict: 'proven', sheets: 4, bound: 3 });
		const model = sawModel(uprights);
		const pricing = new Pricing(model, new Patterns(model, 10, 10), 0);
		const generation = new Generation(model, { costs: [1], goal: 3, limited: [] }, [pricing]);
		generation.add({ kind: 0, types: Int32Array.of(0, 0) });
		generation.add({ kind: 0, types: Int32Array.of(1, 1) });
		let reached = generation.step(1000);
		while (reached === 'working') reached = generation.step(1000);
		expect(reached).toBe('short');
		expect(generation.gap).toBeCloseTo(0, -1);
	});

	it('knows when a dearer sheet cannot be spared', () => {
		const { pieces } = uprights;
		const sheets = [
			sheet('small', 10, 10, { price: 60, count: 3 }),
			sheet('large', 20, 10, { price: 125 }),
		];
		const { model, all, proof } = driven(sawProblem(sheets, pieces));
		expect(proof.verdict).toBe('proven');
		expect(moneyOf(model, all.at(-1)!)).toBe(cheapest(sawProblem(sheets, pieces)).money);
	});

	it('gives up at once on nothing, on many pieces to a sheet, where some are not laid, and on pairs', () => {
		const tapered = [
			{ x: 0, y: 0 },
			{ x: 30, y: 0 },
			{ x: 20, y: 10 },
			{ x: 0, y: 10 },
		];
		const cases = [
			sawProblem([sheet('S', 100, 100)], []),
			sawProblem([sheet('S', 100, 100)], [piece('A', 9, 9, 100)]),
			sawProblem([sheet('S', 10, 10, { count: 1 })], [piece('A', 6, 6, 2)]),
			sawProblem([sheet('S', 52, 10)], [piece('A', 30, 10, 2, { outline: tapered })]),
		];
		for (const problem of cases) {
			const model = sawModel(problem);
			const kept = firstLayout(searchState(model, random(1), null));
			const proof = new Proof(model, kept);
			expect(proof.verdict).toBe('open');
			expect(proof.work).toBe(0);
		}
	});
});
