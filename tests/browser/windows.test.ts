import { expect, test, type Page } from '@playwright/test';
import { field, goTo, goToCard, heading, open, planned, fieldOf } from './screen';

const HEIGHT = 'boxes/0/shape/height';
const DEPTH = 'boxes/0/shape/lean/bottom';
const kept = (page: Page) => expect(page.getByText('kept in this browser')).toBeVisible();
const heard = (page: Page, what: string) =>
	expect(page.getByText(`Another window changed: ${what}.`)).toBeVisible();

test('one job in two windows: both edits are kept, and undo takes back its own', async ({
	context,
	page,
}) => {
	await open(page);
	await (await fieldOf(page, HEIGHT)).fill('362');
	await kept(page);
	const other = await context.newPage();
	await open(other);
	await expect(await fieldOf(other, HEIGHT)).toHaveValue('362');
	await expect(page.getByText('Another window changed')).toHaveCount(0); // looking is no change
	await (await fieldOf(other, DEPTH)).fill('352');
	await heard(page, 'boxes');
	await expect(await fieldOf(page, DEPTH)).toHaveValue('352');
	await expect(await fieldOf(page, HEIGHT)).toHaveValue('362');
	await (await fieldOf(page, HEIGHT)).fill('350');
	await heard(other, 'boxes');
	await expect(await fieldOf(other, HEIGHT)).toHaveValue('350');
	await page.keyboard.press('Control+z'); // its own heights, not the other window's depth
	await expect(await fieldOf(page, HEIGHT)).not.toHaveValue('350');
	await expect(await fieldOf(page, DEPTH)).toHaveValue('352');
	await kept(page);
	await page.reload();
	await planned(page);
	await expect(await fieldOf(page, DEPTH)).toHaveValue('352');
	await expect(page.getByRole('button', { name: /^Redo/ })).toBeEnabled(); // after a reload too
	await page.keyboard.press('Control+y');
	await expect(await fieldOf(page, HEIGHT)).toHaveValue('350');
});

test("a letter typed in one window leaves what another did to the shop's rack", async ({
	context,
	page,
}) => {
	await open(page, 'jobs');
	await page.getByRole('button', { name: 'New empty job' }).click();
	await expect(page.getByText('An empty job card')).toBeVisible();
	await (await fieldOf(page, 'name')).fill('Left');
	await kept(page);
	const other = await context.newPage();
	await open(other, 'jobs');
	await other.getByRole('button', { name: 'New empty job' }).click();
	await expect(other.getByText('An empty job card')).toBeVisible();
	await goTo(other, 'Rack');
	await field(other, 'stock/materials/0/name').fill('Birch of the other window');
	await kept(other);
	await heard(page, 'the rack');
	await (await fieldOf(page, 'name')).fill('Left1');
	await kept(page);
	for (const window of [page, other]) {
		await window.reload();
		await planned(window);
	}
	await goTo(page, 'Rack');
	await expect(field(page, 'stock/materials/0/name')).toHaveValue('Birch of the other window');
	await expect(field(other, 'stock/materials/0/name')).toHaveValue('Birch of the other window');
	await goToCard(page);
	await expect(await fieldOf(page, 'name')).toHaveValue('Left1');
});

test('a database deleted under the page is written again, and a reload opens the job', async ({
	page,
}) => {
	await open(page);
	await (await fieldOf(page, 'name')).fill('Not the sample');
	await kept(page);
	await page.evaluate(
		() =>
			new Promise<void>((resolve, reject) => {
				const request = indexedDB.deleteDatabase('kerf-and-nap');
				request.onsuccess = () => resolve();
				request.onerror = () => reject(new Error('not deleted'));
			}),
	);
	await expect
		.poll(() => page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name)))
		.toContain('kerf-and-nap');
	await kept(page);
	await page.waitForTimeout(1500);
	await page.reload();
	await planned(page);
	await expect(heading(page, 'Not the sample')).toBeVisible();
});

test('without a database the planner opens, says so at every width, and warns before it is closed', async ({
	page,
}) => {
	await page.addInitScript(() => {
		Object.defineProperty(globalThis, 'indexedDB', { value: undefined });
		Object.defineProperty(globalThis, 'localStorage', {
			get: () => {
				throw new Error('refused');
			},
		});
	});
	await open(page);
	await expect(
		page
			.getByText('This browser’s database cannot be read')
			.or(page.getByText("This browser's database cannot be read")),
	).toBeVisible();
	await (await fieldOf(page, HEIGHT)).fill('350');
	await expect(page.locator('[data-measure="boxes/0/shape/height"]')).toHaveValue('350');
	for (const width of [1440, 820, 390]) {
		await page.setViewportSize({ width, height: 900 });
		await expect(page.getByText('Not kept: what was typed is in this window only')).toBeVisible();
		await expect(page.getByText('not kept', { exact: true })).toBeVisible();
	}
	const asked = page.waitForEvent('dialog');
	void page.close({ runBeforeUnload: true });
	expect((await asked).type()).toBe('beforeunload');
	await (await asked).accept();
});
