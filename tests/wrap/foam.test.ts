import { describe, expect, it } from 'vitest';
import { plan } from '../../src/lib/plan';
import { STOCK, type PanelFile } from '../design/panel/stock';

/*
 * Foam is glued to the board before the cloth is glued to it. A board of 600 x 400 mm out of an
 * opening of 607 x 407 (cloth 3, gap 0.5): 0.24 m2, worked by hand.
 */

const rect = (length: number, width: number) => ({ kind: 'rectangle', length, width }) as const;
const at = (x: number, y: number, length: number, width: number) => ({
	shape: rect(length, width),
	x,
	y,
});

const made = (panel: Partial<PanelFile>, open: number | null = null) =>
	plan(
		{
			shop: { adhesive: { open } },
			stock: {
				...STOCK,
				rolls: [{ id: 'r', cloth: 'carpet', width: 2000, usable: 2000, price: 10 }],
			},
			panels: [
				{
					...{ id: 'p', name: 'Panel', material: 'ply-12', cloth: 'carpet' },
					...{ opening: rect(607, 407), foam: { thickness: 5 }, ...panel },
				},
			],
		},
		{ effort: 20 },
	);

/** Square metres of foam glued: as the adhesive is counted, and as the hours are. */
async function foamOf(panel: Partial<PanelFile>): Promise<number[]> {
	const { needs, quote } = await made(panel);
	const both = needs.filter((n) => n.for === 'both faces of the foam under Panel');
	return [
		both.reduce((sum, n) => sum + n.amount / 2, 0),
		quote.labour.find((l) => l.what === 'Foam bonded')?.amount ?? 0,
	].map((n) => Number(n.toFixed(9)));
}

describe('foam under cloth', () => {
	it('is glued on all over the face, windows left out, for every panel made', async () => {
		const window = { id: 'w', name: 'W', end: 'bare', clearance: 0 } as const;
		const windows = [{ ...window, outline: at(100, 100, 100, 100) }];
		expect(await foamOf({})).toEqual([0.24, 0.24]);
		expect(await foamOf({ windows })).toEqual([0.23, 0.23]);
		expect(await foamOf({ count: 3 })).toEqual([0.72, 0.72]);
		expect(await foamOf({ pair: 'both' })).toEqual([0.48, 0.48]);
	});

	it('is glued on a layer where the layer has it, and nowhere without cloth', async () => {
		const pad = { id: 'pad', name: 'Pad', material: 'ply-6', foam: { thickness: 5 } };
		const layers = [{ ...pad, outline: at(100, 100, 200, 100) }];
		expect(await foamOf({ foam: null, layers })).toEqual([0.02, 0.02]);
		expect(await foamOf({ layers })).toEqual([0.26, 0.26]);
		expect(await foamOf({ foam: null })).toEqual([0, 0]);
		expect(await foamOf({ cloth: null })).toEqual([0, 0]);
	});

	it('takes its minutes and its share of the price', async () => {
		const { quote, job } = await made({});
		const line = quote.labour.find((l) => l.what === 'Foam bonded');
		expect(line?.minutes).toBeCloseTo(0.24 * job.shop.labour.minutes.bondedSquareMetre, 9);
	});

	it('is the same, whole or under a cloth seamed together', async () => {
		const seams = [{ from: { x: 300, y: -10 }, to: { x: 300, y: 420 } }];
		const { blanks } = await made({ seams });
		expect(blanks).toHaveLength(2);
		expect(await foamOf({ seams })).toEqual([0.24, 0.24]);
	});

	it('is laid in stages where the adhesive closes before it is laid', async () => {
		const notes = async (open: number | null) =>
			(await made({ seams: [] }, open)).blanks.flatMap((b) => b.notes);
		const foam = (all: readonly string[]) => all.filter((n) => n.startsWith('Glue the foam on in'));
		expect(foam(await notes(null))).toEqual([]);
		expect(foam(await notes(6))).toEqual([
			expect.stringMatching(/^Glue the foam on in \d stages of about 0\.\d+ m² each/),
		]);
	});
});
