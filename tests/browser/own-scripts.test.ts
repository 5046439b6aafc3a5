import { expect, test, type Page } from '@playwright/test';
import { CHAPTERS, open, turnTo } from './screen';

declare global {
	interface Window {
		/** What the browser refused to run, load or ask, as the names of the rules. */
		refused: string[];
		ran: string[];
	}
}

function watch(): void {
	window.refused = [];
	window.ran = [];
	document.addEventListener('securitypolicyviolation', (event) => {
		window.refused.push(event.effectiveDirective);
	});
}

const refused = (page: Page): Promise<string[]> => page.evaluate(() => window.refused);

test('a page runs the files of the app and nothing else, and asks no other host', async ({
	page,
}) => {
	await page.addInitScript(watch);
	await open(page);
	for (const chapter of CHAPTERS) await turnTo(page, chapter);
	expect(await refused(page)).toEqual([]);

	await page.evaluate(() => {
		const script = document.createElement('script');
		script.textContent = 'window.ran.push("script")';
		document.head.append(script);
		document.body.insertAdjacentHTML(
			'beforeend',
			'<img src="data:," onerror="window.ran.push(1)">',
		);
		// Later, for what is run from outside the page is let through.
		setTimeout(() => Reflect.construct(Function, ['window.ran.push("text")'])(), 0);
		fetch('https://elsewhere.example/').catch(() => undefined);
	});
	await expect
		.poll(async () => [...new Set(await refused(page))].sort())
		.toEqual(['connect-src', 'script-src', 'script-src-attr', 'script-src-elem']);
	expect(await page.evaluate(() => window.ran)).toEqual([]);
});
