import { describe, expect, it } from 'vitest';
import { pathText } from '../../../src/lib/job/problems/problem';
import { plan } from '../../../src/lib/plan';
import { printPack } from '../../../src/lib/print/pack';
import { writePdf } from '../../../src/lib/print/pens/pdf';
import { forPaper, unprintable } from '../../../src/lib/print/drawing/unprintable';
import { FONTS } from '../fixture';
import { readPdf } from '../pdf-reader';

/** Names as customers have them; the letters that are the trap of each script are among them. */
const NAMES = {
	Greek: 'Ἀχιλλεύς Γεωργίου',
	Cyrillic: 'Олександр Ґудзь, Ёлкин',
	Vietnamese: 'Nguyễn Thị Ngọc Ánh',
	'Latin with marks': 'Łukasz Ğüneş Þórður Čičvarić Ōtani Ħal',
} as const;

/** The printed text, letters joined: a reader may part a line where the face changes. */
async function printed(customer: string): Promise<string> {
	const file = { customer, name: 'Job', parts: [] };
	const pages = printPack(forPaper(await plan(file), file));
	const pdf = await readPdf(
		writePdf(pages, FONTS, { title: 'T', author: 'A', date: '2026-01-01' }),
	);
	return pdf.pages
		.flatMap((page) => page.texts.map((t) => t.text))
		.join('')
		.replaceAll(' ', '');
}

describe('a name', () => {
	it.each(Object.entries(NAMES))('in %s letters prints as it is', async (_, name) => {
		expect(unprintable({ customer: name })).toEqual([]);
		expect(await printed(name)).toContain(name.normalize('NFC').replaceAll(' ', ''));
	});

	it('in letters no face has prints as boxes, and the page says so', async () => {
		const text = await printed('山田 Audio');
		expect(text).toContain('□□Audio');
		expect(text).toContain('Thistextholds2lettersthatnoprintedfacehas');
	});
});

describe('what cannot be printed', () => {
	it('is named by its place in the file, and never a drawing or a box that was typed', () => {
		const file = {
			name: 'Ok □',
			parts: [{ name: 'a' }, { name: '棚板', note: '👩🏽‍🔧' }],
			panels: [{ opening: { kind: 'svg', text: '<svg>漢</svg>' } }],
		};
		const problems = unprintable(file);
		expect(problems.map((p) => pathText(p.path))).toEqual(['parts[1].name', 'parts[1].note']);
		expect(problems[0]!.what).toContain('2 letters');
		expect(problems.every((p) => p.kind === 'check')).toBe(true);
		expect(unprintable(null)).toEqual([]);
	});
});
