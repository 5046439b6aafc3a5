import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { plan, savings } from '../../../src/lib/plan';

/** Two parts that share a sheet only if the second may lie across the grain. */
function job(extra: Partial<JobFile> = {}): JobFile {
	return {
		shop: { saws: [{ id: 'saw', name: 'Saw', kerf: 3, trim: 0 }] },
		stock: {
			materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12, grain: true }],
			sheets: [{ id: 's', material: 'ply', length: 1000, width: 500, price: 40 }],
		},
		parts: [
			{ id: 'A', material: 'ply', length: 600, width: 500 },
			{ id: 'B', name: 'Shelf', material: 'ply', length: 500, width: 390 },
		],
		...extra,
	};
}

it('finds that turning one part saves a sheet, and says so by its name', async () => {
	const found = await savings(await plan(job()), { effort: 2000 });
	const turn = found.find((s) => s.what.includes('grain'));
	expect(turn).toMatchObject({ money: 40_00, sheets: 1, guessed: false });
	expect(turn?.what).toBe('Let B Shelf lie across the grain.');
});

it('has nothing to offer where no layout needs fewer sheets', async () => {
	const one = await plan(job({ parts: [{ id: 'A', material: 'ply', length: 990, width: 500 }] }));
	expect(one.boards[0]?.answer.proven).toBe(true);
	expect((await savings(one)).filter((s) => !s.guessed)).toEqual([]);
});

it('takes no price out of the air: a sheet size the stock does not sell is marked as guessed', async () => {
	const found = await savings(await plan(job()), { effort: 2000 });
	for (const s of found) expect(s.guessed).toBe(s.what.startsWith('Buy sheets'));
});

describe('where a part lies by hand', () => {
	/** Two of these lie side by side on one sheet, but not beside one that lies in its middle. */
	const two = {
		parts: [{ id: 'A', material: 'ply', length: 480, width: 500, count: 2 }],
	};
	const middle = { material: 'ply', sheet: 'buy/s', part: 'part.A', x: 250, y: 0 };

	it('letting it go is offered by itself, with what that saves', async () => {
		const made = await plan(job({ ...two, byHand: [middle] }), { effort: 500 });
		expect(made.boards[0]?.answer.layouts).toHaveLength(2);
		const [first] = await savings(made, { effort: 2000 });
		expect(first?.what).toBe('Let go what lies by hand: it is laid with the rest.');
		expect(first).toMatchObject({ money: 40_00, sheets: 1 });
	});

	it('no change is offered for what letting it go saves without any', async () => {
		const made = await plan(job({ ...two, byHand: [middle] }), { effort: 500 });
		const found = await savings(made, { effort: 2000 });
		expect(found.filter((s) => !s.guessed)).toHaveLength(1);
	});

	it('every change says that it lets it go', async () => {
		const held = { ...middle, x: 0 };
		const made = await plan(job({ byHand: [held] }), { effort: 500 });
		const found = await savings(made, { effort: 2000 });
		expect(found.map((s) => s.what)).toContain(
			'Let B Shelf lie across the grain. What lies by hand is let go for it.',
		);
	});
});
