import { describe, expect, it } from 'vitest';
import { area } from '../../src/lib/geometry/extent';
import { plan } from '../../src/lib/plan';
import { PACE, paceOf, stagesFor } from '../../src/lib/wrap/stages';
import { sample } from '../plan/samples';
import { mm } from '../../src/lib/measure/length';

describe('gluing in stages', () => {
	it('takes the usual pace without an open time, and a shorter one in its own proportion', () => {
		expect(paceOf({ way: 'sprayed', open: null })).toEqual(PACE.sprayed);
		expect(paceOf({ way: 'brushed', open: 15 })).toMatchObject({ open: 15, dry: 5 });
		expect(stagesFor(2e6, paceOf({ way: 'brushed', open: 15 }))).toBeGreaterThan(
			stagesFor(2e6, PACE.brushed),
		);
	});

	it('prints the stages on the blanks of a job whose adhesive closes quickly', async () => {
		const bench = sample('camper-bench.json');
		const usual = await plan(bench, { effort: 20 });
		const quick = { ...bench, shop: { ...bench.shop, adhesive: { open: 6 } } };
		const stages = (await plan(quick, { effort: 20 })).blanks.filter((b) =>
			b.notes.some((n) => n.includes('6 minutes of open time')),
		);
		expect(usual.blanks.flatMap((b) => b.notes).join()).not.toContain('6 minutes');
		expect(stages.length).toBeGreaterThan(0);
	});
});

describe('damping sheet', () => {
	it('is counted by the area of the board, both hands of a pair, and ordered in whole sheets with their overlap', async () => {
		const pair = sample('hatchback-pair.json');
		const side = { ...pair.panels![0]!, damping: 80 };
		const damping = {
			id: 'damp',
			name: 'Damping sheet',
			kind: 'damping' as const,
			pack: 0.2,
			price: 6,
			overlap: 10,
		};
		const stock = { ...pair.stock, sundries: [...pair.stock!.sundries!, damping] };
		const made = await plan({ ...pair, panels: [side], stock }, { effort: 20 });
		const board = made.panels[0]!.detail!.fit.board;
		const squareMetres = (2 * 0.8 * area(board)) / mm(1000) ** 2;
		const need = made.needs.find((n) => n.kind === 'damping');
		expect(need?.amount).toBeCloseTo(squareMetres, 9);
		const line = made.order.lines.find((l) => l.id === 'damp');
		expect(made.job.shop.spare).toBeGreaterThan(0);
		expect(line).toMatchObject({
			buy: Math.ceil((squareMetres * 1.1) / 0.2),
			sparePercent: 0,
		});
	});
});
