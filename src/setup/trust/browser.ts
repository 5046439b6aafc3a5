import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from '@playwright/test';
import { chromiumPath } from '../chromium.js';

/** A Chromium of our own, with a folder it keeps things in, that can be killed outright. */
export class Chromium {
	private constructor(
		readonly page: Page,
		private readonly browser: Browser,
		private readonly child: ChildProcess,
	) {}

	static async open(folder: string): Promise<Chromium> {
		const program = await chromiumPath();
		if (program === null) throw new Error('there is no Chromium');
		const portFile = join(folder, 'DevToolsActivePort');
		rmSync(portFile, { force: true });
		// Of its own group, so that all its processes go at once. Its sandbox refuses to run under
		// root.
		const child = spawn(program, [...FLAGS, ...rootFlags(), `--user-data-dir=${folder}`], {
			detached: true,
			stdio: 'ignore',
		});
		const port = await portIn(portFile);
		const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
		const context = browser.contexts()[0];
		if (!context) throw new Error('the browser shows nothing');
		return new Chromium(context.pages()[0] ?? (await context.newPage()), browser, child);
	}

	/** All its processes, with no word before. */
	async kill(): Promise<void> {
		const gone = new Promise((resolve) => this.child.once('close', resolve));
		if (this.child.pid !== undefined) process.kill(-this.child.pid, 'SIGKILL');
		await gone;
		await this.browser.close().catch(() => undefined);
	}
}

const FLAGS = [
	...['--headless=new', '--remote-debugging-port=0', '--no-first-run', '--disable-gpu'],
	...['--disable-dev-shm-usage', '--disable-background-networking', 'about:blank'],
];
const rootFlags = (): string[] => (process.getuid?.() === 0 ? ['--no-sandbox'] : []);

async function portIn(file: string): Promise<number> {
	for (let n = 0; n < 600; n++) {
		const port = existsSync(file) ? Number(readFileSync(file, 'utf8').split('\n')[0]) : NaN;
		if (port > 0) return port;
		await new Promise((resolve) => setTimeout(resolve, 100));
	}
	throw new Error('the browser does not start');
}

/** How often a page is asked, and for how long, ms. */
const [EVERY, PATIENCE] = [100, 180_000];

/**
 * Resolves once the expression holds in the page. It is asked again and again from outside: what
 * waits in the page itself would be read as a text to run, which the app's page refuses.
 */
export async function until(page: Page, expression: string): Promise<void> {
	const end = performance.now() + PATIENCE;
	while (!(await page.evaluate<boolean>(`Boolean(${expression})`))) {
		if (performance.now() > end) throw new Error(`it never came to: ${expression}`);
		await page.waitForTimeout(EVERY);
	}
}
