import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WebSocket } from 'ws';
import { openDexieStore } from '../../src/lib/store/database/dexie-store';
import type { Store } from '../../src/lib/store/database/store';
import { type JobToOpen, openJob } from '../../src/lib/store/hand/open-job';
import type { JobInHand } from '../../src/lib/store/hand/job-in-hand';
import { Shelf } from '../../src/lib/store/keeping/shelf';
import { beginSharing, type Sharing } from '../../src/lib/store/sharing/begin-sharing';
import { joinShop } from '../../src/lib/store/sharing/join-shop';
import type { LinkTo, Socket } from '../../src/lib/store/sharing/link';
import type { Right, Speech } from '../../src/lib/store/sharing/words';
import { type ShopPlace, startShop, type StartedShop } from '../../src/shop/start-shop';

/* A shop and its devices as the tests have them: a real server, real sockets, a database each. */

export const WAITS = { answer: 2000, first: 5, most: 60 };
export const RACK = {
	stock: {
		materials: [{ id: 'ply' }],
		sheets: [{ id: 'S', material: 'ply', length: 2440, width: 1220, owned: 1 }],
		offcuts: [],
	},
	shop: { name: 'Ours' },
};

export class TestShop {
	readonly folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-shop-'));
	readonly notes: string[] = [];
	#shop: StartedShop | null = null;
	#port = 0;
	#devices: Device[] = [];
	readonly #shared: ShopPlace | null;

	/** @param store the address of a shared store; null for a folder of its own */
	constructor(store: string | null = null, name = 'ours') {
		this.#shared = store === null ? null : { store, name };
	}

	get port(): number {
		return this.#port;
	}

	/** Of what stands before the server: devices go there. */
	set port(port: number) {
		this.#port = port;
	}

	async start(): Promise<void> {
		this.#shop = await startShop({
			place: this.#shared ?? { folder: join(this.folder, 'kept') },
			app: join(this.folder, 'no app'),
			port: this.#port || 47_000 + Math.floor(Math.random() * 9000),
			strict: this.#port !== 0,
			network: false,
			rack: RACK,
			note: (line) => void this.notes.push(line),
		});
		this.#port = this.#shop.port;
	}

	async stop(): Promise<void> {
		await this.#shop?.close();
		this.#shop = null;
	}

	/** The secret of a link made for whoever looks after the shop. */
	async owner(): Promise<string> {
		const link = await this.#shop!.makeLink('Desk');
		return link.slice(link.indexOf('=') + 1);
	}

	to(secret: string, more: { device?: string; speech?: Speech } = {}): LinkTo {
		const address = `ws://localhost:${this.#port}/documents`;
		const connect = (): Socket => new WebSocket(address) as unknown as Socket;
		return { connect, secret, device: 'Desk', waits: WAITS, silence: 30_000, ...more };
	}

	/** A device with a database of its own, joined. */
	async device(secret: string, name = `device-${Math.random()}`): Promise<Device> {
		const joined = await joinShop(this.to(secret), (database) =>
			openDexieStore(`${name} ${database}`),
		);
		if ('refused' in joined) throw new Error(`refused: ${joined.refused}`);
		const store = openDexieStore(`${name} kerf-and-nap shop ${joined.membership.shop}`);
		const device = new Device(this, store, { secret, name });
		this.#devices.push(device);
		return device;
	}

	async close(): Promise<void> {
		for (const device of this.#devices) device.close();
		await this.stop();
		rmSync(this.folder, { recursive: true, force: true });
	}
}

export class Device {
	readonly shelf: Shelf;
	readonly sharing: Sharing;
	readonly store: Store;
	/** Without the network nothing is reached, and what stood has ended. */
	#isAway = false;
	readonly #sockets = new Set<Socket>();

	constructor(shop: TestShop, store: Store, { secret, name }: { secret: string; name: string }) {
		this.store = store;
		this.shelf = new Shelf(store, { writer: name, waits: WAITS, channel: name });
		const to = shop.to(secret, { device: name });
		this.sharing = beginSharing(this.shelf, { ...to, connect: () => this.#reach(to.connect) });
	}

	/** The network goes away. */
	away(): void {
		this.#isAway = true;
		for (const socket of this.#sockets) socket.close();
		this.#sockets.clear();
	}
	back(): void {
		this.#isAway = false;
		this.sharing.link.hurry();
	}

	#reach(connect: () => Socket): Socket {
		const socket = connect();
		if (this.#isAway) socket.close();
		else this.#sockets.add(socket);
		return socket;
	}

	/** Takes a job in hand: one of the store, or a new one. */
	async open(id: string, file: object = { name: 'Start' }): Promise<JobInHand> {
		const record = await this.store.job(id);
		const base = { id, file: record?.file ?? file, sharesRack: true } as JobToOpen;
		return openJob(this.shelf, record ? { ...base, record } : base, () => false);
	}

	close(): void {
		this.sharing.stop();
		this.shelf.close();
		this.store.close();
	}
}

/** A link of this right, made by a device that may do all. */
export function linkFor(device: Device, right: Right): Promise<string> {
	const { link } = device.sharing;
	return new Promise((resolve) => {
		link.onLinks = (word) => {
			if (word.say === 'made') resolve(word.secret);
		};
		link.say({ say: 'make', name: `To ${right}`, right });
	});
}
