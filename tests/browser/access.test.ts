import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { arrived, field, CHAPTERS, goTo, goToBench, open, PAGES, planned } from './screen';

/** A place of the app, and the way there: only the first opens the app anew. */
type Place = readonly [name: string, come: (page: Page) => Promise<void>];
const OF_THE_CARD = CHAPTERS.map((chapter): Place => [
	chapter,
	(page) => open(page, `./#${chapter}`),
]);
const BESIDE_IT: readonly Place[] = [
	...PAGES.map((name): Place => [name, (page) => goTo(page, name)]),
	['Bench', (page) => goToBench(page)],
];

/** Looked at together: the chapters are one page; then each page of its own. */
const TOURS = [
	['the chapters of the job card', OF_THE_CARD],
	['the pages beside it', BESIDE_IT],
] as const;

/** Comes to a place and opens every fold of it: what is folded away is looked at as well. */
async function unfold(page: Page, [name, come]: Place): Promise<void> {
	await come(page);
	if (name === 'Bench') return;
	await page.evaluate(() => {
		for (const fold of document.querySelectorAll('details')) fold.open = true;
	});
}

/**
 * Makes the window as tall as the page: what the title block hides for a moment scrolls free of it.
 */
async function unroll(page: Page): Promise<void> {
	const { width } = page.viewportSize()!;
	const height = await page.evaluate(() => document.documentElement.scrollHeight);
	await page.setViewportSize({ width, height: height + 200 });
}

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
/** Of these rules, those that colours decide: nothing else differs from light paper to dark. */
const OF_COLOUR = ['color-contrast', 'link-in-text-block'];

type Rules = NonNullable<Parameters<AxeBuilder['options']>[0]['runOnly']>;
const PAPERS: readonly (readonly ['light' | 'dark', Rules])[] = [
	['light', { type: 'tag', values: TAGS }],
	['dark', { type: 'rule', values: OF_COLOUR }],
];

/** What axe finds. */
async function faults(page: Page, runOnly: Rules): Promise<string[]> {
	const { violations } = await new AxeBuilder({ page })
		// Only faults are told in full: naming each of the thousands of sound spots took longer
		// than looking at them.
		.options({ runOnly, resultTypes: ['violations'] })
		// Judged in the page itself, not sent to another one first: there is no frame from
		// elsewhere in it.
		.setLegacyMode(true)
		.analyze();
	return violations.flatMap((v) =>
		v.nodes.map((n) => `${v.id}: ${n.target.join(' ')} ${n.failureSummary ?? ''}`),
	);
}

for (const [name, places] of TOURS) {
	test(`${name} can be read and worked by anybody, on light paper and on dark`, async ({
		page,
	}) => {
		test.slow(); // every form of the job unfolded is a long page to judge
		const size = page.viewportSize()!;
		await open(page);
		for (const place of places) {
			await unfold(page, place);
			await unroll(page);
			for (const [colorScheme, rules] of PAPERS) {
				await page.emulateMedia({ colorScheme });
				expect.soft(await faults(page, rules), `${place[0]} on ${colorScheme} paper`).toEqual([]);
			}
			await page.setViewportSize(size);
		}
	});
}

test.describe('under a finger', () => {
	test.use({ viewport: { width: 390, height: 760 }, hasTouch: true });
	test('no chapter and no page scrolls sideways, 390 pixels wide and 320', async ({ page }) => {
		await open(page);
		for (const place of [...OF_THE_CARD, ...BESIDE_IT]) {
			await unfold(page, place);
			for (const width of [390, 320]) {
				await page.setViewportSize({ width, height: 760 });
				const over = await page.evaluate(
					() => document.documentElement.scrollWidth - document.documentElement.clientWidth,
				);
				expect.soft(over, `${place[0]} at ${width} pixels`).toBe(0);
			}
			await page.setViewportSize({ width: 390, height: 760 });
		}
	});
});

test('the keyboard alone goes from a size to the printed pack', async ({ page }) => {
	await open(page);
	await page.keyboard.press('Tab');
	await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();
	await page.keyboard.press('Enter');
	const height = page.locator('[data-measure="boxes/0/shape/height"]');
	await tabTo(page, height);
	await page.keyboard.press('Control+a');
	await page.keyboard.type('355');
	await expect(field(page, 'boxes/0/shape/height')).toHaveValue('355');
	await page.goto('./#print');
	await arrived(page, 'print');
	await planned(page);
	const print = page.getByRole('button', { name: 'Bench pack' });
	await expect(print).toBeEnabled();
	await tabTo(page, print);
	const saved = page.waitForEvent('download');
	await page.keyboard.press('Enter');
	expect((await saved).suggestedFilename()).toContain('.pdf');
});

async function tabTo(page: Page, goal: ReturnType<Page['locator']>): Promise<void> {
	for (let i = 0; i < 80; i++) {
		if (await goal.evaluate((e) => e === document.activeElement)) return;
		await page.keyboard.press('Tab');
	}
	throw new Error('the keyboard did not reach it within 80 steps');
}
