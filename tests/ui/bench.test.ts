import { beforeAll, describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { rulerOf } from '../../src/lib/job/ruler-of';
import { bookCut, bookingOf } from '../../src/lib/layout/boards/booking';
import { plan, type Plan } from '../../src/lib/plan';
import { benchSheets, nextStep } from '../../src/lib/ui/bench/bench-cuts';
import { HeldPlan } from '../../src/lib/ui/bench/held-plan.svelte';
import { planNews } from '../../src/lib/ui/bench/plan-news';
import { figuresOn } from '../../src/lib/print';
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

describe('a plan older than the file', () => {
	const P2 = { id: 'P2', material: 'ply', length: 200, width: 100 };

	it('pins its sheet once, however many cuts are ticked by it', () => {
		const boards = made.boards[0]!;
		let file = FILE;
		for (const n of [1, 2, 3]) file = tickCut(file, made, boards, 0, n);
		expect(file.pinned).toHaveLength(1);
		file = tickCut(file, made, boards, 1, 1); // two alike are two sheets
		expect(file.pinned).toHaveLength(2);
		file = tickCut(file, made, boards, 1, 2);
		expect(file.pinned).toHaveLength(2);
	});

	it('books its sheet in the place of its pin, and once', () => {
		const boards = made.boards[0]!;
		const which = { material: 'ply', index: 0 };
		const ticked = tickCut(FILE, made, boards, 0, 1);
		const booked = bookingOf(ticked, made.job, made.boards, which);
		expect(booked?.file.pinned).toMatchObject([{ cut: true }]);
		expect(bookingOf(booked!.file, made.job, made.boards, which)).toBeNull();
		expect(
			bookingOf(booked!.file, made.job, made.boards, { material: 'ply', index: 1 }),
		).not.toBeNull();
	});

	it('pins again what somebody has let go meanwhile', async () => {
		const boards = made.boards[0]!;
		const ticked = tickCut(FILE, made, boards, 0, 1);
		const pinnedPlan = await plan(ticked, { effort: 200 });
		const letGo = { ...ticked, pinned: [] };
		expect(tickCut(letGo, pinnedPlan, pinnedPlan.boards[0]!, 0, 2).pinned).toHaveLength(1);
	});

	it('is told from a newer one by what the bench reads of it', async () => {
		const figures = figuresOn(rulerOf(FILE));
		expect(
			planNews(made, await plan({ ...FILE, name: 'Another' }, { effort: 200 }), figures),
		).toBeNull();
		const ticked = tickCut(FILE, made, made.boards[0]!, 0, 1);
		expect(planNews(made, await plan(ticked, { effort: 200 }), figures)).toBeNull();
		const more = await plan({ ...ticked, parts: [...FILE.parts!, P2] }, { effort: 200 });
		const news = planNews(made, more, figures);
		expect(news?.lines.join(' ')).toMatch(/Sheet 2 goes.*new: sheet \d/);
		expect(news?.changed).toEqual([layoutKey(made.boards[0]!, 1)]);
		const renamed = { ...made, parts: made.parts.map((part) => ({ ...part, label: 'Z9' })) };
		expect(planNews(made, renamed, figures)?.lines[0]).toMatch(/^Sheet 1, cut \d+ reads now: .*Z9/);
		const cut = bookCut(FILE, made.job, made.boards, { material: 'ply', index: 0 });
		expect(planNews(made, await plan(cut, { effort: 200 }), figures)?.lines).toEqual([
			'Sheet 1 was marked as cut elsewhere.',
		]);
	});

	it('stays in hand at the bench until its person takes the newer one', async () => {
		const desk = {
			...{ id: 'j', plan: made as Plan | null, ruler: rulerOf(FILE) },
			...{ shared: { changes: 0 }, watch: { busy: false } },
		};
		const held = new HeldPlan(desk);
		held.follow();
		expect(held.plan).toBe(made);
		const more = await plan({ ...FILE, parts: [...FILE.parts!, P2] }, { effort: 200 });
		desk.plan = more; // changed by nobody else: taken at once
		held.follow();
		expect([held.plan === more, held.news]).toEqual([true, null]);
		desk.shared.changes++;
		desk.plan = made;
		desk.watch.busy = true; // a better one may be on its way
		held.follow();
		expect([held.plan === more, held.news]).toEqual([true, null]);
		desk.watch.busy = false;
		held.follow();
		expect(held.plan).toBe(more);
		expect(held.news?.lines.length).toBeGreaterThan(0);
		held.take();
		expect([held.plan === made, held.news]).toEqual([true, null]);
		desk.shared.changes++; // of nothing the bench reads
		desk.plan = await plan({ ...FILE, name: 'Another' }, { effort: 200 });
		held.follow();
		expect([held.plan === desk.plan, held.news]).toEqual([true, null]);
		desk.id = 'k'; // another job
		desk.plan = more;
		held.follow();
		expect(held.plan).toBe(more);
	});
});
