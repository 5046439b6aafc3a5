import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { bookCut, pinSheet, unpinSheet } from '../../../src/lib/layout/boards/booking';
import { offcutLabels } from '../../../src/lib/layout/boards/offcut-labels';
import { toMm } from '../../../src/lib/measure/length';
import { plan, type Plan } from '../../../src/lib/plan';
import { sample } from '../../plan/samples';

const QUICK = { effort: 100 };
const list = sample('cabinet-list.json');

/** How often each part is laid, over all sheets of a plan. */
function made(p: Plan): Record<string, number> {
	const counts: Record<string, number> = {};
	for (const b of p.boards)
		for (const l of b.answer.layouts)
			for (const placed of l.placed) counts[placed.id] = (counts[placed.id] ?? 0) + 1;
	return counts;
}

const stops = (p: Plan) => p.problems.filter((q) => q.kind === 'stop');

describe('a sheet that is cut', () => {
	const one: JobFile = {
		stock: {
			materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
			sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, factoryEdges: false }],
		},
		parts: [
			{ id: 'A', material: 'ply', length: 500, width: 300 },
			{ id: 'B', material: 'ply', length: 400, width: 200 },
		],
	};
	const cut = async (): Promise<JobFile> => {
		const made = await plan(one, QUICK);
		return bookCut(one, made.job, made.boards, { material: 'ply', index: 0 });
	};
	const told = async (file: JobFile): Promise<string[]> =>
		(await plan(file, QUICK)).problems.filter((p) => p.kind === 'check').map((p) => p.what);

	it('says nothing of parts that are as they were', async () => {
		expect(await told(await cut())).toEqual([]);
	});

	it('tells which of its parts are of another size now, and no other', async () => {
		const file = await cut();
		const parts = file.parts!.map((p) => (p.id === 'A' ? { ...p, length: 501 } : p));
		const said = await told({ ...file, parts });
		expect(said.filter((what) => !what.includes('no price'))).toEqual([
			expect.stringMatching(
				/^A sheet that is cut holds \S*A\b.* at another size than it has now\. It is cut again\.$/,
			),
		]);
	});
});

describe('pinned sheets', () => {
	it('stay as they are when the rest of the job changes', async () => {
		const before = await plan(list, QUICK);
		const boards = before.boards[0]!;
		const pinned = pinSheet(list, before.job, before.boards, {
			material: boards.material,
			index: 0,
		});
		const extra = {
			id: 'X1',
			name: 'Late part',
			material: boards.material,
			length: 700,
			width: 333,
		};
		const after = await plan({ ...pinned, parts: [...(list.parts ?? []), extra] }, QUICK);
		const again = after.boards.find((b) => b.material === boards.material)!;
		expect(stops(after)).toEqual([]);
		expect(again.answer.layouts[0]).toEqual(boards.answer.layouts[0]);
		expect(again.sources[0]).toMatchObject({ pinned: true, cut: false });
		expect(again.answer.proven).toBe(false);
		expect(made(after)).toEqual({ ...made(before), 'part.X1': 1 });
	});

	it('keep the labels of their offcuts, and lend the offcuts to the rest of the job', async () => {
		const one: JobFile = {
			stock: {
				materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
				sheets: [
					{ id: 's', material: 'ply', length: 1000, width: 600, buy: 1, factoryEdges: false },
				],
				offcuts: [{ id: 'R1', material: 'ply', length: 50, width: 50 }],
			},
			parts: [{ id: 'A', material: 'ply', length: 500, width: 600 }],
		};
		const before = await plan(one, QUICK);
		const offcut = before.boards[0]!.answer.layouts[0]!.offcuts[0]!;
		const pinned = pinSheet(one, before.job, before.boards, { material: 'ply', index: 0 });
		const extra = {
			id: 'X',
			material: 'ply',
			length: toMm(offcut.length),
			width: toMm(offcut.width),
		};
		const file = { ...pinned, parts: [...one.parts!, extra] };
		const after = await plan(file, QUICK);
		expect(offcutLabels(after.job, after.boards).get('ply')).toEqual([['R2'], []]);
		expect(after.boards[0]!.answer.layouts.map((l) => l.sheet)).toEqual(['buy/s', 'offcut/R2']);
		// The offcut is cut first and its sheet booked afterwards: it must not turn up on the rack
		// again.
		const first = bookCut(file, after.job, after.boards, { material: 'ply', index: 1 });
		const then = await plan(first, QUICK);
		const both = bookCut(first, then.job, then.boards, { material: 'ply', index: 0 });
		expect(both.stock!.offcuts!.map((o) => o.id)).toEqual(['R1']);
		expect(made(await plan(both, QUICK))).toEqual({ 'part.A': 1, 'part.X': 1 });
	});

	it('share no label with another job on the same rack, whichever is cut first', async () => {
		const job = (number: string): JobFile => ({
			number,
			stock: {
				materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
				sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, factoryEdges: false }],
			},
			parts: [{ id: 'A', material: 'ply', length: 500, width: 600 }],
		});
		const labels = async (number: string): Promise<readonly string[]> => {
			const { job: read, boards } = await plan(job(number), QUICK);
			return offcutLabels(read, boards).get('ply')?.flat() ?? [];
		};
		expect(await labels('0142')).toEqual(['0142-R1']);
		expect(await labels(' 0143 ')).toEqual(['0143-R1']);
		expect(await labels('')).toEqual(['R1']);
		expect(await labels('2026/14')).toEqual(['2026-14-R1']);
		expect(await labels('(Ü)')).toEqual(['R1']);
		expect(await labels('a number of more than twelve letters')).toEqual(['R1']);
	});

	it('can be let go again', async () => {
		const before = await plan(list, QUICK);
		const pinned = pinSheet(list, before.job, before.boards, {
			material: before.boards[0]!.material,
			index: 0,
		});
		const after = await plan(pinned, QUICK);
		expect(
			unpinSheet(pinned, after.job, after.boards, { material: after.boards[0]!.material, index: 0 })
				.pinned,
		).toEqual([]);
	});
});

