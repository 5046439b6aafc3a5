import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { money } from '../../../src/lib/measure/money';
import { plan, type Plan } from '../../../src/lib/plan';
import type { Page } from '../../../src/lib/print/drawing/drawing';
import { labelPages } from '../../../src/lib/print/lists/labels/label-pages';
import { validText } from '../../../src/lib/print/lists/quote-pages';
import { costPack, printPack, quotePack, templatePages } from '../../../src/lib/print/pack';
import { templateLength, templatesOf } from '../../../src/lib/print/templates/pages';
import { inchPlan, samplePlan } from '../fixture';
import { textsOff, textsOverTexts, wordsOn } from '../words-on';

/** Strokes that would be cut off at the edge of the paper. */
function overhang(page: Page): string[] {
	return page.marks.flatMap((mark) => {
		if (mark.kind !== 'path') return [];
		const out = mark.steps.some((step) => {
			const [, ...n] = step as readonly [string, ...number[]];
			return n.some((value, i) => value < 0 || value > (i % 2 === 0 ? page.width : page.height));
		});
		return out ? [`a stroke of ${mark.of ?? 'something'} leaves the page`] : [];
	});
}

function lawsOf(pages: readonly Page[]): string[] {
	return pages.flatMap((page) =>
		[...textsOverTexts(page.marks), ...textsOff(page, 4), ...overhang(page)].map(
			(text) => `${page.name}: ${text}`,
		),
	);
}

it('has a law that sees texts that touch, stray and overhang', () => {
	const at = { kind: 'text', text: 'Front baffle', size: 3.2 } as const;
	const page = { width: 210, height: 297, title: '', name: 'p' };
	const touching = {
		...page,
		marks: [
			{ ...at, x: 50, y: 50 },
			{ ...at, x: 60, y: 52 },
		],
	};
	expect(lawsOf([touching])).toHaveLength(1);
	expect(lawsOf([{ ...page, marks: [{ ...at, x: 200, y: 50 }] }])).toHaveLength(1);
	const steps = [['M', 1, 1] as const, ['L', 211, 1] as const];
	expect(lawsOf([{ ...page, marks: [{ kind: 'path', steps, line: 'wide' }] }])).toHaveLength(1);
	const apart = {
		...page,
		marks: [
			{ ...at, x: 50, y: 50 },
			{ ...at, x: 50, y: 54 },
		],
	};
	expect(lawsOf([apart])).toEqual([]);
});

const packsOf = (made: Plan): (readonly [string, Page[]])[] => [
	['bench', printPack(made)],
	['quote', quotePack(made)],
	['cost', costPack(made)],
];

/** Headings and what stands beside them. */
const headings = (pages: readonly Page[]): string[] =>
	pages.flatMap(({ marks }) =>
		marks.flatMap((m, i) => {
			if (m.kind !== 'text' || m.size !== 5 || m.weight !== 'semibold') return [];
			const beside = marks[i + 1];
			return beside?.kind === 'text' && beside.ink === 'pencil' ? [m.text, beside.text] : [m.text];
		}),
	);

function sample(name: string, change: (shop: Record<string, unknown>) => void = () => {}) {
	const url = new URL(`../../../shared/jobs/${name}.json`, import.meta.url);
	const file = JSON.parse(readFileSync(url, 'utf8')) as { shop?: Record<string, unknown> };
	change((file.shop ??= {}));
	return plan(file, { effort: 60, seed: 1 });
}

