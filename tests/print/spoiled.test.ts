import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { bookCut } from '../../src/lib/layout/boards/booking';
import type { SpoiledAt } from '../../src/lib/layout/spoil/mark';
import { plan, planAgain, withSpoiled } from '../../src/lib/plan';
import { labelTexts } from '../../src/lib/print/lists/labels/label-text';
import { sheetDrawing } from '../../src/lib/print/sheet';
import { costLines } from '../../src/lib/print/wording/cost-lines';
import { figuresOn } from '../../src/lib/print/wording/figures';
import { spoilWayTexts } from '../../src/lib/print/wording/spoil/ways';

const QUICK = { effort: 100 };
const JOB: JobFile = {
	number: '7',
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
		sheets: [
			{ id: 's', material: 'ply', length: 1000, width: 600, price: 40, factoryEdges: false },
		],
	},
	parts: [{ id: 'A', name: 'Side', material: 'ply', length: 1000, width: 295, count: 2 }],
};
const AT: SpoiledAt = { of: 'board', material: 'ply', index: 0, place: 0 };

async function spoiled() {
	const first = await plan(JOB, QUICK);
	const file = bookCut(JOB, first.job, first.boards, { material: 'ply', index: 0 });
	const before = await plan(file, QUICK);
	const ways = await planAgain(before, file, AT, QUICK);
	const after = await plan(withSpoiled(file, before, AT, ways[0]!), QUICK);
	return { file, before, ways, after };
}

describe('a spoiled part on paper', () => {
	it('is told before it is accepted: from what, where it lies, what it costs, what stays', async () => {
		const { before, ways } = await spoiled();
		const [text] = spoilWayTexts(before, ways, AT);
		expect(text).toMatchObject({ works: true });
		expect(text?.from).toBe('From a sheet to buy, 1000 × 600 (Plywood)');
		expect(text?.says[0]).toBe('It lies 0 mm from the left and 0 mm from the bottom of sheet 2.');
		expect(text?.says[1]).toMatch(/^EUR 40\.00 more is bought; .* it costs EUR \d+\.\d\d\.$/);
		expect(text?.says[2]).toMatch(/^Left over: 7-R\d 1000 × 301\.8\.$/);
	});

	it('has a label with a code of its own, and the spoiled piece has none', async () => {
		const { before, after } = await spoiled();
		const codes = (of: typeof after) =>
			labelTexts(of, figuresOn(of.job.shop.ruler))
				.filter((l) => l.mark === 'A')
				.map((l) => [l.nth, l.code]);
		expect(codes(before)).toEqual([
			['1 of 2', '7-A'],
			['2 of 2', '7-A'],
		]);
		expect(codes(after)).toEqual([
			['1 of 2', '7-A'],
			['2 of 2', '7-A-again'],
		]);
	});

	it('is crossed out on the sheet it was cut from, and nowhere else', async () => {
		const { before, after } = await spoiled();
		const words = (of: typeof after, index: number) =>
			sheetDrawing(of, of.boards[0]!, index).marks.filter(
				(m) => m.kind === 'text' && m.text === 'SPOILED',
			).length;
		expect([words(before, 0), words(after, 0), words(after, 1)]).toEqual([0, 1, 0]);
	});

	it('stands on the cost sheet as a line after the total, and in no other', async () => {
		const { before, after } = await spoiled();
		const [was, now] = [before, after].map(costLines);
		expect(now?.slice(0, was?.length)).toEqual(was);
		expect(now?.slice(was?.length ?? 0)).toEqual([
			{ label: expect.stringMatching(/^Spoil/), amount: after.quote.spoil.cost, as: 'line' },
			{ label: expect.stringMatching(/^spoiled so far/), amount: 1967, as: 'aside' },
		]);
	});
});
