import { expect, test, type Page } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { field, goTo, goToCard, open, planned } from './screen';

const kept = (page: Page) => expect(page.getByText('kept in this browser')).toBeVisible();
const line = (page: Page, name: string) => page.getByRole('listitem').filter({ hasText: name });
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

/** A job of this name from the first sample, with its height set. */
async function job(page: Page, name: string, height: string): Promise<void> {
	await goTo(page, 'Jobs');
	await button(page, /^Camper van/)
		.first()
		.click();
	await field(page, 'name').fill(name);
	await field(page, 'boxes/0/shape/height').fill(height);
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

test('a job thrown away lies apart, comes back, and is erased when the trash is emptied', async ({
	page,
}) => {
	await twoJobs(page);
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

test('everything saved to a file, wiped and brought back is the same', async ({ page }) => {
	await twoJobs(page);
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
		await expect(field(page, 'name')).toHaveValue(name);
		await expect(field(page, 'boxes/0/shape/height')).toHaveValue(height);
		await goTo(page, 'Jobs');
	}
});

test('a torn record says so and is saved as it lies, be it a list', async ({ page }) => {
	await twoJobs(page);
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