describe.each([
	['the hand-made plan', () => samplePlan()],
	['the hand-made plan in inches on Letter', () => inchPlan()],
	['the camper bench', () => sample('camper-bench')],
	[
		'the camper bench in inches on Letter',
		() =>
			sample('camper-bench', (shop) =>
				Object.assign(shop, { paper: 'letter', ruler: { unit: 'in', fraction: 64 } }),
			),
	],
	['the hatchback pair', () => sample('hatchback-pair')],
	['the cabinet list', () => sample('cabinet-list')],
	[
		'the cabinet list by router',
		() => sample('cabinet-list', (shop) => Object.assign(shop, { method: 'router' })),
	],
	['the empty job', () => sample('empty')],
] as [string, () => Plan | Promise<Plan>][])('%s', (_, make) => {
	let made: Plan;
	beforeAll(async () => {
		made = await make();
	});

	it('prints no text over another, and none off the page', () => {
		const ids = [...made.parts.map((p) => p.id), ...made.blanks.slice(0, 2).map((b) => b.id)];
		const pages = [
			...packsOf(made).flatMap(([, pack]) => pack),
			...labelPages(made),
			...templatePages(made, ids.slice(-4)),
		];
		expect(lawsOf(pages)).toEqual([]);
	});

	it('numbers its sheets through and names each page once', () => {
		for (const [name, pages] of packsOf(made)) {
			expect(new Set(pages.map((p) => p.name)).size).toBe(pages.length);
			pages.forEach((page, i) => {
				const numbered = wordsOn(page.marks).includes(`${i + 1} of ${pages.length}`);
				// A letter is no leaf of a pack.
				expect({ name, numbered }).toEqual({ name, numbered: name !== 'quote' });
			});
		}
	});

	it('prices nothing at the bench, and says nothing in two packs', () => {
		const [bench, quote, cost] = packsOf(made).map(([, pages]) => headings(pages));
		for (const said of bench!) expect(`${said}`).not.toMatch(/EUR|price/);
		expect(bench!.filter((h) => quote!.includes(h) || cost!.includes(h))).toEqual([]);
		expect(quote!.filter((h) => cost!.includes(h))).toEqual([]);
	});

	it('has every part in the list and every cut with its setting in a table', () => {
		const words = printPack(made).flatMap((p) => wordsOn(p.marks));
		for (const part of made.parts) expect(words).toContain(part.label);
		const cuts = made.boards.flatMap((b) => b.answer.layouts.flatMap((l) => l.cuts));
		const listed = words.filter((w) => /^\d+ (rip|crosscut|slant)$/.test(w));
		expect(listed).toHaveLength(cuts.filter((c) => c.kind !== 'trim').length);
		if (cuts.some((c) => c.kind === 'trim')) expect(words).toContain('skim');
	});
});

