import { readFile } from 'node:fs/promises';
import { expect, test, type Page } from '@playwright/test';
import { CANARIES, withCanary } from '../../src/setup/trust/canary/canaries';
import { arrived, CHAPTERS, goTo, goToCard, open, planned, turnTo } from './screen';

/*
 * Texts that do something where they are taken for more than text, in every field of a job that a
 * person words freely, looked at on every page: none of them runs, and nothing is fetched from
 * anywhere but the app's own address.
 */

/** What a page did that no text should make it do. */
interface Watched {
	readonly asked: string[];
	readonly refused: string[];
}

async function watch(page: Page): Promise<Watched> {
	const watched: Watched = { asked: [], refused: [] };
	page.on('request', (request) => watched.asked.push(request.url()));
	page.on('websocket', (socket) => watched.asked.push(socket.url()));
	page.on('popup', (other) => watched.asked.push(`popup ${other.url()}`));
	page.on('dialog', (dialog) => {
		watched.refused.push(`dialog ${dialog.message()}`);
		void dialog.dismiss();
	});
	await page.exposeFunction('refused__', (what: string) => watched.refused.push(what));
	await page.addInitScript(`addEventListener('securitypolicyviolation', (e) =>
		refused__(e.violatedDirective + ' ' + e.blockedURI + ' ' + e.sample))`);
	return watched;
}

/** The sample job, a canary before each of its texts: the next one each time. */
async function planted(name: string): Promise<Buffer> {
	const job = JSON.parse(await readFile(`shared/jobs/${name}`, 'utf8')) as unknown;
	let n = 0;
	return Buffer.from(JSON.stringify(withCanary(job, () => CANARIES[n++ % CANARIES.length] ?? '')));
}

/** Unfolds whatever is folded, and types a canary into every line of text that takes one. */
async function typedEverywhere(page: Page): Promise<number> {
	await page.evaluate(() => {
		for (const folded of document.querySelectorAll('details')) folded.open = true;
	});
	const fields = page.locator('[data-at] :is(input[type=text], input:not([type]), textarea)');
	const count = Math.min(await fields.count(), 2 * CANARIES.length);
	for (let i = 0; i < count; i++) {
		const field = fields.nth(i);
		if (await field.isEditable()) await field.fill(CANARIES[i % CANARIES.length] ?? '');
	}
	return count;
}

async function nothingRan(page: Page, { asked, refused }: Watched): Promise<void> {
	expect(await page.evaluate(() => 'ran__' in window)).toBe(false);
	const own = new URL(page.url()).origin;
	const outside = asked.filter((url) => !/^(data|blob):/.test(url) && new URL(url).origin !== own);
	expect(outside).toEqual([]);
	expect(asked.filter((url) => /\/x$|ran__/.test(url))).toEqual([]);
	expect(refused).toEqual([]);
}

for (const name of ['camper-bench.json', 'panel-stepped-cover.json'])
	test(`${name}: what looks like a command stays a text on every page`, async ({ page }) => {
		const watched = await watch(page);
		await open(page, 'jobs');
		await page.getByLabel('Open a file').setInputFiles({
			...{ name: `<img src=x onerror="ran__=1">.json`, mimeType: 'application/json' },
			buffer: await planted(name),
		});
		await arrived(page, 'build');
		await planned(page);
		await expect(page.getByText('<script>ran__=1</script>').first()).toBeVisible();
		for (const chapter of CHAPTERS) {
			await turnTo(page, chapter);
			await planned(page);
			await nothingRan(page, watched);
		}
		await turnTo(page, 'build');
		expect(await typedEverywhere(page)).toBeGreaterThan(10);
		await page.getByRole('button', { name: /^Problems/ }).click();
		await expect(page.getByRole('dialog', { name: 'Problems' })).toBeVisible();
		await page.keyboard.press('Escape');
		await nothingRan(page, watched);
		for (const place of ['Jobs', 'Rack', 'Shop'] as const) {
			await goTo(page, place);
			if (place !== 'Jobs') expect(await typedEverywhere(page)).toBeGreaterThan(3);
			await nothingRan(page, watched);
		}
		await goToCard(page);
		for (const place of ['trust', 'bench', './']) {
			await page.goto(place);
			await page.waitForLoadState('networkidle');
			await nothingRan(page, watched);
		}
	});

test('a canary that is let run is seen', async ({ page }) => {
	const watched = await watch(page);
	await open(page, 'jobs');
	await page.evaluate(() => Reflect.set(window, 'ran__', 1));
	await expect(nothingRan(page, watched)).rejects.toThrow();
	await page.evaluate(() => Reflect.deleteProperty(window, 'ran__'));
	await nothingRan(page, watched);
	await page.evaluate(() => {
		document.body.insertAdjacentHTML('beforeend', '<img src="x" onerror="ran__=1">');
	});
	await expect.poll(() => watched.asked.length + watched.refused.length).toBeGreaterThan(0);
	await expect(nothingRan(page, watched)).rejects.toThrow();
});
