import { execFileSync, spawnSync } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect, type TLSSocket } from 'node:tls';
import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import { makeRoot, makeServer, permitsOf } from '../../src/shop/https/certificate';
import { certificateIn, type ShopCertificate } from '../../src/shop/https/kept-certificate';

const DAY = 86_400_000;
/** Today: the readers of certificates go by the clock of this machine. */
const NOW = new Date().getTime();
const NAMES = ['192.168.7.5', '10.1.2.3', 'saw-room', 'saw-room.local'];

let folder: string;
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-certificate-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const serverOf = ({ chain }: ShopCertificate): X509Certificate => new X509Certificate(chain);
const rootOf = ({ root }: ShopCertificate): X509Certificate => new X509Certificate(root);

describe('the certificate of a shop', () => {
	it('names this machine by every address, and is vouched for by a root of its own', async () => {
		const made = await certificateIn(folder, NAMES, NOW);
		const [server, root] = [serverOf(made), rootOf(made)];
		expect(root.ca).toBe(true);
		expect(server.ca).toBe(false);
		expect(root.verify(root.publicKey)).toBe(true);
		expect(server.verify(root.publicKey)).toBe(true);
		expect(server.checkIssued(root)).toBe(true);
		expect(root.subject).toContain('the shop on saw-room');
		expect(server.issuer).toBe(root.subject);
		for (const ip of ['192.168.7.5', '10.1.2.3', '127.0.0.1', '::1'])
			expect(server.checkIP(ip), ip).toBe(ip);
		for (const host of ['localhost', 'saw-room', 'saw-room.local'])
			expect(server.checkHost(host), host).toBe(host);
		expect(server.checkIP('192.168.7.6')).toBeUndefined();
		expect(server.checkHost('elsewhere.example')).toBeUndefined();
		expect(server.keyUsage).toEqual(['1.3.6.1.5.5.7.3.1']); // for servers (RFC 5280, 4.2.1.12)
		expect(made.fingerprint).toBe(root.fingerprint256);
	});

	it('is kept with keys that nobody else may read, and is the same on the next start', async () => {
		const made = await certificateIn(folder, NAMES, NOW);
		for (const name of ['root-key.pem', 'server-key.pem'])
			expect(statSync(join(folder, name)).mode & 0o777, name).toBe(0o600);
		expect(await certificateIn(folder, NAMES, NOW + DAY)).toEqual(made);
	});

	it('is renewed before its end, and by the same root', async () => {
		const made = await certificateIn(folder, NAMES, NOW);
		const days = (made.until - NOW) / DAY;
		expect(days).toBeGreaterThan(365);
		expect(days).toBeLessThan(398); // what browsers take at most (from memory)
		const early = await certificateIn(folder, NAMES, made.until - 61 * DAY);
		expect(early).toEqual(made);
		const late = await certificateIn(folder, NAMES, made.until - 59 * DAY);
		expect(late.root).toBe(made.root);
		expect(late.until).toBeGreaterThan(made.until + 300 * DAY);
		expect(serverOf(late).verify(rootOf(made).publicKey)).toBe(true);
	});

	it('follows the machine to another address, by the same root', async () => {
		const made = await certificateIn(folder, NAMES, NOW);
		const moved = await certificateIn(folder, ['192.168.7.99', 'saw-room'], NOW);
		expect(moved.root).toBe(made.root);
		expect(serverOf(moved).checkIP('192.168.7.99')).toBe('192.168.7.99');
		expect(serverOf(moved).checkIP('192.168.7.5')).toBeUndefined();
	});

	it('leaves out a name its root may not vouch for: with it the whole would be refused', async () => {
		await certificateIn(folder, NAMES, NOW);
		const moved = await certificateIn(folder, ['8.8.4.4', 'other-room', '10.9.9.9'], NOW);
		expect(serverOf(moved).subjectAltName).not.toContain('8.8.4.4');
		expect(serverOf(moved).checkHost('other-room')).toBeUndefined();
		expect(serverOf(moved).checkIP('10.9.9.9')).toBe('10.9.9.9');
	});

	it('is made anew where a crash left a key that is not its own', async () => {
		const made = await certificateIn(folder, NAMES, NOW);
		const other = mkdtempSync(join(tmpdir(), 'kerf-and-nap-certificate-'));
		await certificateIn(other, NAMES, NOW);
		writeFileSync(join(folder, 'server-key.pem'), readFileSync(join(other, 'server-key.pem')));
		const again = await certificateIn(folder, NAMES, NOW);
		expect(again.root).toBe(made.root);
		expect(again.chain).not.toBe(made.chain);
		writeFileSync(join(folder, 'root-key.pem'), readFileSync(join(other, 'root-key.pem')));
		await expect(certificateIn(folder, NAMES, NOW)).rejects.toThrow('torn');
		rmSync(other, { recursive: true });
	});
});

