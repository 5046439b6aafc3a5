import { expect, type Locator, type Page } from '@playwright/test';

/** A figure of the title block or of a table, by its name. */
export function figure(page: Page, name: string): Locator {
	return page.locator(`[data-figure="${name}"]`);
}

/** The field for this place in the job file. */
export function field(page: Page, place: string): Locator {
	return page.locator(`[data-at="${place}"]`).locator('input, select, textarea').first();
}

/** Resolves once the plan of the open job is on the screen and no newer one is being made. */
export async function planned(page: Page): Promise<void> {
	await expect(figure(page, 'sheets')).toHaveText(/^\d+$/, { timeout: 30_000 });
}

/** Opens a page of the planner with its plan made. */
export async function open(page: Page, address = './'): Promise<void> {
	await page.goto(address);
	await planned(page);
}

export const CHAPTERS = ['build', 'boards', 'cloth', 'order', 'quote', 'print'] as const;
export const PAGES = ['rack', 'shop', 'jobs'] as const;
