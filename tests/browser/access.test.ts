import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { arrived, CHAPTERS, open, openBench, PAGES, planned } from './screen';

const PLACES = [...CHAPTERS.map((c) => `./#${c}`), ...PAGES];

/** Every fold of the page opened: what is folded away is looked at as well. */
async function unfold(page: Page): Promise<void> {
	await page.evaluate(() => {
		for (const fold of document.querySelectorAll('details')) fold.open = true;
	});
}

/** What axe finds. The window is made as tall as the page: what the title block hides for a moment scrolls free of it. */
async function faults(page: Page): Promise<string[]> {
	const height = await page.evaluate(() => document.documentElement.scrollHeight);
	await page.setViewportSize({ width: page.viewportSize()!.width, height: height + 200 });
	const { violations } = await new AxeBuilder({ page })
		.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
		.analyze();
	return violations.flatMap((v) =>
		v.nodes.map((n) => `${v.id}: ${n.target.join(' ')} ${n.failureSummary ?? ''}`),
	);
}

for (const colorScheme of ['light', 'dark'] as const) {
	test.describe(`on ${colorScheme} paper`, () => {
		test.use({ colorScheme });
		for (const place of PLACES) {
			test(`${place} can be read and worked by anybody`, async ({ page }) => {
				test.slow(); // every form of the job unfolded is a long page to judge
				await open(page, place);
				await unfold(page);
				expect(await faults(page)).toEqual([]);
			});
		}
	});
}

test('the bench can be read by anybody', async ({ page }) => {
	await open(page);
	await openBench(page);
	expect(await faults(page)).toEqual([]);
});

for (const width of [390, 320]) {
	test.describe(`${width} pixels wide, under a finger`, () => {
		test.use({ viewport: { width, height: 760 }, hasTouch: true });
		for (const place of [...PLACES, 'bench']) {
			test(`${place} never scrolls sideways`, async ({ page }) => {
				if (place === 'bench') await openBench(page);
				else {
					await open(page, place);
					await unfold(page);
				}
				const over = await page.evaluate(
					() => document.documentElement.scrollWidth - document.documentElement.clientWidth,
				);
				expect(over).toBe(0);
			});
		}
	});
}

test('the keyboard alone goes from a size to the printed pack', async ({ page }) => {
	await open(page);
	await page.keyboard.press('Tab');
	await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();
	await page.keyboard.press('Enter');
	const height = page.locator('[data-at="boxes/0/shape/height"] input');
	await tabTo(page, height);
	await page.keyboard.press('Control+a');
	await page.keyboard.type('355');
	await expect(page.getByRole('row', { name: /^Outside/ }).first()).toContainText('355');
	await page.goto('./#print');
	await arrived(page, 'print');
	await planned(page);
	const print = page.getByRole('button', { name: 'Print pack' });
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
