import { describe, expect, it } from 'vitest';
import { flow, space, type Block } from '../../../src/lib/print/page/flow';
import { chaptersOn } from '../../../src/lib/print/page/contents';
import { framed } from '../../../src/lib/print/page/frame';
import { PAPER_SIZES, pageArea, paperSize } from '../../../src/lib/print/page/paper';
import { type Leaf, setPages } from '../../../src/lib/print/page/setting';
import { LABEL_SHEETS } from '../../../src/lib/job/shop/label-sheets';
import { labelPages } from '../../../src/lib/print/lists/labels/label-pages';
import { table } from '../../../src/lib/print/page/table';
import { fitLabel } from '../../../src/lib/print/marks/label-fit';
import type { Bounds } from '../../../src/lib/print/drawing/bounds';
import { overlap } from '../../../src/lib/print/drawing/text-box';
import { cutsOnSheet } from '../../../src/lib/print/sheet/cuts-on-sheet';
import type { Spot } from '../../../src/lib/print/drawing/path';
import { mm } from '../../../src/lib/measure/length';
import type { Cut, SheetLayout } from '../../../src/lib/nest/types';
import { sideOnSheet } from '../../../src/lib/print/sheet/part-on-sheet';
import { sheetDrawing } from '../../../src/lib/print/sheet/drawing';
import { tileName, tiling } from '../../../src/lib/print/templates/tile';
import { partTemplate } from '../../../src/lib/print/templates/part-template';
import { tileLeaf } from '../../../src/lib/print/templates/tile-page';
import { samplePlan } from '../fixture';
import { wordsOn } from '../words-on';

const block = (text: string, height: number, more: Partial<Block> = {}): Block => ({
	height,
	marks: [{ kind: 'text', x: 0, y: height, text, size: 3 }],
	...more,
});

const box = (x: number, y: number, width: number, height: number) => [
	{ x, y },
	{ x: x + width, y },
	{ x: x + width, y: y + height },
	{ x, y: y + height },
];

describe('flowing blocks over pages', () => {
	it('breaks before what does not fit and drops space at the top', () => {
		const pages = flow([block('a', 60), space(10), block('b', 60), space(50), block('c', 5)], 100);
		expect(pages.map(wordsOn)).toEqual([['a'], ['b'], ['c']]);
		expect(pages[1]![0]).toMatchObject({ y: 60 });
	});

	it('keeps a heading with what follows', () => {
		const pages = flow([block('a', 85), block('head', 10, { keep: true }), block('b', 20)], 100);
		expect(pages.map(wordsOn)).toEqual([['a'], ['head', 'b']]);
	});

	it('draws a late block where it stands, also at the top of a page', () => {
		const drawn: string[] = [];
		const late = (name: string, height: number): Block => ({
			...{ height, marks: [], keep: true },
			later: () => {
				drawn.push(name);
				return block(name, height).marks;
			},
		});
		// A drawing that is still to be made is no empty paper: it may stand at the top of a page.
		const blocks = [late('a', 60), block('b', 30), late('c', 60), block('d', 50), space(4)];
		expect(flow(blocks, 100).map(wordsOn)).toEqual([['a', 'b'], ['c'], ['d']]);
		expect(drawn).toEqual(['a', 'c']);
	});

	it('repeats the head of a table on each page', () => {
		const rows = [...Array(30).keys()].map((i) => ({ cells: [`row ${i}`] }));
		const blocks = table({ columns: [{ head: 'Part', width: { share: 1 } }], rows }, 80);
		const pages = flow(blocks, 60);
		expect(pages.length).toBeGreaterThan(2);
		for (const page of pages) expect(wordsOn(page)[0]).toBe('Part');
		expect(pages.flatMap(wordsOn).filter((t) => t.startsWith('row'))).toHaveLength(30);
	});

	it('leaves no row of a table alone on the last page', () => {
		for (let n = 2; n < 40; n++) {
			const rows = [...Array(n).keys()].map((i) => ({ cells: [`row ${i}`] }));
			const blocks = table({ columns: [{ head: 'Part', width: { share: 1 } }], rows }, 80);
			const last = flow(blocks, 60).at(-1)!;
			expect(wordsOn(last).filter((t) => t.startsWith('row')).length).toBeGreaterThan(1);
		}
	});
});

const leaf = (name: string, heights: readonly number[], more: Partial<Leaf> = {}): Leaf => ({
	...{ name, title: name, paper: { size: 'a4' } },
	blocks: heights.map((height, i) => block(`${name}${i}`, height)),
	...more,
});

