import { createPrivateKey, X509Certificate } from 'node:crypto';
import { mkdir, readFile } from 'node:fs/promises';
import { BlockList, isIP, isIPv6 } from 'node:net';
import { join } from 'node:path';
import { writeWholeText } from '../whole-file';
import { makeRoot, makeServer, permitsOf, type Signed } from './certificate';

const DAY = 86_400_000;
/** Devices keep the root for years; nobody should have to go round with another one. */
const ROOT_DAYS = 20 * 365;
/** Browsers take none for longer than 398 days (from memory; some allow roots of one's own 825). */
const SERVER_DAYS = 390;
/** Renewed so long before its end: a shop that is shut over the summer still has a good one. */
const AHEAD = 60 * DAY;
/** Clocks of devices go wrong: it holds from the day before. */
const BEHIND = DAY;

/**
 * What a shop's root may vouch for besides the name of its machine: this machine, names that end in
 * 'local', and the addresses that are never of the wide net (RFC 1918, 3927, 4193, 4291, 6598).
 */
const OWN = [
	...['localhost', 'local', '127.0.0.0/8', '10.0.0.0/8', '172.16.0.0/12', '192.168.0.0/16'],
	...['169.254.0.0/16', '100.64.0.0/10', '::1/128', 'fc00::/7', 'fe80::/10'],
];

/** By which this machine is always asked for by itself. */
const ITSELF = ['localhost', '127.0.0.1', '::1'];

/** The certificate a shop's server shows, and the root that devices are to trust. */
export interface ShopCertificate {
	/** PEM: the server's, then the root. */
	readonly chain: string;
	readonly key: string;
	readonly root: string;
	/** Of the root, as devices show it: SHA-256, two digits at a time. */
	readonly fingerprint: string;
	/** Milliseconds since 1970. */
	readonly until: number;
}

/**
 * The certificate kept in this folder: made on the first start, renewed before its end or where the
 * machine goes by other names than it has, by the same root. Rejects when the folder cannot be
 * read, or holds a root that is none.
 *
 * @param names and addresses by which devices ask for this machine
 * @param now milliseconds since 1970
 */
export async function certificateIn(
	folder: string,
	names: readonly string[],
	now: number,
): Promise<ShopCertificate> {
	await mkdir(folder, { recursive: true, mode: 0o700 });
	const there = await kept(folder, 'root');
	if (there && !isPair(there)) throw new TypeError(`the root in ${folder} is torn`);
	const isUsable = there !== null && endOf(there) > now;
	const root = isUsable ? there : await put(folder, 'root', newRoot(names, now));
	const shown = [...ITSELF, ...permitted(root, names)];
	const before = await kept(folder, 'server');
	const server =
		before && isGood(before, root, { shown, now })
			? before
			: await put(folder, 'server', newServer(root, shown, now));
	return {
		chain: `${server.certificate}${root.certificate}`,
		key: server.key,
		root: root.certificate,
		fingerprint: new X509Certificate(root.certificate).fingerprint256,
		until: endOf(server),
	};
}

function newRoot(names: readonly string[], now: number): Signed {
	const [host = 'this machine'] = names.filter(isHostName);
	const blocks = blocksOf(OWN);
	const further = names.filter((name) => isIP(name) !== 0 && !isIn(blocks, name));
	const single = further.map((name) => `${name}/${isIPv6(name) ? 128 : 32}`);
	return makeRoot({
		name: `Kerf & Nap, the shop on ${host}`,
		...{ from: now - BEHIND, until: now + ROOT_DAYS * DAY },
		permits: [...OWN, ...names.filter(isHostName).filter((name) => !isLocal(name)), ...single],
	});
}

function newServer(root: Signed, names: readonly string[], now: number): Signed {
	const until = Math.min(now + SERVER_DAYS * DAY, endOf(root));
	const host = names.filter(isHostName).find((name) => name !== 'localhost');
	return makeServer(root, { name: host ?? 'Kerf & Nap', from: now - BEHIND, until, names });
}

/** Of these names those that the root may vouch for: with one more it would vouch for none. */
function permitted({ certificate }: Signed, names: readonly string[]): string[] {
	const permits = permitsOf(certificate);
	const blocks = blocksOf(permits);
	const ends = permits.filter((one) => !one.includes('/'));
	const isNamed = (name: string): boolean =>
		isHostName(name) && ends.some((end) => name === end || name.endsWith(`.${end}`));
	return names.filter((name) => (isIP(name) === 0 ? isNamed(name) : isIn(blocks, name)));
}

function isGood(
	server: Signed,
	root: Signed,
	{ shown, now }: { readonly shown: readonly string[]; readonly now: number },
): boolean {
	const own = new X509Certificate(server.certificate);
	const by = new X509Certificate(root.certificate);
	const has = (name: string): boolean =>
		(isIP(name) === 0 ? own.checkHost(name) : own.checkIP(name)) !== undefined;
	const isWithin = Date.parse(own.validFrom) <= now && endOf(server) - AHEAD > now;
	return isWithin && isPair(server) && own.verify(by.publicKey) && shown.every(has);
}

/** Do both belong together? A crash within a renewal leaves two that do not. */
const isPair = ({ certificate, key }: Signed): boolean =>
	new X509Certificate(certificate).checkPrivateKey(createPrivateKey(key));

const endOf = ({ certificate }: Signed): number =>
	Date.parse(new X509Certificate(certificate).validTo);

const isHostName = (name: string): boolean =>
	isIP(name) === 0 && /^[a-z0-9][a-z0-9.-]*$/.test(name);
const isLocal = (name: string): boolean => name === 'localhost' || name.endsWith('.local');

function blocksOf(permits: readonly string[]): BlockList {
	const blocks = new BlockList();
	for (const permit of permits) {
		const [address = '', bits] = permit.split('/');
		if (bits !== undefined) blocks.addSubnet(address, Number(bits), familyOf(address));
	}
	return blocks;
}
const isIn = (blocks: BlockList, address: string): boolean =>
	blocks.check(address, familyOf(address));
const familyOf = (address: string): 'ipv6' | 'ipv4' => (isIPv6(address) ? 'ipv6' : 'ipv4');

/** Null where there is none yet. */
async function kept(folder: string, what: string): Promise<Signed | null> {
	try {
		const [certificate, key] = await Promise.all(
			filesOf(folder, what).map((path) => readFile(path, 'utf8')),
		);
		return { certificate: certificate ?? '', key: key ?? '' };
	} catch (fault) {
		if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return null;
		throw fault;
	}
}

/** The key first: a certificate whose key was lost on the way would be trusted for nothing. */
async function put(folder: string, what: string, one: Signed): Promise<Signed> {
	const [certificate = '', key = ''] = filesOf(folder, what);
	await writeWholeText(key, one.key);
	await writeWholeText(certificate, one.certificate);
	return one;
}

const filesOf = (folder: string, what: string): string[] => [
	join(folder, `${what}.pem`),
	join(folder, `${what}-key.pem`),
];
