import { expect, test, type Locator, type Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { figure, heading, open, openGroup, planned, toThing } from './screen';

/*
 * A figure is emptied to be typed anew. Nothing vanishes meanwhile: the drawings stand as they last
 * could be planned, the field stays where it is, in hand and under the eye; on the drawing and
 * beside it. Then the heading of the next group is pressed, and opens it.
 */

/** Of the fields beside the drawing: every so many of them; before a release all. */
const EVERY = process.env['DEPTH'] === 'deep' ? 1 : 3;

/** Each thing of the sample, with the groups whose fields are tried; null for all of them. */
const THINGS = [
	['boxes/0', null],
	['panels/0', null],
	['panels/1', null],
	['panels/2', ['opening']],
] as const;

type Things = Readonly<Record<string, readonly unknown[]>>;
const SAMPLE = JSON.parse(readFileSync('shared/jobs/camper-bench.json', 'utf8')) as Things;

/**
 * Opens one thing of the sample in a job of its own: at every figure the whole job is planned anew,
 * twice. What it is now called in the job comes back.
 */
async function openAlone(page: Page, thing: string): Promise<string> {
	const [list = '', index] = thing.split('/');
	const alone = { ...SAMPLE, name: 'Alone', options: [], boxes: [], panels: [] };
	const file = { ...alone, [list]: [SAMPLE[list]?.[Number(index)]] };
	await open(page, 'jobs');
	await page.getByLabel('Open a file').setInputFiles({
		...{ name: 'alone.json', mimeType: 'application/json' },
		buffer: Buffer.from(JSON.stringify(file)),
	});
	await expect(heading(page, 'Alone')).toBeVisible();
	await toThing(page, `${list}/0`);
	await planned(page);
	await expect(figure(page, 'problems')).toHaveText('0');
	return `${list}/0`;
}

const topOf = (field: Locator): Promise<number> =>
	field.evaluate((f) => f.getBoundingClientRect().y);

const marks = (page: Page): Promise<number> => page.locator('.stage svg path').count();

/** What these fields are called, as far as they can be seen and typed in. */
function named(fields: Locator): Promise<string[]> {
	return fields.evaluateAll((all) =>
		all
			.filter((f) => f.checkVisibility() && !(f as HTMLInputElement).readOnly)
			.map((f) => (f as HTMLElement).dataset['measure'] ?? f.id),
	);
}

/** Empties a field and takes it back: all the while it stays where it is, with the keyboard. */
async function retype(page: Page, name: string): Promise<void> {
	const one = page.locator(`input[data-measure="${name}"], input[id="${name}"]`);
	await planned(page);
	const was = await one.inputValue();
	await one.focus();
	const drawn = await marks(page);
	const before = await topOf(one);
	const stays = async (when: string): Promise<void> => {
		await expect.soft(one, `${name} is in hand ${when}`).toBeFocused({ timeout: 5_000 });
		const moved = Math.abs((await topOf(one)) - before);
		expect.soft(moved, `how far ${name} moved ${when}`).toBeLessThan(2);
	};
	await one.fill('');
	await planned(page);
	await stays('while it was empty');
	expect.soft(await marks(page), `drawn with ${name} empty`).toBeGreaterThanOrEqual(drawn);
	await page.keyboard.press('Escape');
	await expect(one, name).toHaveValue(was);
	await planned(page);
	await stays('when it was taken back');
}

/** Unfolds what is folded away in a group, fold in fold. */
async function unfold(page: Page, group: string): Promise<void> {
	const folds = page.locator(`[data-group="${group}"] details:not([open]) > summary`);
	while ((await folds.count()) > 0) await folds.first().click();
}

/** The groups of figures beside the drawing, in their order. */
function groupsOf(page: Page): Promise<string[]> {
	return page
		.locator('[data-group]')
		.evaluateAll((all) =>
			all.map((g) => (g as HTMLElement).dataset['group'] ?? '').filter((g) => g !== 'figures'),
		);
}

for (const [thing, some] of THINGS) {
	test(`no drawing goes and no field moves while a figure of ${thing} is typed anew`, async ({
		page,
	}) => {
		test.setTimeout(400_000);
		const here = await openAlone(page, thing);
		const measures = await named(page.locator(`input[data-measure^="${here}/"]`));
		for (const name of measures) await retype(page, name);
		expect(measures.length).toBeGreaterThan(1);
		let tried = 0;
		for (const group of some ?? (await groupsOf(page))) {
			await openGroup(page, group);
			await unfold(page, group);
			const fields = await named(page.locator(`[data-group="${group}"] input[type=text]`));
			for (const name of fields.filter((_, i) => i % EVERY === 0)) {
				await retype(page, name);
				tried++;
			}
		}
		console.log(`${thing}: ${measures.length} dimensions and ${tried} fields typed anew`);
		expect(tried).toBeGreaterThan(some === null ? 6 : 0);
		await planned(page);
		await expect(page.getByText('drawn as it last could be planned')).toHaveCount(0);
	});
}

test('a heading pressed while a field is wrong opens its group, and stays under the mouse', async ({
	page,
}) => {
	await open(page);
	const groups = await groupsOf(page);
	for (const [i, group] of groups.slice(0, 4).entries()) {
		await openGroup(page, group);
		const [name] = await named(page.locator(`[data-group="${group}"] input[type=text]`));
		if (name === undefined) continue;
		const next = page.locator(`[data-group="${groups[i + 1]}"]`);
		const heading = next.locator('summary').first();
		const one = page.locator(`input[id="${name}"]`);
		await one.fill('not a figure');
		await planned(page);
		await heading.scrollIntoViewIfNeeded();
		const { x, y, height } = (await heading.boundingBox())!;
		await page.mouse.move(x + 20, y + height / 2);
		await page.mouse.down();
		await page.evaluate(() => new Promise((after) => requestAnimationFrame(after)));
		await page.mouse.up();
		await expect(next, `after ${name}`).toHaveAttribute('open', '', { timeout: 5_000 });
		await planned(page);
		const moved = Math.abs((await topOf(heading)) - y);
		expect.soft(moved, `how far the heading after ${name} moved`).toBeLessThan(2);
		await page.keyboard.press('Control+z');
		await planned(page);
	}
});