/** What is to be read on each page. */
const read = (leaves: readonly Leaf[]) =>
	setPages(leaves).map(({ sets }) => sets.flatMap((s) => wordsOn(s.block.marks)));

describe('leaves on pages', () => {
	const { height } = pageArea({ size: 'a4' });

	it('go on where the one before ended', () => {
		const pages = [leaf('a', [height - 60]), leaf('b', [30, 30])];
		expect(read(pages)).toEqual([['a0', 'b0'], ['b1']]);
		expect(setPages(pages).map((p) => p.name)).toEqual(['a · b (1 of 2)', 'b (2 of 2)']);
		expect(setPages(pages).map((p) => p.title)).toEqual(['a · b', 'b, continued']);
	});

	it('begin a page when they are taken to the work whole and do not fit', () => {
		const whole = { whole: true } as const;
		expect(read([leaf('a', [60]), leaf('b', [30, 30], whole)])).toEqual([['a0', 'b0', 'b1']]);
		expect(read([leaf('a', [height - 50]), leaf('b', [30, 30], whole)])).toEqual([
			['a0'],
			['b0', 'b1'],
		]);
		expect(read([leaf('a', [40]), leaf('b', [100, 100, 100], whole)])).toEqual([
			['a0'],
			['b0', 'b1'],
			['b2'],
		]);
	});

	it('begin a page where their paper is another', () => {
		const wide = { paper: { size: 'a4', landscape: true } } as const;
		expect(read([leaf('a', [20]), leaf('b', [20], wide), leaf('c', [20])])).toHaveLength(3);
		expect(read([])).toEqual([]);
		expect(read([leaf('a', [])])).toEqual([]);
		expect(read([leaf('a', []), leaf('b', [20], wide)])).toHaveLength(1);
	});

	it('say which chapters are on each, and what is rounded and at fault', () => {
		const odd = { chapter: 'C', figures: { rounded: true }, fault: 'no number' };
		const pages = setPages([leaf('a', [height - 60]), leaf('b', [30, 30], odd)]);
		expect(pages.map((p) => [p.chapters, p.rounded, p.fault])).toEqual([
			[['a', 'C'], true, 'no number'],
			[['C'], true, 'no number'],
		]);
		expect(chaptersOn(pages)).toEqual([
			{ name: 'a', from: 1, to: 1 },
			{ name: 'C', from: 1, to: 2 },
		]);
	});
});

describe('tables that go on', () => {
	const rows = (n: number) => [...Array(n).keys()].map((i) => ({ cells: [`row ${i}`] }));
	const set = (n: number, before: number, height = 100) =>
		flow(
			[block('a', before), ...table({ columns: [{ head: 'H', width: 20 }], rows: rows(n) }, 80)],
			height,
		).map(wordsOn);

	it('keeps a short one together', () => {
		for (let before = 1; before < 100; before++)
			expect(set(6, before).filter((page) => page.includes('H'))).toHaveLength(1);
	});

	it('leaves no row alone on a page', () => {
		for (let n = 7; n < 40; n++)
			for (let before = 1; before < 100; before += 3)
				for (const page of set(n, before))
					expect(page.filter((t) => t.startsWith('row')).length).not.toBe(1);
	});

	it('parts what no page holds without leaving paper empty', () => {
		const kept = [...Array(8).keys()].map((i) => block(`${i}`, 30, { keep: true }));
		expect(flow(kept, 100).map(wordsOn)).toEqual([
			['0', '1', '2'],
			['3', '4', '5'],
			['6', '7'],
		]);
	});
});

describe('the page frame', () => {
	it('leaves 20 mm on the left and 10 mm on the other sides, as ISO 5457 does', () => {
		const { width, height } = paperSize({ size: 'a4' });
		const area = pageArea({ size: 'a4' });
		expect([area.x, area.y, width - area.x - area.width]).toEqual([20, 10, 10]);
		expect(area.y + area.height).toBeLessThan(height - 10);
	});

	it('carries what ISO 7200 asks of a title block', () => {
		const leaf = {
			name: 'n',
			title: 'Parts list',
			paper: { size: 'a4' as const },
			blocks: [block('tall', 200)],
		};
		const title = {
			job: 'Bench',
			number: '0142',
			revision: 'C',
			date: '2026-11-25',
			shop: 'Bench & Bow',
			customer: 'A. Person',
			vehicle: '',
			ruler: 'millimetres',
			roundedNote: '',
		};
		const [page] = framed([leaf, leaf], title);
		const words = wordsOn(page!.marks);
		for (const text of ['Bench', '0142', 'C', '2026-11-25', 'Bench & Bow', 'Parts list', '1 of 2'])
			expect(words).toContain(text);
		expect(words).toContain('Print at 100 %, measure this bar first.');
	});
});

