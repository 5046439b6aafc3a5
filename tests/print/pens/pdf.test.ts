import { beforeAll, describe, expect, it } from 'vitest';
import type { Mark, Page } from '../../../src/lib/print/drawing/drawing';
import { printPack } from '../../../src/lib/print/pack';
import { circlePath, line, rect } from '../../../src/lib/print/drawing/path';
import { writePdf } from '../../../src/lib/print/pens/pdf';
import { drawingSvg } from '../../../src/lib/print/pens/svg';
import { textWidth } from '../../../src/lib/print/drawing/text-width';
import { FONTS, inchPlan, samplePlan } from '../fixture';
import { readPdf, type ReadPdf } from '../pdf-reader';

const META = { title: 'Łódź (1)', author: 'Kerf & Nap', date: '2026-11-25' };

const page = (marks: Page['marks'], more: Partial<Page> = {}): Page => ({
	width: 210,
	height: 297,
	title: 'A page',
	name: 'Page A',
	marks,
	...more,
});

describe('the pack as another reader sees it', () => {
	const pages = printPack(samplePlan());
	let read: ReadPdf;
	beforeAll(async () => {
		read = await readPdf(writePdf(pages, FONTS, META));
	});

	it('has every page, with its label', () => {
		expect(read.pages).toHaveLength(pages.length);
		expect(read.labels).toEqual(pages.map((p) => p.name));
	});

	it('leads to every page from its bookmarks, chapter by chapter', () => {
		const spots = read.bookmarks.flatMap((mark) =>
			mark.below.length === 0 ? [mark] : [...mark.below],
		);
		const leads = spots.map(({ page }) => page);
		expect([...new Set(leads)]).toEqual(pages.map((_, i) => i));
		for (const { title, page } of spots) {
			const { name, chapter, further } = pages[page]!;
			expect([name, chapter, ...(further ?? [])]).toContain(title);
		}
		for (const { page, below } of read.bookmarks) expect(below[0]?.page ?? page).toBe(page);
		expect(read.bookmarks.map(({ title }) => title)).toContain('Parts');
	});

	it('says its language', () => {
		expect(read.info['Language']).toBe('en');
		expect(read.info['Creator']).toBe('Kerf & Nap');
	});

	it('asks the printer not to scale', () => {
		expect(read.viewer).toMatchObject({ PrintScaling: 'None' });
	});

	it('carries its title and the date of the job', () => {
		expect(read.info['Title']).toBe('Łódź (1)');
		expect(read.info['CreationDate']).toBe("D:20261125000000+00'00'");
	});

	it('draws 100 mm as 100.0 mm and 4 in as 101.6 mm on every page', () => {
		for (const { lines } of read.pages) {
			const lengths = lines.map(([x1, y1, x2, y2]) => Math.hypot(x2 - x1, y2 - y1));
			expect(lengths.some((l) => Math.abs(l - 100) < 0.001)).toBe(true);
			expect(lengths.some((l) => Math.abs(l - 101.6) < 0.001)).toBe(true);
		}
	});

	it('says the same words as the drawing list, in the same places', () => {
		const titled = (m: Mark): boolean => m.kind === 'text' && m.text.startsWith('Sheet 1 of 1');
		const n = pages.findIndex((p) => p.marks.some(titled));
		const mark = pages[n]!.marks.find(titled);
		if (mark?.kind !== 'text') throw new Error('bug: the sheet page has no title');
		const found = read.pages[n]!.texts.find((t) => t.text === mark.text);
		expect(found?.x).toBeCloseTo(mark.x, 2);
		expect(found?.y).toBeCloseTo(mark.y, 2);
		const all = read.pages.flatMap((page) => page.texts.map((t) => t.text));
		expect(all.join(' ')).toContain('show face up');
	});
});

it('has bookmarks of any letters, line ends and brackets among their bytes', async () => {
	const names = ['ഊ Łódź', ')(\\', 'عربي', 'two of one'];
	const pages = names.map((name) => page([], { name }));
	const more = page([], { name: 'another', chapter: 'two of one' });
	const read = await readPdf(writePdf([...pages, more], FONTS, META));
	expect(read.bookmarks.map(({ title, page, below }) => [title, page, below.length])).toEqual([
		...names.slice(0, 3).map((name, i) => [name, i, 0]),
		['two of one', 3, 2],
	]);
	expect(read.labels?.slice(0, 4)).toEqual(names);
});

