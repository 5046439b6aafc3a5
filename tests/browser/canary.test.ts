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

const LINES = '[data-at] :is(input[type=text], input:not([type]), textarea)';

/** Unfolds whatever is folded, and types each canary into a line of text of its own. */
async function typedEverywhere(page: Page): Promise<number> {
	await page.evaluate(() => {
		for (const folded of document.querySelectorAll('details')) folded.open = true;
	});
	const places = await page.evaluate(
		(lines) =>
			[...document.querySelectorAll<HTMLInputElement>(lines)]
				.filter((line) => line.checkVisibility() && !line.readOnly && !line.disabled)
				.map((line) => line.closest('[data-at]')?.getAttribute('data-at') ?? ''),
		LINES,
	);
	let typed = 0;
	for (const place of new Set(places)) {
		const canary = CANARIES[typed];
		if (canary === undefined) break;
		// What was typed before may have taken a line away: a form shows what its words ask for.
		const line = page.locator(`[data-at="${place}"]`).locator('input, textarea').first();
		if (!(await line.isVisible())) continue;
		await line.fill(canary);
		typed++;
	}
	return typed;
}

async function nothingRan(page: Page, { asked, refused }: Watched): Promise<void> {
	expect(await page.evaluate(() => 'ran__' in window)).toBe(false);
	const own = new URL(page.url()).origin;
	const outside = asked.filter((url) => !/^(data|blob):/.test(url) && new URL(url).origin !== own);
	expect(outside).toEqual([]);
	expect(asked.filter((url) => /\/x$|ran__/.test(url))).toEqual([]);
	expect(refused).toEqual([]);
}

/** Opens the job with canaries in it, from a file that is named like one. */
async function opened(page: Page, name: string): Promise<Watched> {
	const watched = await watch(page);
	await open(page, 'jobs');
	await page.getByLabel('Open a file').setInputFiles({
		...{ name: `<img src=x onerror="ran__=1">.json`, mimeType: 'application/json' },
		buffer: await planted(name),
	});
	await arrived(page, 'build');
	await expect(page.getByText('<script>ran__=1</script>').first()).toBeVisible();
	return watched;
}

test('in every field of a job, looked at in every chapter and on every page', async ({ page }) => {
	const watched = await opened(page, 'camper-bench.json');
	for (const chapter of CHAPTERS) {
		await turnTo(page, chapter);
		await planned(page);
		await nothingRan(page, watched);
	}
	for (const place of ['Jobs', 'Rack', 'Shop'] as const) {
		await goTo(page, place);
		await nothingRan(page, watched);
	}
	for (const place of ['trust', 'bench']) {
		await page.goto(place);
		await expect(page.getByRole('heading').first()).toBeVisible();
		await nothingRan(page, watched);
	}
});

test('typed into the lines of the card, the rack and the shop; one that is let run is seen', async ({
	page,
}) => {
	const watched = await opened(page, 'panel-stepped-cover.json');
	expect(await typedEverywhere(page)).toBe(CANARIES.length);
	await page.getByRole('button', { name: /^Problems/ }).click();
	await expect(page.getByRole('dialog', { name: 'Problems' })).toBeVisible();
	await nothingRan(page, watched);
	await page.keyboard.press('Escape');
	for (const place of ['Rack', 'Shop'] as const) {
		await goTo(page, place);
		expect(await typedEverywhere(page)).toBeGreaterThan(3);
		await nothingRan(page, watched);
	}
	await goToCard(page);
	await nothingRan(page, watched);

	await test.step('a canary that is let run is seen', async () => {
		await page.evaluate(() => Reflect.set(window, 'ran__', 1));
		await expect(nothingRan(page, watched)).rejects.toThrow();
		await page.evaluate(() => Reflect.deleteProperty(window, 'ran__'));
		await nothingRan(page, watched);
		await page.evaluate(() => {
			document.body.insertAdjacentHTML('beforeend', '<img src="x" onerror="ran__=1">');
		});
		await expect.poll(() => watched.refused.length).toBeGreaterThan(0);
		await expect(nothingRan(page, watched)).rejects.toThrow();
	});
});
