import { hostname, networkInterfaces } from 'node:os';
import type { KeptShop } from './kept-shop';
import { openFolder } from './shop-folder';
import { isMine, serve } from './serve.js';
import { serveShop } from './shop-server';

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
	/** Has nobody been given a link yet? */
	readonly isNew: boolean;
	/** A link by which all may be done, for whoever looks after the shop. */
	makeLink(name: string): Promise<string>;
	close(): Promise<void>;
}

/** Serves the app and a shop's documents from this process. */
export async function startShop(options: ShopOptions): Promise<StartedShop> {
	const { app, port, strict, network, note, address } = options;
	const kept = await openPlace(options);
	const names = network ? [...namesOfThisMachine(), ...(address ? [address.hostname] : [])] : null;
	const pages = await serve(app, port, strict, names).catch(async (fault) => {
		await kept.close();
		throw fault;
	});
	const hosts = (names ?? []).filter((name) => /^\d+\./.test(name));
	const others = address ? [address.href] : hosts.map((host) => `http://${host}:${pages.port}/`);
	const addresses = [pages.address, ...others];
	const serving = serveShop(pages.server, {
		...{ kept, note, addresses: others },
		isMine: (host) => isMine(host, names),
	});
	return {
		...{ addresses, port: pages.port, isNew: kept.links.all.length === 0 },
		makeLink: async (name) => {
			const secret = await kept.links.make(name, 'all');
			if (secret === null) throw new Error('This shop has as many links as it takes.');
			return `${addresses.at(-1)}devices#join=${secret}`;
		},
		close: async () => {
			pages.close();
			await serving.close();
			pages.server.closeAllConnections();
		},
	};
}

/** The client of a shared store is fetched only for one. */
async function openPlace({ place, rack, note }: ShopOptions): Promise<KeptShop> {
	if ('folder' in place) return openFolder(place.folder, rack);
	const { SharedShop } = await import('./shared/shared-shop');
	return SharedShop.open({ url: place.store, name: place.name, rack, note });
}

/** By which others on the network ask for this machine. */
function namesOfThisMachine(): string[] {
	const found = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
	const numbers = found.filter(({ family, internal }) => family === 'IPv4' && !internal);
	const name = hostname().toLowerCase();
	return [...numbers.map(({ address }) => address), name, `${name}.local`];
}
