import { expect, type Locator, type Page } from '@playwright/test';

/*
 * How a test knows that what it looks at has arrived. The card, its chapter, the forms in it and
 * the plan come one after the other, and after a change of page the old one stays in view until the
 * new one is there: a test that counts or reads at once reads the page before. Going anywhere goes
 * through here, and waits for that page's own marks.
 */

export const CHAPTERS = ['build', 'boards', 'cloth', 'order', 'quote', 'print'] as const;
export const PAGES = ['Rack', 'Shop', 'Jobs', 'New'] as const;
type Chapter = (typeof CHAPTERS)[number];

/** What only stands on this page once it has arrived, the parts fetched last among it. */
const OWN: Readonly<Record<string, (page: Page) => Locator>> = {
	build: (page) => page.getByRole('navigation', { name: 'Things of the job' }),
	rack: (page) => heading(page, 'Rack'),
	shop: (page) => heading(page, 'Shop'),
	jobs: (page) => page.getByRole('heading', { name: 'Kept here' }),
	start: (page) => heading(page, 'Kerf & Nap'),
};

/** The heading of the page. */
export function heading(page: Page, name: string): Locator {
	return page.getByRole('heading', { level: 1, name, exact: true });
}

/** A figure of the title block or of a table, by its name. */
export function figure(page: Page, name: string): Locator {
	return page.locator(`[data-figure="${name}"]`);
}

/** The field for this place in the job file. */
export function field(page: Page, place: string): Locator {
	return page.locator(`[data-at="${place}"]`).locator('input, select, textarea').first();
}

/**
 * Resolves once the plan on the screen is the one of the job as it stands: no newer one is being
 * made.
 */
export async function planned(page: Page): Promise<void> {
	await expect(page.locator('[data-plan]')).toHaveAttribute('data-plan', 'ready', {
		timeout: 60_000,
	});
}

/** Resolves once this page or chapter, and nothing of the one before, is on the screen. */
export async function arrived(page: Page, place: string): Promise<void> {
	const own = OWN[place];
	if (own) await expect(own(page)).toBeVisible();
	if (isChapter(place)) await expect(page.locator(`[data-chapter="${place}"]`)).toBeVisible();
	if (place === 'build') await forms(page);
}

/** A box or a panel is fetched after its card, the form of the group that stands open after it. */
async function forms(page: Page): Promise<void> {
	const cards = page.getByRole('navigation', { name: 'Things of the job' });
	const made = ['boxes', 'panels'].map((list) => `a[aria-current][href*="/${list}/"]`).join();
	if ((await cards.locator(made).count()) === 0) return;
	await expect(page.locator('[data-group][open] [data-at]').first()).toBeAttached();
}

/** Turns to the card of the thing this place lies in, and gives its field. */
export async function fieldOf(page: Page, place: string): Promise<Locator> {
	const [list = '', index] = place.split('/');
	const isListed = list === 'boxes' || list === 'panels';
	await toThing(page, isListed ? `${list}/${index}` : list === 'parts' ? list : 'about');
	await expect(field(page, place)).toBeVisible();
	return field(page, place);
}

/** Turns to a thing of the job by its card: 'boxes/0', 'parts', 'about'. */
export async function toThing(page: Page, key: string): Promise<void> {
	const cards = page.getByRole('navigation', { name: 'Things of the job' });
	const card = cards.locator(`a[href="#build/${key}"]`).first();
	if ((await card.getAttribute('aria-current')) === null) await card.click();
}

/** Opens a group of figures by one press on its heading; one that stands open stays so. */
export async function openGroup(page: Page, key: string): Promise<void> {
	const group = page.locator(`[data-group="${key}"]`);
	if ((await group.getAttribute('open')) === null) await group.locator('summary').first().click();
	await expect(group, `the group ${key}`).toHaveAttribute('open', '', { timeout: 5_000 });
	await forms(page);
}

/** The figure of a dimension on the drawing, by the place in the job it stands for. */
export function measure(page: Page, place: string): Locator {
	return page.locator(`[data-measure="${place}"]`);
}

/** Opens a page of the planner, whole, with its plan made. */
export async function open(page: Page, address = './#build'): Promise<void> {
	await page.goto(address);
	await planned(page);
	const place = address.replace(/^(\.\/)?#?/, '').replace(/\/.*$/, '');
	await arrived(page, place === '' ? 'build' : place);
}

/** Goes to the bench by the line at the top; it begins at this cut. */
export async function goToBench(page: Page, cut = 1): Promise<void> {
	await page.getByRole('link', { name: 'Bench', exact: true }).click();
	await atCut(page, cut);
}

/** The bench shows this cut. */
export async function atCut(page: Page, cut: number): Promise<void> {
	await expect(page.getByText(new RegExp(`^Cut ${cut} of`))).toBeVisible({ timeout: 60_000 });
}

/** Goes to a page by the line at the top. */
export async function goTo(page: Page, name: 'Jobs' | 'Rack' | 'Shop' | 'New'): Promise<void> {
	await page.getByRole('link', { name, exact: true }).click();
	await arrived(page, name === 'New' ? 'start' : name.toLowerCase());
}

/** Goes to the job card by the line at the top; it opens at its first chapter. */
export async function goToCard(page: Page): Promise<void> {
	await page.getByRole('link', { name: 'Job card', exact: true }).click();
	await arrived(page, 'build');
}

/** Turns to a chapter by its stub. */
export async function turnTo(page: Page, chapter: Chapter): Promise<void> {
	await page.locator(`nav[aria-label="Chapters"] a[href="#${chapter}"]`).click();
	await arrived(page, chapter);
}

function isChapter(place: string): place is Chapter {
	return CHAPTERS.some((c) => c === place);
}
