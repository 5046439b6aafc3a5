import { hostname, networkInterfaces } from 'node:os';
import { openFolder } from './shop-folder';
import { isMine, serve } from './serve.js';
import { serveShop } from './shop-server';

export interface ShopOptions {
	/** Where the documents are kept. */
	readonly folder: string;
	/** Where the built app lies. */
	readonly app: string;
	readonly port: number;
	/** This port and no other. */
	readonly strict: boolean;
	/** Told to the other machines of the local network, and not to this one alone. */
	readonly network: boolean;
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
	const { app, port, strict, network, note } = options;
	const kept = await openFolder(options.folder, options.rack);
	const names = network ? namesOfThisMachine() : null;
	const pages = await serve(app, port, strict, names).catch(async (fault) => {
		await kept.close();
		throw fault;
	});
	const hosts = (names ?? []).filter((name) => /^\d+\./.test(name));
	const others = hosts.map((host) => `http://${host}:${pages.port}/`);
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

/** By which others on the network ask for this machine. */
function namesOfThisMachine(): string[] {
	const found = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
	const numbers = found.filter(({ family, internal }) => family === 'IPv4' && !internal);
	const name = hostname().toLowerCase();
	return [...numbers.map(({ address }) => address), name, `${name}.local`];
}
