import { X509Certificate } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request as askPlain } from 'node:http';
import { request as askSecure } from 'node:https';
import { connect } from 'node:net';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { startShop, type StartedShop } from '../../src/shop/start-shop';
import { RACK } from './shop';

const OTHER = `${hostname().toLowerCase()}.local`;
let folder: string;
let shop: StartedShop;
let root: string;

beforeAll(async () => {
	folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-door-'));
	mkdirSync(join(folder, 'app'));
	writeFileSync(join(folder, 'app', 'index.html'), 'the planner');
	shop = await startShop({
		...{ place: { folder: join(folder, 'kept') }, app: join(folder, 'app'), rack: RACK },
		...{ port: 47_000 + (process.pid % 9000), strict: false, network: true },
		note: () => undefined,
	});
	root = readFileSync(join(folder, 'kept', 'https', 'root.pem'), 'utf8');
});
afterAll(async () => {
	await shop.close();
	rmSync(folder, { recursive: true, force: true });
});

interface Answer {
	readonly status: number;
	readonly body: Buffer;
	readonly headers: IncomingHttpHeaders;
}

/** Asks this machine under this name. */
function get(way: 'http' | 'https', name: string, path: string, method = 'GET'): Promise<Answer> {
	const to = { host: '127.0.0.1', port: shop.port, path, method, agent: false };
	const headers = { host: `${name}:${shop.port}` };
	return new Promise((resolve, reject) => {
		const asked =
			way === 'http'
				? askPlain({ ...to, headers })
				: askSecure({ ...to, headers, ca: root, servername: name });
		asked.on('error', reject).on('response', (response) => {
			const chunks: Buffer[] = [];
			response.on('data', (chunk: Buffer) => chunks.push(chunk));
			response.on('end', () => {
				const { statusCode: status = 0, headers: told } = response;
				resolve({ status, body: Buffer.concat(chunks), headers: told });
			});
		});
		asked.end();
	});
}

test('this machine gets the planner by plain http, others by https on the same port', async () => {
	expect((await get('http', 'localhost', '/')).body.toString()).toBe('the planner');
	expect((await get('https', OTHER, '/')).body.toString()).toBe('the planner');
	expect((await get('https', 'localhost', '/')).body.toString()).toBe('the planner');
	expect(shop.addresses[0]).toMatch(/^http:\/\/localhost:/);
	for (const address of shop.addresses.slice(1)) expect(address).toMatch(/^https:\/\/\d/);
});

test('others are told over plain http how to trust it, and sent on; no planner, no word more', async () => {
	for (const path of ['/', '/certificate']) {
		const { status, body, headers } = await get('http', OTHER, path);
		const text = body.toString();
		expect(status).toBe(200);
		expect(text).toContain(shop.fingerprint);
		expect(text).toContain(`href="https://${OTHER}:${shop.port}/"`);
		for (const word of ['Desktop', 'Phone', 'tablet', 'Compare']) expect(text).toContain(word);
		expect(headers['content-security-policy']).toContain("default-src 'none'");
	}
	for (const path of ['/devices', '/_app/x.js?y=1', '//elsewhere.example/']) {
		const { status, body, headers } = await get('http', OTHER, path);
		expect([status, body.length]).toEqual([307, 0]);
		expect(headers.location).toBe(`https://${OTHER}:${shop.port}${path}`);
	}
	expect((await get('http', 'elsewhere.example', '/')).status).toBe(421);
	expect((await get('https', OTHER, '/', 'POST')).status).toBe(405);
});

test('the root is to be had both ways, and is the one whose fingerprint is told', async () => {
	for (const way of ['http', 'https'] as const) {
		const { body, headers } = await get(way, OTHER, '/certificate/root.crt');
		expect(headers['content-type']).toBe('application/x-x509-ca-cert');
		expect(new X509Certificate(body).fingerprint256).toBe(shop.fingerprint);
	}
	expect((await get('https', OTHER, '/certificate')).body.toString()).toContain(shop.fingerprint);
	expect((await get('http', OTHER, '/certificate/root.crt', 'HEAD')).body.length).toBe(0);
});

/** How a socket of documents is met that is opened under this name. */
function met(way: 'ws' | 'wss', name: string): Promise<string> {
	const socket = new WebSocket(`${way}://127.0.0.1:${shop.port}/documents`, {
		...{ ca: root, servername: name, headers: { host: `${name}:${shop.port}` } },
	});
	return new Promise((resolve) => {
		socket.on('open', () => {
			resolve('open');
			socket.terminate();
		});
		socket.on('error', (fault) => resolve(fault.message));
	});
}

test('documents are told over https, over plain http on this machine only', async () => {
	expect(await met('wss', OTHER)).toBe('open');
	expect(await met('ws', 'localhost')).toBe('open');
	expect(await met('ws', OTHER)).toMatch('403');
	expect(await met('wss', 'elsewhere.example')).not.toBe('open');
});

test('bytes that are neither way of speaking end their connection and nobody else’s', async () => {
	for (const bytes of [
		'\u0016\u0003\u0001nonsense that is no greeting',
		'\u0000\u0001\u0002',
		'',
	]) {
		const ended = await new Promise((resolve) => {
			const socket = connect(shop.port, '127.0.0.1', () => socket.end(bytes));
			socket.on('error', () => resolve('ended')).on('close', () => resolve('ended'));
			socket.resume();
		});
		expect(ended).toBe('ended');
	}
	expect((await get('https', OTHER, '/')).status).toBe(200);
});