/** How a client that trusts this root alone finds what a server shows under this name. */
function shownTo(
	made: Pick<ShopCertificate, 'chain' | 'key' | 'root'>,
	servername: string,
): Promise<string> {
	return new Promise((resolve, reject) => {
		const server = createServer({ cert: made.chain, key: made.key });
		server.listen(0, '127.0.0.1', () => {
			const { port } = server.address() as AddressInfo;
			const by = { host: '127.0.0.1', port, ca: made.root };
			const socket: TLSSocket = connect({ ...by, ...(servername ? { servername } : {}) }, () => {
				const verdict = socket.authorized ? 'trusted' : String(socket.authorizationError);
				socket.destroy();
				server.close(() => resolve(verdict));
			});
			socket.on('error', (fault: NodeJS.ErrnoException) => {
				socket.destroy();
				server.close(() =>
					resolve(fault.code === 'UNSPECIFIED' ? fault.message : String(fault.code)),
				);
			});
		});
		server.on('error', reject);
	});
}

test('who trusts the root trusts the server by name and by address, and no other name', async () => {
	const made = await certificateIn(folder, NAMES, NOW);
	expect(await shownTo(made, '')).toBe('trusted');
	expect(await shownTo(made, 'saw-room.local')).toBe('trusted');
	expect(await shownTo(made, 'elsewhere.example')).toBe('ERR_TLS_CERT_ALTNAME_INVALID');
});

test('a root whose key was stolen vouches for no place of the wide net', async () => {
	const made = await certificateIn(folder, NAMES, NOW);
	expect(permitsOf(made.root)).toContain('192.168.0.0/16');
	const key = readFileSync(join(folder, 'root-key.pem'), 'utf8');
	const said = { name: 'bank', from: NOW - DAY, until: NOW + DAY };
	const forged = (names: readonly string[]) => {
		const { certificate, key: own } = makeServer(
			{ certificate: made.root, key },
			{ ...said, names },
		);
		return { chain: `${certificate}${made.root}`, key: own, root: made.root };
	};
	expect(await shownTo(forged(['saw-room']), 'saw-room')).toBe('trusted');
	expect(await shownTo(forged(['bank.example']), 'bank.example')).toBe(
		'permitted subtree violation',
	);
});

test('a root without such bounds is told by none of them', () => {
	const said = { name: 'r', from: NOW, until: NOW + DAY };
	expect(permitsOf(makeRoot({ ...said, permits: ['local'] }).certificate)).toEqual(['local']);
});

test('what stands in the files is what another reader of certificates takes for good', async () => {
	const made = await certificateIn(folder, NAMES, NOW);
	const isThere = spawnSync('openssl', ['version']).status === 0;
	const verdict = (file: string): string =>
		isThere
			? execFileSync('openssl', [
					...['verify', '-x509_strict', '-purpose', 'sslserver'],
					...['-CAfile', join(folder, 'root.pem'), join(folder, file)],
				]).toString()
			: `${file}: ${serverOf(made).checkIssued(rootOf(made)) ? 'OK' : 'not its root'}`;
	expect(verdict('server.pem')).toMatch(/: OK/);
	const other = join(folder, 'other');
	const stranger = await certificateIn(other, NAMES, NOW);
	expect(serverOf(made).verify(rootOf(stranger).publicKey)).toBe(false);
});
