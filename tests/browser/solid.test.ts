import { expect, test, type Page } from '@playwright/test';
import { open, toThing, turnTo } from './screen';

/*
 * That every sample has the boards of its plan in the solid view, with their corners and their
 * wood, is held in tests/ui/solid; here the view itself is turned, and what it has in hand is.
 */

function noteErrors(page: Page): string[] {
	const errors: string[] = [];
	page.on('pageerror', (error) => errors.push(String(error)));
	page.on('console', (said) => {
		if (said.type() === 'error') errors.push(said.text());
	});
	return errors;
}

const look = (page: Page, way: string) =>
	page.getByRole('button', { name: way, exact: true }).click();

/** The picture in the view, by its bytes. */
const seen = async (page: Page): Promise<string> =>
	(await page.locator('[data-bodies]').screenshot()).toString('base64');

test('a box and a panel are solids; a board chosen is in hand on its sheet, drawn near and whole', async ({
	page,
}) => {
	const errors = noteErrors(page);
	await open(page);
	await test.step('a box is turned by keys and taken apart; a board chosen is in hand on its sheet', async () => {
		await look(page, 'Solid');
		const view = page.locator('[data-bodies]');
		await expect(view.locator('canvas')).toBeVisible();
		// eight boards and two drivers
		await expect(view).toHaveAttribute('data-bodies', '10');
		await expect.poll(() => seen(page)).not.toBe('');
		const first = await seen(page);
		await view.focus();
		await page.keyboard.press('ArrowRight');
		await expect.poll(() => seen(page)).not.toBe(first);
		await page.getByLabel('Apart').fill('1');
		await page.getByLabel('Cut through').fill('0.4');
		await page.getByLabel('cloth on').uncheck();

		const boards = page.getByRole('list', { name: 'Boards of Bench box' });
		await boards.getByRole('button', { name: 'B2 Back' }).click();
		await turnTo(page, 'boards');
		await expect(page.getByRole('button', { name: 'Back', exact: true })).toHaveAttribute(
			'aria-pressed',
			'true',
		);
		await expect(page.locator('path.picked').first()).toBeVisible();
	});
	await test.step('a drawing is looked at from near, moved and seen whole again', async () => {
		const drawing = page.getByRole('group', { name: /Plus and minus/ }).first();
		const box = async (): Promise<number[]> =>
			((await drawing.locator('svg[role=img]').getAttribute('viewBox')) ?? '')
				.split(' ')
				.map(Number);
		const whole = await box();
		await drawing.focus();
		await page.keyboard.press('+');
		const near = await box();
		expect(near[2]).toBeLessThan((whole[2] ?? 0) * 0.9);
		await page.keyboard.press('ArrowRight');
		expect((await box())[0]).toBeGreaterThan(near[0] ?? 0);
		await page.keyboard.press('0');
		expect(await box()).toEqual(whole);
	});
	await turnTo(page, 'build');
	await test.step('a panel is a solid of its pieces', async () => {
		await toThing(page, 'panels/0');
		await look(page, 'Solid');
		await expect(page.locator('[data-bodies] canvas')).toBeVisible();
		await expect(
			page
				.getByRole('list', { name: /^Boards of/ })
				.getByRole('button')
				.first(),
		).toBeVisible();
	});
	expect(errors).toEqual([]);
});

test('where the browser draws no solids the flat drawing stands', async ({ page }) => {
	await page.addInitScript(() => {
		HTMLCanvasElement.prototype.getContext = () => null;
	});
	await open(page);
	await look(page, 'Solid');
	await expect(page.getByText('This browser draws no solids')).toBeVisible();
	await expect(page.getByRole('img', { name: /exploded view/ })).toBeVisible();
});
