import { expect, test, type Page } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { goTo, goToCard, open, planned, fieldOf } from './screen';

const kept = (page: Page) => expect(page.getByText('kept in this browser')).toBeVisible();
const line = (page: Page, name: string) => page.getByRole('listitem').filter({ hasText: name });
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

/** A job of this name from the first sample, with its height set. */
async function job(page: Page, name: string, height: string): Promise<void> {
	await goTo(page, 'Jobs');
	await button(page, /^Camper van/)
		.first()
		.click();
	await (await fieldOf(page, 'name')).fill(name);
	await (await fieldOf(page, 'boxes/0/shape/height')).fill(height);
	await kept(page);
}

async function twoJobs(page: Page): Promise<void> {
	await open(page);
	await job(page, 'First of two', '361');
	await job(page, 'Second of two', '362');
	await goTo(page, 'Jobs');
}

/** Wipes whatever the browser keeps, while no page of the planner is open. */
async function wipe(page: Page): Promise<void> {
	await page.goto('icon.svg');
	await page.evaluate(async () => {
		localStorage.clear();
		sessionStorage.clear();
		await new Promise<void>((resolve, reject) => {
			const request = indexedDB.deleteDatabase('kerf-and-nap');
			request.onsuccess = () => resolve();
			request.onerror = () => reject(new Error('not deleted'));
		});
	});
}

test('a backup brings back what was wiped; the trash; a torn record', async ({ page }) => {
	await twoJobs(page);
	await test.step('everything saved to a file, wiped and brought back is the same', async () => {
		const saved = page.waitForEvent('download');
		await button(page, 'Save everything to a file').click();
		const path = await (await saved).path();
		const text = await readFile(path, 'utf8');
		const back = (name: string, content: string) =>
			page.getByLabel('Bring back from a file').setInputFiles({
				...{ name, mimeType: 'application/json' },
				buffer: Buffer.from(content),
			});
		await wipe(page);
		await open(page, 'jobs');
		await expect(line(page, 'First of two')).toHaveCount(0);
		await back('torn.json', text.slice(0, text.length / 2));
		await expect(page.getByRole('alert').filter({ hasText: 'torn.json' })).toContainText('torn');
		await back('job.json', '{"name":"A job"}');
		await expect(page.getByRole('alert').filter({ hasText: 'job.json' })).toContainText(
			'Choose a file that “Save everything to a file” made',
		);
		await back('all.json', text);
		await button(page, 'In place of what is here').click();
		await button(page, 'Put the file in place of it').click();
		await expect(page.getByText('Brought back in place of what was here: 3 jobs')).toBeVisible();
		await back('all.json', text);
		await button(page, 'Beside what is here').click();
		await expect(page.getByText('3 jobs were here just the same.')).toBeVisible();
		for (const [name, height] of [
			['First of two', '361'],
			['Second of two', '362'],
		] as const) {
			const open = button(page, `Open ${name}`);
			if (await open.isEnabled()) await open.click();
			else await goToCard(page);
			await expect(await fieldOf(page, 'name')).toHaveValue(name);
			await expect(await fieldOf(page, 'boxes/0/shape/height')).toHaveValue(height);
			await goTo(page, 'Jobs');
		}
	});
	await test.step('a job thrown away comes back, and is erased when the trash is emptied', async () => {
		await button(page, 'Throw away First of two').click();
		await expect(page.getByRole('heading', { name: 'Thrown away' })).toBeVisible();
		await expect(line(page, 'First of two')).toContainText(/thrown away .*\d/);
		await button(page, 'Put back First of two').click();
		await expect(page.getByRole('heading', { name: 'Thrown away' })).toHaveCount(0);
		await expect(line(page, 'First of two')).toContainText('changed');
		await button(page, 'Throw away First of two').click();
		await button(page, 'Put it back').click();
		await expect(line(page, 'First of two')).toContainText('changed');
		await button(page, 'Throw away First of two').click();
		await button(page, 'Empty the trash').click();
		await expect(page.getByText('Erase 1 job for good?')).toBeVisible();
		await button(page, 'Leave as it is').click();
		await expect(line(page, 'First of two')).toBeVisible();
		await button(page, 'Empty the trash').click();
		await button(page, 'Erase 1 job').click();
		await expect(page.getByText('Erased for good: 1 job.')).toBeVisible();
		await page.reload();
		await planned(page);
		await expect(line(page, 'Second of two')).toBeVisible();
		await expect(line(page, 'First of two')).toHaveCount(0);
	});
	await test.step('a torn record says so and is saved as it lies, be it a list', async () => {
		await page.evaluate(
			() =>
				new Promise<void>((resolve, reject) => {
					const request = indexedDB.open('kerf-and-nap');
					request.onerror = () => reject(new Error('not opened'));
					request.onsuccess = () => {
						const writing = request.result.transaction('jobs', 'readwrite');
						const torn = { id: 'torn', name: 'Torn list', file: [1, 2], changed: 'x' };
						writing.objectStore('jobs').put({ ...torn, sharesRack: false });
						writing.oncomplete = () => resolve(request.result.close());
					};
				}),
		);
		await page.reload();
		await planned(page);
		await expect(line(page, 'Torn list')).toContainText('This record is torn');
		await expect(button(page, 'Open Torn list')).toBeDisabled();
		await expect(button(page, 'Copy Torn list')).toBeDisabled();
		const saved = page.waitForEvent('download');
		await button(page, 'Save raw record Torn list').click();
		const raw = JSON.parse(await readFile(await (await saved).path(), 'utf8')) as unknown;
		expect(raw).toMatchObject({ id: 'torn', file: [1, 2] });
	});
});

