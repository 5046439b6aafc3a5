import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serve } from '../../src/setup/serve.js';

let folder: string;
let server: { address: string; close: () => void };

beforeAll(async () => {
	folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-'));
	mkdirSync(join(folder, 'app', 'rack'), { recursive: true });
	writeFileSync(join(folder, 'secret.txt'), 'not to be served');
	writeFileSync(join(folder, 'app', 'index.html'), 'start');
	writeFileSync(join(folder, 'app', 'shop.html'), 'shop');
	writeFileSync(join(folder, 'app', 'rack', 'index.html'), 'rack');
	writeFileSync(join(folder, 'app', '404.html'), 'lost');
	writeFileSync(join(folder, 'app', 'icon.svg'), '<svg/>');
	server = await serve(join(folder, 'app'), 46_000);
});
afterAll(() => {
	server.close();
	rmSync(folder, { recursive: true, force: true });
});

/** The path is sent as it is: a browser would tidy the dots away. */
function get(path: string): Promise<{ status: number; text: string; type: string }> {
	const { hostname, port } = new URL(server.address);
	return new Promise((resolve, reject) => {
		request({ hostname, port, path, agent: false }, (response) => {
			let text = '';
			response.on('data', (chunk: Buffer) => (text += chunk.toString()));
			response.on('end', () =>
				resolve({
					status: response.statusCode ?? 0,
					text,
					type: String(response.headers['content-type']),
				}),
			);
		})
			.on('error', reject)
			.end();
	});
}

test.each([
	['/', 200, 'start'],
	['/?job=1', 200, 'start'],
	['/shop', 200, 'shop'],
	['/rack', 200, 'rack'],
	['/rack/', 200, 'rack'],
	['/nowhere', 404, 'lost'],
	['/../secret.txt', 404, 'lost'],
	['/..%2fsecret.txt', 404, 'lost'],
	['/%2e%2e/secret.txt', 404, 'lost'],
	['/%zz', 404, 'lost'],
	['/%00', 404, 'lost'],
])('%s', async (path, status, text) => {
	expect(await get(path)).toMatchObject({ status, text });
});

test('files carry their type', async () => {
	expect((await get('/icon.svg')).type).toBe('image/svg+xml');
});

test('a taken port: the next one is used, unless this one was asked for', async () => {
	const port = Number(new URL(server.address).port);
	const next = await serve(join(folder, 'app'), port);
	expect(Number(new URL(next.address).port)).toBeGreaterThan(port);
	next.close();
	await expect(serve(join(folder, 'app'), port, true)).rejects.toThrow(String(port));
});
