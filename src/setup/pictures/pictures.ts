import { chromium, type Browser } from '@playwright/test';
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { plan } from '../../lib/plan';
import { type Page as Paper, printPack, drawingSvg } from '../../lib/print';
import { build, isStale } from '../build.js';
import { serve } from '../../shop/serve.js';
import { ROOT } from '../tool.js';

/*
 * The pictures of the README, made from what the app really shows and prints, so that they cannot
 * flatter.
 */

const OUT = join(ROOT, 'static', 'pictures');
const FACES = join(ROOT, 'node_modules/@expo-google-fonts/ibm-plex-sans-condensed');

async function screen(browser: Browser, address: string): Promise<void> {
	const page = await browser.newPage({ viewport: { width: 1360, height: 920 } });
	await page.goto(`${address}#boards`);
	await page.locator('[data-figure="sheets"]').filter({ hasText: /^\d+$/ }).waitFor();
	// The drawing of the first sheet is there; give the faces a moment to settle.
	await page.waitForTimeout(1500);
	await page.screenshot({ path: join(OUT, 'app.png') });
	await page.close();
}

/** One printed page, drawn by the SVG pen at about 110 dots to the inch. */
async function paper(browser: Browser, sheet: Paper, name: string): Promise<void> {
	const scale = 110 / 25.4;
	const viewport = {
		width: Math.round(sheet.width * scale),
		height: Math.round(sheet.height * scale),
	};
	const page = await browser.newPage({ viewport });
	const face = (file: string, weight: number): string => {
		const bytes = readFileSync(join(FACES, file)).toString('base64');
		return `@font-face { font-family: 'IBM Plex Sans Condensed'; font-weight: ${weight}; src: url(data:font/ttf;base64,${bytes}); }`;
	};
	const faces =
		face('400Regular/IBMPlexSansCondensed_400Regular.ttf', 400) +
		face('600SemiBold/IBMPlexSansCondensed_600SemiBold.ttf', 600);
	const svg = drawingSvg(sheet, { colours: 'inline' });
	await page.setContent(
		`<style>${faces} body { margin: 0; background: white } svg { display: block; width: 100vw; height: auto }</style>${svg}`,
	);
	await page.waitForTimeout(500);
	await page.screenshot({ path: join(OUT, name) });
	await page.close();
}

async function makePictures(): Promise<void> {
	mkdirSync(OUT, { recursive: true });
	if (isStale() && (await build()) !== 0) throw new Error('The app could not be built.');
	const { address, close } = await serve(join(ROOT, 'build'), 4380);
	const executablePath = process.env['CHROMIUM'];
	const browser = await chromium.launch({
		...(executablePath ? { executablePath } : {}),
		args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
	});
	const job: unknown = JSON.parse(
		readFileSync(join(ROOT, 'shared/jobs/camper-bench.json'), 'utf8'),
	);
	const pages = printPack(await plan(job));
	const sheet = pages.find((p) => p.name.includes('sheet 2 of 2')) ?? pages[0];
	await screen(browser, address);
	if (sheet) await paper(browser, sheet, 'sheet.png');
	await browser.close();
	close();
	process.stdout.write(`Pictures are in ${pathToFileURL(OUT).href}\n`);
}

await makePictures();
