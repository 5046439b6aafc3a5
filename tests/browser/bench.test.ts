import { expect, test } from '@playwright/test';
import { figure, open } from './screen';

test('cuts are ticked one by one at the bench, and the ticks stay', async ({ page }) => {
	await open(page);
	await page.goto('bench');
	await expect(page.getByText(/^Cut 1 of/)).toBeVisible({ timeout: 30_000 });
	await page.getByRole('button', { name: 'Cut made' }).click();
	await expect(page.getByText(/^Cut 2 of/)).toBeVisible();
	await page.reload();
	await expect(page.getByText(/^Cut 2 of/)).toBeVisible({ timeout: 30_000 });
	await page.getByRole('button', { name: 'Take back the last tick' }).click();
	await expect(page.getByText(/^Cut 1 of/)).toBeVisible();
});

test('the first tick pins its sheet: a later edit plans round it', async ({ page }) => {
	await open(page, './#boards');
	const first = page.getByRole('checkbox', { name: 'Cut 1 made' }).first();
	await first.check();
	await expect(page.getByText('Pinned: later edits plan round it.').first()).toBeVisible();
	await expect(first).toBeChecked();
});

test('a sheet marked as cut hands its offcuts to the rack', async ({ page }) => {
	await open(page, 'rack');
	const offcuts = page.locator('[data-at^="stock/offcuts/"]:is(tr)');
	const before = await offcuts.count();
	await page.getByRole('link', { name: 'Job card' }).click();
	await page.getByRole('link', { name: 'Boards' }).click();
	const sheet = page
		.locator('section', { has: page.getByRole('heading', { name: /to buy/ }) })
		.first();
	await sheet.getByRole('button', { name: 'Mark sheet as cut' }).click();
	await expect(page.getByText('Cut. Its offcuts are on the rack.').first()).toBeVisible();
	await expect(figure(page, 'sheets')).toHaveText('0');
	await page.getByRole('link', { name: 'Rack' }).click();
	expect(await offcuts.count()).toBeGreaterThan(before);
});

test('keep looking can be ended, and keeps a whole plan', async ({ page }) => {
	await open(page, './#boards');
	await page.getByRole('button', { name: 'Keep looking' }).click();
	await page.getByRole('button', { name: 'Take the best so far' }).first().click();
	await expect(page.getByRole('button', { name: 'Keep looking' })).toBeVisible({ timeout: 20_000 });
	await expect(figure(page, 'sheets')).toHaveText(/^\d+$/);
});
