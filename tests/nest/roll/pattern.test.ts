import { describe, expect, it } from 'vitest';
import { runs } from '../../depth';
import fc from 'fast-check';
import { mm, ticks } from '../../../src/lib/measure/length';
import { auditRoll } from '../../../src/lib/nest/audit/roll';
import type { Placed, RollPiece, RollProblem } from '../../../src/lib/nest/types';
import { ONE_WAY, anyRoll, blank, lay, roll } from './samples';

/** The motifs of the roll that fall on a blank, from its corner: what a person sees on it. */
function motifs(problem: RollProblem, at: Placed): string[] {
	const wide = problem.drop?.across ?? problem.across ?? 0;
	const seen: string[] = [];
	for (let column = 0; column * wide < problem.width; column++) {
		const late = problem.drop && column % 2 === 1 ? problem.repeat / 2 : 0;
		for (let x = late - problem.repeat; x < at.x + at.length; x += problem.repeat) {
			const p = { x: x - at.x, y: column * wide - at.y };
			if (p.x >= 0 && p.x < at.length && p.y >= 0 && p.y < at.width) seen.push(`${p.x},${p.y}`);
		}
	}
	return seen.sort();
}

const even = (most: number) => fc.integer({ min: 1, max: most }).map((n) => ticks(2 * n));

describe('a half-drop pattern', () => {
	it('drops by half a repeat from one length to the next beside it', () => {
		const drop = { repeat: ticks(64), drop: { across: ticks(50) } };
		const answer = lay(roll(100, [blank('length', 60, 50, 4, ONE_WAY)], drop));
		expect(answer.placed.map((p) => [p.x, p.y])).toEqual([
			[0, 0],
			[32, 50],
			[64, 0],
			[96, 50],
		]);
	});

	it('puts two blanks side by side that must match half a repeat apart, a column or three between them', () => {
		for (const width of [50, 45, 148]) {
			const problem = roll(400, [blank('seat', 60, width, 2, ONE_WAY)], {
				repeat: ticks(64),
				drop: { across: ticks(50) },
			});
			const [a, b] = lay(problem).placed;
			expect([a!.y, b!.y]).toEqual([0, Math.ceil(width / 50) * 50]);
			expect(b!.x - a!.x).toBe(32);
		}
	});

	it('leaves two columns on no drop: there the pattern is where it was', () => {
		const problem = roll(400, [blank('seat', 60, 90, 2, ONE_WAY)], {
			repeat: ticks(64),
			drop: { across: ticks(50) },
		});
		expect(lay(problem).placed.map((p) => [p.x, p.y])).toEqual([
			[0, 0],
			[0, 100],
		]);
	});

	it('shows the same motifs in the same places on every blank of a kind', () => {
		fc.assert(
			fc.property(
				anyRoll,
				even(10),
				fc.integer({ min: 2, max: 25 }),
				fc.boolean(),
				(any, repeat, wide, drops) => {
					const pieces = any.pieces.map((p) => ({ ...p, turns: ONE_WAY }));
					const across = ticks(wide);
					const pattern = drops ? { repeat, drop: { across } } : { repeat, across };
					const { width, gap, limit, by } = any;
					const problem: RollProblem = { width, gap, limit, by, ...pattern, pieces };
					const answer = lay(problem, 60);
					expect(auditRoll(problem, answer)).toEqual([]);
					for (const piece of pieces) {
						const [first, ...others] = answer.placed.filter((p) => p.id === piece.id);
						for (const other of others)
							expect(motifs(problem, other)).toEqual(motifs(problem, first!));
					}
				},
			),
			{ numRuns: runs(120) },
		);
	});
});

describe('parts of one cloth seamed side by side', () => {
	/** Two parts of a whole: the second begins `along`, `across` of it. */
	const parts = (along: number, across: number): RollPiece[] => [
		blank('a', 120, 90, 1, ONE_WAY),
		{
			...blank('b', 120, 90, 1, ONE_WAY),
			phase: { along: ticks(along), across: ticks(across) },
		},
	];

	it('go on with the pattern across the seam', () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 0, max: 90 }),
				fc.integer({ min: 1, max: 180 }),
				fc.boolean(),
				(along, across, drops) => {
					const wide = ticks(34);
					const pattern = drops ? { drop: { across: wide } } : { across: wide };
					const problem = roll(130, parts(along, across), { repeat: ticks(40), ...pattern });
					const answer = lay(problem);
					expect(auditRoll(problem, answer)).toEqual([]);
					expect(answer.unplaced).toEqual([]);
					const [a, b] = ['a', 'b'].map((id) => answer.placed.find((p) => p.id === id)!);
					// Moved back to its place beside the other, the second part carries on its
					// lattice of motifs.
					const dx = b!.x - a!.x - along;
					const columns = (b!.y - a!.y - across) / wide;
					expect(Number.isInteger(columns)).toBe(true);
					const late = drops && Math.abs(columns) % 2 === 1 ? 20 : 0;
					expect(Math.abs((dx - late) % 40)).toBe(0);
				},
			),
			{ numRuns: runs(150) },
		);
	});

	it('are refused in words where the pattern leaves no width for them', () => {
		const problem = roll(100, parts(0, 20), { repeat: ticks(40), across: ticks(34) });
		const [left] = lay(problem).unplaced;
		expect(left).toMatchObject({ id: 'b', count: 1 });
		expect(left!.why).toContain('place in the pattern');
	});
});

describe('a pattern of stripes', () => {
	it('matches across and needs nothing along', () => {
		const problem = roll(mm(100), [blank('a', mm(70), mm(30), 4, ONE_WAY)], { across: mm(20) });
		const answer = lay(problem);
		expect(answer.placed.map((p) => p.y).sort((a, b) => a - b)).toEqual(
			[0, 0, 40, 40].map((y) => mm(y)),
		);
		expect(answer.length).toBe(mm(140));
	});
});

describe('the auditor', () => {
	const problem = roll(200, [blank('a', 60, 50, 1, ONE_WAY), blank('b', 60, 50, 1, ONE_WAY)], {
		repeat: ticks(64),
		drop: { across: ticks(50) },
	});
	const good = lay(problem);
	const moved = (by: Partial<Placed>) => ({
		...good,
		placed: good.placed.map((p) => (p.id === 'b' ? { ...p, ...by } : p)),
	});

	it('refuses a blank beside another that does not drop, and one between two columns', () => {
		expect(auditRoll(problem, good)).toEqual([]);
		expect(good.placed.find((p) => p.id === 'b')).toMatchObject({ x: 32, y: 50 });
		for (const by of [{ x: 0 }, { y: 60 }, { x: 64 }])
			expect(JSON.stringify(auditRoll(problem, moved(by)))).toContain('not start on the pattern');
	});
});
