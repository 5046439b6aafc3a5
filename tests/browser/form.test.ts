import { expect, test, type Page } from '@playwright/test';
import { field, figure, heading, measure, open, planned } from './screen';

/* The drawing is the form: what is typed, dragged or moved by a key on it comes to the same. */

const HEIGHT = 'boxes/0/shape/height';

const grip = (page: Page, label: string) => page.locator(`[data-grip="${label}"]`);

/** What is drawn of the thing itself. */
const outlines = (page: Page): Promise<(string | null)[]> =>
	page
		.locator('.stage svg path.wide')
		.evaluateAll((all) => all.map((path) => path.getAttribute('d')));

/** Drags a grip by so many pixels. */
async function drag(page: Page, label: string, dx: number, dy: number): Promise<void> {
	const box = (await grip(page, label).first().boundingBox())!;
	const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
	await page.mouse.move(x, y);
	await page.mouse.down();
	await page.mouse.move(x + dx / 2, y + dy / 2);
	await page.mouse.move(x + dx, y + dy);
	await page.mouse.up();
}

test('the drawing is the form: a driver and a face dragged, figures lit together', async ({
	page,
}) => {
	await open(page);
	await test.step('a driver dragged to where it cannot be stays in hand, with its dimensions', async () => {
		await page.locator('.stage path.picks').first().click({ force: true });
		const place = 'boxes/0/drivers/0/at';
		const name = 'Bass driver';
		const stands = async (): Promise<void> => {
			await planned(page);
			await expect(grip(page, name)).toBeFocused();
			await expect(measure(page, `${place}/up`)).toBeVisible();
		};
		const [across, problems] = [measure(page, `${place}/across`), figure(page, 'problems')];
		await expect(across).toBeVisible();
		const was = Number(await across.inputValue());
		await drag(page, name, -40, 0);
		await stands();
		await expect(problems).not.toHaveText('0');
		expect(Number(await across.inputValue())).toBeLessThan(was);
		await page.keyboard.press('Escape');
		await stands();
		await expect(problems).toHaveText('0');
		expect(Number(await across.inputValue())).toBe(was);
	});
	await test.step('lit together, said before it is accepted, taken back', async () => {
		await measure(page, HEIGHT).click();
		await expect(page.locator(`.field.lit[data-at="${HEIGHT}"]`)).toBeVisible();
		await page.keyboard.type('360-12');
		await expect(field(page, HEIGHT)).toHaveValue('360-12');
		await planned(page);
		const line = page.locator('.then');
		await expect(line).toContainText('Height 360 → 348');
		await expect(line).toContainText('for 46.00 L');
		await expect(line).toContainText('sheets 1, same');
		await page.keyboard.press('Escape');
		await expect(measure(page, HEIGHT)).toHaveValue('360');
		await expect(measure(page, HEIGHT)).toBeFocused();
		await field(page, HEIGHT).focus();
		await expect(page.locator(`input.lit[data-measure="${HEIGHT}"]`)).toBeVisible();

		// A solved size is taken over where it stands.
		const width = page.locator('[data-at="boxes/0/shape/width"]');
		await expect(width.locator('input')).toHaveValue('696.9');
		await width.getByRole('button', { name: /^Type it/ }).click();
		await expect(width.locator('input')).toBeFocused();
		await expect(width.locator('input')).toHaveValue('696.9');

		await page.keyboard.press('Control+z');
		await expect(width.getByRole('button', { name: /^Type it/ })).toBeVisible();
	});
	await test.step('a face dragged comes to what is typed, and the keys do the same', async () => {
		const net = figure(page, 'net').first();
		for (const [label, place, by] of [
			['Height', HEIGHT, [0, -20]],
			['Depth at the bottom', 'boxes/0/shape/lean/bottom', [-14, 0]],
		] as const) {
			await planned(page);
			await drag(page, label, by[0], by[1]);
			await planned(page);
			const dragged = await measure(page, place).inputValue();
			const whole = await net.textContent();
			const drawn = await outlines(page);
			await page.keyboard.press('Control+z');
			await planned(page);
			expect(await measure(page, place).inputValue(), label).not.toBe(dragged);
			await measure(page, place).fill(dragged);
			await measure(page, place).blur();
			await planned(page);
			await expect(measure(page, place)).toHaveValue(dragged);
			await expect(net).toHaveText(whole ?? '');
			await expect.poll(() => outlines(page)).toEqual(drawn);
			const was = Number(dragged);
			await grip(page, label).first().focus();
			await page.keyboard.press(by[0] === 0 ? 'ArrowUp' : 'ArrowRight');
			await expect(measure(page, place)).toHaveValue(String(was + 1));
			await page.keyboard.press('Escape');
			await expect(measure(page, place)).toHaveValue(dragged);
		}
	});
});

test('whoever comes first is told what this is, and makes a slanted box of 28 litres', async ({
	page,
}) => {
	let [clicks, fields] = [0, 0];
	const click = async (name: string): Promise<void> => {
		await page.getByRole('button', { name, exact: true }).click();
		clicks++;
	};
	const type = async (label: string, text: string): Promise<void> => {
		await page.getByLabel(label, { exact: true }).fill(text);
		fields++;
	};
	await page.goto('./');
	await expect(heading(page, 'Kerf & Nap')).toBeVisible();
	await click('Make the box');
	await expect(page.getByText('Write a length such as 360 mm.').first()).toBeVisible();
	await type('Space, width', '900');
	await type('Space, height', '380');
	await type('Depth along the floor', '36 cm');
	await type('Depth at the top, if it leans', '240');
	await type('Litres (usual: 16)', '28');
	await click('Make the box');
	await expect(heading(page, 'New job')).toBeVisible();
	await planned(page);
	await expect(figure(page, 'net').first()).toHaveText('28.00 L');
	await expect(figure(page, 'problems')).toHaveText('0');
	console.log(`slanted box of 28 L: ${clicks} clicks, ${fields} fields`);

	await page.keyboard.press('Alt+2');
	await expect(page.locator('[data-chapter="boards"]')).toBeVisible();
	await page.locator('h1').click();
	await page.keyboard.press('?');
	await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible();
	await page.keyboard.press('Escape');
	const saved = page.waitForEvent('download');
	await page.keyboard.press('Control+s');
	expect((await saved).suggestedFilename()).toBe('new-job.json');
	await page.goBack();
	await expect(page.locator('[data-chapter="build"]')).toBeVisible();
});
