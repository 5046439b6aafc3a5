import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { random, type Random } from '../../../lib/nest';
import { build, isStale } from '../../build.js';
import { serve } from '../../../shop/serve.js';
import { ROOT } from '../../tool.js';
import { Chromium } from '../browser';
import type { Asked, Row } from '../row';

/*
 * Somebody types, and the browser is gone. What stands when it is opened again may be newer than
 * the last word said as kept, never older. By the screen alone: whatever the store is.
 */

/** Where it is typed: a text of the job. */
const FIELD = '[data-at="customer"] :is(input, textarea)';
const PATIENCE = 120_000;
/** Longest time of typing, ms. */
const LONGEST = 4000;

export async function killedBrowser({ seed, count = 200, note }: Asked): Promise<Row> {
	if (isStale() && (await build()) !== 0) throw new Error('the app cannot be built');
	const { address, close } = await serve(join(ROOT, 'build'), 4391);
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-profile-'));
	const dice = random(seed);
	const found: string[] = [];
	let [typed, older, said] = [0, 0, 0];
	for (let n = 0; n < count; n++) {
		const told = await typeAndKill({ folder, address, from: typed, dice });
		typed = told.typed;
		if (told.kept > 0) said++;
		const stands = await standing(folder, address);
		if (!(stands >= told.kept)) {
			older++;
			found.push(`kill ${n}: "${told.kept}" was said as kept, "${stands}" stands`);
		}
		note(`kills of the browser ${n + 1} of ${count}`);
	}
	close();
	rmSync(folder, { recursive: true, force: true });
	return {
		what: 'browser killed while somebody types',
		tried: count,
		survived: count - found.length,
		lost: older,
		found,
		notes: [`${typed} words typed; in ${said} goes some were said as kept before the kill`],
		notCovered: 'killed while booking, upgrading or merging; a cut of the power',
	};
}

interface Typing {
	readonly folder: string;
	readonly address: string;
	/** The number typed last. */
	readonly from: number;
	readonly dice: Random;
}

/** Types number after number until the kill; returns the last typed and the last said as kept. */
async function typeAndKill({
	folder,
	address,
	from,
	dice,
}: Typing): Promise<{ typed: number; kept: number }> {
	const chromium = await Chromium.open(folder);
	const { page } = chromium;
	let kept = 0;
	await page.exposeFunction('told', (value: string) => (kept = Number(value)));
	await toForm(page, address);
	await page.evaluate(watchKept, FIELD);
	const end = performance.now() + dice.unit() * LONGEST;
	let typed = from;
	while (performance.now() < end) {
		await page.fill(FIELD, String(++typed));
		await page.waitForTimeout(dice.int(400));
	}
	await chromium.kill();
	return { typed, kept };
}

async function standing(folder: string, address: string): Promise<number> {
	const chromium = await Chromium.open(folder);
	try {
		await toForm(chromium.page, address);
		return Number(await chromium.page.inputValue(FIELD)) || 0;
	} finally {
		await chromium.kill();
	}
}

async function toForm(page: Page, address: string): Promise<void> {
	await page.goto(`${address}#build`);
	// The names that the TypeScript runner gives to functions mean nothing in a page.
	await page.evaluate('globalThis.__name = (made) => made');
	await page.waitForSelector(FIELD, { state: 'attached', timeout: PATIENCE });
	await page.evaluate(() => {
		for (const folded of document.querySelectorAll('details')) folded.open = true;
	});
	await page.waitForSelector('[data-plan="ready"]', { state: 'attached', timeout: PATIENCE });
}

/**
 * Runs in the page: tells what stands in the field whenever the page comes to say that it is kept.
 */
function watchKept(field: string): void {
	const says = (): string =>
		[...document.querySelectorAll('[role=status]')].map((e) => e.textContent ?? '').join(' ');
	let before = true;
	new MutationObserver(() => {
		const isKept = /\bkept in this browser/.test(says());
		const value = document.querySelector<HTMLInputElement>(field)?.value ?? '';
		if (isKept && !before) (window as unknown as { told(value: string): void }).told(value);
		before = isKept;
	}).observe(document.body, { subtree: true, childList: true, characterData: true });
}
