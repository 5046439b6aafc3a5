import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { boundText, proofText } from '../../../src/lib/layout/boards/proof';
import { plan } from '../../../src/lib/plan';

type SheetFile = NonNullable<NonNullable<JobFile['stock']>['sheets']>[number];

/** Two boards of 600 x 500 on the sheets given, no kerf to speak of, no trim. */
async function boardsOn(sheets: readonly Omit<SheetFile, 'material'>[]) {
	const made = await plan(
		{
			shop: { saws: [{ id: 'saw', name: 'Saw', kerf: 3, trim: 0 }] },
			stock: {
				materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
				sheets: sheets.map((s) => ({ ...s, material: 'ply' })),
			},
			parts: [{ id: 'A', material: 'ply', length: 600, width: 500, count: 2 }],
		},
		{ effort: 500 },
	);
	return made.boards[0]!;
}

describe('what is claimed of a layout', () => {
	it('claims the number of sheets where the bound meets it', async () => {
		const boards = await boardsOn([{ id: 's', length: 610, width: 510, price: 10 }]);
		expect(boards.answer.layouts).toHaveLength(2);
		expect(proofText(boards)).toBe('no layout by saw needs fewer sheets');
	});

	it('leaves out the saw where a router lays the sheets', async () => {
		const boards = await boardsOn([{ id: 's', length: 610, width: 510, price: 10 }]);
		const routed = { ...boards.problem, method: 'router' as const };
		// only the method is asked for
		const words = proofText({ ...boards, problem: routed as typeof boards.problem });
		expect(words).toBe('no layout needs fewer sheets');
	});

	it('says how many sheets there must be where no more is known, and nothing where that says nothing', async () => {
		const boards = await boardsOn([{ id: 's', length: 610, width: 510, price: 10 }]);
		expect(boundText(boards)).toBe('no layout by saw needs fewer sheets');
		const known = (sheets: number, laid: number): string => {
			const layouts = Array.from({ length: laid }, () => boards.answer.layouts[0]!);
			const bound = { sheets, cost: 10_00 };
			return boundText({ ...boards, answer: { ...boards.answer, layouts, bound, proven: false } });
		};
		expect(known(2, 3)).toBe('no layout by saw needs fewer than 2 sheets');
		expect(known(3, 3)).toBe('');
		expect(known(1, 3)).toBe('');
	});

	it('claims only the money where one dear large sheet would do the work of two cheap ones', async () => {
		const boards = await boardsOn([
			{ id: 'small', length: 610, width: 510, price: 10 },
			{ id: 'large', length: 1300, width: 510, price: 90 },
		]);
		expect(boards.answer.layouts).toHaveLength(2);
		expect(boards.answer.cost).toBe(20_00);
		expect(proofText(boards)).not.toContain('fewer');
	});
});
