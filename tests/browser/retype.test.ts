import { expect, test, type Page } from '@playwright/test';
import { open, planned, toThing } from './screen';

/*
 * A figure is emptied to be typed anew. Nothing vanishes meanwhile: the drawings stand as they last
 * could be planned, the field stays where it is, in hand and under the eye; on the drawing and
 * beside it.
 */

/** Each thing of the sample, with the group whose fields are tried beside its drawing. */
const THINGS = [
	['boxes/0', 'form'],
	['panels/0', 'opening'],
	['panels/1', 'opening'],
	['panels/2', null],
] as const;

interface Spot {
	readonly x: number;
	readonly y: number;
}

const spotOf = (page: Page): Promise<Spot> =>
	page.evaluate(() => {
		const { x, y } = document.activeElement!.getBoundingClientRect();
		return { x, y };
	});

const marks = (page: Page): Promise<number> => page.locator('.stage svg path').count();

/** Empties each of these fields in turn and takes it back; what they are called when one jumped. */
async function retyped(page: Page, selector: string): Promise<number> {
	const names = await page
		.locator(selector)
		.evaluateAll((all) => all.map((f) => (f as HTMLElement).dataset['measure'] ?? f.id));
	let tried = 0;
	for (const name of names) {
		const one = page.locator(`input[data-measure="${name}"], input[id="${name}"]`);
		if (!(await one.isVisible()) || !(await one.isEditable())) continue;
		const was = await one.inputValue();
		await planned(page);
		await one.focus();
		const drawn = await marks(page);
		const before = await spotOf(page);
		await one.fill('');
		await planned(page);
		await expect(one, name).toBeFocused();
		const after = await spotOf(page);
		expect(Math.abs(after.y - before.y), name).toBeLessThan(2);
		expect(await marks(page), name).toBeGreaterThanOrEqual(drawn);
		await page.keyboard.press('Escape');
		await expect(one, name).toHaveValue(was);
		await expect(one, name).toBeFocused();
		tried++;
	}
	return tried;
}

for (const [thing, first] of THINGS) {
	test(`no drawing goes and no field moves while a figure of ${thing} is typed anew`, async ({
		page,
	}) => {
		test.setTimeout(400_000);
		await open(page);
		await toThing(page, thing);
		await planned(page);
		const measures = await retyped(page, `input[data-measure^="${thing}/"]`);
		expect(measures).toBeGreaterThan(1);
		const tried =
			first === null ? 0 : await retyped(page, `[data-group="${first}"] input[type=text]`);
		console.log(`${thing}: ${measures} dimensions and ${tried} fields typed anew`);
		await planned(page);
		await expect(page.getByText('drawn as it last could be planned')).toHaveCount(0);
	});
}
