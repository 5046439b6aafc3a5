import { expect, type Locator, test } from '@playwright/test';
import { open, planned } from './screen';

/*
 * A figure is emptied to be typed anew. Nothing vanishes meanwhile: the drawings stand as they last
 * could be planned, the field stays where it is, in hand and under the eye.
 */

/** Fields that can be seen, of the first box and of the first panel: every so many of them. */
const EVERY = 2;

async function seen(fields: Locator): Promise<Locator[]> {
	const all = await fields.all();
	const visible = await Promise.all(all.map((f) => f.isVisible()));
	return all.filter((_, i) => visible[i]);
}

test('no drawing goes and no field moves while a figure is typed anew', async ({ page }) => {
	test.setTimeout(300_000);
	await open(page);
	const figures = page.locator(
		'[data-at^="boxes/0/"] input[type=text], [data-at^="panels/0/"] input[type=text]',
	);
	const drawings = page.locator('main svg');
	const there = await drawings.count();
	const tried = (await seen(figures)).filter((_, i) => i % EVERY === 0);
	expect(tried.length).toBeGreaterThan(3);
	for (const one of tried) {
		const was = await one.inputValue();
		await one.focus();
		const before = await one.boundingBox();
		await one.fill('');
		await planned(page);
		expect(await drawings.count()).toBe(there);
		await expect(one).toBeFocused();
		const after = await one.boundingBox();
		expect(Math.abs(after!.y - before!.y)).toBeLessThan(2);
		await one.fill(was);
		await planned(page);
	}
	await expect(page.getByText('drawn as it last could be planned')).toHaveCount(0);
});
