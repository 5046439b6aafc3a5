import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { toMm } from '../../src/lib/measure/length';
import { auditRoll } from '../../src/lib/nest/audit/roll';
import { plan } from '../../src/lib/plan';

type Cloth = NonNullable<NonNullable<JobFile['stock']>['cloths']>[number];

/** A shop with one board, one cloth and a roll of it this wide. */
function job(usable: number, cloth: Partial<Cloth>, things: Partial<JobFile>): JobFile {
	return {
		name: 'Seams',
		stock: {
			materials: [{ id: 'ply', name: 'Plywood 12', nominal: 12, measured: 12 }],
			sheets: [{ id: 'full', material: 'ply', length: 2440, width: 1220, price: 50 }],
			cloths: [{ id: 'felt', name: 'Felt', loose: 3, pressed: 3, nap: 'one-way', ...cloth }],
			rolls: [{ id: 'roll', cloth: 'felt', width: usable, usable, price: 10, step: 10 }],
		},
		...things,
	};
}

const panel = (length: number, width: number): Partial<JobFile> => ({
	panels: [
		{
			id: 'shelf',
			name: 'Shelf',
			opening: { kind: 'rectangle', length, width },
			material: 'ply',
			cloth: 'felt',
		},
	],
});

const box = (way: 'band' | 'faces'): Partial<JobFile> => ({
	boxes: [
		{
			id: 'box',
			name: 'Box',
			material: 'ply',
			shape: { kind: 'plain', width: 900, height: 400, depth: 700 },
			carpet: { cloth: 'felt', way, cover: ['front', 'top', 'back', 'left', 'right'] },
		},
	],
});

const PATTERNS: readonly (readonly [string, Partial<Cloth>])[] = [
	['plain', {}],
	['with a repeat along', { repeat: 64 }],
	['with a repeat across', { repeatAcross: 40 }],
	['with a repeat both ways', { repeat: 64, repeatAcross: 40 }],
	['with a half drop', { repeat: 64, repeatAcross: 40, halfDrop: true }],
];
const NAPS = ['one-way', 'two-way', 'none'] as const;

const cases = PATTERNS.flatMap(([name, pattern]) =>
	NAPS.map((nap) => ({ name: `${name}, nap ${nap}`, cloth: { ...pattern, nap } })),
);

/** Everything that is asked for lies on the roll, in a layout that passes the auditor. */
async function everyBlankLies(file: JobFile): Promise<number> {
	const made = await plan(file, { effort: 200 });
	expect(made.cloths.flatMap((c) => c.unplaced)).toEqual([]);
	const rolls = made.cloths.flatMap((c) => c.rolls);
	for (const roll of rolls) expect(auditRoll(roll.problem, roll.answer)).toEqual([]);
	const laid = rolls.flatMap((r) => r.answer.placed.map((p) => p.id)).sort();
	expect(laid).toEqual(made.blanks.flatMap((b) => Array<string>(b.count).fill(b.id)).sort());
	expect(made.problems.filter((p) => p.kind === 'stop')).toEqual([]);
	return made.blanks.length;
}

describe.each(cases)('a seam that the planner offers on cloth $name', ({ cloth }) => {
	it('of a panel wider than the roll', async () => {
		// Wider across than the roll and, where it may be turned, longer than that as well.
		expect(await everyBlankLies(job(700, cloth, panel(1500, 900)))).toBeGreaterThan(1);
	});

	it('of a band round a box', async () => {
		expect(await everyBlankLies(job(600, cloth, box('band')))).toBeGreaterThan(3);
	});

	it('of the faces of a box', async () => {
		expect(await everyBlankLies(job(600, cloth, box('faces')))).toBeGreaterThan(5);
	});
});

describe('a seam on plain cloth, figure by figure', () => {
	it('cuts a panel of 1500 x 400 on a roll of 1500 in two of half its width and half the lap', async () => {
		const made = await plan(job(1500, {}, panel(1500, 400)), { effort: 200 });
		const [a, b] = made.blanks;
		if (!a || !b) throw new Error('it has to be cut in two');
		// Opening 1500, pressed cloth 3 and clearance at both ends, and the turn-under of both: 801
		// with half of the lap of 20.
		expect([a, b].map(({ width }) => Math.round(toMm(width)))).toEqual([801, 801]);
		expect(made.cloths.flatMap((c) => c.unplaced)).toEqual([]);
		// Two parts of 801 do not lie side by side on 1500: one after the other, in steps of 10 mm.
		const roll = made.cloths[0]?.rolls[0];
		expect(roll?.answer.length).toBe(2 * a.length);
		expect(toMm(roll?.pull ?? 0)).toBe(Math.ceil(toMm(2 * a.length) / 10) * 10);
	});
});
