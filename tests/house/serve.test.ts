import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request, type RequestOptions } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serve } from '../../src/shop/serve.js';

const SCRIPT = 'const a = 1;\n'.repeat(500);
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
	mkdirSync(join(folder, 'app', '_app', 'immutable'), { recursive: true });
	writeFileSync(join(folder, 'app', '_app', 'immutable', 'a.1234.js'), SCRIPT);
	server = await serve(join(folder, 'app'), 46_000);
});
afterAll(() => {
	server.close();
	rmSync(folder, { recursive: true, force: true });
});

interface Answer {
	status: number;
	body: Buffer;
	text: string;
	headers: IncomingHttpHeaders;
}

/** The path is sent as it is: a browser would tidy the dots away. */
function get(path: string, options: RequestOptions = {}): Promise<Answer> {
	const { hostname, port } = new URL(server.address);
	return new Promise((resolve, reject) => {
		request({ hostname, port, path, agent: false, ...options }, (response) => {
			const chunks: Buffer[] = [];
			response.on('data', (chunk: Buffer) => chunks.push(chunk));
			response.on('end', () => {
				const body = Buffer.concat(chunks);
				const { statusCode: status = 0, headers } = response;
				resolve({ status, body, text: body.toString(), headers });
			});
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
	expect((await get('/icon.svg')).headers['content-type']).toBe('image/svg+xml');
});

test.each(['POST', 'PUT', 'DELETE', 'TRACE', 'OPTIONS', 'PATCH'])(
	'%s changes nothing and is refused',
	async (method) => {
		const { status, headers } = await get('/', { method });
		expect([status, headers.allow]).toEqual([405, 'GET, HEAD']);
	},
);

test('HEAD says what would come and sends nothing', async () => {
	const { status, body, headers } = await get('/', { method: 'HEAD' });
	expect([status, body.length, headers['content-type']]).toEqual([
		200,
		0,
		'text/html; charset=utf-8',
	]);
});

test.each(['elsewhere.example', 'localhost.elsewhere.example', ''])(
	'asked for as "%s": turned away',
	async (host) => {
		expect((await get('/', { headers: { host }, setHost: false })).status).toBe(421);
	},
);

test('a link inside the folder leads nowhere outside it', async () => {
	symlinkSync(join(folder, 'secret.txt'), join(folder, 'app', 'way-out.txt'));
	symlinkSync(folder, join(folder, 'app', 'up'));
	expect(await get('/way-out.txt')).toMatchObject({ status: 404, text: 'lost' });
	expect(await get('/up/secret.txt')).toMatchObject({ status: 404, text: 'lost' });
});

test('every answer says that types are as told, that no page may frame it and no host be asked', async () => {
	for (const path of ['/', '/nowhere', '/icon.svg']) {
		const { headers } = await get(path);
		expect(headers['x-content-type-options']).toBe('nosniff');
		expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
	}
});

test('chunks with their hash in the name are kept for good, pages are asked after', async () => {
	const { headers } = await get('/_app/immutable/a.1234.js');
	expect(headers['cache-control']).toContain('immutable');
	const page = await get('/');
	expect(page.headers['cache-control']).toBe('no-cache');
	const again = await get('/', { headers: { 'if-none-match': String(page.headers.etag) } });
	expect([again.status, again.body.length]).toEqual([304, 0]);
});

test('what gets smaller by it is sent packed, to who can unpack it', async () => {
	const packed = await get('/_app/immutable/a.1234.js', {
		headers: { 'accept-encoding': 'br, gzip' },
	});
	expect(packed.headers['content-encoding']).toBe('gzip');
	expect(gunzipSync(packed.body).toString()).toBe(SCRIPT);
	expect(packed.body.length).toBeLessThan(SCRIPT.length / 10);
	expect((await get('/_app/immutable/a.1234.js')).text).toBe(SCRIPT);
});

test('a build that is not there is an answer, not an end', async () => {
	const bare = await serve(join(folder, 'nothing'), 46_100);
	const { port } = new URL(bare.address);
	const got = await get('/', { port });
	expect([got.status, got.text]).toEqual([404, 'There is nothing here.\n']);
	expect((await get('/again', { port })).status).toBe(404);
	bare.close();
});

test('a taken port: the next one is used, unless this one was asked for', async () => {
	const port = Number(new URL(server.address).port);
	const next = await serve(join(folder, 'app'), port);
	expect(Number(new URL(next.address).port)).toBeGreaterThan(port);
	next.close();
	await expect(serve(join(folder, 'app'), port, true)).rejects.toThrow(String(port));
});
