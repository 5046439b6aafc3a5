import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { goTo, goToCard, heading, open, planned, turnTo } from './screen';

test('papers of the job on the screen: a PDF, a table, pages printed by the browser', async ({
	page,
}) => {
	await page.addInitScript(() => {
		const told: { prints: number } = { prints: 0 };
		Object.assign(window, { told, print: () => told.prints++ });
	});
	await open(page, './#print');
	await test.step('the bench pack comes as a PDF', async () => {
		const saved = page.waitForEvent('download');
		await page.getByRole('button', { name: 'Bench pack' }).click();
		const file = await saved;
		expect(file.suggestedFilename()).toBe('camper-van-rear-bench-print-pack.pdf');
		const bytes = await readFile(await file.path());
		expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
		expect(bytes.length).toBeGreaterThan(50_000);
	});
	await test.step('the order list comes as a table', async () => {
		const saved = page.waitForEvent('download');
		await page.getByRole('button', { name: 'Order list' }).click();
		const text = await readFile(await (await saved).path(), 'utf8');
		expect(text.split('\n')[0]).toContain('to buy');
	});
	await test.step('the pages of the paper that is looked at are printed, by key and by the menu', async () => {
		await page.keyboard.press('Control+p');
		await expect.poll(() => page.evaluate('told.prints')).toBe(1);
		// As the menu of the browser does: nothing but `beforeprint` is told of it.
		const printed = async () => {
			const pdf = await getDocument({
				data: new Uint8Array(await page.pdf({ preferCSSPageSize: true })),
			}).promise;
			const first = await pdf.getPage(1);
			const { items } = await first.getTextContent();
			return {
				of: pdf.numPages,
				size: first.view.slice(2).map((n) => Math.round((n * 254) / 72) / 10),
				said: items.map((i) => ('str' in i ? i.str : '')).join(' '),
			};
		};
		const list = page.getByRole('list', { name: 'Pages' });
		await expect(list.getByRole('listitem').first()).toContainText('Summary');
		const bench = await printed();
		expect(bench.said).toContain(`1 of ${bench.of}`);
		expect(bench.size[0]).toBeCloseTo(210, 0);
		expect(bench.size[1]).toBeCloseTo(297, 0);
		await page.getByLabel('Paper shown').selectOption('quote');
		await page.keyboard.press('Control+p');
		await expect.poll(() => page.evaluate('told.prints')).toBe(2);
		const quote = await printed();
		expect(quote.said).toContain('Quote');
		expect(quote.of).toBeLessThan(4);
	});
});

test('a job saved as a file opens again as it was; a torn file is refused in words', async ({
	page,
}) => {
	await open(page);
	const saved = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Save file' }).first().click();
	const path = await (await saved).path();
	const job = JSON.parse(await readFile(path, 'utf8')) as { name: string };
	expect(job.name).toBe('Camper van, rear bench');
	await goTo(page, 'Jobs');
	await test.step('a torn file is refused, and the open job stays', async () => {
		await page.getByLabel('Open a file').setInputFiles({
			name: 'torn.json',
			mimeType: 'application/json',
			buffer: Buffer.from('{"name": "Torn'),
		});
		await expect(page.getByRole('main').getByRole('alert').first()).toContainText('torn.json');
		await goToCard(page);
		await expect(heading(page, 'Camper van, rear bench')).toBeVisible();
	});
	await goTo(page, 'Jobs');
	await page.getByLabel('Open a file').setInputFiles({
		name: 'again.json',
		mimeType: 'application/json',
		buffer: Buffer.from(JSON.stringify({ ...job, name: 'Opened again' })),
	});
	await expect(heading(page, 'Opened again')).toBeVisible();
	await planned(page);
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
