import { expect, test } from '@playwright/test';
import {
	arrived,
	field,
	figure,
	goTo,
	goToCard,
	heading,
	open,
	planned,
	turnTo,
	fieldOf,
	measure,
	toThing,
} from './screen';

const HEIGHT = 'boxes/0/shape/height';

test('a figure typed: the plan follows, bad text is told and kept, inches mean the same box', async ({
	page,
}) => {
	const drawn = measure(page, HEIGHT);
	await test.step('opens on the sample with its plan made', async () => {
		await open(page);
		await expect(heading(page, 'Camper van, rear bench')).toBeVisible();
		await expect(figure(page, 'net').first()).toHaveText(/46\.00 L/);
		await expect(figure(page, 'material')).toHaveText(/^EUR \d/);
	});
	await test.step('the plan follows an edit, and undo takes it back', async () => {
		await expect(drawn).toHaveValue('360');
		await (await fieldOf(page, HEIGHT)).fill('340 + 2*5');
		await expect(page.locator(`[data-at="${HEIGHT}"]`)).toContainText('= 350');
		await expect(drawn).toHaveValue('350');
		await page.keyboard.press('Control+z');
		await expect(await fieldOf(page, HEIGHT)).toHaveValue('360');
		await expect(drawn).toHaveValue('360');
		await page.keyboard.press('Control+y');
		await expect(drawn).toHaveValue('350');
	});
	await test.step('bad text stays, says what is wrong, and the rest is still planned', async () => {
		await planned(page);
		await expect(figure(page, 'problems')).toHaveText('0');
		await (await fieldOf(page, HEIGHT)).fill('36o');
		const frame = page.locator(`[data-at="${HEIGHT}"]`);
		await expect(frame.getByRole('status')).toContainText('is not a unit of length');
		await expect(await fieldOf(page, HEIGHT)).toHaveAttribute('aria-invalid', 'true');
		await expect(figure(page, 'problems')).not.toHaveText('0');
		await expect(page.getByText('drawn as it last could be planned')).toBeVisible();
		await page.getByRole('button', { name: /^Problems/ }).click();
		const list = page.getByRole('dialog', { name: 'Problems' });
		await list.getByRole('button', { name: 'Show me' }).first().click();
		await expect(await fieldOf(page, HEIGHT)).toBeFocused();
		await expect(await fieldOf(page, HEIGHT)).toHaveValue('36o');
	});
	await test.step('a reload in the middle of a word loses nothing', async () => {
		await (await fieldOf(page, HEIGHT)).fill('');
		await (await fieldOf(page, HEIGHT)).pressSequentially('37x');
		await page.reload();
		await planned(page);
		await arrived(page, 'build');
		await expect(await fieldOf(page, HEIGHT)).toHaveValue('37x');
	});
	await test.step('inches are typed and shown as inches, and mean the same box', async () => {
		await goTo(page, 'Shop');
		await field(page, 'shop/ruler/unit').selectOption({ label: 'inches' });
		await goToCard(page);
		await (await fieldOf(page, HEIGHT)).fill('14 1/2');
		await (await fieldOf(page, HEIGHT)).blur();
		await expect(await fieldOf(page, HEIGHT)).toHaveValue('14 1/2');
		await expect(drawn).toHaveValue('14 1/2');
		await page.reload();
		await planned(page);
		await arrived(page, 'build');
		await expect(await fieldOf(page, HEIGHT)).toHaveValue('14 1/2');
	});
});

