import { beforeAll, describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { mm, toMm } from '../../../src/lib/measure/length';
import { plan, type Plan } from '../../../src/lib/plan';
import {
	withBit,
	withMethod,
	withSaw,
} from '../../../src/lib/ui/chapters/boards/change/saw-in-place';
import { sheetFigures } from '../../../src/lib/ui/chapters/boards/change/sheet-figures';
import { snapped } from '../../../src/lib/ui/chapters/boards/by-hand/snapping';
import { sheetInHand, sheetsOf } from '../../../src/lib/ui/chapters/boards/sheets-of';
import { sheet } from '../../nest/saw/samples';

const FILE: JobFile = {
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
		sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, price: 40 }],
	},
	parts: [
		{ id: 'P1', material: 'ply', length: 700, width: 400, count: 2 },
		{ id: 'P2', material: 'ply', length: 900, width: 500 },
	],
};
const QUICK = { effort: 100 };
let made: Plan;
beforeAll(async () => {
	made = await plan(FILE, QUICK);
});

describe('the sheet that is worked at', () => {
	it('is the one of the address, else the one of the part in hand, else the first', () => {
		const sheets = sheetsOf(made);
		expect(sheets).toHaveLength(3);
		expect(sheetInHand(sheets, '#boards/2', null)).toBe(1);
		expect(sheetInHand(sheets, '#boards/9', null)).toBe(2);
		expect(sheetInHand(sheets, '#boards/0', 'part.P2')).toBe(0);
		const holds = sheets.findIndex(({ boards, index }) =>
			boards.answer.layouts[index]?.placed.some((p) => p.id === 'part.P2'),
		);
		expect(sheetInHand(sheets, '#boards', 'part.P2')).toBe(holds);
		expect(sheetInHand(sheets, '#boards', 'part.P9')).toBe(0);
		expect(sheetInHand(sheets, '#boards', null)).toBe(0);
	});
});

describe('how sheets are cut, changed where they lie', () => {
	it('is one figure of the saw in use, also where the file names no saw', async () => {
		const thin = withSaw(FILE, made.job, { kerf: mm(2) });
		const read = (await plan(thin, QUICK)).job.shop.saws;
		expect(read).toHaveLength(1);
		expect(toMm(read[0]!.kerf)).toBe(2);
		expect(read[0]!.trim).toBe(made.job.shop.saws[0]!.trim);
		const two: JobFile = {
			...FILE,
			shop: {
				saw: 'b',
				saws: [
					{ id: 'a', name: 'A', kerf: 3 },
					{ id: 'b', name: 'B', kerf: 4 },
				],
			},
		};
		const job = (await plan(two, QUICK)).job;
		expect(withSaw(two, job, { trim: mm(8) }).shop?.saws).toEqual([
			{ id: 'a', name: 'A', kerf: 3 },
			{ id: 'b', name: 'B', kerf: 4, trim: 8 },
		]);
	});

	it('or by router, with its bit', async () => {
		const routed = withBit(withMethod(FILE, 'router'), mm(8));
		const { shop } = (await plan(routed, QUICK)).job;
		expect([shop.method, toMm(shop.router.bit)]).toEqual(['router', 8]);
	});

	it('says sheets and money always, the rest where it is another', async () => {
		const manner = { ruler: made.job.shop.ruler, currency: 'EUR' };
		expect(sheetFigures(made, made, manner).map((f) => f.what)).toEqual([
			'sheets',
			'sheets to buy',
		]);
		const fewer = await plan({ ...FILE, parts: [FILE.parts![1]!] }, QUICK);
		const figures = sheetFigures(made, fewer, manner);
		expect(figures[0]).toEqual({ what: 'sheets', from: '3', to: '1' });
		expect(figures[1]).toMatchObject({ from: 'EUR 120.00', to: 'EUR 40.00' });
		expect(figures.map((f) => f.what)).toContain('cuts');
	});
});

describe('a piece that is dragged', () => {
	const trim = { left: mm(5), right: mm(5), bottom: mm(5), top: mm(5) };
	const snaps = {
		sheet: sheet('S', mm(1000), mm(600), { trim }),
		others: [{ x: mm(5), y: mm(5), length: mm(300), width: mm(200) }],
		...{ gap: mm(3), reach: mm(10), mark: mm(1) },
	};
	const at = (x: number, y: number) => {
		const rect = { x: mm(x), y: mm(y), length: mm(100), width: mm(50) };
		const to = snapped(rect, snaps);
		return [toMm(to.x), toMm(to.y)];
	};

	it('comes to the edges, a blade beside others, flush with them, or to a mark of the ruler', () => {
		expect(at(2, 8)).toEqual([5, 5]);
		expect(at(900, 553)).toEqual([895, 545]);
		expect(at(301, 150)).toEqual([308, 155]);
		expect(at(210, 212)).toEqual([205, 208]);
		expect(at(500.4, 300.6)).toEqual([500, 301]);
	});
});
