import type { Page } from '@playwright/test';
import { until } from '../browser';

/*
 * Every screen of the built app with a job of strange words in it, each fold of it opened. What is
 * run in the page is given as text: the names that the TypeScript runner gives to functions mean
 * nothing there.
 */

const CHAPTERS = ['build', 'boards', 'cloth', 'order', 'quote', 'print'];
const PLACES = [
	...CHAPTERS.map((chapter) => `#${chapter}`),
	'rack',
	'shop',
	'jobs',
	'trust',
	'bench',
];
const PATIENCE = 120_000;

/** Put into every page before its own scripts: keeps what the browser refuses to run or load. */
export const LISTEN = `{
	globalThis.refused__ = [];
	document.addEventListener('securitypolicyviolation', (event) =>
		globalThis.refused__.push(event.effectiveDirective + ' ' + event.blockedURI));
}`;

/** The words, or the start of them, stand there to be read: in the text, or in a field. */
const SHOWN = `document.body.innerText.includes('ran__') ||
	[...document.querySelectorAll('input, textarea')].some((field) => field.value.includes('ran__'))`;

/** What came of words that were taken for more: run, refused, or a part of the page. */
const AMISS = `[
	...(globalThis.ran__ === undefined ? [] : ['executed']),
	...globalThis.refused__.map((what) => 'refused: ' + what),
	...[...document.querySelectorAll('img[src="x"], [onload], [onerror], [onmouseover], a[href^="javascript:"], a[href*="ran.example"]')]
		.map((element) => 'an element: ' + element.outerHTML.slice(0, 120)),
]`;

/** Opens this job on a page that listens; returns what should not be, screen by screen. */
export async function tour(page: Page, address: string, job: object): Promise<string[]> {
	await page.goto(`${address}jobs`);
	await settled(page);
	const buffer = Buffer.from(JSON.stringify(job));
	const file = { name: 'strange.json', mimeType: 'application/json', buffer };
	await page.getByLabel('Open a file').setInputFiles(file);
	await until(page, SHOWN);
	const found: string[] = [];
	for (const place of PLACES) {
		await page.goto(`${address}${place}`);
		await settled(page);
		if (place.startsWith('#'))
			await page.waitForSelector(`[data-chapter="${place.slice(1)}"]`, { timeout: PATIENCE });
		await page.evaluate(
			'for (const fold of document.querySelectorAll("details")) fold.open = true',
		);
		await until(page, SHOWN);
		const amiss = await page.evaluate<string[]>(AMISS);
		found.push(...amiss.map((what) => `${place}: ${what}`));
	}
	return [...new Set(found)];
}

/** The number of screens that {@link tour} goes through. */
export const SCREENS = PLACES.length;

async function settled(page: Page): Promise<void> {
	await page.waitForSelector('[data-plan="ready"]', { state: 'attached', timeout: PATIENCE });
}
