import { expect, type Page, test } from '@playwright/test';
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
	await test.step('photographs are added upright and bare, what is none is refused in words', async () => {
		await page.locator('a[href="#build/photographs"]').click();
		await page.getByLabel('as built').first().check();
		const turned = turnedJpeg(await drawnJpeg(page));
		await page.getByLabel('Choose photographs').setInputFiles(
			[
				{ name: 'rear.jpg', buffer: turned },
				{ name: 'again.jpg', buffer: turned },
				{ name: 'card.jpg', buffer: Buffer.from('%PDF-1.7') },
				{ name: 'torn.jpg', buffer: turned.subarray(0, -400) },
				{ name: 'phone.heic', buffer: Buffer.from('\0\0\0\x18ftypheic\0\0\0\0heic') },
			].map((file) => ({ ...file, mimeType: 'image/jpeg' })),
		);
		await expect(
			page.getByRole('status').filter({ hasText: 'One photograph added' }),
		).toBeVisible();
		const refused = page.getByRole('alert');
		for (const said of [
			'again.jpg: this very',
			'card.jpg: This is a PDF',
			'torn.jpg: The picture is torn',
		])
			await expect(refused.filter({ hasText: said })).toBeVisible();
		await expect(refused.filter({ hasText: 'phone.heic' })).toBeVisible();
		// Drawn lying, held upright: 40 wide and 60 high.
		const shown = page.getByRole('img', { name: 'Photograph 1' });
		await expect
			.poll(() => shown.evaluate((i: HTMLImageElement) => [i.naturalWidth, i.naturalHeight]))
			.toEqual([40, 60]);
		await page.getByLabel('What it shows').fill('Behind the trim');
		await page.getByRole('button', { name: 'Take out photograph 1' }).click();
		await expect(page.getByRole('img', { name: 'Behind the trim' })).toBeHidden();
		await page.getByRole('button', { name: 'Undo' }).first().click();
		await expect(page.getByRole('img', { name: 'Behind the trim' })).toBeVisible();
	});
	await test.step('they go along with the file, and stand on the card', async () => {
		const saved = page.waitForEvent('download');
		await page.getByRole('button', { name: 'Save file' }).first().click();
		const text = await readFile(await (await saved).path(), 'utf8');
		const { photographs, pictures } = JSON.parse(text) as {
			photographs: { picture: string; kind: string }[];
			pictures: Record<string, string>;
		};
		expect(photographs).toMatchObject([{ kind: 'built', width: 40, height: 60 }]);
		const bytes = Buffer.from(pictures[photographs[0]!.picture]!, 'base64');
		expect(bytes.includes('Exif')).toBe(false);
		await planned(page);
		await turnTo(page, 'print');
		await page.getByLabel('Paper shown').selectOption('handover');
		await expect(page.locator('svg image')).toHaveCount(1);
	});
});

/** A small photograph of nothing: wider than high. */
async function drawnJpeg(page: Page): Promise<Buffer> {
	const url = await page.evaluate(() => {
		const canvas = Object.assign(document.createElement('canvas'), { width: 60, height: 40 });
		const pen = canvas.getContext('2d')!;
		pen.fillStyle = '#b64';
		pen.fillRect(0, 0, 30, 40);
		return canvas.toDataURL('image/jpeg');
	});
	return Buffer.from(url.slice(url.indexOf(',') + 1), 'base64');
}

/** The same as a camera held upright writes it: turned by its Exif (orientation 6). */
function turnedJpeg(picture: Buffer): Buffer {
	const exif = [
		...[...'Exif\0\0MM\0*'].map((letter) => letter.charCodeAt(0)),
		...[0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0],
	];
	const head = [0xff, 0xe1, 0, exif.length + 2, ...exif];
	return Buffer.concat([picture.subarray(0, 2), Buffer.from(head), picture.subarray(2)]);
}

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
