import { expect, test } from '@playwright/test';
import { atCut, figure, goTo, goToCard, open, openBench, planned, turnTo } from './screen';

test('cuts are ticked one by one at the bench, and the ticks stay', async ({ page }) => {
	await open(page);
	await openBench(page);
	await page.getByRole('button', { name: 'Cut made' }).click();
	await atCut(page, 2);
	await page.reload();
	await atCut(page, 2);
	await page.getByRole('button', { name: 'Take back the last tick' }).click();
	await atCut(page, 1);
});

test('the first tick pins its sheet: a later edit plans round it', async ({ page }) => {
	await open(page, './#boards');
	const first = page.getByRole('checkbox', { name: 'Cut 1 made' }).first();
	await first.check();
	await expect(page.getByText('Pinned: later edits plan round it.').first()).toBeVisible();
	await planned(page);
	await expect(first).toBeChecked();
});

test('a sheet marked as cut hands its offcuts to the rack', async ({ page }) => {
	await open(page, 'rack');
	const offcuts = page.locator('[data-at^="stock/offcuts/"]:is(tr)');
	const before = await offcuts.count();
	await goToCard(page);
	await turnTo(page, 'boards');
	const sheet = page
		.locator('section', { has: page.getByRole('heading', { name: /to buy/ }) })
		.first();
	await sheet.getByRole('button', { name: 'Mark sheet as cut' }).click();
	await expect(page.getByText('Cut. Its offcuts are on the rack.').first()).toBeVisible();
	await expect(figure(page, 'sheets')).toHaveText('0');
	await goTo(page, 'Rack');
	await expect.poll(() => offcuts.count()).toBeGreaterThan(before);
});

test('keep looking can be ended, and keeps a whole plan', async ({ page }) => {
	await open(page, './#boards');
	await page.getByRole('button', { name: 'Keep looking' }).click();
	await page.getByRole('button', { name: 'Take the best so far' }).first().click();
	await expect(page.getByRole('button', { name: 'Keep looking' })).toBeVisible();
	await planned(page);
	await expect(figure(page, 'sheets')).toHaveText(/^\d+$/);
});