describe('sheet drawings', () => {
	const plan = samplePlan();
	const drawing = sheetDrawing(plan, plan.boards[0]!, 0);

	it('fit their room and are to scale', () => {
		expect(drawing.width).toBeLessThanOrEqual(180 + 1e-9);
		expect(drawing.height).toBeLessThanOrEqual(150 + 1e-9);
		const part = (id: string) => {
			const mark = drawing.marks.find((m) => m.kind === 'path' && m.of === `part:${id}`);
			if (mark?.kind !== 'path') throw new Error('bug: the part is not drawn');
			const xs = mark.steps.slice(0, 4).map((s) => s[1] as number);
			return Math.max(...xs) - Math.min(...xs);
		};
		expect(part('bench-box.F1') / part('bench-box.E1')).toBeCloseTo(980 / 395.2, 6);
	});

	it('mark each part and each cut for picking, and number the cuts', () => {
		const of = new Set(drawing.marks.map((m) => m.of));
		for (const placed of plan.boards[0]!.answer.layouts[0]!.placed)
			expect(of).toContain(`part:${placed.id}`);
		for (const cut of plan.boards[0]!.answer.layouts[0]!.cuts) {
			expect(of).toContain(`cut:${cut.n}`);
			expect(wordsOn(drawing.marks.filter((m) => m.of === `cut:${cut.n}`))).toContain(
				String(cut.n),
			);
		}
	});

	it('let no leader of a cut strike out a word beside it', () => {
		const view = { x: 0, y: 200, scale: 1 };
		const rect = { x: mm(50), y: mm(50), length: mm(4), width: mm(2) };
		const cut = { n: 1, kind: 'cross', runs: 'y', region: rect, at: mm(52) } as unknown as Cut;
		const layout = { length: mm(200), width: mm(200), cuts: [cut] } as unknown as SheetLayout;
		const leader = (words: readonly Bounds[]): Spot[] => {
			const marks = cutsOnSheet(layout, 0, view, words);
			const strokes = marks.flatMap((m) =>
				m.kind === 'path' && m.line === 'hair' ? [m.steps] : [],
			);
			return strokes.at(-1)!.map((s) => ({ x: s[1] as number, y: s[2] as number }));
		};
		// The cut is too short for its flag, so the flag stands beside it: first on the side
		// without the words.
		const free = leader([]);
		const side = Math.sign(free[1]!.x - free[0]!.x);
		const word = { x: side > 0 ? 52.5 : 50.1, y: 140, width: 1.4, height: 20 };
		const turned = leader([word]);
		expect(Math.sign(turned[1]!.x - turned[0]!.x)).toBe(-side);
	});

	it('write the mark of every part on it, in a hole of it if need be', () => {
		for (const placed of plan.boards[0]!.answer.layouts[0]!.placed) {
			const words = wordsOn(drawing.marks.filter((m) => m.of === `part:${placed.id}`));
			const { label } = plan.parts.find((p) => p.id === placed.id)!;
			expect(words.some((w) => w.startsWith(label))).toBe(true);
		}
		const frame = [box(0, 0, 20, 20), box(2, 2, 16, 16)];
		const fitted = fitLabel([{ name: 'K1', lines: [] }], frame);
		expect(fitted.marks.map((m) => m.text)).toEqual(['K1']);
		expect(overlap(fitted.boxes[0]!, { x: 2, y: 2, width: 16, height: 16 })).toBe(true);
		expect(fitLabel([{ name: 'K1', lines: [] }], [box(0, 0, 2, 1)]).marks).toEqual([]);
	});

	it('name offcut and waste in words, not by hatch alone', () => {
		const words = wordsOn(drawing.marks);
		const { offcuts } = plan.boards[0]!.answer.layouts[0]!;
		offcuts.forEach((_, i) =>
			expect(words.some((w) => w.startsWith(`Offcut 0142-R${i + 1}`))).toBe(true),
		);
		expect(words).toContain('Offcut 0142-R3: rack it');
		expect(words).toContain('offcut, back to the rack');
		expect(words).toContain('waste');
		expect(words).toContain('datum');
	});

	it('turn the sides of a part with it', () => {
		expect(sideOnSheet('top', 0)).toBe('top');
		expect(sideOnSheet('left', 90)).toBe('bottom');
		expect(sideOnSheet('bottom', 90)).toBe('right');
		expect(sideOnSheet('top', 180)).toBe('bottom');
		expect(sideOnSheet('right', 270)).toBe('bottom');
	});
});

