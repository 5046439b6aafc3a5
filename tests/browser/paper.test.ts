import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { open, planned } from './screen';

test('the print pack comes as a PDF of the job on the screen', async ({ page }) => {
	await open(page, './#print');
	const saved = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Print pack' }).click();
	const file = await saved;
	expect(file.suggestedFilename()).toBe('camper-van-rear-bench-print-pack.pdf');
	const bytes = await readFile(await file.path());
	expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
	expect(bytes.length).toBeGreaterThan(50_000);
});

test('the order list comes as a table', async ({ page }) => {
	await open(page, './#print');
	const saved = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Order list' }).click();
	const text = await readFile(await (await saved).path(), 'utf8');
	expect(text.split('\n')[0]).toContain('to buy');
});

test('a job saved as a file opens again as it was', async ({ page }) => {
	await open(page);
	const saved = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Save file' }).first().click();
	const path = await (await saved).path();
	const job = JSON.parse(await readFile(path, 'utf8')) as { name: string };
	expect(job.name).toBe('Camper van, rear bench');
	await page.getByRole('link', { name: 'Jobs' }).click();
	// The card has file fields too: wait until it has gone.
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Jobs');
	await page
		.locator('input[type=file]')
		.first()
		.setInputFiles({
			name: 'again.json',
			mimeType: 'application/json',
			buffer: Buffer.from(JSON.stringify({ ...job, name: 'Opened again' })),
		});
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Opened again');
	await planned(page);
});

test('a torn file is refused in words and the open job stays', async ({ page }) => {
	await open(page, 'jobs');
	await page
		.locator('input[type=file]')
		.first()
		.setInputFiles({
			name: 'torn.json',
			mimeType: 'application/json',
			buffer: Buffer.from('{"name": "Torn'),
		});
	await expect(page.getByRole('main').getByRole('alert').first()).toContainText('torn.json');
	await page.getByRole('link', { name: 'Job card' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Camper van, rear bench');
});

test('after one visit everything works without a network, printing too', async ({
	page,
	context,
}) => {
	await open(page);
	await page.evaluate(async () => {
		await navigator.serviceWorker.ready;
	});
	await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
	await context.setOffline(true);
	await page.reload();
	await planned(page);
	for (const name of ['Rack', 'Shop', 'Jobs', 'Job card']) {
		await page.getByRole('link', { name, exact: true }).click();
		await expect(page.locator('main h1')).toBeVisible();
	}
	await page.getByRole('link', { name: 'Print' }).click();
	const saved = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Print pack' }).click();
	expect((await saved).suggestedFilename()).toContain('print-pack.pdf');
});