test('a parts list is pasted, matched, seen row by row, mended and taken in; an empty job is filled', async ({
	page,
}) => {
	await open(page, './#build/parts');
	await page.getByText('From a spreadsheet or a CSV file').click();
	const cells = page.getByRole('textbox', { name: 'Cells of the parts list' });
	const list = page.getByRole('group', { name: 'Parts list' });
	const takeIn = list.getByRole('button', { name: /^Take in/ });

	// Without headings nobody can tell the columns, and nothing is to be taken in.
	await cells.fill('Shelf;2;70 cm;300;PLY-18\nBad;1;abc;300;oak\nTop;1;500,5;300;ply-18\n');
	await expect(list.getByText('No column is the length.')).toBeVisible();
	await expect(list.getByRole('status')).toHaveText(
		'3 rows to be read, once it is said what is asked here.',
	);
	await expect(takeIn).toBeDisabled();
	for (const [i, meaning] of ['name', 'how many', 'length', 'width', 'board'].entries())
		await list
			.getByRole('combobox', { name: `Column ${i + 1} is` })
			.selectOption({ label: meaning });
	await expect(list.getByRole('status')).toHaveText('2 parts to take in, 1 row to be mended.');
	await expect(
		list.getByRole('row', { name: /^1 good row-1 Shelf 2 700 mm 300 mm/ }),
	).toBeVisible();
	await expect(
		list.getByRole('row', { name: /^3 good row-3 Top 1 500.5 mm 300 mm/ }),
	).toBeVisible();
	const bad = list.getByRole('row').filter({ hasText: '"abc"' });
	await expect(bad).toContainText('There is no board "oak" on the rack.');
	await expect(field(page, 'parts/0/name')).toHaveCount(0);

	// The good rows go in, the bad one stays and is mended where it is shown.
	await list.getByRole('button', { name: 'Take in the 2 good rows' }).click();
	await expect(await fieldOf(page, 'parts/1/name')).toHaveValue('Top');
	await expect(cells).toHaveValue('Bad;1;abc;300;oak\n');
	await page.getByRole('textbox', { name: 'Length in row 1' }).fill('23 5/8 in');
	await page.getByRole('textbox', { name: 'Board in row 1' }).fill('ply-18');
	await page.getByRole('textbox', { name: 'Board in row 1' }).press('Enter');
	await list.getByRole('button', { name: 'Take in 1 part' }).click();
	await expect(await fieldOf(page, 'parts/2/name')).toHaveValue('Bad');
	await expect(cells).toHaveValue('');
	await expect(list.getByRole('status')).toHaveText('1 part taken in.');

	// A file in its own words, of a spreadsheet's Western letters, and one that is no list.
	const file = (name: string, bytes: Buffer): Promise<void> =>
		list.locator('input[type="file"]').setInputFiles({ name, mimeType: 'text/csv', buffer: bytes });
	await file(
		'parts.csv',
		Buffer.from('Material,W (cm),L (cm),Pcs,Part\nply-18,30,6\xbd,4,D\xe9cor\n', 'latin1'),
	);
	await expect(list.getByRole('status')).toHaveText('1 part to take in.');
	await expect(list.getByRole('row', { name: /^2 good row-2 Décor 4 65 mm 300 mm/ })).toBeVisible();
	await turnTo(page, 'boards');
	await turnTo(page, 'build');
	await toThing(page, 'parts');
	await expect(list.getByRole('status')).toHaveText('1 part to take in.');
	await file('book.xlsx', Buffer.from('PK\x03\x04\x14\x00'));
	await expect(list.getByText('This is no text')).toBeVisible();
	await list.getByRole('button', { name: 'Put this list away' }).click();
	await expect(takeIn).toHaveCount(0);

	// A box, a panel and a part are added to an empty job.
	await goTo(page, 'Jobs');
	await page.getByRole('button', { name: 'New empty job' }).click();
	await expect(page.getByText('An empty job card')).toBeVisible();
	await page.getByRole('button', { name: 'Add a box' }).click();
	await expect(page.getByRole('heading', { name: 'Box 1' })).toBeVisible();
	await page.getByRole('button', { name: 'Add a panel' }).click();
	await expect(page.getByRole('heading', { name: 'Panel 1' })).toBeVisible();
	await page.getByRole('link', { name: 'Add a list of parts' }).click();
	await page.getByRole('button', { name: 'Add part' }).click();
	await turnTo(page, 'boards');
	await expect(page.getByRole('heading', { name: /^Sheet 1 of/ }).first()).toBeVisible();
	await planned(page);
	await expect(figure(page, 'problems')).toHaveText('0');
});

test('a page gone to while the job gets its address is arrived at', async ({ page }) => {
	await open(page);
	await page.route('**/_app/immutable/**', async (route) => {
		await page.waitForTimeout(3000); // longer than a plan of the sample takes
		await route.continue();
	});
	await (await fieldOf(page, 'name')).fill('Kept, planned and left at once');
	await goTo(page, 'Jobs');
	await page.unrouteAll({ behavior: 'ignoreErrors' });
});
