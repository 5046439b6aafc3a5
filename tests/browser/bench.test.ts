import { expect, test, type Page } from '@playwright/test';
import {
	atCut,
	figure,
	goTo,
	goToBench,
	goToCard,
	heading,
	open,
	planned,
	turnTo,
	fieldOf,
} from './screen';

test('cuts are ticked at the bench and on the card; a ticked sheet is pinned', async ({ page }) => {
	await open(page, './#boards');
	await goToBench(page);
	await test.step('cuts are ticked one by one at the bench, and the ticks stay', async () => {
		const setting = page.getByRole('heading', { level: 1 });
		for (const width of [1440, 834, 390]) {
			await page.setViewportSize({ width, height: 900 });
			const fits = (h: Element) => {
				const lines = h.clientHeight / parseFloat(getComputedStyle(h).fontSize);
				return lines < 1.5 && h.scrollWidth <= h.clientWidth;
			};
			await expect.poll(() => setting.evaluate(fits), `in one line, ${width} wide`).toBe(true);
		}
		await page.getByRole('button', { name: 'Cut made' }).click();
		await atCut(page, 2);
		await page.reload();
		await atCut(page, 2);
		await page.getByRole('button', { name: 'Take back the last tick' }).click();
		await atCut(page, 1);
	});
	await page.getByRole('link', { name: 'Leave the bench' }).click();
	await turnTo(page, 'boards');
	await test.step('the first tick pins its sheet: a later edit plans round it', async () => {
		const first = page.getByRole('checkbox', { name: 'Cut 1 made' }).first();
		await first.check();
		await expect(page.getByText('Pinned: later edits plan round it.').first()).toBeVisible();
		await planned(page);
		await expect(first).toBeChecked();
	});
});

test('a sheet marked as cut hands its offcuts to the rack', async ({ page }) => {
	await open(page, 'rack');
	const offcuts = page.locator('[data-at^="stock/offcuts/"]:is(tr)');
	const before = await offcuts.count();
	await goToCard(page);
	await turnTo(page, 'boards');
	const bought = page.getByRole('heading', { name: /to buy/ });
	for (const link of await page
		.getByRole('navigation', { name: 'Sheets' })
		.getByRole('link')
		.all()) {
		await link.click();
		await expect(link).toHaveAttribute('aria-current', 'true');
		if ((await bought.count()) > 0) break;
	}
	const sheet = page.locator('section', { has: bought }).first();
	await sheet.getByRole('button', { name: 'Mark sheet as cut' }).click();
	await expect(page.getByText('Cut. Its offcuts are on the rack.').first()).toBeVisible();
	await expect(figure(page, 'sheets')).toHaveText('0');
	await goTo(page, 'Rack');
	await expect.poll(() => offcuts.count()).toBeGreaterThan(before);
});

/** Enough parts of enough sizes that a search has work to do. */
const PARTS = Array.from({ length: 24 }, (_, i) => ({
	id: `P${i + 1}`,
	material: 'ply',
	length: 310 + 37 * (i % 11),
	width: 170 + 53 * (i % 7),
	count: 3,
}));
const HARD = {
	name: 'Many parts',
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
		sheets: [{ id: 's', material: 'ply', length: 2440, width: 1220, price: 80 }],
	},
	parts: PARTS,
};

async function openHard(page: Page, more: object): Promise<void> {
	await open(page, 'jobs');
	await page.getByLabel('Open a file').setInputFiles({
		name: 'hard.json',
		mimeType: 'application/json',
		buffer: Buffer.from(JSON.stringify({ ...HARD, ...more })),
	});
	await expect(heading(page, 'Many parts')).toBeVisible();
	await turnTo(page, 'boards');
	await planned(page);
}

test('what was found by looking longer outlives an edit and a reload; a look can be ended', async ({
	page,
}) => {
	await openHard(page, { seed: 3, look: { effort: 10_000 } });
	const said = page.getByText('Looked 10 times as long as usual. What was found is kept');
	await expect(said).toBeVisible();
	const sheets = (await figure(page, 'sheets').textContent())!;
	await turnTo(page, 'build');
	await (await fieldOf(page, 'name')).fill('Many parts, again');
	await turnTo(page, 'boards');
	await planned(page);
	await expect(said).toBeVisible();
	await expect(figure(page, 'sheets')).toHaveText(sheets);
	await page.reload();
	await planned(page);
	await expect(said).toBeVisible();
	await expect(figure(page, 'sheets')).toHaveText(sheets);
	await page.getByRole('button', { name: 'Back to the usual search' }).click();
	await expect(said).toHaveCount(0);

	await test.step('keep looking can be ended, and keeps a whole plan', async () => {
		await page.getByRole('button', { name: 'Keep looking' }).click();
		// The search may be over before a slow machine gets to the button: then there is nothing to
		// end.
		const end = page.getByRole('main').getByRole('button', { name: 'Take the best so far' });
		await end.click({ timeout: 2000 }).catch(() => undefined);
		await planned(page);
		await expect(page.getByText(/kept with the job|nothing better was found/)).toBeVisible();
		await expect(figure(page, 'sheets')).toHaveText(/^[1-9]\d*$/);
		await expect(figure(page, 'problems')).toHaveText('0');
	});
});
