import { expect, test, type Page } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { field, goTo, open, planned } from './screen';

const DRAWN = 'shared/jobs/panel-traced-template.svg';
/** Where the corners of the paper and of the cardboard lie in the picture, as it is drawn. */
const PAPER = [
	[628, 390],
	[956, 390],
	[979, 845],
	[603, 845],
] as const;
const CARD = [
	[327, 907],
	[1182, 907],
	[1246, 702],
	[1144, 393],
	[861, 327],
	[490, 366],
] as const;
/** The cardboard's greatest length, mm, as it was drawn. */
const LENGTH = 520;

const OPENING = 'panels/0/opening';

/** The drawn template as a photograph would come: a PNG. */
async function photograph(page: Page): Promise<Buffer> {
	const svg = await readFile(DRAWN, 'utf8');
	const url = await page.evaluate(async (text) => {
		const picture = new Image();
		picture.src = `data:image/svg+xml,${encodeURIComponent(text)}`;
		await picture.decode();
		const canvas = document.createElement('canvas');
		canvas.width = picture.naturalWidth;
		canvas.height = picture.naturalHeight;
		canvas.getContext('2d')?.drawImage(picture, 0, 0);
		return canvas.toDataURL('image/png');
	}, svg);
	return Buffer.from(url.slice(url.indexOf(',') + 1), 'base64');
}

/** An empty job with one panel whose opening is to be traced, and the picture on the screen. */
async function startTracing(page: Page, buffer: Buffer): Promise<void> {
	await goTo(page, 'Jobs');
	await page.getByRole('button', { name: 'New empty job' }).click();
	await page.getByRole('button', { name: 'Add a panel' }).click();
	await field(page, OPENING).selectOption({ label: 'traced over a photograph' });
	const trace = page.getByRole('group', { name: 'Photograph of the template' });
	await trace
		.locator('input[type=file]')
		.setInputFiles({ name: 'template.png', mimeType: 'image/png', buffer });
	await expect(board(page)).toHaveAttribute('viewBox', '0 0 1600 1200');
}

const board = (page: Page) => page.getByRole('group', { name: /^Picture with/ });

/**
 * Sets one mark, and waits until it is on the picture: the next click looks for its place on what
 * is there then.
 */
async function click(page: Page, [x, y]: readonly [number, number]): Promise<void> {
	const marks = board(page).locator('[data-mark]');
	const before = await marks.count();
	const box = (await board(page).boundingBox())!;
	const position = { x: (x * box.width) / 1600, y: (y * box.height) / 1200 };
	await board(page).click({ position });
	await expect(marks).toHaveCount(before + 1);
}

/** The error the screen says, mm. */
async function saidError(page: Page): Promise<number> {
	const said = page.getByText(/Expected error: up to [\d.]+ mm/);
	await expect(said).toBeVisible();
	return Number(/up to ([\d.]+) mm/.exec((await said.textContent())!)![1]);
}

async function openingLength(page: Page): Promise<number> {
	await planned(page);
	const across = page.getByTitle('Opening, across');
	await expect(across).toBeVisible();
	return Number(await across.textContent());
}

test('an opening is traced over a photograph, each time in a job of its own', async ({ page }) => {
	await open(page);
	const picture = await photograph(page);
	await test.step('an outline clicked over it becomes an opening of the true size', async () => {
		await startTracing(page, picture);
		for (const corner of PAPER) await click(page, corner);
		await expect(page.getByText('Squared up.')).toBeVisible();
		for (const corner of CARD) await click(page, corner);
		await expect(board(page).locator('[data-mark=points]')).toHaveCount(CARD.length);
		const error = await saidError(page);
		expect(error).toBeGreaterThan(0);
		expect(error).toBeLessThan(4);
		await expect
			.poll(async () => Math.abs((await openingLength(page)) - LENGTH))
			.toBeLessThan(error);
	});
	await test.step('the paper is found and offered; taken, the bending of the lens is known', async () => {
		await startTracing(page, picture);
		await page.getByRole('button', { name: 'Take its corners' }).click();
		await expect(page.getByText('The bending of the lens is taken out.')).toBeVisible();
		await page.getByText('Marks as figures').click();
		for (const [i, [x, y]] of PAPER.entries()) {
			const near = async (key: 'x' | 'y', of: number): Promise<number> =>
				Math.abs(Number(await field(page, `${OPENING}/sheet/${i}/${key}`).inputValue()) - of);
			expect(await near('x', x)).toBeLessThan(1.5);
			expect(await near('y', y)).toBeLessThan(1.5);
		}
		for (const corner of CARD) await click(page, corner);
		const error = await saidError(page);
		await expect
			.poll(async () => Math.abs((await openingLength(page)) - LENGTH))
			.toBeLessThan(error);
	});
	await test.step('the marks are set right by figures and by the arrow keys alone', async () => {
		await startTracing(page, picture);
		for (const [x, y] of PAPER) await click(page, [x + 6, y - 4]);
		for (const [x, y] of CARD) await click(page, [x + Math.sign(x - 800) * 25, y]);
		expect(Math.abs((await openingLength(page)) - LENGTH)).toBeGreaterThan(20);
		await page.getByText('Marks as figures').focus();
		await page.keyboard.press('Enter');
		for (const [i, [x, y]] of PAPER.entries()) {
			await field(page, `${OPENING}/sheet/${i}/x`).fill(String(x));
			await field(page, `${OPENING}/sheet/${i}/y`).fill(String(y));
		}
		for (const [i, [x, y]] of CARD.entries()) {
			await field(page, `${OPENING}/points/${i}/x`).fill(String(x + 1));
			await field(page, `${OPENING}/points/${i}/y`).fill(String(y));
			await board(page).locator('[data-mark=points]').nth(i).focus();
			await page.keyboard.press('ArrowLeft');
			await expect(field(page, `${OPENING}/points/${i}/x`)).toHaveValue(String(x));
		}
		const error = await saidError(page);
		expect(error).toBeLessThan(4);
		await expect
			.poll(async () => Math.abs((await openingLength(page)) - LENGTH))
			.toBeLessThan(error);
	});
	await test.step('a picture taken too much from the side is refused in words', async () => {
		await startTracing(page, picture);
		const flat = [
			[650, 700],
			[930, 700],
			[990, 820],
			[590, 820],
		] as const;
		for (const corner of flat) await click(page, corner);
		await expect(page.getByText('too much from the side to be trusted')).toBeVisible();
		for (const corner of CARD) await click(page, corner);
		await expect(page.getByText(/its far end cannot be trusted/).first()).toBeVisible();
		await planned(page);
		// What was planned before may stand, greyed; nothing of the refused outline is shown.
		const shown = page.locator('.stage:not(.standing)').getByTitle('Opening, across');
		await expect(shown).toHaveCount(0);
	});
});
