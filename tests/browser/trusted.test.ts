import { chromium, expect, test } from '@playwright/test';
import { createHash, X509Certificate } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ServerProcess } from '../../src/setup/trust/kills/server-process';

/*
 * A browser that trusts a shop's root. The root lies beside this file, with the list of trusted
 * roots as browsers on Linux read it (made once by the usual tool for such lists, which is not
 * needed here); elsewhere the browser is told the root's key at its start.
 */

const TRUSTED = 'tests/browser/trusted';
/** SHA-256 of the root's public key, as browsers take it. */
const KEY = '--ignore-certificate-errors-spki-list=';

function rootKey(): string {
	const { publicKey } = new X509Certificate(readFileSync(join(TRUSTED, 'root.pem')));
	const key = publicKey.export({ type: 'spki', format: 'der' });
	return createHash('sha256').update(key).digest('base64');
}

test('over https, with the root trusted, the whole planner is kept for hours without the network', async ({
	launchOptions,
}) => {
	test.setTimeout(180_000);
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-trusted-'));
	const kept = join(folder, 'shop');
	const home = join(folder, 'home');
	mkdirSync(kept);
	cpSync(TRUSTED, join(kept, 'https'), { recursive: true });
	cpSync(join(TRUSTED, 'nssdb'), join(home, '.pki', 'nssdb'), { recursive: true });
	const server = await ServerProcess.start(kept, 0, { app: 'build', network: true });
	const isLinux = process.platform === 'linux';
	const browser = await chromium.launchPersistentContext(join(folder, 'profile'), {
		...{ ...launchOptions, serviceWorkers: 'allow' },
		env: { ...process.env, HOME: home, XDG_DATA_HOME: join(home, 'data') },
		args: [...(launchOptions.args ?? []), ...(isLinux ? [] : [`${KEY}${rootKey()}`])],
	});
	const page = await browser.newPage();
	const address = `https://localhost:${server.port}`;
	await page.goto(`${address}/devices#join=${server.secret}`);
	await page.getByLabel('Name of this device').fill('Tablet');
	await page.getByRole('button', { name: 'Join', exact: true }).click();
	await expect(page.locator('[data-shop]')).toHaveAttribute('data-shop', 'joined');
	expect(await page.evaluate(() => isSecureContext)).toBe(true);
	await page.evaluate(async () => void (await navigator.serviceWorker.ready));
	await page.goto(`${address}/devices`);
	await expect(page.getByText('The certificate of this shop')).toBeVisible();
	await expect(page.locator('.fingerprint')).toHaveText(/^([0-9A-F]{2}:){31}[0-9A-F]{2}$/);
	await expect(page.locator('[data-missing]')).toHaveCount(0);

	// The server is gone: the page still opens, whole.
	await server.kill();
	await page.goto(`${address}/devices`);
	await expect(page.getByText('This device is called')).toBeVisible();
	await browser.close();
	rmSync(folder, { recursive: true, force: true });
});

test('over https without the root a browser does not go there', async ({ launchOptions }) => {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-untrusted-'));
	const kept = join(folder, 'shop');
	mkdirSync(kept);
	cpSync(TRUSTED, join(kept, 'https'), { recursive: true });
	const server = await ServerProcess.start(kept, 0, { app: 'build', network: true });
	const browser = await chromium.launch(launchOptions);
	const page = await browser.newPage();
	await expect(page.goto(`https://localhost:${server.port}/`)).rejects.toThrow(/CERT_AUTHORITY/);
	await browser.close();
	await server.kill();
	rmSync(folder, { recursive: true, force: true });
});
