import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

/*
 * Serves the built app on this machine only. The app is plain files; this is all the server it
 * needs.
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
 * Starts the server on the port, or on the next free one after it.
 * @param {string} folder
 * @param {number} port
 * @param {boolean} strict this port and no other
 * @returns {Promise<{ address: string, close: () => void }>}
 */
export async function serve(folder, port, strict = false) {
	for (let tried = port; tried < port + 50; tried++) {
		const server = await listens(folder, tried);
		if (server) return { address: `http://localhost:${tried}/`, close: () => server.close() };
		if (strict) break;
	}
	throw new Error(`No free port from ${port} on.`);
}

/**
 * @param {string} folder
 * @param {number} port
 * @returns {Promise<import('node:http').Server | null>} null when the port is taken
 */
function listens(folder, port) {
	return new Promise((resolve, reject) => {
		const server = createServer((request, response) => {
			const { file, status } = find(folder, request.url ?? '/');
			const type = TYPES[extname(file)] ?? 'application/octet-stream';
			response.writeHead(status, { 'content-type': type, 'cache-control': 'no-cache' });
			if (request.method === 'HEAD') response.end();
			else createReadStream(file).pipe(response);
		});
		server.once('error', (/** @type {NodeJS.ErrnoException} */ error) =>
			error.code === 'EADDRINUSE' ? resolve(null) : reject(error),
		);
		server.listen(port, 'localhost', () => resolve(server));
	});
}

/**
 * The file an address means, never one outside the folder.
 * @param {string} folder
 * @param {string} url
 */
function find(folder, url) {
	const lost = { file: join(folder, '404.html'), status: 404 };
	const path = pathOf(url);
	if (path === null) return lost;
	const place = normalize(join(folder, path));
	if (place !== folder && !place.startsWith(folder + sep)) return lost;
	const file = [place, `${place}.html`, join(place, 'index.html')].find(
		(candidate) => existsSync(candidate) && statSync(candidate).isFile(),
	);
	return file ? { file, status: 200 } : lost;
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