describe('what a page must say', () => {
	const words = (pages: readonly Page[]) => pages.flatMap((p) => wordsOn(p.marks));

	it('prints measured sizes, bevels and what is shown', () => {
		const all = words(printPack(samplePlan())).join('\n');
		expect(all).toContain('980 × 381.4'); // SHORT face
		expect(all).toContain('a: top edge tilt 21.8°, LONG outside');
		expect(all).toContain('no layout by saw needs fewer sheets');
		expect(all).toContain('● show');
		expect(all).toContain('GRAIN');
	});

	it('does not claim that fewer sheets are impossible when that is not proven', () => {
		const fixed = samplePlan();
		const boards = fixed.boards.map((b) => ({ ...b, answer: { ...b.answer, proven: false } }));
		const all = words(printPack({ ...fixed, boards })).join('\n');
		expect(all).not.toMatch(/no layout \S.* fewer/);
	});

	it('says which figures were rounded, and to what', () => {
		const note = 'Figures rounded to 1/32 in; the plan keeps them exact.';
		expect(words(printPack(inchPlan()))).toContain(note);
		// Without its tapered ends, whose rectangle for a pair is a rounded figure.
		const made = samplePlan();
		const plain = { ...made, parts: made.parts.map(({ outline: _, ...part }) => part) };
		expect(words(printPack(plain)).some((w) => w.startsWith('Figures rounded'))).toBe(false);
	});

	it('refuses a layout that failed its audit, in words', () => {
		const fixed = samplePlan();
		const faults = [{ where: 'sheet 1, B1', what: 'B1 overlaps F1 by 3 mm.' }];
		const pages = printPack({ ...fixed, boards: fixed.boards.map((b) => ({ ...b, faults })) });
		expect(words(pages)).toContain('B1 overlaps F1 by 3 mm.');
		expect(pages.some((p) => p.name.startsWith('Birch plywood 18, sheet'))).toBe(false);
		expect(pages.some((p) => p.name === 'Cutting list')).toBe(false);
	});

	it('refuses a roll that failed its audit, in words', async () => {
		const made = await sample('hatchback-pair');
		const faults = [{ where: 'roll 1, P1L', what: 'P1L lies off the roll by 4 mm.' }];
		const cloths = made.cloths.map((c) => ({
			...c,
			rolls: c.rolls.map((r) => ({ ...r, faults })),
		}));
		const pages = printPack({ ...made, cloths });
		expect(words(pages)).toContain('P1L lies off the roll by 4 mm.');
		expect(pages.flatMap((p) => p.marks).some((m) => m.of?.startsWith('blank:'))).toBe(true);
		expect(words(pages).some((w) => w.includes('off the roll, '))).toBe(false);
	});

	it('gives the length to pull beside what it would be without the nap', async () => {
		const all = words(printPack(await sample('camper-bench'))).join('\n');
		expect(all).toMatch(/pull 1750\s+·\s+[\d.]+ if the nap were ignored/);
	});

	it('hides the workings from the customer', () => {
		const quote = quotePack(samplePlan());
		expect(quote).toHaveLength(1);
		const said = words(quote).join('\n');
		expect(said).toContain('EUR 123.83');
		for (const secret of ['95.25', '28.58', 'markup', 'margin', 'Labour', 'Profit', '100 mm'])
			expect(said).not.toContain(secret);
	});

	it('gives the customer all a shop has to say, and nothing of what it leaves empty', () => {
		const made = samplePlan();
		const bare = words(quotePack(made)).join('\n');
		expect(bare).not.toMatch(/valid/);
		const shop = {
			...made.job.shop,
			address: '3 Sawdust Lane\nMarket Town',
			quote: { validDays: 30, terms: 'Half on order.' },
			tax: { percent: 20, labour: false },
		};
		const quote = { ...made.quote, taxed: money(4321) };
		const job = { ...made.job, date: '2026-11-20', shop };
		const said = words(quotePack({ ...made, job, quote }));
		for (const text of ['3 Sawdust Lane', 'Market Town', 'Half on order.', 'Accepted as quoted'])
			expect(said).toContain(text);
		expect(said).toContain('This quote is valid for 30 days, until 2026-12-20.');
		expect(said).toContain('Tax, 20 % of EUR 43.21');
	});

	it('reckons the last day of a quote by the calendar', () => {
		expect(validText(1, '2028-02-28')).toContain('for 1 day, until 2028-02-29.');
		expect(validText(30, '2026-12-15')).toContain('until 2027-01-14.');
		expect(validText(30, '15 May')).toBe('This quote is valid for 30 days from its date.');
		expect(validText(30, '2026-02-31')).toBe('This quote is valid for 30 days from its date.');
		expect(validText(30, '')).toBe('This quote is valid for 30 days.');
		expect(validText(null, '2026-12-15')).toBe('');
	});

	it("keeps what it costs to a paper that says it is the shop's", () => {
		const pages = costPack(samplePlan());
		expect(pages.length).toBeGreaterThan(0);
		for (const page of pages) expect(words([page]).join('\n')).toMatch(/shop only/);
	});

	it('prints the chapters that are chosen, in their order', () => {
		const made = samplePlan();
		const of = (pages: Plan['job']['pages']) => printPack({ ...made, job: { ...made.job, pages } });
		const chosen = of(['parts', 'sheets', 'parts']);
		const all = words(chosen);
		expect(all.indexOf('Parts')).toBeLessThan(all.findIndex((t) => t.startsWith('Sheet 1 of')));
		expect(all.indexOf('Parts')).toBeGreaterThan(-1);
		expect(all).not.toContain('In this pack');
		expect(words(of(undefined))).toContain('In this pack');
		// Without the chapter of the cautions they stand on the summary instead.
		expect(words(of(['summary'])).join(' ')).not.toContain('in full on page');
	});

	it('has a template of each part and blank with something to trace, and says how many pages before', async () => {
		const made = await sample('hatchback-pair');
		const pages = templatePages(made);
		expect(templateLength(made)).toBe(pages.length);
		const cloth = templatesOf(made).filter((t) => t.name.endsWith(', cloth'));
		expect(cloth.length).toBeGreaterThan(0);
		for (const { name } of cloth) {
			const [first] = pages.filter((p) => p.name.includes(`Template ${name}`));
			expect(words([first!]).join(' ')).toMatch(/BACK of the cloth: a mirror/);
		}
		expect(words(printPack(made)).join(' ')).toContain(`in templates.pdf, ${pages.length} pages`);
		expect(templateLength({ ...made, parts: [], blanks: [] })).toBe(0);
	});
});
