import { type Browser, type BrowserContextOptions, expect, type Page } from '@playwright/test';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ServerProcess } from '../../src/setup/trust/kills/server-process';
import { arrived } from './screen';

/** A shop's server on the built app, that can be killed and started again. */
export class Server {
	readonly folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-browser-shop-'));
	link = '';
	#process: ServerProcess | null = null;

	/** @param most bytes a file may have, for a disk that is full; none for no limit */
	async start(most?: number): Promise<void> {
		const port = this.#process?.port ?? 0;
		const full = most === undefined ? {} : { most };
		this.#process = await ServerProcess.start(this.folder, port, { app: 'build', ...full });
		const { secret } = this.#process;
		this.link ||= `http://localhost:${this.#process.port}/devices#join=${secret}`;
	}
	async stop(): Promise<void> {
		await this.#process?.kill();
	}
	async close(): Promise<void> {
		await this.stop();
		rmSync(this.folder, { recursive: true, force: true });
	}
}

/** Whatever a page asks of anybody, and what the browser refused it. */
export function watched(page: Page): { asked: string[] } {
	const asked: string[] = [];
	page.on('request', (request) => asked.push(request.url()));
	page.on('websocket', (socket) => asked.push(socket.url()));
	page.on('console', (line) => {
		if (/Content.Security.Policy/i.test(line.text())) asked.push(`refused://${line.text()}`);
	});
	return { asked };
}

/** How things stand with the shop, as the page tells it. */
export const shopWords = (page: Page) => page.locator('[data-shop]');

/** A browser of its own that joins by this link. */
export async function joins(
	browser: Browser,
	link: string,
	device: string,
	options: BrowserContextOptions = {},
) {
	const page = await (await browser.newContext(options)).newPage();
	const { asked } = watched(page);
	await page.goto(link);
	await page.getByLabel('Name of this device').fill(device);
	expect(page.url()).not.toContain('join='); // not left in the address line
	await page.getByRole('button', { name: 'Join', exact: true }).click();
	await arrived(page, 'jobs');
	await expect(shopWords(page)).toHaveAttribute('data-shop', 'joined');
	return { page, asked };
}

/** A link for another device, made on the page of one that may do all. */
export async function linkFor(page: Page, name: string, may: string): Promise<string> {
	await page.getByRole('link', { name: 'Devices', exact: true }).click();
	await page.getByLabel('For whom').fill(name);
	await page.getByRole('combobox', { name: /^May/ }).selectOption({ label: may });
	await page.getByRole('button', { name: 'Make a link' }).click();
	const code = page.locator('.made code');
	await expect(page.locator('.made')).toContainText(name);
	return (await code.first().textContent()) ?? '';
}
