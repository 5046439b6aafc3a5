import { expect, test } from '@playwright/test';
import { arrived, field, figure, goToCard, heading, open, planned, turnTo } from './screen';

const HEIGHT = 'boxes/0/shape/height';

test('opens on the sample with its plan made', async ({ page }) => {
	await open(page);
	await expect(heading(page, 'Camper van, rear bench')).toBeVisible();
	await expect(figure(page, 'net').first()).toHaveText(/46\.00 L/);
	await expect(figure(page, 'material')).toHaveText(/^EUR \d/);
});

test('the plan follows an edit, and undo takes it back', async ({ page }) => {
	await open(page);
	const outside = page.getByRole('row', { name: /^Outside/ }).first();
	await expect(outside).toContainText('360');
	await field(page, HEIGHT).fill('340 + 2*5');
	await expect(page.locator(`[data-at="${HEIGHT}"]`)).toContainText('= 350');
	await expect(outside).toContainText('350');
	await page.keyboard.press('Control+z');
	await expect(field(page, HEIGHT)).toHaveValue('360');
	await expect(outside).toContainText('360');
	await page.keyboard.press('Control+y');
	await expect(outside).toContainText('350');
});

test('bad text stays, says what is wrong, and the rest is still planned', async ({ page }) => {
	await open(page);
	await field(page, HEIGHT).fill('36o');
	const frame = page.locator(`[data-at="${HEIGHT}"]`);
	await expect(frame.getByRole('status')).toContainText('is not a unit of length');
	await expect(field(page, HEIGHT)).toHaveAttribute('aria-invalid', 'true');
	await expect(figure(page, 'problems')).not.toHaveText('0');
	await expect(page.getByRole('heading', { name: 'Bench cover panel' })).toBeVisible();
	await page.getByRole('button', { name: /^Problems/ }).click();
	const list = page.getByRole('dialog', { name: 'Problems' });
	await list.getByRole('button', { name: 'Show me' }).first().click();
	await expect(field(page, HEIGHT)).toBeFocused();
	await expect(field(page, HEIGHT)).toHaveValue('36o');
});

test('a reload in the middle of a word loses nothing', async ({ page }) => {
	await open(page);
	await field(page, HEIGHT).fill('');
	await field(page, HEIGHT).pressSequentially('37x');
	await page.reload();
	await planned(page);
	await arrived(page, 'build');
	await expect(field(page, HEIGHT)).toHaveValue('37x');
});

test('inches are typed and shown as inches, and mean the same box', async ({ page }) => {
	await open(page, 'shop');
	await field(page, 'shop/ruler/unit').selectOption({ label: 'inches' });
	await goToCard(page);
	await field(page, HEIGHT).fill('14 1/2');
	await field(page, HEIGHT).blur();
	await expect(field(page, HEIGHT)).toHaveValue('14 1/2');
	await expect(page.getByRole('row', { name: /^Outside/ }).first()).toContainText('14 1/2');
	await page.reload();
	await planned(page);
	await arrived(page, 'build');
	await expect(field(page, HEIGHT)).toHaveValue('14 1/2');
});

test('a box, a panel and a part are added to an empty job', async ({ page }) => {
	await open(page, 'jobs');
	await page.getByRole('button', { name: 'New empty job' }).click();
	await expect(page.getByText('An empty job card')).toBeVisible();
	await page.getByRole('button', { name: 'Add a box' }).click();
	await expect(page.getByRole('heading', { name: 'Box 1' })).toBeVisible();
	await page.getByRole('button', { name: 'Add a panel' }).click();
	await page.getByRole('button', { name: 'Add part' }).click();
	await turnTo(page, 'boards');
	await expect(page.getByRole('heading', { name: /^Sheet 1 of/ }).first()).toBeVisible();
	await planned(page);
	await expect(figure(page, 'problems')).toHaveText('0');
});

test('a parts list is read from pasted cells', async ({ page }) => {
	await open(page);
	await page.getByText('From a spreadsheet or a CSV file').click();
	const cells = 'name,material,length,width,count\nShelf,ply-18,700,300,2\nBad,ply-18,abc,300,1\n';
	await page.getByRole('textbox', { name: 'Cells of the parts list' }).fill(cells);
	await expect(page.getByText('1 parts read, 1 rows to look at.')).toBeVisible();
	await page.getByRole('button', { name: 'Add to the list' }).click();
	await expect(field(page, 'parts/0/name')).toHaveValue('Shelf');
});
