import { describe, expect, it } from 'vitest';
import { job as schema, type JobFile } from '../../../src/lib/job/job';
import { chooseWays } from '../../../src/lib/layout/rolls/choose-ways';
import { rectangle } from '../../../src/lib/geometry/shaping/tidy';
import { mm } from '../../../src/lib/measure/length';
import { plan } from '../../../src/lib/plan';
import type { Blank } from '../../../src/lib/wrap/blank';
import type { CarpetOffer } from '../../../src/lib/wrap/wrap-all';
import type { BoxWay } from '../../../src/lib/wrap/wrap-box';

const stock: JobFile['stock'] = {
	materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
	cloths: [{ id: 'felt', name: 'Felt', loose: 3, pressed: 3 }],
	rolls: [{ id: 'r', cloth: 'felt', width: 1000, usable: 1000, price: 10, step: 100 }],
};
/** An hour at 60: a minute costs 1, a metre of seam its minutes. */
const labour = (hour: number, seamMetre = 4) => ({ labour: { hour, minutes: { seamMetre } } });

function way(name: BoxWay['way'], length: number, seam: number): BoxWay {
	const blank: Blank = {
		...{ id: name, label: name, name, owner: 'box', covers: 'box', cloth: 'felt', count: 1 },
		...{ length: mm(length), width: mm(1000), marks: [], anyWay: false, lot: '', bonded: 0 },
		outline: rectangle(0, 0, mm(length), mm(1000)),
		...{ reliefs: { notches: 0, slits: 0, corners: 0 }, notes: [] },
	};
	return {
		...{ way: name, blanks: [blank], seams: 1, seamLength: mm(seam), needs: [], problems: [] },
	};
}

/** Face by face takes 1 m of cloth and 3 m of seam; a band 1.1 m of cloth and 0.5 m of seam. */
const chosen = async (hour: number, changes: Partial<CarpetOffer> = {}) => {
	const offer: CarpetOffer = {
		...{ owner: 'box', cloth: 'felt', asked: 'cheaper', count: 1, problems: [] },
		ways: [way('band', 1100, 500), way('faces', 1000, 3000)],
		...changes,
	};
	const job = schema.parse({ shop: labour(hour), stock });
	const budget = { seed: 1, effort: 100 };
	return chooseWays(job, { panels: [], boxes: [offer] }, budget);
};

describe('the cheaper way to carpet a box', () => {
	it('counts the work of its seams beside the cloth', async () => {
		const { carpets, seamLength } = await chosen(60);
		expect(carpets[0]?.ways.map((w) => [w.way, w.cost, w.seamCost])).toEqual([
			['band', 11_00, 2_00],
			['faces', 10_00, 12_00],
		]);
		expect(carpets[0]?.chosen).toBe('band');
		expect(seamLength).toBe(mm(500));
	});

	it('is the one of less cloth where work costs nothing', async () => {
		expect((await chosen(0)).carpets[0]?.chosen).toBe('faces');
	});

	it('counts the seams of every box of the kind', async () => {
		const { carpets, seamLength } = await chosen(60, { count: 3, asked: 'faces' });
		expect(carpets[0]).toMatchObject({ chosen: 'faces', ways: [{ seamCost: 6_00 }, {}] });
		expect(seamLength).toBe(mm(9000));
	});
});

describe('the work of seams', () => {
	it('is in the quote: boxes in the way taken, and panels too wide for the roll', async () => {
		const file: JobFile = {
			...{ shop: labour(60), stock },
			panels: [
				{
					...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'felt', count: 2, nap: 0 },
					opening: { kind: 'rectangle', length: 807, width: 407 },
					...{ edges: { all: { end: 'bare', clearance: 3.5 } }, grip: 0, groove: 'none' },
					seams: [{ from: { x: 400, y: -5 }, to: { x: 400, y: 420 } }],
				},
			],
			boxes: [
				{
					...{ id: 'b', name: 'Box', material: 'ply', count: 2 },
					shape: { kind: 'plain', width: 400, height: 300, depth: 250 },
					carpet: { cloth: 'felt' },
				},
			],
		};
		const made = await plan(file, { effort: 20 });
		const [carpet] = made.carpets;
		const taken = carpet!.ways.find((w) => w.way === carpet!.chosen)!;
		const line = made.quote.labour.find((l) => l.what === 'Seams cut');
		const metres = (2 * 400 + (2 * taken.seamLength) / 1600) / 1000;
		expect(taken.seamLength).toBeGreaterThan(0);
		expect(line).toMatchObject({ unit: 'm', amount: expect.closeTo(metres, 6) as number });
		expect(line?.minutes).toBeCloseTo(4 * metres, 6);
	});
});
