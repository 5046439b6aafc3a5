import { X509Certificate } from 'node:crypto';
import {
	createServer as createPlain,
	type IncomingMessage,
	type RequestListener,
	type Server,
	type ServerResponse,
} from 'node:http';
import { createServer as createSecure, type Server as SecureServer } from 'node:https';
import { createServer as createDoor, type Server as Door, type Socket } from 'node:net';
import type { ShopCertificate } from './kept-certificate';
import { ROOT_FILE, TRUST_PAGE, TRUST_POLICY, trustPage } from './trust-page';

/** The first byte of every greeting in TLS (RFC 8446, 5.1: a handshake record). */
const HANDSHAKE = 22;
/** Who says nothing for so long is let go, milliseconds. */
const SILENT = 10_000;

/**
 * One door for both ways of speaking: who greets in TLS is answered with all there is. Plain words
 * get all there is on this machine only, where nobody listens in; from elsewhere they get the page
 * that tells how to trust the shop, and are sent on to https.
 */
export interface ShopDoor {
	readonly door: Door;
	readonly secure: SecureServer;
	readonly plain: Server;
	/** From now on this certificate is shown, to whoever comes anew. */
	show(certificate: ShopCertificate): void;
	close(): void;
}

/** @param isMine is it this machine that was asked for by this name? */
export function openDoor(
	pages: RequestListener,
	certificate: ShopCertificate,
	isMine: (host: string | undefined) => boolean,
): ShopDoor {
	let shown = certificate;
	const tells = (request: IncomingMessage, response: ServerResponse): boolean =>
		tell(shown, request, response);
	const secure = createSecure(contextOf(certificate), (request, response) => {
		if (!isMine(request.headers.host) || !tells(request, response)) pages(request, response);
	});
	const plain = createPlain((request, response) => {
		if (isFromHere(request) || !isMine(request.headers.host)) pages(request, response);
		else if (!tells(request, response)) sendOn(request, response);
	});
	const waiting = new Set<Socket>();
	const door = createDoor((socket) => {
		waiting.add(socket);
		letIn(
			socket,
			(byte) => (byte === HANDSHAKE ? secure : plain),
			() => waiting.delete(socket),
		);
	});
	return {
		...{ door, secure, plain },
		show: (newer) => {
			shown = newer;
			secure.setSecureContext(contextOf(newer));
		},
		close: () => {
			door.close();
			for (const socket of waiting) socket.destroy();
			for (const server of [secure, plain]) server.closeAllConnections();
		},
	};
}

const contextOf = ({ chain, key }: ShopCertificate) => ({
	...{ cert: chain, key },
	minVersion: 'TLSv1.2' as const,
});

/** Its first byte tells which way it speaks; whoever answers it then reads that byte again. */
function letIn(socket: Socket, whoFor: (byte: number) => Server, gone: () => void): void {
	const ended = (): void => {
		gone();
		socket.destroy();
	};
	socket.once('error', ended).once('close', gone);
	socket.setTimeout(SILENT, ended);
	socket.once('data', (bytes: Buffer) => {
		gone();
		socket.setTimeout(0);
		socket.removeListener('timeout', ended).removeListener('error', ended);
		socket.pause();
		socket.unshift(bytes);
		whoFor(bytes.readUInt8(0)).emit('connection', socket);
		process.nextTick(() => socket.resume());
	});
}

const LOOPBACK = /^(::1|(::ffff:)?127\.\d+\.\d+\.\d+)$/;
const HERE = /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/i;

/** Did this machine ask itself, by a name that means no other? */
export const isFromHere = ({ socket, headers }: IncomingMessage): boolean =>
	LOOPBACK.test(socket.remoteAddress ?? '') && HERE.test(headers.host ?? '');

/** Is it the page that tells, or the certificate to download? */
function tell(
	{ root, fingerprint }: ShopCertificate,
	request: IncomingMessage,
	response: ServerResponse,
): boolean {
	const path = (request.url ?? '/').replace(/[?#].*$/, '');
	const isPlain = !('encrypted' in request.socket);
	if (request.method !== 'GET' && request.method !== 'HEAD') return false;
	if (path === ROOT_FILE) {
		const type = 'application/x-x509-ca-cert';
		say(request, response, { type, body: new X509Certificate(root).raw });
		return true;
	}
	if (path !== TRUST_PAGE && !(isPlain && path === '/')) return false;
	const body = trustPage(`https://${request.headers.host}/`, fingerprint);
	say(request, response, { type: 'text/html; charset=utf-8', body });
	return true;
}

function say(
	{ method }: IncomingMessage,
	response: ServerResponse,
	{ type, body }: { readonly type: string; readonly body: string | Buffer },
): void {
	response.writeHead(200, {
		...{ 'content-type': type, 'cache-control': 'no-store', 'referrer-policy': 'no-referrer' },
		...{ 'x-content-type-options': 'nosniff', 'content-security-policy': TRUST_POLICY },
	});
	response.end(method === 'HEAD' ? undefined : body);
}

/** For now only: where there was http there may be nothing tomorrow. */
function sendOn({ url = '/', headers }: IncomingMessage, response: ServerResponse): void {
	const location = `https://${headers.host}${url.startsWith('/') ? url : '/'}`;
	response.writeHead(307, { location, 'cache-control': 'no-store' }).end();
}
