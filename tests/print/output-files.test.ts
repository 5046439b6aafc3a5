import { describe, expect, it } from 'vitest';
import { plan } from '../../src/lib/plan';
import { isPdf, pdfFiles, plainFiles } from '../../src/lib/print/output-files';
import { sample } from '../plan/samples';
import { FONTS, samplePlan } from './fixture';

const camper = await plan(sample('camper-bench.json'), { effort: 60, seed: 1 });
/** Too large for two of them in one strip of a sheet. */
const SHELF = { id: 'shelf', material: 'mdf-12', length: 900, width: 400 };
const names = (of: typeof camper) => plainFiles('layouts', of).map((f) => f.name);

describe('pages as files', () => {
	it('every sheet is in one drawing, alike ones in the same; every roll has one', async () => {
		const sheets = camper.boards.flatMap((b) => b.answer.layouts);
		const rolls = camper.cloths.flatMap((c) => c.rolls);
		expect(sheets.length).toBeGreaterThan(0);
		expect(rolls.length).toBeGreaterThan(0);
		expect(new Set(names(camper)).size).toBe(sheets.length + rolls.length);
		const job = sample('box-slanted-sealed.json');
		const shelves = { ...job, boxes: [], parts: [{ ...SHELF, count: 41 }] };
		const made = await plan(shelves, { effort: 60, seed: 1 });
		const drawings = names(made).filter((n) => n.startsWith('sheet'));
		expect(drawings.length).toBeLessThan(4);
		const told = drawings.map((n) => Number(/-x(\d+)\.svg$/.exec(n)?.[1] ?? 1));
		expect(told.reduce((a, b) => a + b, 0)).toBe(
			made.boards.flatMap((b) => b.answer.layouts).length,
		);
		for (const { data } of plainFiles('layouts', camper))
			expect(data).toMatch(/^<svg .*<\/svg>\s*$/s);
	});

	it('a layout that failed its check is not drawn', () => {
		const faults = [{ where: 'sheet 1', what: 'B1 overlaps F1 by 3 mm.' }];
		const boards = camper.boards.map((b) => ({ ...b, faults }));
		expect(names({ ...camper, boards }).filter((n) => n.startsWith('sheet'))).toEqual([]);
		const cloths = camper.cloths.map((c) => ({
			...c,
			rolls: c.rolls.map((r) => ({ ...r, faults })),
		}));
		expect(names({ ...camper, cloths }).filter((n) => n.startsWith('roll'))).toEqual([]);
	});

	it('a PDF that would have no pages is no file', () => {
		expect(isPdf('labels') && !isPdf('order')).toBe(true);
		const made = samplePlan();
		expect(pdfFiles('labels', made, FONTS).map((f) => f.name)).toEqual(['labels.pdf']);
		expect(pdfFiles('labels', { ...made, parts: [], boards: [] }, FONTS)).toEqual([]);
	});
});
