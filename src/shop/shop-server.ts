import type { IncomingMessage, Server } from 'node:http';
import { type WebSocket, WebSocketServer } from 'ws';
import { LIMITS, type ShopWord } from '../lib/store';
import { Guest, type Host, type Wire } from './guest';
import type { KeptShop } from './kept-shop';
import { Presence, saidTold } from './presence';

/** Where the documents are told, beside the pages of the app. */
const PLACE = '/documents';
/** A device that has not said who it is by then is sent away; milliseconds. */
const HELLO = 5000;
/** Strangers at once, and devices. */
const MOST_STRANGERS = 20;
const MOST_GUESTS = 200;
/** How often a word is said to those who are quiet, milliseconds. */
const STILL_HERE = 20_000;
/** How often those who have not opened a document are told that it has changed, milliseconds. */
const MOVED = 1000;

/** A shop that is told to devices. */
export interface ShopServing {
	/** Devices that are in. */
	readonly guests: number;
	close(): Promise<void>;
}

interface ShopTold {
	readonly kept: KeptShop;
	readonly note: (line: string) => void;
	/** By which other machines reach it. */
	readonly addresses: readonly string[];
	/** Of the root certificate; null where the shop is told on this machine only. */
	readonly fingerprint: string | null;
}

/** A server of pages, and who may speak to the shop by it. */
export interface Door {
	readonly server: Server;
	readonly lets: (request: IncomingMessage) => boolean;
}

/** Tells a shop's documents on servers of pages, and ends with them. */
export function serveShop(
	doors: readonly Door[],
	{ kept, note, addresses, fingerprint }: ShopTold,
): ShopServing {
	const guests = new Set<Guest>();
	const moved = new Map<string, ShopWord & { say: 'moved' }>();
	const tellMoved = (): void => {
		for (const word of moved.values())
			for (const guest of guests) if (guest.link && !guest.hasOpen(word.doc)) guest.say(word);
		moved.clear();
	};
	const presence = new Presence();
	const host: Host = {
		...{ kept, presence, note, addresses, fingerprint },
		changed: (doc, standing, update, by) => {
			const word: ShopWord = { say: 'update', doc, ...standing };
			for (const guest of guests)
				if (update && guest !== by && guest.hasOpen(doc)) guest.say(word, update);
			moved.set(doc, { say: 'moved', doc, ...standing });
		},
		here: (link) => [...guests].filter((g) => g.link?.id === link).map(({ device }) => device),
		withdrawn: (link) => {
			for (const guest of [...guests]) if (guest.link?.id === link) guest.sendAway('withdrawn');
		},
	};
	hearOthers(kept, guests, host);
	tellOthers(kept, host);
	const sockets = new WebSocketServer({
		...{ noServer: true, maxPayload: LIMITS.message, perMessageDeflate: false },
	});
	for (const { server, lets } of doors)
		server.on('upgrade', (request, socket, head) => {
			if (!isOwn(request) || !lets(request))
				return void socket.end('HTTP/1.1 403 Forbidden\r\n\r\n');
			sockets.handleUpgrade(request, socket, head, (ws) => receive(ws, host, guests));
		});
	const timers = [setInterval(tellMoved, MOVED), setInterval(() => stillHere(guests), STILL_HERE)];
	const close = async (): Promise<void> => {
		for (const timer of timers) clearInterval(timer);
		for (const guest of guests) guest.sendAway('ending');
		presence.close();
		sockets.close();
		await kept.close();
	};
	return {
		get guests() {
			return [...guests].filter(({ link }) => link).length;
		},
		close,
	};
}

/** What is done at another server of this shop is told here too. */
function hearOthers(kept: KeptShop, guests: ReadonlySet<Guest>, host: Host): void {
	kept.onElsewhere = (doc, standing, update) => host.changed(doc, standing, update, null);
	kept.onLinks = () => {
		for (const guest of [...guests])
			if (guest.link && kept.links.isWithdrawn(guest.link.id)) guest.sendAway('withdrawn');
	};
	kept.onAway = () => {
		for (const guest of [...guests]) guest.sendAway('ending');
	};
}

/** Who is at this server is told at the others, and who is there is told here. */
function tellOthers(kept: KeptShop, { presence, note }: Host): void {
	presence.onHere = (said) => kept.sayToOthers(JSON.stringify(said));
	kept.onSaid = (server, word) => {
		try {
			presence.hear(server, saidTold(JSON.parse(word)));
		} catch (fault) {
			note(`Another server said what is not understood: ${String(fault)}`);
		}
	};
}

/** Only pages of this very server speak to it, and programs, which have no page. */
function isOwn({ url, headers }: IncomingMessage): boolean {
	if (url !== PLACE) return false;
	const { origin, host } = headers;
	return origin === undefined || origin.replace(/^https?:\/\//, '') === host;
}

function stillHere(guests: ReadonlySet<Guest>): void {
	for (const guest of guests) if (guest.link) guest.say({ say: 'still here' });
}

function receive(ws: WebSocket, host: Host, guests: Set<Guest>): void {
	const guest = new Guest(wireOf(ws), host);
	const strangers = [...guests].filter(({ link }) => !link).length;
	ws.on('error', (fault) => host.note(`${guest.device || 'a stranger'}: ${fault.message}`));
	if (strangers >= MOST_STRANGERS || guests.size >= MOST_GUESTS) return guest.sendAway('crowded');
	if (host.kept.isAway) return guest.sendAway('ending');
	guests.add(guest);
	const hello = setTimeout(() => {
		if (!guest.link) guest.sendAway('words');
	}, HELLO);
	ws.on('message', (data: Buffer, isBinary) => {
		if (isBinary) void guest.hear(new Uint8Array(data));
		else guest.sendAway('words');
	});
	ws.on('close', () => {
		clearTimeout(hello);
		guests.delete(guest);
		void guest.gone();
	});
}

/** A device that does not take in what it is told is let go; bytes that may wait for it. */
const MOST_WAITING = 64_000_000;

function wireOf(ws: WebSocket): Wire {
	return {
		send: (bytes) => {
			if (ws.bufferedAmount > MOST_WAITING) ws.terminate();
			else ws.send(bytes);
		},
		pause: () => ws.pause(),
		resume: () => ws.resume(),
		end: () => {
			ws.close(1000);
			setTimeout(() => ws.terminate(), 2000).unref();
		},
	};
}
