import { createServer, type IncomingMessage, type RequestListener, type Server } from 'node:http';
import { isIP } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { isFromHere, openDoor, type ShopDoor } from './https/door';
import { certificateIn, type ShopCertificate } from './https/kept-certificate';
import type { KeptShop } from './kept-shop';
import { cannotKeep, openFolder } from './shop-folder';
import { isMine, serve } from './serve.js';
import { type Door, serveShop } from './shop-server';

/** Where a shop is kept: a folder of this machine, or a shop's name in a store servers share. */
export type ShopPlace =
	{ readonly folder: string } | { readonly store: string; readonly name: string };

export interface ShopOptions {
	readonly place: ShopPlace;
	/** Where the built app lies. */
	readonly app: string;
	readonly port: number;
	/** This port and no other. */
	readonly strict: boolean;
	/** Told to the other machines of the local network, and not to this one alone. */
	readonly network: boolean;
	/** By which devices reach it, when something stands between: a door to several servers. */
	readonly address?: URL;
	/** What a new shop begins with. */
	readonly rack: unknown;
	readonly note: (line: string) => void;
}

export interface StartedShop {
	/** For browsers on this machine, and for those on its network. */
	readonly addresses: readonly string[];
	readonly port: number;
	/** Of the root certificate other devices are to trust; null on this machine only. */
	readonly fingerprint: string | null;
	/** Has nobody been given a link yet? */
	readonly isNew: boolean;
	/** A link by which all may be done, for whoever looks after the shop. */
	makeLink(name: string): Promise<string>;
	close(): Promise<void>;
}

/** Serves the app and a shop's documents from this process. */
export async function startShop(options: ShopOptions): Promise<StartedShop> {
	const { network, note, address: door } = options;
	const kept = await openPlace(options);
	const names = network ? [...namesOfThisMachine(), ...(door ? [door.hostname] : [])] : null;
	const told = await tell(options, names).catch(async (fault: unknown) => {
		await kept.close();
		throw fault;
	});
	const { address, port, fingerprint, doors } = told;
	const scheme = fingerprint === null ? 'http' : 'https';
	const numbers = (names ?? []).filter((name) => isIP(name) !== 0);
	const others = door ? [door.href] : numbers.map((ip) => `${scheme}://${ip}:${port}/`);
	const addresses = [address, ...others];
	const serving = serveShop(doors, { kept, note, addresses: others, fingerprint });
	return {
		...{ addresses, port, fingerprint, isNew: kept.links.all.length === 0 },
		makeLink: async (name) => {
			const secret = await kept.links.make(name, 'all');
			if (secret === null) throw new Error('This shop has as many links as it takes.');
			return `${addresses.at(-1)}devices#join=${secret}`;
		},
		close: async () => {
			told.close();
			await serving.close();
			for (const { server } of doors) server.closeAllConnections();
		},
	};
}

/** The client of a shared store is fetched only for one. */
async function openPlace({ place, rack, note }: ShopOptions): Promise<KeptShop> {
	if ('folder' in place) return openFolder(place.folder, rack);
	const { SharedShop } = await import('./shared/shared-shop');
	return SharedShop.open({ url: place.store, name: place.name, rack, note });
}

/** The pages, and by which doors the shop is told beside them. */
interface Told {
	readonly address: string;
	readonly port: number;
	readonly fingerprint: string | null;
	readonly doors: readonly (Door & { readonly server: Server })[];
	close(): void;
}

function tell(options: ShopOptions, names: readonly string[] | null): Promise<Told> {
	const { place } = options;
	if (names === null || !('folder' in place)) return tellPlainly(options, names);
	return tellNetwork(options, place.folder, names);
}

/**
 * What nobody else can listen to needs no certificate, and of several servers the door before them
 * has it.
 */
async function tellPlainly(
	{ app, port, strict }: ShopOptions,
	names: readonly string[] | null,
): Promise<Told> {
	let server: Server | null = null;
	const open = (pages: RequestListener): Server => (server = createServer(pages));
	const pages = await serve(app, port, strict, names, open);
	const doors = server
		? [{ server, lets: (request: IncomingMessage) => isAsked(request, names) }]
		: [];
	return { ...pages, fingerprint: null, doors };
}

async function tellNetwork(
	options: ShopOptions,
	folder: string,
	names: readonly string[],
): Promise<Told> {
	const kept = (): Promise<ShopCertificate> =>
		certificateIn(join(folder, 'https'), names, Date.now());
	const certificate = await kept().catch((fault) => {
		throw cannotKeep(folder, fault);
	});
	const isMineToo = (host: string | undefined): boolean => isMine(host, names);
	let door: ShopDoor | null = null;
	const open = (pages: RequestListener) => (door = openDoor(pages, certificate, isMineToo)).door;
	const { app, port, strict, note } = options;
	const pages = await serve(app, port, strict, names, open);
	if (!door) throw new Error('bug: nothing was opened');
	const { secure, plain, show, close }: ShopDoor = door;
	const renewal = setInterval(() => {
		kept().then(show, (fault) => note(`The certificate could not be renewed: ${String(fault)}`));
	}, RENEWAL);
	renewal.unref();
	return {
		...pages,
		fingerprint: certificate.fingerprint,
		doors: [
			{ server: secure, lets: (request) => isAsked(request, names) },
			{ server: plain, lets: isFromHere },
		],
		close: () => {
			clearInterval(renewal);
			close();
		},
	};
}

/** How often it is looked whether the certificate is still good for long, milliseconds. */
const RENEWAL = 6 * 3_600_000;

const isAsked = ({ headers }: IncomingMessage, names: readonly string[] | null): boolean =>
	isMine(headers.host, names);

/** By which others on the network ask for this machine. */
function namesOfThisMachine(): string[] {
	const found = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
	const numbers = found.filter(({ family, internal }) => family === 'IPv4' && !internal);
	const name = hostname().toLowerCase();
	return [...numbers.map(({ address }) => address), name, `${name}.local`];
}
