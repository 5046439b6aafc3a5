import { expect, type Page, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { fieldOf, goToBench, planned, turnTo } from './screen';
import { begins, opens, TABLET, WORK } from './shop-screen';
import { joins, linkFor, Server, shopWords } from './shop-server';

/* Before a release only: it takes minutes. */

const HEIGHT = 'boxes/0/shape/height';
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };

/** The bench pack as it is saved here. */
async function paper(page: Page): Promise<Buffer> {
	await turnTo(page, 'print');
	await planned(page);
	const saved = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Bench pack' }).click();
	return readFile(await (await saved).path());
}

test('begun at one, measured at a second, cut and booked at a third, each without the network in between', async ({
	browser,
}) => {
	test.setTimeout(600_000);
	const server = new Server();
	await server.start();
	const keeps = { serviceWorkers: 'allow' } as const;
	const { page: desk } = await joins(browser, server.link, 'Desk', keeps);
	const forPhone = await linkFor(desk, 'Phone', WORK);
	const { page: phone } = await joins(browser, forPhone, 'Phone', { ...PHONE, ...keeps });
	const forSaw = await linkFor(desk, 'Saw', WORK);
	const { page: saw } = await joins(browser, forSaw, 'Saw', { ...TABLET, ...keeps });
	const all = [desk, phone, saw];
	// Each keeps the planner itself for hours without the network.
	for (const page of all)
		await page.evaluate(async () => void (await navigator.serviceWorker.ready));

	// Begun at the desk, away from the server.
	await server.stop();
	for (const page of all) await expect(shopWords(page)).toHaveAttribute('data-shop', 'away');
	await begins(desk, 'Through the shop');
	await server.start();

	// Measured at the phone, away again.
	await opens(phone, 'Through the shop');
	await server.stop();
	await expect(shopWords(phone)).toHaveAttribute('data-shop', 'away');
	await (await fieldOf(phone, HEIGHT)).fill('815');
	await planned(phone);
	await server.start();

	// Cut at the saw, away once more, and booked.
	await opens(saw, 'Through the shop');
	await expect(await fieldOf(saw, HEIGHT)).toHaveValue('815');
	await planned(saw);
	await goToBench(saw);
	await server.stop();
	await expect(shopWords(saw)).toHaveAttribute('data-shop', 'away');
	const made = saw.getByRole('button', { name: 'Cut made' });
	const book = saw.getByRole('button', { name: 'Mark sheet as cut' });
	await expect(async () => {
		if (await made.isVisible()) await made.click();
		await expect(book).toBeVisible({ timeout: 100 });
	}).toPass({ timeout: 60_000 });
	await book.click();
	await saw.getByRole('link', { name: 'Leave the bench' }).click();
	await planned(saw);
	await server.start();

	// Everywhere the same, to the byte.
	await expect(await fieldOf(desk, HEIGHT)).toHaveValue('815');
	await turnTo(desk, 'boards');
	await expect(desk.getByText('Cut. Its offcuts are on the rack.').first()).toBeVisible();
	for (const page of all)
		await expect(shopWords(page)).toContainText('all is alike', { timeout: 60_000 });
	const papers = [await paper(desk), await paper(phone), await paper(saw)];
	expect(papers[0]!.length).toBeGreaterThan(50_000);
	expect(papers.map((one) => one.equals(papers[0]!))).toEqual([true, true, true]);
	for (const page of all) await page.context().close();
	await server.close();
});
