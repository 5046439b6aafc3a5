import { describe, expect, it } from 'vitest';
import { plan, type Plan } from '../../src/lib/plan';
import { printPack } from '../../src/lib/print/pack';
import { writePdf } from '../../src/lib/print/pens/pdf';
import { sheetTitle } from '../../src/lib/print/wording';
import { sample } from '../plan/samples';
import { FONTS } from './fixture';
import { type Crosses, crossesOn, missingIn } from './holes-on-paper';
import { cutRows, textLines } from './paper-lines';
import { readPdf } from './pdf-reader';
import { expectSawn, sheetsOf } from './sheet/held-against-plan';

/*
 * The paper alone: the pack is written, read back by another reader, and nothing else of it is
 * known to the saw and the drill.
 */

const META = { title: 'Read back', author: '', date: '2026-11-30' };

/** Lists of places of at least so many holes make a pattern that is met only where it is drawn. */
const PATTERN = 3;

const READ = await Promise.all(
	['camper-bench.json', 'hatchback-pair.json'].map(async (file) => {
		const made = await plan(sample(file), { effort: 20, seed: 1 });
		const { pages } = await readPdf(writePdf(printPack(made), FONTS, META));
		return { file, made, pages };
	}),
);

describe.each(READ)('$file', ({ made, pages }) => {
	it('is sawn by what the paper says into the parts of the plan', () => {
		const sheets = sheetsOf(made);
		expect(sheets.length).toBeGreaterThan(0);
		for (const sheet of sheets) {
			const rows = cutRows(pages, sheetTitle(sheet.at));
			const numbers = rows.flatMap(([name = '']) => numbersIn(name));
			expect(numbers.sort((a, b) => a - b)).toEqual(sheet.layout.cuts.map((c) => c.n));
			expectSawn(sheet, rows);
		}
	});

	it('is sawn wrong where one fence figure on the paper is wrong', () => {
		const [sheet] = sheetsOf(made);
		const title = sheetTitle(sheet!.at);
		const [, fence] = cutRows(pages, title).find(([, text]) => /^\d/.test(text!))!;
		const wrong = pages.map((page) => ({
			...page,
			texts: page.texts.map((t) => (t.text === fence ? { ...t, text: `9${fence}` } : t)),
		}));
		expect(() => expectSawn(sheet!, cutRows(wrong, title))).toThrow(/found|to deeply equal/);
	});

	it('misses a hole that is listed and not drawn', () => {
		const page = pages.find((p) => textLines(p).some(({ text }) => isList(text)))!;
		const crosses = crossesOn(page);
		const noticed = crosses.filter((_, i) => {
			const rest = crosses.filter((_, k) => k !== i);
			return i % 4 === 0 && missingIn(page, rest, PATTERN).length > 0;
		});
		expect(noticed.length).toBeGreaterThan(0);
	});

	it('has every hole that it lists drawn at its ordinates, and lists every hole', () => {
		let listed = 0;
		for (const page of pages) {
			const crosses: Crosses = crossesOn(page);
			for (const list of textLines(page).flatMap(({ text }) => (isList(text) ? [text] : [])))
				listed += countOf(list);
			expect(missingIn(page, crosses, PATTERN)).toEqual([]);
		}
		expect(listed).toBe(fixed(made));
	});
});

const isList = (text: string): boolean => /^Holes \d+ to \d+ /.test(text);

function countOf(text: string): number {
	const [, from, to] = /^Holes (\d+) to (\d+) /.exec(text)!;
	return Number(to) - Number(from) + 1;
}

/** 1, 2, 3, 4 of '1–4 trim'. */
function numbersIn(name: string): number[] {
	const [, from, to] = /^(\d+)(?:–(\d+))? /.exec(name) ?? [];
	const [a, b] = [Number(from), Number(to ?? from)];
	return Array.from({ length: b - a + 1 }, (_, i) => a + i);
}

/** What is drilled in lists into panels: fixings, screws of devices, magnets. */
function fixed({ panels }: Plan): number {
	const counts = panels.map(({ detail: d }) => {
		if (!d) return 0;
		const screws = d.devices.reduce((sum, v) => sum + v.at.holes.length, 0);
		const magnets = d.covers.reduce((sum, c) => sum + c.magnets.length, 0);
		return (d.both ? 2 : 1) * ((d.fixings?.at.length ?? 0) + screws + magnets);
	});
	return counts.reduce((a, b) => a + b, 0);
}
