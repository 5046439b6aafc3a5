import { expect, test } from '@playwright/test';
import { createHash } from 'node:crypto';
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { serve } from '../../src/shop/serve.js';
import { goTo, planned } from './screen';

test.use({ serviceWorkers: 'allow' });

/** The chunk of the page Jobs, which the job card does not come with. */
async function jobsChunk(site: string): Promise<string> {
	const chunks = join(site, '_app/immutable');
	for (const folder of ['nodes', 'chunks']) {
		for (const name of await readdir(join(chunks, folder)))
			if ((await readFile(join(chunks, folder, name), 'utf8')).includes('Bring back from a file'))
				return `${folder}/${name}`;
	}
	throw new Error('the page Jobs is in no chunk');
}

/**
 * The next version, as another build of it would lie there: this chunk, and whatever names it, has
 * another name.
 */
async function publishNext(site: string, chunk: string): Promise<string> {
	const texts = new Map<string, string>();
	for (const file of await readdir(site, { recursive: true }))
		if (/\.(js|html)$/.test(file)) texts.set(file, await readFile(join(site, file), 'utf8'));
	const renamed = new Map([[basename(chunk), nextName(chunk)]]);
	for (const [old, next] of renamed)
		for (const [file, text] of texts) {
			if (!text.includes(old)) continue;
			texts.set(file, text.replaceAll(old, next));
			if (file.includes('immutable')) renamed.set(basename(file), nextName(file));
		}
	for (const [file, text] of texts) {
		await rm(join(site, file));
		const name = renamed.get(basename(file)) ?? basename(file);
		await writeFile(join(site, dirname(file), name), allowed(text));
	}
	return nextName(chunk);
}

const nextName = (file: string): string =>
	basename(file).replace(/[\w-]{8}(?=\.js$)/, (mark) => [...mark].reverse().join(''));

/** A page allows its own script by what stands in it. */
function allowed(page: string): string {
	const [, script] = /<script>([\s\S]*?)<\/script>/.exec(page) ?? [];
	if (script === undefined) return page;
	const mark = createHash('sha256').update(script).digest('base64');
	return page.replace(/'sha256-[^']+'/, `'sha256-${mark}'`);
}

test('a new version waits: the open page keeps its chunks, says so, and reloads when told', async ({
	page,
}) => {
	const site = await mkdtemp(join(tmpdir(), 'kerf-and-nap-site-'));
	await cp('build', site, { recursive: true });
	const { address, close } = await serve(site, 4700);
	const asked: string[] = [];
	page.on('response', (response) => asked.push(response.url()));
	try {
		await page.goto(address);
		await planned(page);
		await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
		const chunk = await jobsChunk(site);
		const next = await publishNext(site, chunk);
		expect((await page.request.get(`${address}_app/immutable/${chunk}`)).status()).toBe(404);
		await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
		await expect(page.getByText('A new version of the planner is here.')).toBeVisible();
		await goTo(page, 'Jobs'); // by a chunk that the host has no more
		expect(asked.some((url) => url.endsWith(chunk))).toBe(true);

		const other = await page.context().newPage();
		await other.goto(address);
		await planned(other);
		await page.getByRole('button', { name: 'Reload' }).click();
		await expect(page.getByText('Other windows still work with the version before.')).toBeVisible();
		await goTo(other, 'Jobs');
		await other.close();

		await Promise.all([
			page.waitForEvent('load'),
			page.getByRole('button', { name: 'Reload' }).click(),
		]);
		await planned(page);
		await expect(page.getByText('A new version of the planner is here.')).toHaveCount(0);
		expect(asked.some((url) => url.endsWith(next))).toBe(true);
		const shelves = () => page.evaluate(async () => (await caches.keys()).length);
		await expect.poll(shelves).toBe(1); // a page of its own stands alone: the old one is gone
	} finally {
		close();
		await rm(site, { recursive: true });
	}
});
