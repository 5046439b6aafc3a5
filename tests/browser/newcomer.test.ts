import { expect, test, type Page } from '@playwright/test';
import { Newcomer } from './counted';
import { field, figure, goToBench, open, planned, turnTo } from './screen';

/** Where the layout differs: side by side on a desk, stacked on a phone. */
const DESK = { viewport: { width: 1440, height: 900 } };
const TABLET = { viewport: { width: 834, height: 1100 }, hasTouch: true };
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };

/** Thirty parts under a supplier's own headings, another blade, and paper. */
async function listTask(page: Page, by: 'pointer' | 'keyboard'): Promise<void> {
	const rows = Array.from(
		{ length: 30 },
		(_, i) => `Shelf ${i + 1},${1 + (i % 3)},${300 + 10 * i},${200 + 5 * i},Birch plywood 18`,
	);
	const me = new Newcomer(page, by);
	await open(page, 'start');
	await me.press(page.getByRole('button', { name: 'List parts' }));
	await me.press(page.locator('summary', { hasText: 'From a spreadsheet or a CSV file' }));
	const cells = page.getByRole('textbox', { name: 'Cells of the parts list' });
	me.fields++;
	await cells.fill(['Part,Qty,L,W,Material', ...rows].join('\n'));
	const list = page.getByRole('group', { name: 'Parts list' });
	await expect(list.getByRole('status')).toHaveText('30 parts to take in.');
	await me.press(list.getByRole('button', { name: /^Take in/ }));
	await expect(list.getByRole('status')).toHaveText('30 parts taken in.');
	await me.press(page.getByRole('navigation', { name: 'Chapters' }).getByText('Boards'));
	await planned(page);
	await me.fill(page.getByLabel('Kerf', { exact: true }), '4');
	await page.keyboard.press('Enter');
	await planned(page);
	await expect(page.getByText('kerf 4').first()).toBeVisible();
	await expect(figure(page, 'sheets')).toHaveText(/^[1-9]/);
	await turnTo(page, 'print');
	await expect(page.getByRole('button', { name: /bench pack/i }).first()).toBeVisible();
	me.tell('30 parts from a spreadsheet');
}

/** A panel in cloth with a raised piece and a service cover, all as they come, to its paper. */
async function panelTask(page: Page, by: 'pointer' | 'keyboard'): Promise<void> {
	const me = new Newcomer(page, by);
	await open(page, 'start');
	await me.fill(page.getByLabel('Opening, length'), '500');
	await me.fill(page.getByLabel('Opening, width'), '300');
	await me.press(page.getByRole('button', { name: 'Make the panel' }));
	for (const [group, button] of [
		['layers', 'Add layer'],
		['covers', 'Add cover'],
	] as const) {
		await me.press(page.locator(`[data-group="${group}"] > summary`));
		await me.press(page.getByRole('button', { name: button }));
		await expect(page.locator(`[data-at="panels/0/${group}/0"]`).first()).toBeVisible();
		await planned(page);
		await expect(figure(page, 'problems'), button).toHaveText('0');
	}
	await me.press(page.locator('[data-group="cloth"] > summary'));
	await me.choose(field(page, 'panels/0/cloth'), 'Anthracite needle carpet');
	await planned(page);
	await expect(figure(page, 'pull')).toHaveText(/[1-9]/);
	await expect(figure(page, 'problems')).toHaveText('0');
	await me.press(page.getByRole('navigation', { name: 'Chapters' }).getByText('Print'));
	const saved = page.waitForEvent('download');
	await me.press(page.getByRole('button', { name: 'Bench pack' }));
	expect((await saved).suggestedFilename()).toContain('.pdf');
	me.tell('a panel with a raised piece and a cover');
}

test.describe('at a desk', () => {
	test.use(DESK);
	test('a newcomer makes a panel by the keyboard alone', ({ page }) => panelTask(page, 'keyboard'));
	test('a newcomer lists thirty parts by pointer', ({ page }) => listTask(page, 'pointer'));
});

test.describe('on a tablet', () => {
	test.use(TABLET);
	test('a newcomer makes a panel by pointer', ({ page }) => panelTask(page, 'pointer'));
	test('a newcomer lists thirty parts by the keyboard alone', ({ page }) =>
		listTask(page, 'keyboard'));
});

test.describe('on a phone', () => {
	test.use(PHONE);
	test('the bench is worked, reloaded and gone on with', async ({ page }) => {
		const me = new Newcomer(page, 'pointer');
		await open(page);
		await goToBench(page);
		const made = page.getByRole('button', { name: 'Cut made' });
		await me.press(made);
		await me.press(made);
		const step = await page.locator('h1').first().textContent();
		await page.reload();
		await expect(made).toBeVisible();
		expect(await page.locator('h1').first().textContent()).toBe(step);
		const small = await page.evaluate(() => {
			const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
			const found: string[] = [];
			while (walk.nextNode()) {
				const parent = walk.currentNode.parentElement;
				const text = walk.currentNode.textContent?.trim() ?? '';
				if (!parent || text === '' || parent.closest('.heard, script, style')) continue;
				const box = parent.getBoundingClientRect();
				const svg = parent.closest('svg');
				const scale = svg ? (svg.getScreenCTM()?.a ?? 1) : 1;
				const size = parseFloat(getComputedStyle(parent).fontSize) * scale;
				if (box.width > 1 && size < 13.99) found.push(`${text}: ${size.toFixed(1)}`);
			}
			return found;
		});
		expect(small, 'texts under 14 px').toEqual([]);
		me.tell('two cuts at the bench');
	});
});
