import { describe, expect, it } from 'vitest';
import { LABEL_SHEETS } from '../../../src/lib/job/shop/label-sheets';
import type { JobFile } from '../../../src/lib/job/job';
import { plan as planned, type Plan } from '../../../src/lib/plan';
import type { Mark } from '../../../src/lib/print/drawing/drawing';
import { placed } from '../../../src/lib/print/drawing/place';
import { overlap, round, textBox } from '../../../src/lib/print/drawing/text-box';
import { labelPages } from '../../../src/lib/print/lists/labels/label-pages';
import { figuresOn } from '../../../src/lib/print/wording/figures';
import { sample } from '../../plan/samples';
import { samplePlan } from '../fixture';
import { textsOff, textsOn, textsOverTexts, wordsOn } from '../words-on';

/** The labels of the sample when its pieces and offcuts come to so many; their codes, and words. */
function printed(all: number): { codes: number; left: string[] } {
	const plan = samplePlan({ shop: { labelEach: 10_000 } });
	const offcuts = plan.boards.flatMap((b) => b.answer.layouts.flatMap((l) => l.offcuts)).length;
	const [first, ...others] = plan.parts;
	const rest = others.reduce((sum, p) => sum + p.count, 0);
	const many = { ...first!, count: all - offcuts - rest };
	const pages = labelPages({ ...plan, blanks: [], parts: [many, ...others] }, 'a4-2x7');
	// Page by page: the codes of all of them at once fill the memory.
	const codes = pages.slice(1).map((p) => p.marks.filter((m) => m.kind === 'path').length);
	return {
		codes: codes.reduce((sum, n) => sum + n, 0),
		left: wordsOn(pages[0]!.marks).filter((t) => t.includes('left out')),
	};
}

describe('labels past what one printer is given', () => {
	it('of fewer nothing is said', () => {
		expect(printed(200)).toEqual({ codes: 200, left: [] });
	});

	it('the one past 3000 is left out, and the test page says so', () => {
		expect(printed(3001)).toEqual({
			codes: 3000,
			left: ['Only the first 3000 labels are here: 1 is left out.'],
		});
	});
});

describe('labels of pieces alike', () => {
	const words = (count: number, shop: JobFile['shop'] = {}): string[] => {
		const plan = samplePlan({ shop });
		const parts = [{ ...plan.parts[0]!, count }];
		const made = { ...plan, parts, blanks: [], boards: [], runs: [] };
		return labelPages(made, 'a4-2x7').flatMap((p) => wordsOn(p.marks));
	};
	const marked = (all: readonly string[]): string[] => all.filter((t) => /^\d.* of \d+$/.test(t));

	it('are one each up to a page of them, then one for the pile, and the test page says so', () => {
		expect(marked(words(24))).toEqual([...Array(24).keys()].map((i) => `${i + 1} of 24`));
		expect(words(24).join()).not.toContain('pile');
		expect(marked(words(25))).toEqual(['1 to 25 of 25']);
		expect(words(25)).toContain('Of more than 24 alike, one label is for their pile.');
	});

	it('are as many as the shop chooses', () => {
		expect(marked(words(3, { labelEach: 2 }))).toEqual(['1 to 3 of 3']);
		expect(marked(words(40, { labelEach: 40 }))).toHaveLength(40);
	});
});