describe('a sheet marked cut', () => {
	it('leaves the rack, hands over its offcuts under their printed labels, and is not ordered again', async () => {
		const before = await plan(list, QUICK);
		const { material } = before.boards[0]!;
		const at = before.boards[0]!.sources.findIndex((s) => s.kind === 'buy');
		const labels = offcutLabels(before.job, before.boards).get(material)![at]!;
		const offcuts = before.boards[0]!.answer.layouts[at]!.offcuts;
		const file = bookCut(list, before.job, before.boards, { material, index: at });
		const after = await plan(file, QUICK);
		expect(file.stock!.offcuts!.map((o) => o.id)).toEqual(labels);
		expect(after.job.stock.offcuts.map((o) => o.length)).toEqual(offcuts.map((o) => o.length));
		expect(made(after)).toEqual(made(before));
		const buys = (p: Plan): number => p.order.lines.reduce((sum, l) => sum + l.buy, 0);
		expect(buys(after)).toBeLessThan(buys(before));
		expect(list.stock!.offcuts).toBeUndefined(); // the file given is left alone
	});

	it('uses up an owned sheet and an offcut once each', async () => {
		const bench = sample('camper-bench.json');
		const before = await plan(bench, QUICK);
		let file: JobFile = bench;
		let now = before;
		for (const kind of ['owned', 'offcut'] as const) {
			const boards = now.boards.find((b) => b.sources.some((s) => s.kind === kind && !s.cut))!;
			const index = boards.sources.findIndex((s) => s.kind === kind && !s.cut);
			file = bookCut(file, now.job, now.boards, { material: boards.material, index });
			now = await plan(file, QUICK);
		}
		expect(file.stock!.sheets!.find((s) => s.id === 'mdf-12-full')!.owned).toBe(0);
		expect(file.stock!.offcuts!.some((o) => o.id === 'R7')).toBe(false);
		expect(stops(now)).toEqual([]);
		expect(made(now)).toEqual(made(before));
	});

	it('is booked once, however often the button is pressed', async () => {
		const before = await plan(list, QUICK);
		const which = { material: before.boards[0]!.material, index: 0 };
		const file = bookCut(list, before.job, before.boards, which);
		const after = await plan(file, QUICK);
		expect(bookCut(file, after.job, after.boards, which)).toBe(file);
	});
});
