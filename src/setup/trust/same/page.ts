import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { Plan } from '../../../lib/plan';
import { recordOf } from '../../../lib/record';
import { serve } from '../../../shop/serve.js';
import { ROOT } from '../../tool.js';
import { Chromium, until } from '../browser';
import { digest } from './builds';

/** Buttons of the last chapter; each makes one file. */
const BUTTONS = ['Print pack', 'Cutting list', 'Order list'] as const;
const PATIENCE = 180_000;

/**
 * Keeps what the workers answer, in the page itself: the last plan, and the digest of each file.
 * Text, for the names that the TypeScript runner gives to functions mean nothing in a page.
 */
const LISTEN = `{
	const Own = Worker;
	globalThis.plan__ = null;
	globalThis.files__ = {};
	const hex = (sum) => [...new Uint8Array(sum)].map((n) => n.toString(16).padStart(2, '0')).join('');
	globalThis.Worker = class extends Own {
		constructor(...given) {
			super(...given);
			this.addEventListener('message', async ({ data }) => {
				const value = data?.value;
				if (value?.boards && value.order) globalThis.plan__ = value;
				if (!Array.isArray(value)) return;
				for (const { name, bytes } of value.filter((one) => one?.bytes))
					globalThis.files__[name] = hex(await crypto.subtle.digest('SHA-256', bytes));
			});
		}
	};
}`;

/** What the workers of the built app make of a sample job: the digest of each file. */
export async function pageMade(job: string): Promise<Record<string, string>> {
	const { address, close } = await serve(join(ROOT, 'build'), 4421);
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-profile-'));
	const chromium = await Chromium.open(folder);
	try {
		const { page } = chromium;
		await page.addInitScript(LISTEN);
		await page.goto(`${address}jobs`);
		await opened(page, job);
		const plan = JSON.parse(await page.evaluate<string>('JSON.stringify(plan__)')) as Plan;
		const text = JSON.stringify(recordOf(plan), null, '\t') + '\n';
		await page.goto(`${address}#print`);
		const files = await printed(page);
		return { 'plan.json': digest(text), ...files };
	} finally {
		await chromium.kill();
		close();
		rmSync(folder, { recursive: true, force: true });
	}
}

/** Opens the file of the job and waits for the plan of that very job. */
async function opened(page: Page, job: string): Promise<void> {
	const file = join(ROOT, 'shared', 'jobs', job);
	const { name } = JSON.parse(readFileSync(file, 'utf8')) as { name: string };
	await page.waitForSelector('[data-plan="ready"]', { state: 'attached', timeout: PATIENCE });
	await page.getByLabel('Open a file').setInputFiles(file);
	const isThere = `globalThis.plan__?.job.name === ${JSON.stringify(name)} && document.querySelector('[data-plan="ready"]')`;
	await until(page, isThere);
}

async function printed(page: Page): Promise<Record<string, string>> {
	await page.waitForSelector('[data-chapter="print"]', { timeout: PATIENCE });
	for (const button of BUTTONS) {
		const before = await page.evaluate<number>('Object.keys(files__).length');
		await page.getByRole('button', { name: button, exact: true }).click({ timeout: PATIENCE });
		await until(page, `Object.keys(files__).length > ${before}`);
	}
	return page.evaluate<Record<string, string>>('files__');
}