describe.each(LABEL_SHEETS.map((s) => s.id))('on %s', (id) => {
	const sheet = LABEL_SHEETS.find((s) => s.id === id)!;
	const plan = samplePlan();
	const long = 'Outer cover of the lower left storage compartment behind the second seat row';
	const told = (made: Plan): { words: string[]; marks: readonly Mark[] }[] => {
		const pages = labelPages(made, id).slice(1);
		const each = sheet.columns * sheet.rows;
		return pages.flatMap((page) => {
			const drawn = page.marks; // drawn anew each time it is asked for
			return [...Array(each).keys()].flatMap((i) => {
				const x = sheet.left + (i % sheet.columns) * sheet.pitchX;
				const y = sheet.top + Math.floor(i / sheet.columns) * sheet.pitchY;
				const at = (px: number, py: number): boolean =>
					px >= x && px < x + sheet.pitchX && py >= y && py < y + sheet.pitchY;
				const marks = drawn.filter((m) =>
					m.kind !== 'path' ? at(m.x, m.y) : at(Number(m.steps[0]![1]), Number(m.steps[0]![2])),
				);
				const home = placed(marks, { x: -x, y: -y });
				return marks.length === 0 ? [] : [{ words: wordsOn(marks), marks: home }];
			});
		});
	};

	it('each blank has its cloth, size and a code that no part of its mark has', async () => {
		const plan = await planned(sample('camper-bench.json'), { effort: 1 });
		const blanks = plan.blanks.flatMap((b) => Array<typeof b>(b.count).fill(b));
		const parts = plan.parts.reduce((sum, p) => sum + p.count, 0);
		const labels = told(plan).slice(parts, parts + blanks.length);
		expect(blanks.length).toBeGreaterThan(3);
		blanks.forEach((blank, i) => {
			const all = labels[i]!.words.join(' ').replaceAll(' ·', '');
			const size = figuresOn(plan.job.shop.ruler).size(blank.length, blank.width);
			for (const word of [blank.label, size, `${plan.job.number}-${blank.label}-cloth`])
				expect(all).toContain(word);
		});
	});

	it('each part has its board, size, grain, bevels, job and a code of its own', () => {
		const pieces = plan.parts.flatMap((p) => Array<typeof p>(p.count).fill(p));
		const labels = told(plan);
		pieces.forEach((part, i) => {
			const all = labels[i]!.words.join(' ').replaceAll(' ·', '');
			const says = [
				part.label,
				part.name,
				`${plan.job.number}-${part.label}`,
				figuresOn(plan.job.shop.ruler).size(part.length, part.width),
				...(part.short ? ['LONG face'] : []),
				...part.bevels.map((b) => `${b.tilt.toFixed(1)}°`),
				...(part.grain === 'length' ? ['grain along'] : []),
				...(part.show ? ['● show face'] : []),
				`${plan.job.number} ${plan.job.name}`,
				', 17.6',
			];
			for (const say of says.filter((t) => t !== ', 17.6' || part.material === 'ply-18'))
				expect(all, `${part.label}: ${all}`).toContain(say);
		});
	});

	it('no word leaves its label, lies over another or over its code, however long its name', async () => {
		const parts = plan.parts.map((p) => ({ ...p, name: long, label: `${p.label}.128L` }));
		for (const made of [
			plan,
			{ ...plan, parts },
			await planned(sample('camper-bench.json'), { effort: 1 }),
		])
			for (const { marks, words } of told(made)) {
				expect(
					textsOff({ width: sheet.width, height: sheet.height, marks }, 0.5),
					words.join(' '),
				).toEqual([]);
				expect(textsOverTexts(marks)).toEqual([]);
				const code = marks.find((m) => m.kind === 'path');
				const spots =
					code?.kind === 'path'
						? code.steps.flatMap((s) =>
								s[0] === 'M' || s[0] === 'L' ? [{ x: s[1], y: s[2] }] : [],
							)
						: [];
				const square = round(spots);
				const over = textsOn(marks).filter((t) => overlap(textBox(t), square));
				expect(over.map((t) => t.text)).toEqual([]);
			}
	});
});

it('200 parts have 200 codes', () => {
	const plan = samplePlan();
	const [first] = plan.parts;
	const parts = [...Array(200).keys()].map((i) => ({
		...first!,
		count: 1,
		id: `p${i}`,
		// Two of them carry one mark.
		label: `X${Math.max(1, i)}`,
	}));
	const words = labelPages({ ...plan, parts, boards: [] }, 'a4-3x7').flatMap((p) =>
		wordsOn(p.marks),
	);
	const codes = new Set(words.filter((t) => t.startsWith(`${plan.job.number}-`)));
	expect(codes.size).toBe(200);
});