it('is the same file, byte for byte, for the same pages', () => {
	const pages = printPack(samplePlan());
	const once = writePdf(pages, FONTS, META);
	expect(Buffer.from(writePdf(pages, FONTS, META)).equals(Buffer.from(once))).toBe(true);
	const other = writePdf(printPack(samplePlan({ revision: 'D' })), FONTS, META);
	expect(Buffer.from(other).equals(Buffer.from(once))).toBe(false);
});

it('makes Letter pages for a Letter shop', async () => {
	const read = await readPdf(writePdf(printPack(inchPlan()), FONTS, META));
	for (const { width, height } of read.pages)
		expect([Math.min(width, height), Math.max(width, height)]).toEqual([
			expect.closeTo(612, 2),
			expect.closeTo(792, 2),
		]);
});

describe('letters of any name', () => {
	it.each(['Łódź', 'Größe ½″', 'Ελένη Παπαδοπούλου', 'Кириллица', 'Ağrı İzmir', 'Nguyễn Thị'])(
		'prints %s so that it can be read and searched',
		async (text) => {
			const marks: Page['marks'] = [{ kind: 'text', x: 20, y: 30, text, size: 5 }];
			const [first] = (await readPdf(writePdf([page(marks)], FONTS, META))).pages;
			expect(first!.texts.map((t) => t.text).join('')).toBe(text);
			expect(first!.texts[0]!.x).toBeCloseTo(20, 2);
		},
	);

	it('prints Hebrew from right to left, words in order', async () => {
		const marks: Page['marks'] = [{ kind: 'text', x: 20, y: 30, text: 'שלום עולם', size: 5 }];
		const [first] = (await readPdf(writePdf([page(marks)], FONTS, META))).pages;
		const letters = first!.texts
			.map((t) => t.text)
			.join('')
			.replace(/\u200c/g, '');
		// The reader undoes the turning: it gives back the reading order only if the page holds the
		// seen order.
		expect(letters).toBe('שלום עולם');
	});

	it('goes on after a letter that no face has', async () => {
		const marks: Page['marks'] = [{ kind: 'text', x: 20, y: 30, text: 'a中b', size: 5 }];
		const [first] = (await readPdf(writePdf([page(marks)], FONTS, META))).pages;
		expect(first!.texts.map((t) => t.text).join('')).toBe('a□b');
	});
});

describe('the two pens', () => {
	const marks: Page['marks'] = [
		{ kind: 'path', steps: line(30, 40, 130, 40), line: 'wide', of: 'part:a' },
		{ kind: 'path', steps: rect(30, 60, 25, 15), line: 'narrow', fill: 'sunk' },
		{ kind: 'path', steps: circlePath(90, 90, 10), line: 'chain' },
		{ kind: 'text', x: 105, y: 120, text: 'middle', size: 4, anchor: 'middle' },
		{ kind: 'text', x: 150, y: 200, text: 'turned end', size: 4, anchor: 'end', turn: 90 },
	];
	const svg = drawingSvg(page(marks), { colours: 'inline' });

	it('agree on where lines run', async () => {
		const [read] = (await readPdf(writePdf([page(marks)], FONTS, META))).pages;
		expect(svg).toContain('<path d="M30 40L130 40"');
		const first = read!.lines[0]!;
		[30, 40, 130, 40].forEach((n, i) => expect(first[i]).toBeCloseTo(n, 3));
	});

	it('agree on where anchored and turned texts start', async () => {
		const [read] = (await readPdf(writePdf([page(marks)], FONTS, META))).pages;
		const middle = read!.texts.find((t) => t.text === 'middle')!;
		expect(middle.x).toBeCloseTo(105 - textWidth('middle', 4) / 2, 2);
		expect(svg).toContain('text-anchor="middle"');
		const turned = read!.texts.find((t) => t.text === 'turned end')!;
		expect(turned.x).toBeCloseTo(150, 2);
		expect(turned.y).toBeCloseTo(200 + textWidth('turned end', 4), 2);
		expect(svg).toContain('transform="rotate(-90 150 200)"');
	});
});
