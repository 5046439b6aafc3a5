import { createReadStream, realpathSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, sep } from 'node:path';
import { pipeline } from 'node:stream';
import { createGzip } from 'node:zlib';

/*
 * Serves the built app, on this machine only unless told otherwise. The app is plain files; this is
 * all the server it needs. Plain script, for it runs before anything is installed or built.
 */

/** @type {Readonly<Record<string, string>>} */
const TYPES = {
	'.html': 'text/html; charset=utf-8',
	'.js': 'text/javascript; charset=utf-8',
	'.mjs': 'text/javascript; charset=utf-8',
	'.css': 'text/css; charset=utf-8',
	'.json': 'application/json',
	'.webmanifest': 'application/manifest+json',
	'.svg': 'image/svg+xml',
	'.png': 'image/png',
	'.ttf': 'font/ttf',
	'.woff2': 'font/woff2',
	'.wasm': 'application/wasm',
	'.txt': 'text/plain; charset=utf-8',
};

/**
 * @typedef {object} Serving
 * @property {string} address for a browser on this machine
 * @property {number} port
 * @property {() => void} close
 */

/**
 * Starts the server on the port, or on the next free one after it.
 * @param {string} folder
 * @param {number} port
 * @param {boolean} strict this port and no other
 * @param {readonly string[] | null} names by which other machines ask for this one, on whose
 * network it then is; null for this machine only
 * @param {(pages: import('node:http').RequestListener) => import('node:net').Server} open makes the
 * server that answers by these pages
 * @returns {Promise<Serving>}
 */
export async function serve(folder, port, strict = false, names = null, open = createServer) {
	for (let tried = port; tried < port + 50; tried++) {
		const server = open((request, response) => answer(folder, request, response, names));
		if (await listens(server, tried, names)) {
			const address = `http://localhost:${tried}/`;
			return { address, port: tried, close: () => void server.close() };
		}
		if (strict) break;
	}
	throw new Error(`No free port from ${port} on.`);
}

/**
 * @param {import('node:net').Server} server
 * @param {number} port
 * @param {readonly string[] | null} names
 * @returns {Promise<boolean>} false when the port is taken
 */
function listens(server, port, names) {
	return new Promise((resolve, reject) => {
		server.once('error', (/** @type {NodeJS.ErrnoException} */ error) =>
			error.code === 'EADDRINUSE' ? resolve(false) : reject(error),
		);
		server.listen(port, names ? '0.0.0.0' : 'localhost', () => resolve(true));
	});
}

/** @type {Readonly<Record<string, string>>} */
const ALWAYS = {
	'x-content-type-options': 'nosniff',
	'referrer-policy': 'no-referrer',
	'cross-origin-opener-policy': 'same-origin',
	'cross-origin-resource-policy': 'same-origin',
};

/**
 * Which scripts and styles a page may run stands in the page itself (svelte.config.js); here is
 * what a page cannot say of itself. A worker is held to what comes with its script.
 */
const FOR_PAGES = "frame-ancestors 'none'; connect-src 'self'; object-src 'none'; base-uri 'self'";
const FOR_WORKERS = "default-src 'self'; frame-ancestors 'none'";

/**
 * @param {string} folder
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 * @param {readonly string[] | null} names
 */
function answer(folder, request, response, names) {
	const refused = refusal(request, names);
	if (refused) return say(response, refused);
	const { file, status } = find(folder, request.url ?? '/');
	if (!file) return say(response, { status, text: 'There is nothing here.' });
	const headers = headersOf(file);
	if (status === 200 && request.headers['if-none-match'] === headers.etag) {
		response.writeHead(304, headers).end();
		return;
	}
	const zipped = ZIPPED.test(headers['content-type']) && takesGzip(request);
	response.writeHead(status, zipped ? { ...headers, 'content-encoding': 'gzip' } : headers);
	if (request.method === 'HEAD') response.end();
	else send(file, zipped, response);
}

/**
 * Files only, and only to who asked for this machine: an address of elsewhere that was made to lead
 * here is turned away.
 * @param {import('node:http').IncomingMessage} request
 * @param {readonly string[] | null} names
 */
function refusal({ method = '', headers }, names) {
	if (!isMine(headers.host, names)) return { status: 421, text: 'This is no address of mine.' };
	if (method === 'GET' || method === 'HEAD') return null;
	return { status: 405, text: 'Only reading is possible here.', headers: { allow: 'GET, HEAD' } };
}

const HERE = ['localhost', '127.0.0.1', '[::1]'];

/**
 * Is it this machine that was asked for?
 * @param {string | undefined} host
 * @param {readonly string[] | null} names
 */
export function isMine(host = '', names = null) {
	return [...HERE, ...(names ?? [])].includes(host.replace(/:\d+$/, '').toLowerCase());
}

/**
 * @param {import('node:http').ServerResponse} response
 * @param {{ status: number, text: string, headers?: Record<string, string> }} what
 */
function say(response, { status, text, headers = {} }) {
	const type = { 'content-type': 'text/plain; charset=utf-8' };
	response.writeHead(status, { ...ALWAYS, ...type, ...headers }).end(`${text}\n`);
}

/** What gets smaller by it. */
const ZIPPED = /^(text|application\/(json|manifest)|image\/svg|font\/ttf)/;

/** @param {import('node:http').IncomingMessage} request */
function takesGzip({ headers }) {
	return /\bgzip\b/.test(String(headers['accept-encoding'] ?? ''));
}

/** Chunks carry the hash of what is in them in their names: what has one never changes. */
const HASHED = `${sep}_app${sep}immutable${sep}`;

/** @param {string} file */
function headersOf(file) {
	const { size, mtimeMs } = statSync(file);
	const type = TYPES[extname(file)] ?? 'application/octet-stream';
	return {
		...ALWAYS,
		'content-type': type,
		'content-security-policy': type.startsWith('text/html') ? FOR_PAGES : FOR_WORKERS,
		'cache-control': file.includes(HASHED) ? 'public, max-age=31536000, immutable' : 'no-cache',
		vary: 'accept-encoding',
		etag: `"${size.toString(36)}-${Math.round(mtimeMs).toString(36)}"`,
	};
}

/**
 * A file that goes away while it is read ends its answer, never the server.
 * @param {string} file
 * @param {boolean} zipped
 * @param {import('node:http').ServerResponse} response
 */
function send(file, zipped, response) {
	const ended = () => response.destroy();
	const bytes = createReadStream(file).once('error', ended);
	if (zipped) pipeline(bytes, createGzip(), response, () => undefined);
	else pipeline(bytes, response, () => undefined);
}

/**
 * The file an address means, never one outside the folder, by a link neither.
 * @param {string} folder
 * @param {string} url
 * @returns {{ file: string | null, status: number }}
 */
function find(folder, url) {
	const path = pathOf(url);
	const places = path === null ? [] : ['', '.html', `${sep}index.html`].map((end) => path + end);
	const file = places.map((place) => fileAt(folder, place)).find((found) => found !== null);
	return file ? { file, status: 200 } : { file: fileAt(folder, '404.html'), status: 404 };
}

/**
 * @param {string} folder
 * @param {string} path
 * @returns {string | null} null where no file lies
 */
function fileAt(folder, path) {
	try {
		const file = realpathSync(join(folder, path));
		const within = file.startsWith(realpathSync(folder) + sep);
		return within && statSync(file).isFile() ? file : null;
	} catch {
		return null;
	}
}

/** @param {string} url */
function pathOf(url) {
	try {
		const path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
		return path.includes('\0') ? null : path;
	} catch {
		return null;
	}
}
