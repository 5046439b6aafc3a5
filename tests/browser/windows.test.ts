import { expect, test } from '@playwright/test';
import { field, open } from './screen';

const HEIGHT = 'boxes/0/shape/height';

test('a window says when another one has changed its job, and can show that', async ({
	context,
	page,
}) => {
	await open(page);
	await field(page, HEIGHT).fill('362');
	await expect(page.getByText('kept in this browser')).toBeVisible();
	const other = await context.newPage();
	await open(other);
	await expect(field(other, HEIGHT)).toHaveValue('362');
	const warning = page.getByText('This job was changed in another window.');
	await expect(warning).toHaveCount(0); // looking is no change
	await field(other, HEIGHT).fill('350');
	await expect(warning).toBeVisible();
	await page.getByRole('button', { name: "Show the other window's job" }).click();
	await expect(field(page, HEIGHT)).toHaveValue('350');
	await expect(warning).toHaveCount(0);
});
