import { describe, expect, it } from 'vitest';
import { inches, mm } from '../../../src/lib/measure/length';
import type { OrderLine } from '../../../src/lib/estimate/types';
import type { Ruler } from '../../../src/lib/measure/ruler';
import { amountText, buyText } from '../../../src/lib/print/wording/amounts';
import { figuresOn, roundedNote, rulerName } from '../../../src/lib/print/wording/figures';
import { printPack } from '../../../src/lib/print/pack';
import type { Page } from '../../../src/lib/print/drawing/drawing';
import { samplePlan, SCREWS } from '../fixture';
import { wordsOn } from '../words-on';

const METRIC: Ruler = { unit: 'mm', fraction: 32, decimal: '.' };
const COMMA: Ruler = { unit: 'cm', fraction: 32, decimal: ',' };
const INCH: Ruler = { unit: 'in', fraction: 16, decimal: '.' };

const LINE: OrderLine = { ...SCREWS, buy: 2 };

describe('amounts of an order', () => {
	it('are said in the units of the ruler, singular when there is one', () => {
		expect(amountText({ number: 2.13, unit: 'm' }, METRIC)).toBe('2.13 m');
		expect(amountText({ number: 2.13, unit: 'm' }, COMMA)).toBe('2,13 m');
		expect(amountText({ number: 3.048, unit: 'm' }, INCH)).toBe('10 ft');
		expect(amountText({ number: 0.09290304, unit: 'm2' }, INCH)).toBe('1 ft²');
		expect(amountText({ number: 1, unit: 'sheets' }, METRIC)).toBe('1 sheet');
		expect(amountText({ number: 0, unit: 'packs' }, METRIC)).toBe('');
	});

	it('are bought in what the seller sells', () => {
		expect(buyText(LINE, METRIC)).toBe('2 packs of 200 pieces');
		expect(buyText({ ...LINE, buy: 1, unit: 'sheet', pack: 1 }, METRIC)).toBe('1 sheet');
		const packs = { ...LINE, pack: 1, need: { number: 0.1, unit: 'packs' as const } };
		expect(buyText({ ...packs, buy: 1 }, METRIC)).toBe('1 pack');
		expect(buyText({ ...LINE, buy: 0 }, METRIC)).toBe('none');
		const cloth = { ...LINE, group: 'cloth' as const, unit: 'step', buy: 7 };
		expect(buyText({ ...cloth, pack: mm(250) }, METRIC)).toBe('7 steps of 250 mm');
		expect(buyText({ ...cloth, pack: inches(18) }, INCH)).toBe('7 steps of 18 in');
		expect(buyText({ ...cloth, pack: mm(100) }, INCH)).toBe('7 steps of ≈ 3 15/16 in');
	});
});

describe('figures of a page', () => {
	it('remember whether any of them was rounded', () => {
		const figures = figuresOn(METRIC);
		expect(figures.size(mm(980), mm(395.2))).toBe('980 × 395.2');
		expect(figures.rounded).toBe(false);
		expect(figures.bench(mm(306.67))).toBe('306.7');
		expect(figures.rounded).toBe(true);
	});

	it('name the ruler and what was rounded to', () => {
		expect([METRIC, COMMA, INCH].map(rulerName)).toEqual([
			'millimetres',
			'centimetres',
			'inches to 1/16',
		]);
		expect(roundedNote(COMMA)).toBe('Figures rounded to 0,01 cm; the plan keeps them exact.');
		expect(roundedNote(INCH)).toBe('Figures rounded to 1/16 in; the plan keeps them exact.');
	});
});

describe('cautions', () => {
	const said = (page: Page) => wordsOn(page.marks);
	const withCaution = (about: string[]) => {
		const plan = samplePlan();
		const [boards] = plan.boards;
		const twice = {
			...boards!,
			answer: {
				...boards!.answer,
				layouts: [...boards!.answer.layouts, ...boards!.answer.layouts],
			},
			sources: [...boards!.sources, ...boards!.sources],
		};
		const caution = {
			id: 'kickback',
			title: 'Stand aside.',
			text: 'Short words.',
			source: 'common practice, no source',
			where: ['sheets' as const],
			about,
		};
		return printPack({ ...plan, boards: [twice], cautions: [caution] });
	};
	const IN_FULL = 'Summary · Cautions · Order';
	const pagesWith = (pages: readonly Page[]) =>
		pages.filter((p) => said(p).includes('Stand aside.')).map((p) => p.name);

	it('stand on the page that shows what they are about, and with their source among all cautions', () => {
		const pages = withCaution(['sheet:ply-18/1']);
		const first: unknown = expect.stringMatching(
			/Birch plywood 18, sheets 1 to 2 of 2( \(1 of \d+\))?$/,
		);
		expect(pagesWith(pages)).toEqual([IN_FULL, first]);
		const all = pages.find((p) => p.name === IN_FULL)!;
		expect(said(all)).toContain('common practice, no source');
	});

	it('about nothing in particular stand on the first page of their chapter', () => {
		const first: unknown = expect.stringMatching(/^Birch plywood 18, sheets 1 to 2 of 2/);
		expect(pagesWith(withCaution([]))).toEqual([IN_FULL, first]);
	});
});
