import { beforeAll, describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { bookCut } from '../../src/lib/layout/boards/booking';
import { plan, type Plan } from '../../src/lib/plan';
import { benchSheets, nextStep } from '../../src/lib/ui/bench/bench-cuts';
import { tickCut, tickedCuts } from '../../src/lib/ui/state/bench-work';
import { layoutKey } from '../../src/lib/ui/state/layout-key';

const FILE: JobFile = {
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
		sheets: [{ id: 's', material: 'ply', length: 1000, width: 600 }],
	},
	parts: [{ id: 'P1', material: 'ply', length: 700, width: 400, count: 2 }],
};
let made: Plan;
beforeAll(async () => {
	made = await plan(FILE, { effort: 200 });
});

describe('a tick at the bench', () => {
	it('pins its sheet, so that later edits plan round it', async () => {
		const boards = made.boards[0]!;
		const ticked = tickCut(FILE, made, boards, 0, 1);
		expect(ticked.pinned).toHaveLength(1);
		const later = await plan(
			{
				...ticked,
				parts: [...FILE.parts!, { id: 'P2', material: 'ply', length: 200, width: 100 }],
			},
			{ effort: 200 },
		);
		const same = later.boards[0]!;
		expect(same.sources[0]?.pinned).toBe(true);
		expect(tickedCuts(ticked, same, 0)).toEqual([1]);
	});

	it('can be taken back, and leaves no trace among the ticks', () => {
		const boards = made.boards[0]!;
		const back = tickCut(tickCut(FILE, made, boards, 0, 2), made, boards, 0, 2);
		expect(back.ticked).toEqual({});
	});

	it('belongs to one sheet, even beside another cut alike', () => {
		const boards = made.boards[0]!;
		expect(boards.answer.layouts).toHaveLength(2);
		expect(layoutKey(boards, 0)).not.toBe(layoutKey(boards, 1));
		expect(tickedCuts(tickCut(FILE, made, boards, 0, 1), boards, 1)).toEqual([]);
	});
});

describe('the bench', () => {
	it('goes on where the saw stands, then to the next sheet', () => {
		const boards = made.boards[0]!;
		let file = FILE;
		const first = benchSheets(made, file)[0]!;
		expect(nextStep([first])?.step).toBe(first.steps[0]);
		for (const n of first.steps) file = tickCut(file, made, boards, 0, n);
		const next = nextStep(benchSheets(made, file));
		expect(next?.sheet.n).toBe(2);
	});

	it('shows a sheet that is booked as cut no more', async () => {
		const booked = bookCut(FILE, made.job, made.boards, { material: 'ply', index: 0 });
		const after = await plan(booked, { effort: 200 });
		expect(benchSheets(after, booked)).toHaveLength(1);
		expect(booked.stock?.offcuts?.length).toBe(made.boards[0]!.answer.layouts[0]!.offcuts.length);
	});
});