describe('label sheets', () => {
	it.each(LABEL_SHEETS.map((s) => [s.id, s] as const))('%s fits its paper', (_, s) => {
		const paper = PAPER_SIZES[s.paper];
		const right = s.left + (s.columns - 1) * s.pitchX + s.width;
		const bottom = s.top + (s.rows - 1) * s.pitchY + s.height;
		expect(right).toBeLessThanOrEqual(paper.width);
		expect(bottom).toBeLessThanOrEqual(paper.height);
		expect(s.pitchX).toBeGreaterThanOrEqual(s.width);
		expect(s.pitchY).toBeGreaterThanOrEqual(s.height);
		// The sheet lies in the middle of its paper, as such sheets do.
		expect(Math.abs(paper.width - right - s.left)).toBeLessThan(0.2);
		expect(Math.abs(paper.height - bottom - s.top)).toBeLessThan(0.2);
	});

	it('has one label for each piece and each offcut after the test page', () => {
		const plan = samplePlan();
		const pages = labelPages(plan, 'a4-2x7');
		const pieces = plan.parts.reduce((sum, p) => sum + p.count, 0);
		const codes = pages.slice(1).flatMap((p) => p.marks.filter((m) => m.kind === 'path'));
		const { offcuts } = plan.boards[0]!.answer.layouts[0]!;
		expect(codes).toHaveLength(pieces + offcuts.length);
		const words = pages.slice(1).flatMap((p) => wordsOn(p.marks));
		expect(words.filter((w) => w === 'Offcut: rack it')).toHaveLength(offcuts.length);
		expect(words).toEqual(expect.arrayContaining(offcuts.map((_, i) => `0142-R${i + 1}`)));
		expect(wordsOn(pages[1]!.marks)).toContain('2 of 2');
		expect(wordsOn(pages[0]!.marks)).toContain('100 mm');
	});
});

describe('tiles', () => {
	it('names rows by letters and columns by numbers', () => {
		expect([tileName(0, 0), tileName(4, 1), tileName(0, 25), tileName(0, 26)]).toEqual([
			'A1',
			'B5',
			'Z1',
			'AA1',
		]);
	});

	it('takes one page for what fits one page', () => {
		const tiles = tiling(
			{ width: 100, height: 150 },
			{ width: 180, height: 240 },
			{ width: 260, height: 160 },
			10,
		);
		expect([tiles.columns, tiles.rows, tiles.landscape]).toEqual([1, 1, false]);
	});

	it('draws every stretch of the outline on some page, at full size', () => {
		const part = samplePlan().parts.find((p) => p.id === 'cover.C1')!;
		const template = partTemplate(part);
		const area = pageArea({ size: 'a4' });
		const room = { width: area.width - 12, height: area.height - 12 };
		const tiles = tiling(template, room, room, 10);
		const marks = [...Array(tiles.rows).keys()].flatMap((row) =>
			[...Array(tiles.columns).keys()].flatMap((column) =>
				tileLeaf(template, tiles, { column, row }, { size: 'a4' }, 6).blocks.flatMap(
					(b) => b.later?.() ?? b.marks,
				),
			),
		);
		// Every page repeats its overlap, so the strokes are at least as long as the outline and
		// not half as long again.
		const long = marks
			.filter((m) => m.kind === 'path' && m.line === 'wide')
			.reduce((sum, m) => {
				if (m.kind !== 'path') return sum;
				let pen = { x: 0, y: 0 };
				let length = 0;
				for (const step of m.steps) {
					const to = { x: step[1] as number, y: step[2] as number };
					if (step[0] === 'L') length += Math.hypot(to.x - pen.x, to.y - pen.y);
					pen = to;
				}
				return sum + length;
			}, 0);
		const round = 2 * (605 + 381) - 4 * 40 + Math.PI * 40;
		expect(long).toBeGreaterThan(round - 1);
		expect(long).toBeLessThan(round * 1.2);
	});
});
