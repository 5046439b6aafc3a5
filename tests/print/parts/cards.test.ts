import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { designAll } from '../../../src/lib/design/design-all';
import { placesIn } from '../../../src/lib/job/problems/places';
import { readJob } from '../../../src/lib/job/reading/read';
import { clipped } from '../../../src/lib/print/drawing/clip';
import type { Drawing, TextMark } from '../../../src/lib/print/drawing/drawing';
import { textBox } from '../../../src/lib/print/drawing/text-box';
import { partDrawings } from '../../../src/lib/print/parts/part-drawings';
import { figuresOn } from '../../../src/lib/print/wording/figures';
import { textsOff, textsOn, textsOverTexts } from '../words-on';
import { linesOf } from './bench-from-words';

const FILES = readdirSync('shared/jobs').filter((f) => f.endsWith('.json'));

describe.each(FILES)('%s', (file) => {
	const { job } = readJob(JSON.parse(readFileSync(`shared/jobs/${file}`, 'utf8')));
	const designed = designAll(job, placesIn({}));
	const cards = (unit: 'mm' | 'in'): Drawing[] =>
		partDrawings(job, designed.parts, designed, figuresOn({ unit, fraction: 32, decimal: '.' }));

	it('prints no word of a card over another, over a line or off it', () => {
		for (const card of [...cards('mm'), ...cards('in')]) {
			expect(card.fault).toBeUndefined();
			expect([...textsOff(card), ...textsOverTexts(card.marks)], card.title).toEqual([]);
			expect(textsOnLines(card), card.title).toEqual([]);
		}
	});

	it('has a number on the drawing for each that is told of', () => {
		for (const card of cards('mm')) {
			const told = linesOf(card).lines.flatMap((line) => {
				const [, from, to] =
					/^(?:Holes?|Cut out|Rout|Rabbet|Mark) (\d+)(?: to (\d+))?/.exec(line) ?? [];
				if (from === undefined) return [];
				const n = Number(to ?? from) - Number(from) + 1;
				return [...Array(n).keys()].map((i) => `${Number(from) + i}`);
			});
			const drawn = textsOn(card.marks).map((m) => m.text);
			expect(
				told.filter((n) => !drawn.includes(n)),
				card.title,
			).toEqual([]);
		}
	});

	it('says nothing in millimetres where the ruler is in inches', () => {
		for (const card of cards('in'))
			expect(linesOf(card).lines.filter((line) => /\d ?(mm|cm)\b/.test(line))).toEqual([]);
	});
});

/** Numbers, letters and the grain, through which a line of the drawing runs. */
function textsOnLines({ marks }: Drawing): string[] {
	const called = (m: TextMark): boolean =>
		(m.weight === 'semibold' && m.size < 3.2) || m.text.includes('GRAIN');
	const lines = marks.filter((m) => m.kind === 'path' && m.line !== undefined && m.line !== 'hair');
	return textsOn(marks)
		.filter(called)
		.filter((m) => lines.some((l) => l.kind === 'path' && clipped(l.steps, textBox(m)).length > 0))
		.map((m) => m.text);
}
