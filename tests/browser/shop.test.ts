import { expect, test } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { arrived, fieldOf, goTo, goToCard, open, planned } from './screen';
import { joins, linkFor, Server, watched } from './shop-server';

const HEIGHT = 'boxes/0/shape/height';

test('one shop on two devices, from edit to edit, the server away in between', async ({
	browser,
}) => {
	const server = new Server();
	await server.start();
	const desk = await joins(browser, server.link, 'Desk');
	const saw = await joins(
		browser,
		await linkFor(desk.page, 'Saw', 'work: change jobs and rack'),
		'Saw',
	);
	await expect(desk.page.getByText('here now: Saw')).toBeVisible();

	// A job begun at the desk is listed at the saw, and opened there.
	await goTo(desk.page, 'Jobs');
	await desk.page
		.getByRole('button', { name: /^Camper/ })
		.first()
		.click();
	await arrived(desk.page, 'build');
	await (await fieldOf(desk.page, 'name')).fill('Camper of the shop');
	await expect(saw.page.getByText('Camper of the shop').first()).toBeVisible();
	await saw.page.getByRole('button', { name: 'Open Camper of the shop' }).click();
	await arrived(saw.page, 'build');
	await planned(saw.page);
	await (await fieldOf(saw.page, HEIGHT)).fill('811');
	await expect(await fieldOf(desk.page, HEIGHT)).toHaveValue('811');
	await expect(desk.page.getByText('Another device or window changed: boxes')).toBeVisible();
	await (await fieldOf(desk.page, 'name')).fill('Camper of both');
	await expect(await fieldOf(saw.page, 'name')).toHaveValue('Camper of both');

	// Hours without the server: both go on, and are told; on its return both have both.
	await server.stop();
	for (const { page } of [desk, saw]) {
		await expect(page.getByText('Away from the shop since')).toBeVisible();
	}
	await (await fieldOf(desk.page, 'name')).fill('Typed while away');
	await (await fieldOf(saw.page, HEIGHT)).fill('822');
	await server.start();
	await expect(await fieldOf(desk.page, HEIGHT)).toHaveValue('822');
	await expect(await fieldOf(saw.page, 'name')).toHaveValue('Typed while away');

	// Who may look sees all, and can change nothing.
	const look = await joins(browser, await linkFor(desk.page, 'Customer', 'look only'), 'Phone');
	await look.page.getByRole('button', { name: 'Open Typed while away' }).click();
	await arrived(look.page, 'build');
	await expect(await fieldOf(look.page, HEIGHT)).toHaveValue('822');
	await expect(await fieldOf(look.page, HEIGHT)).not.toBeEditable();

	// A link that is withdrawn: out at once, what is there stays there.
	const line = desk.page.getByRole('listitem').filter({ hasText: 'Saw' });
	await line.getByRole('button', { name: 'Withdraw' }).click();
	await line.getByRole('button', { name: 'Withdraw it' }).click();
	await expect(saw.page.getByText('was withdrawn')).toBeVisible();
	await expect(await fieldOf(saw.page, HEIGHT)).toHaveValue('822');

	// Nobody asked anybody else, and nothing had to be refused.
	const own = new URL(desk.page.url()).host;
	for (const { asked } of [desk, saw, look]) {
		const hosts = asked.filter((url) => !/^(data|blob):/.test(url)).map((url) => new URL(url));
		expect(hosts.filter(({ host }) => host !== own).map(String)).toEqual([]);
		expect(hosts.map(({ protocol }) => protocol)).toContain('ws:');
	}
	for (const { page } of [desk, saw, look]) await page.context().close();
	await server.close();
});

test('without a shop nobody is asked for one, and nothing of it is fetched', async ({ page }) => {
	const { asked } = watched(page);
	await open(page);
	await (await fieldOf(page, 'name')).fill('Mine alone');
	await expect(page.getByText('kept in this browser')).toBeVisible();
	await goTo(page, 'Jobs');
	await goToCard(page);
	const manifest = JSON.parse(
		readFileSync('.svelte-kit/output/client/.vite/manifest.json', 'utf8'),
	) as Record<string, { file: string }>;
	const chunk = (source: string): string =>
		Object.entries(manifest).find(([key]) => key.endsWith(source))?.[1].file ?? 'none';
	const ofShop = ['state/sharing/begin.ts', 'sharing/join-shop.ts'];
	expect(ofShop.map(chunk)).not.toContain('none');
	expect(asked.filter((url) => ofShop.some((one) => url.endsWith(chunk(one))))).toEqual([]);
	expect(asked.filter((url) => /^ws|\/documents/.test(url))).toEqual([]);
});

test('a link that is none, or of a shop that is gone, says so and joins nothing', async ({
	page,
}) => {
	await page.goto('devices#join=notasecretofanyshop');
	await page.getByRole('button', { name: 'Join', exact: true }).click();
	await expect(page.getByRole('alert').filter({ hasText: 'does not answer' })).toBeVisible();
	await page.getByLabel('Link').fill('something else');
	await page.getByRole('button', { name: 'Join', exact: true }).click();
	await expect(page.getByRole('alert').filter({ hasText: 'no link to a shop' })).toBeVisible();
	expect(await page.evaluate(() => localStorage.getItem('kerf-and-nap shop'))).toBeNull();
});
