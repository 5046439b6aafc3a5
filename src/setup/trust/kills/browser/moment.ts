import type { Page } from '@playwright/test';
import type { Random } from '../../../../lib/nest';

/** Something that somebody is at while the browser is killed. */
export interface Moment {
	readonly name: string;
	/** Works until the kill, and tells what the page said to be kept. */
	readonly work: (at: Work) => Promise<void>;
	/** After the next start: what does not stand as it should, in words; null when all does. */
	readonly wrong: (page: Page, address: string) => Promise<string | null>;
}

export interface Work {
	readonly page: Page;
	readonly address: string;
	readonly dice: Random;
	/** The browser is killed in so many ms from now. */
	readonly begins: () => Ending;
}

export interface Ending {
	/** Holds until the kill. */
	readonly goesOn: () => boolean;
}

export const PATIENCE = 120_000;

/** What a page says that shows a sample, for its database came late on a busy machine. */
const LATE = "document.body.textContent.includes('database has not answered yet')";
/** So often a page that came too early is opened anew. */
const TRIES = 5;

/**
 * The page at this address, its plan made of what is in the database. The names that the TypeScript
 * runner gives to functions mean nothing in a page.
 */
export async function toPage(page: Page, address: string): Promise<void> {
	for (let tries = 1; tries <= TRIES; tries++) {
		await page.goto('about:blank');
		await page.goto(address);
		await page.evaluate('globalThis.__name = (made) => made');
		await page.waitForSelector('[data-plan="ready"]', { state: 'attached', timeout: PATIENCE });
		if (!(await page.evaluate<boolean>(LATE))) return;
	}
	throw new Error(`${address}: the database did not answer ${TRIES} times`);
}
