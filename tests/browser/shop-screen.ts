import type { Page } from '@playwright/test';
import { arrived, fieldOf, goTo, planned } from './screen';

/* What the tests of several devices at one shop do at each of them. */

export const TABLET = { viewport: { width: 820, height: 1180 }, hasTouch: true };
export const WORK = 'work: change jobs and rack';

/** Opens the job of this name from the list of jobs. */
export async function opens(page: Page, name: string): Promise<void> {
	await page.getByRole('button', { name: `Open ${name}` }).click();
	await arrived(page, 'build');
	await planned(page);
}

/** A job of the sample, begun here under this name. */
export async function begins(page: Page, name: string): Promise<void> {
	await goTo(page, 'Jobs');
	await page
		.getByRole('button', { name: /^Camper/ })
		.first()
		.click();
	await arrived(page, 'build');
	await (await fieldOf(page, 'name')).fill(name);
	await planned(page);
}
