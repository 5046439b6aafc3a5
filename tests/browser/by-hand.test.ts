import { expect, test, type Locator, type Page } from '@playwright/test';
import { goTo, heading, open, planned, turnTo } from './screen';

const JOB = {
	name: 'Laid by hand',
	shop: { saws: [{ id: 'saw', name: 'Saw', kerf: 3, trim: 0 }] },
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
		sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, factoryEdges: false }],
	},
	parts: [
		{ id: 'A', material: 'ply', length: 400, width: 300 },
		{ id: 'B', material: 'ply', length: 300, width: 200, count: 3 },
	],
};

async function openJob(page: Page): Promise<void> {
	await open(page, 'jobs');
	await page.getByLabel('Open a file').setInputFiles({
		...{ name: 'hand.json', mimeType: 'application/json' },
		buffer: Buffer.from(JSON.stringify(JOB)),
	});
	await expect(heading(page, JOB.name)).toBeVisible();
	await turnTo(page, 'boards');
	await planned(page);
}

const pieces = (page: Page): Locator =>
	page
		.getByRole('group', { name: /Plus and minus/ })
		.getByRole('button', { name: /from the left/ });
const pieceA = (page: Page): Locator => pieces(page).and(page.getByRole('button', { name: /^A / }));
const hand = (page: Page): Locator => page.getByRole('region', { name: 'Piece in hand' });
const says = (page: Page): Locator => hand(page).getByRole('status');
const keep = (page: Page): Locator =>
	hand(page).getByRole('button', { name: 'Lay the rest round it' });

test('a piece dragged, typed or moved by keys is judged at once and taken back; its job is found', async ({
	page,
}) => {
	await openJob(page);
	await test.step('a piece is judged at once, kept, and taken back', async () => {
		const count = await pieces(page).count();
		expect(count).toBe(4);
		const before = await pieceA(page).getAttribute('aria-label');

		// Typed: what is wrong is said at once, and what is wrong is never kept.
		await pieceA(page).focus();
		await page.keyboard.press('Space');
		const left = hand(page).getByLabel('From the left');
		const low = hand(page).getByLabel('From the bottom');
		await left.fill('650');
		await expect(says(page)).toContainText('reaches 50 mm over the right edge');
		await expect(keep(page)).toBeDisabled();
		await left.press('Escape');
		await expect(left).toHaveValue(/^\d/);
		await expect(says(page)).toContainText('Nothing is changed before it is kept');
		expect(await pieceA(page).getAttribute('aria-label')).toBe(before);

		await left.fill('600');
		await low.fill('300');
		await low.press('Enter');
		await planned(page);
		await expect(pieceA(page)).toHaveAttribute(
			'aria-label',
			/600 from the left, 300 up, laid by hand/,
		);
		await expect(pieces(page)).toHaveCount(count);
		const typed = await pieces(page).evaluateAll((all) =>
			all.map((p) => p.getAttribute('aria-label')),
		);

		// Escape takes the change back, like undo.
		await pieceA(page).focus();
		await page.keyboard.press('Escape');
		await planned(page);
		await expect(pieceA(page)).toHaveAttribute('aria-label', before ?? '');

		// Dragged towards the corner it comes to lie in it, and that is the same.
		await pieceA(page).scrollIntoViewIfNeeded();
		const from = await pieceA(page)
			.locator('rect')
			.first()
			.evaluate((element) => {
				const rect = element as SVGRectElement;
				const { a, b, c, d, e, f } = rect.getScreenCTM()!;
				const [left, top] = [rect.x.baseVal.value, rect.y.baseVal.value];
				const width = rect.width.baseVal.value * a;
				return { x: a * left + c * top + e, y: b * left + d * top + f, width };
			});
		const per = from.width / 400; // pixels to a millimetre
		const [x, y] = /(\d+) from the left, (\d+) up/
			.exec(before ?? '')!
			.slice(1)
			.map(Number);
		const grip = { x: from.x + from.width / 2, y: from.y + 20 };
		await page.mouse.move(grip.x, grip.y);
		await page.mouse.down();
		await page.mouse.move(grip.x + 30, grip.y - 10);
		await page.mouse.move(grip.x + (600 - x!) * per, grip.y - (300 - y!) * per);
		await expect(left).toHaveValue('600');
		await expect(low).toHaveValue('300');
		await page.mouse.up();
		await keep(page).click();
		await planned(page);
		const labels = () =>
			pieces(page).evaluateAll((all) => all.map((p) => p.getAttribute('aria-label')));
		expect(await labels()).toEqual(typed);
		await page.keyboard.press('Escape');
		await planned(page);

		// By keys alone: chosen, moved, turned, kept.
		await pieceA(page).focus();
		await page.keyboard.press('Space');
		await page.keyboard.press('t');
		await expect(hand(page).getByLabel('Turned left')).toHaveValue('90');
		await page.keyboard.press('Escape');
		await left.fill('600');
		await low.fill('290');
		await pieceA(page).focus();
		await page.keyboard.press('Shift+ArrowUp');
		await expect(low).toHaveValue('300');
		await page.keyboard.press('Enter');
		await planned(page);
		expect(await labels()).toEqual(typed);

		// It holds over a reload, and lets go.
		await page.reload();
		await planned(page);
		await expect(pieceA(page)).toHaveAttribute('aria-label', /laid by hand/);
		await page.getByRole('button', { name: 'Let all of them go' }).click();
		await planned(page);
		await expect(pieceA(page)).not.toHaveAttribute('aria-label', /laid by hand/);
	});
	await test.step('a job is found, put away and addressed', async () => {
		await expect(page).toHaveURL(/\?job=[0-9a-f]{32}#boards$/);
		const address = page.url();
		await goTo(page, 'Jobs');
		await page.getByRole('button', { name: 'Pickup, wedge behind the seat' }).click();
		await planned(page);
		await expect(page).toHaveURL(/\?job=[0-9a-f]{32}#build$/);
		// An address is followed to its job; back comes the other one.
		await page.goto(address);
		await expect(heading(page, JOB.name)).toBeVisible();
		await page.goBack();
		await expect(heading(page, 'Pickup, wedge behind the seat')).toBeVisible();
		await page.goto('./?job=nowhere#order');
		await expect(page.getByText('not kept in this browser')).toBeVisible();
		await open(page, 'jobs');
		await page.getByRole('button', { name: `Put away ${JOB.name}` }).click();
		await expect(page.getByText(`Put away: ${JOB.name}.`)).toBeVisible();
		await page.getByText('Show them').click();
		await page.getByRole('button', { name: /^Back to the jobs.*Laid by hand/ }).click();
		await expect(page.getByRole('button', { name: `Put away ${JOB.name}` })).toBeVisible();
	});
});
