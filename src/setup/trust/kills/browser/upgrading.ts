import type { Page } from '@playwright/test';
import { until } from '../../browser';
import { type Moment, toPage, type Work } from './moment';
import { LENGTHS, NAME, OLD_SHOP, OWNED, putOldShop } from './old-shop';

/** Of the planner's address and no part of it: nothing there opens the database. */
const BESIDE = 'icon.svg';

/** The planner meets a database of its first version, and is killed while it takes it over. */
export class Upgrading implements Moment {
	readonly name = 'takes over an old database';

	async work({ page, address, begins }: Work): Promise<void> {
		await page.goto(`${address}${BESIDE}`);
		await page.evaluate('globalThis.__name = (made) => made');
		await page.evaluate(putOldShop, OLD_SHOP);
		const { goesOn } = begins();
		void page.goto(`${address}#build`).catch(() => undefined);
		while (goesOn()) await new Promise((done) => setTimeout(done, 5));
	}

	async wrong(page: Page, address: string): Promise<string | null> {
		await toPage(page, `${address}#build/parts`);
		await until(page, `document.querySelector('h1') !== null`);
		const heading = (await page.textContent('h1')) ?? '';
		if (!heading.includes(NAME)) return `"${heading.trim()}" is open instead of "${NAME}"`;
		const lengths = await valuesOf(page, LENGTHS.length, (n) => `parts/${n}/length`);
		await toPage(page, `${address}rack`);
		const owned = await valuesOf(page, 1, () => 'stock/sheets/0/owned');
		const stands = [...lengths, ...owned].join();
		const right = [...LENGTHS, OWNED].join();
		return stands === right ? null : `${stands} stands instead of ${right}`;
	}
}

async function valuesOf(page: Page, count: number, at: (n: number) => string): Promise<number[]> {
	const values: number[] = [];
	for (let n = 0; n < count; n++) {
		const field = `[data-at="${at(n)}"] input`;
		await until(page, `document.querySelector('${field}') !== null`);
		values.push(Number(await page.inputValue(field)));
	}
	return values;
}
