import { describe, expect, it, test } from 'vitest';
import { PAPER_SIZES, pageArea } from '../../src/lib/print/page/paper';
import { writePdf } from '../../src/lib/print/pens/pdf';
import { drawingSvg } from '../../src/lib/print/pens/svg';
import { tilesAlong, tiling } from '../../src/lib/print/templates/tile';
import { line } from '../../src/lib/print/drawing/path';
import { FONTS } from '../print/fixture';
import { readPdf } from '../print/pdf-reader';

const META = { title: 'paper', author: 'paper', date: '2026-11-25' };
const blank = (size: { width: number; height: number }) => ({
	...size,
	title: 'paper',
	name: 'paper',
	marks: [{ kind: 'path' as const, steps: line(10, 20, 110, 20), line: 'wide' as const }],
});
const pointsOf = async (size: { width: number; height: number }) =>
	(await readPdf(writePdf([blank(size)], FONTS, META))).pages[0]!;

describe('paper', () => {
	it('A4 is 210 x 297 mm: ISO 216', () => {
		expect(PAPER_SIZES.a4).toEqual({ width: 210, height: 297 });
	});

	it('each A size is the one above halved, rounded down to the millimetre: ISO 216 (A0 841 x 1189, A3 297 x 420)', () => {
		let size = { short: 841, long: 1189 };
		for (let n = 0; n < 3; n++) size = { short: Math.floor(size.long / 2), long: size.short };
		expect({ width: size.short, height: size.long }).toEqual(PAPER_SIZES.a3);
		expect({ width: Math.floor(size.long / 2), height: size.short }).toEqual(PAPER_SIZES.a4);
	});

	it('Letter is 8 1/2 x 11 in: ASME Y14.1 size A (from memory)', () => {
		expect(PAPER_SIZES.letter.width).toBeCloseTo(8.5 * 25.4, 9);
		expect(PAPER_SIZES.letter.height).toBeCloseTo(11 * 25.4, 9);
	});

	it('Tabloid is 11 x 17 in: ASME Y14.1 size B (from memory)', () => {
		expect(PAPER_SIZES.tabloid.width).toBeCloseTo(11 * 25.4, 9);
		expect(PAPER_SIZES.tabloid.height).toBeCloseTo(17 * 25.4, 9);
	});

	it.each(['a4', 'letter', 'a3', 'tabloid'] as const)(
		'%s margins leave more than the paper may be short by (2 mm up to 600 mm): ISO 216',
		(size) => {
			const area = pageArea({ size });
			const { width, height } = PAPER_SIZES[size];
			const margins = [area.x, area.y, width - area.x - area.width, height - area.y - area.height];
			for (const margin of margins) expect(margin).toBeGreaterThan(2);
		},
	);
});

describe('points', () => {
	it('an A4 page is 595.2756 x 841.8898 points of 1/72 in: ISO 32000-1 8.3.2.3', async () => {
		const page = await pointsOf(PAPER_SIZES.a4);
		expect(page.width).toBeCloseTo(595.2756, 3);
		expect(page.height).toBeCloseTo(841.8898, 3);
	});

	it('a Letter page is 612 x 792 points', async () => {
		const page = await pointsOf(PAPER_SIZES.letter);
		expect(page.width).toBeCloseTo(612, 3);
		expect(page.height).toBeCloseTo(792, 3);
	});

	it('a bar of 100 mm measures 100.0 mm', async () => {
		const [x1, y1, x2, y2] = (await pointsOf(PAPER_SIZES.a4)).lines[0]!;
		expect(Math.hypot(x2 - x1, y2 - y1)).toBeCloseTo(100, 3);
		expect([x1, y1].map((n) => Math.round(n * 1000) / 1000)).toEqual([10, 20]);
	});

	it('a drawing in a file says its size in millimetres, 25.4 of them to 96 px: CSS Values and Units', () => {
		const svg = drawingSvg(blank({ width: 25.4, height: 50.8 }), { colours: 'inline' });
		expect(svg).toContain('width="25.4mm" height="50.8mm" viewBox="0 0 25.4 50.8"');
	});

	test('a Letter page fitted on A4 shrinks to 0.9727, and a 300 mm bar to 291.8 mm: that is what the bar is for', () => {
		const { a4, letter } = PAPER_SIZES;
		const scale = Math.min(a4.width / letter.width, a4.height / letter.height);
		expect(scale).toBeCloseTo(0.9727, 4);
		expect(300 * scale).toBeCloseTo(291.8, 1);
	});
});

describe('tiling: pages along a side are ceil((length - overlap) / (page - overlap)), derived', () => {
	const upright = { width: 190, height: 277 };
	const landscape = { width: 277, height: 190 };

	it('860 x 380 mm on 190 x 277 mm with 10 mm overlap takes 5 x 2 = 10 pages upright', () => {
		expect(tilesAlong(860, 190, 10)).toBe(5);
		expect(tilesAlong(380, 277, 10)).toBe(2);
		const tiles = tiling({ width: 860, height: 380 }, upright, landscape, 10);
		expect(tiles).toMatchObject({ columns: 5, rows: 2, landscape: false });
	});

	it('and 4 x 3 = 12 pages lying', () => {
		expect(tilesAlong(860, 277, 10) * tilesAlong(380, 190, 10)).toBe(12);
	});
});
