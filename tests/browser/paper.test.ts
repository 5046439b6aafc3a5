import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { goTo, goToCard, heading, open, planned, turnTo } from './screen';

test('the print pack comes as a PDF of the job on the screen', async ({ page }) => {
	await open(page, './#print');
	const saved = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Bench pack' }).click();
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
	await goTo(page, 'Jobs');
	await page.getByLabel('Open a file').setInputFiles({
		name: 'again.json',
		mimeType: 'application/json',
		buffer: Buffer.from(JSON.stringify({ ...job, name: 'Opened again' })),
	});
	await expect(heading(page, 'Opened again')).toBeVisible();
	await planned(page);
});

test('a torn file is refused in words and the open job stays', async ({ page }) => {
	await open(page, 'jobs');
	await page.getByLabel('Open a file').setInputFiles({
		name: 'torn.json',
		mimeType: 'application/json',
		buffer: Buffer.from('{"name": "Torn'),
	});
	await expect(page.getByRole('main').getByRole('alert').first()).toContainText('torn.json');
	await goToCard(page);
	await expect(heading(page, 'Camper van, rear bench')).toBeVisible();
});

test.describe('with the app kept in the browser', () => {
	test.use({ serviceWorkers: 'allow' });

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
		for (const name of ['Rack', 'Shop', 'Jobs'] as const) await goTo(page, name);
		await goToCard(page);
		await turnTo(page, 'print');
		const saved = page.waitForEvent('download');
		await page.getByRole('button', { name: 'Bench pack' }).click();
		expect((await saved).suggestedFilename()).toContain('print-pack.pdf');
	});
});
