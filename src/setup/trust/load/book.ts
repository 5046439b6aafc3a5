import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CDPSession, Page } from '@playwright/test';
import { build, isStale } from '../../build.js';
import { serve } from '../../../shop/serve.js';
import { ROOT } from '../../tool.js';
import { Chromium, until } from '../browser';
import type { Row } from '../row';

/*
 * A book of many jobs in the browser's own database, by the screen alone: brought back from a
 * backup, listed after a new start, one opened out of the middle, one more made.
 */

const JOBS = 1000;
/** Seconds of work of the page, and MiB of its heap, that the list may take. */
const MOST = { work: 20, heap: 512 };
const PATIENCE = 300_000;

const nameOf = (n: number): string => `Book ${String(n).padStart(4, '0')}`;

/** A backup of so many jobs: the samples in turn, each under a name of its own. */
function bookOf(count: number): string {
	const folder = join(ROOT, 'shared', 'jobs');
	const samples = readdirSync(folder)
		.filter((name) => name.endsWith('.json'))
		.sort()
		.map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as object);
	const jobs = Array.from({ length: count }, (_, n) => ({
		...{ id: `book-${n}`, name: nameOf(n), changed: 1_700_000_000_000 + n, sharesRack: false },
		file: { ...samples[n % samples.length], name: nameOf(n) },
	}));
	const everything = { jobs, things: [], updates: [], steps: [], revisions: [] };
	return JSON.stringify({ format: 'kerf-and-nap backup', version: 1, at: 0, everything });
}

interface Taken {
	/** Seconds the main thread of the page worked. */
	readonly work: number;
	/** Seconds that passed. */
	readonly passed: number;
	/** MiB in the page's heap once rubbish is collected. */
	readonly heap: number;
}

export async function book(): Promise<Row> {
	if (isStale() && (await build()) !== 0) throw new Error('the app cannot be built');
	const { address, close } = await serve(join(ROOT, 'build'), 4441);
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-profile-'));
	const chromium = await Chromium.open(folder);
	try {
		const file = join(folder, 'book.json');
		writeFileSync(file, bookOf(JOBS));
		return rowOf(await throughBook(chromium.page, address, file));
	} finally {
		await chromium.kill();
		close();
		rmSync(folder, { recursive: true, force: true });
	}
}

interface Seen {
	readonly size: number;
	readonly few: Taken;
	readonly brought: Taken;
	readonly listed: Taken;
	readonly opened: Taken;
	readonly rows: number;
	readonly name: string;
}

async function throughBook(page: Page, address: string, file: string): Promise<Seen> {
	const meter = await page.context().newCDPSession(page);
	await meter.send('Performance.enable');
	page.setDefaultTimeout(PATIENCE);
	await toJobs(page, address, 0);
	const few = await timed(meter, () => toJobs(page, address, 0));
	const brought = await timed(meter, async () => {
		await page.getByLabel('Bring back from a file').setInputFiles(file);
		await press(page, 'In place of what is here');
		await press(page, 'Put the file in place of it');
		await until(page, `document.body.textContent.includes('Brought back in place')`);
	});
	const listed = await timed(meter, () => toJobs(page, address, JOBS));
	const rows = await page.evaluate<number>(ROWS);
	const wanted = nameOf(JOBS / 2);
	const opened = await timed(meter, async () => {
		await press(page, `Open ${wanted}`);
		await page.waitForSelector('[data-at="name"] input', { timeout: PATIENCE });
		await page.waitForSelector('[data-plan="ready"]', { state: 'attached', timeout: PATIENCE });
	});
	const name = await page.inputValue('[data-at="name"] input');
	return { size: statSync(file).size / 2 ** 20, few, brought, listed, opened, rows, name };
}

const press = (page: Page, name: string): Promise<void> =>
	page.getByRole('button', { name, exact: true }).click({ timeout: PATIENCE });

const ROWS = `[...document.querySelectorAll('button')].filter((b) => /^Open\\s*Book \\d/.test(b.textContent.trim())).length`;

/** The list of jobs after a start of the app, with at least so many in it. */
async function toJobs(page: Page, address: string, least: number): Promise<void> {
	await page.goto('about:blank');
	await page.goto(`${address}jobs`);
	await page.waitForSelector('[data-plan="ready"]', { state: 'attached', timeout: PATIENCE });
	await until(page, `document.body.textContent.includes('Kept here')`);
	await until(page, `${ROWS} >= ${least}`);
}

async function timed(meter: CDPSession, does: () => Promise<void>): Promise<Taken> {
	const [before, from] = [await metric(meter, 'TaskDuration'), performance.now()];
	await does();
	const passed = (performance.now() - from) / 1000;
	const after = await metric(meter, 'TaskDuration');
	await meter.send('HeapProfiler.collectGarbage');
	const heap = (await metric(meter, 'JSHeapUsedSize')) / 2 ** 20;
	// Another process of the browser counts from nothing.
	return { work: after >= before ? after - before : after, passed, heap };
}

async function metric(meter: CDPSession, name: string): Promise<number> {
	const { metrics } = await meter.send('Performance.getMetrics');
	return metrics.find((one) => one.name === name)?.value ?? NaN;
}

function rowOf({ size, few, brought, listed, opened, rows, name }: Seen): Row {
	const found = [
		...(rows === JOBS ? [] : [`${rows} of ${JOBS} jobs are listed`]),
		...(name === nameOf(JOBS / 2) ? [] : [`"${name}" was opened`]),
		...(listed.work <= MOST.work ? [] : [`listed in ${listed.work.toFixed(1)} s of work`]),
		...(listed.heap <= MOST.heap ? [] : [`${listed.heap.toFixed(0)} MiB to list them`]),
	];
	const figures = ({ work, passed, heap }: Taken): string =>
		`${work.toFixed(1)} s of work, ${passed.toFixed(1)} s passed, ${heap.toFixed(0)} MiB of heap`;
	return {
		what: 'a book of jobs in the browser',
		tried: JOBS,
		survived: found.length === 0 ? JOBS : Math.min(rows, JOBS - 1),
		slowest: listed.work,
		peak: Math.max(brought.heap, listed.heap, opened.heap),
		found,
		notes: [
			`${JOBS} jobs, ${size.toFixed(1)} MiB as a backup; brought back: ${figures(brought)}`,
			`listed after a start: ${figures(listed)}; with the sample alone: ${figures(few)}`,
			`one opened out of the middle and planned: ${figures(opened)}`,
		],
		notCovered: 'the screen with a job of 2,000 parts in it; such a book on a phone',
	};
}