test('an earlier state is kept, compared with now, gone back to in one step, and opened apart', async ({
	page,
}) => {
	await open(page);
	await job(page, 'In two states', '361');
	await goTo(page, 'Jobs');
	await page.getByLabel('In a word, why').fill('as ordered');
	await button(page, 'Keep this one').click();
	await expect(page.getByText('Kept: as ordered.')).toBeVisible();
	await button(page, 'Keep this one').click();
	await expect(page.getByText('The job stands as in the last one kept')).toBeVisible();
	await button(page, 'Compare with now as ordered').click();
	await expect(page.getByText('Nothing has changed since.')).toBeVisible();
	await goToCard(page);
	await (await fieldOf(page, 'boxes/0/shape/height')).fill('391');
	await (await fieldOf(page, 'customer')).fill('Ada');
	await goTo(page, 'Jobs');
	await button(page, 'Compare with now as ordered').click();
	await expect(page.getByText('2 changes')).toBeVisible();
	await expect(page.getByRole('row', { name: /Form Height 361 mm 391 mm/ })).toBeVisible();
	await expect(page.getByRole('row', { name: /The job Customer .* Ada/ })).toBeVisible();
	for (const name of ['Sheets to buy', 'Cloth to pull', 'Order', 'Quote'])
		await expect(
			page.getByRole('row', { name: new RegExp(`^${name} .*\\d.* .*\\d`) }),
		).toBeVisible();
	await button(page, 'Go back to it as ordered').click();
	await expect(page.getByText('The job is as it was then.')).toBeVisible();
	await expect(page.getByText('before: go back to').first()).toBeVisible();
	await goToCard(page);
	await expect(await fieldOf(page, 'boxes/0/shape/height')).toHaveValue('361');
	await page.keyboard.press('Control+z');
	await expect(await fieldOf(page, 'boxes/0/shape/height')).toHaveValue('391');
	await expect(await fieldOf(page, 'customer')).toHaveValue('Ada');
	await goTo(page, 'Jobs');
	await button(page, 'Open as a job of its own as ordered').click();
	await expect(await fieldOf(page, 'name')).toHaveValue(/^In two states \(as of /);
	await expect(await fieldOf(page, 'boxes/0/shape/height')).toHaveValue('361');
	await goTo(page, 'Jobs');
	await expect(button(page, /^Open In two states$/)).toBeEnabled();
});
