import { expect, type Page, test } from '@playwright/test';
import { atCut, fieldOf, goToBench, planned, turnTo } from './screen';
import { begins, opens, TABLET, WORK } from './shop-screen';
import { joins, linkFor, Server, shopWords } from './shop-server';

const HEIGHT = 'boxes/0/shape/height';
const inSaw = (page: Page) => page.locator('[data-saw]');

test('bench and desk side by side: ticks are seen, a newer plan is announced and not swapped', async ({
	browser,
}) => {
	const server = new Server();
	await server.start();
	const { page: desk } = await joins(browser, server.link, 'Desk');
	const { page: saw } = await joins(browser, await linkFor(desk, 'Saw', WORK), 'Saw', TABLET);
	await begins(desk, 'Side by side');
	await expect(saw.getByText('Side by side').first()).toBeVisible();
	await opens(saw, 'Side by side');
	await expect(desk.locator('[data-present]')).toContainText('Saw (Build)');
	await expect(saw.locator('[data-present]')).toContainText('Desk (Build)');

	// Cut by cut at the desk.
	await goToBench(saw);
	await turnTo(desk, 'boards');
	await expect(inSaw(desk)).toContainText('In the saw at Saw: 0 of');
	await saw.getByRole('button', { name: 'Cut made' }).click();
	await atCut(saw, 2);
	await expect(inSaw(desk)).toContainText('In the saw at Saw: 1 of');
	await expect(desk.getByRole('checkbox', { name: 'Cut 1 made' }).first()).toBeChecked();
	await saw.getByRole('button', { name: 'Cut made' }).click();
	await expect(inSaw(desk)).toContainText('2 of');
	await expect(desk.getByRole('checkbox', { name: 'Cut 2 made' }).first()).toBeChecked();

	// A change at the desk: the bench shows what it showed, and says so.
	const shown = saw.locator('.work section');
	await atCut(saw, 3);
	const before = await shown.textContent();
	await turnTo(desk, 'build');
	await (await fieldOf(desk, HEIGHT)).fill('811');
	await planned(desk);
	const news = saw.locator('[data-news]');
	await expect(news).toContainText('There is a newer plan');
	await expect(news).toContainText('The sheet in hand stays as it is');
	expect(await news.getByRole('listitem').count()).toBeGreaterThan(0);
	expect(await shown.textContent()).toBe(before);
	await saw.getByRole('button', { name: 'Cut made' }).click(); // goes on by the plan in hand
	await expect(news).toBeVisible();
	await saw.getByRole('button', { name: 'Take the newer plan' }).click();
	await expect(news).toBeHidden();

	// The bench is left: nothing is in its saw any more.
	await saw.getByRole('link', { name: 'Leave the bench' }).click();
	await turnTo(desk, 'boards');
	await expect(inSaw(desk)).toHaveCount(0);
	await saw.context().close();
	await expect(desk.locator('[data-present]')).toHaveCount(0);
	await desk.context().close();
	await server.close();
});

test('a full disk at the server is told where it is typed, and nothing of it is lost', async ({
	browser,
}) => {
	const server = new Server();
	await server.start();
	const { page } = await joins(browser, server.link, 'Desk');
	await begins(page, 'Before the disk was full');
	await expect(shopWords(page)).toContainText('all is alike');
	await server.stop();
	await server.start(1024); // not another byte
	await (await fieldOf(page, 'name')).fill('Typed on a full disk');
	await expect(shopWords(page)).toContainText("the shop's disk does not take it: make room there");
	await expect(page.getByText('kept in this browser')).toBeVisible();
	await server.stop();
	await server.start();
	await expect(shopWords(page)).toContainText('all is alike');
	await page.context().close();
	await server.close();
});
