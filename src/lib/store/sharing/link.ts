import type { Keeper, Watcher, Waits } from '../keeping';
import { Pause, waitAfter } from '../keeping';
import { HeldDocument } from './held-document';
import {
	type DeviceWord,
	frame,
	isDocName,
	type PlaceOpen,
	type Present,
	type SentAway,
	type Right,
	type ShopStanding,
	type ShopWord,
	SPEECH,
	type Speech,
	unframe,
} from './words';

/** A connection as browsers have it, as far as it is used. */
export interface Socket {
	binaryType: string;
	onopen: ((event: never) => void) | null;
	onmessage: ((event: { data: unknown }) => void) | null;
	onclose: ((event: never) => void) | null;
	onerror: ((event: never) => void) | null;
	send(bytes: Uint8Array<ArrayBuffer>): void;
	close(): void;
}

/** How things stand with the shop. Times are milliseconds since 1970, by this device's clock. */
export type LinkState =
	| { readonly kind: 'reaching'; readonly since: number }
	| { readonly kind: 'joined'; readonly since: number; readonly right: Right }
	/** The network, or the server, is away; it is tried again by itself. */
	| { readonly kind: 'away'; readonly since: number }
	/** Nothing is tried any more until somebody asks for it. */
	| { readonly kind: 'refused'; readonly since: number; readonly why: SentAway };

export interface LinkTo {
	readonly connect: () => Socket;
	readonly secret: string;
	/** What this device is called at the shop. */
	readonly device: string;
	readonly waits: Waits;
	/** Nothing heard for so long, milliseconds, is a connection that is dead. */
	readonly silence: number;
	readonly speech?: Speech;
}

/** Refusals that pass by themselves. */
const PASSING: readonly SentAway[] = ['ending', 'crowded'];

/**
 * A device's connection to its shop. The documents in use are brought into step when it stands, and
 * kept so; while it does not, all goes on by itself, and nothing need be remembered for later: two
 * copies are brought into step by where each of them stands.
 */
export class Link implements Watcher {
	state: LinkState = { kind: 'reaching', since: Date.now() };
	/** Told each change of how things stand. */
	onState: () => void = () => undefined;
	/** Told before what another device did comes into a document here. */
	onTaking: (doc: string) => void = () => undefined;
	/** Told where documents stand that are not in use here: all of them once it is joined. */
	onMoved: (moved: ReadonlyMap<string, ShopStanding>) => void = () => undefined;
	/** Told what is said of links and of whoever came by them. */
	onLinks: (word: Extract<ShopWord, { say: 'links' | 'made' }>) => void = () => undefined;
	/** Told who else has the job open that this device said it is at. */
	onPresent: (devices: readonly Present[]) => void = () => undefined;
	/** The shop's mark and the mark of the link this device came by, once it is joined. */
	shop = '';
	link = '';
	readonly #to: LinkTo;
	readonly #held = new Map<string, HeldDocument>();
	readonly #pause = new Pause();
	#socket: Socket | null = null;
	#failures = 0;
	#stopped = false;
	#place: PlaceOpen | null = null;
	#lastHeard: ReturnType<typeof setTimeout> | undefined;

	constructor(to: LinkTo) {
		this.#to = to;
	}

	/** Connects, and goes on trying. */
	start(): void {
		if (this.#stopped || this.#socket) return;
		const socket = this.#to.connect();
		this.#socket = socket;
		socket.binaryType = 'arraybuffer';
		this.#awaitWord(socket);
		const { secret, device, speech = SPEECH } = this.#to;
		socket.onopen = () => socket.send(frame({ say: 'hello', secret, device, speech }));
		socket.onmessage = ({ data }) => this.#hear(socket, data);
		socket.onerror = () => undefined; // it ends by itself, and is told then
		socket.onclose = () => void this.#ended(socket);
	}

	/** Tries now, if it is waiting to try again or was refused. */
	hurry(): void {
		if (this.state.kind === 'refused' && !this.#socket) this.start();
		this.#pause.end();
	}

	stop(): void {
		this.#stopped = true;
		this.#pause.end();
		clearTimeout(this.#lastHeard);
		const socket = this.#socket;
		this.#socket = null;
		socket?.close();
		for (const held of this.#held.values()) held.let();
		this.#held.clear();
	}

	get right(): Right | null {
		return this.state.kind === 'joined' ? this.state.right : null;
	}

	/** Documents with changes that the shop has not got, and in words why, where it said so. */
	get behind(): readonly { readonly doc: string; readonly why: string | null }[] {
		return [...this.#held]
			.filter(([, { inStep }]) => !inStep)
			.map(([doc, { why }]) => ({ doc, why }));
	}

	came(keeper: Keeper): void {
		if (!isDocName(keeper.name)) return; // a job no planner named: the shop would turn it away
		const held = new HeldDocument(keeper, {
			say: (word, bytes) => this.say(word, bytes),
			taking: () => this.onTaking(keeper.name),
			tell: () => this.onState(),
			again: this.#to.waits.most,
		});
		this.#held.set(keeper.name, held);
		if (this.state.kind === 'joined') held.open(this.state.right);
	}

	left(doc: string): void {
		const held = this.#held.get(doc);
		if (!held) return;
		held.let();
		this.#held.delete(doc);
		if (this.state.kind === 'joined') this.say({ say: 'leave', doc });
	}

	/** Resolves when this document, which is in use, is at the shop and here alike. */
	inStep(doc: string): Promise<void> {
		return (
			this.#held.get(doc)?.whenInStep() ?? Promise.reject(new Error(`bug: ${doc} is not in use`))
		);
	}

	/**
	 * Tells those who have the same job open where this device is; again whenever it has joined.
	 */
	standsAt(place: PlaceOpen | null): void {
		if (JSON.stringify(place) === JSON.stringify(this.#place)) return;
		if (place?.doc !== this.#place?.doc) this.onPresent([]);
		this.#place = place;
		this.say({ say: 'at', place });
	}

	/** Where the shop has this document, as far as was told. */
	standing(doc: string): ShopStanding | null {
		return this.#held.get(doc)?.standing ?? null;
	}

	say(word: DeviceWord, bytes: Uint8Array = NONE): void {
		if (this.state.kind === 'joined') this.#socket?.send(frame(word, bytes));
	}

	#hear(socket: Socket, data: unknown): void {
		if (socket !== this.#socket || !(data instanceof ArrayBuffer)) return;
		this.#awaitWord(socket);
		try {
			const { word, rest } = unframe(new Uint8Array(data));
			this.#take(word as ShopWord, rest);
		} catch (fault) {
			console.error(fault); // whatever came is had again when it is joined anew
			socket.close();
		}
	}

	#take(word: ShopWord, rest: Uint8Array): void {
		switch (word.say) {
			case 'welcome':
				return this.#joined(word);
			case 'refused':
				if (PASSING.includes(word.why)) return;
				return this.#stands({ kind: 'refused', since: Date.now(), why: word.why });
			case 'state':
			case 'update':
			case 'kept':
			case 'not kept':
				return this.#held.get(word.doc)?.hear(word, rest);
			case 'moved':
				return this.onMoved(new Map([[word.doc, { mark: word.mark, at: word.at }]]));
			case 'present':
				return word.doc === this.#place?.doc ? this.onPresent(word.devices) : undefined;
			case 'links':
			case 'made':
				return this.onLinks(word);
			case 'still here':
		}
	}

	#joined({ shop, link, right, docs }: ShopWord & { say: 'welcome' }): void {
		this.shop = shop;
		this.link = link;
		this.#failures = 0;
		this.#stands({ kind: 'joined', since: Date.now(), right });
		for (const held of this.#held.values()) held.open(right);
		if (this.#place) this.say({ say: 'at', place: this.#place });
		this.onMoved(new Map(docs.map(([doc, mark, at]) => [doc, { mark, at }])));
	}

	async #ended(socket: Socket): Promise<void> {
		if (socket !== this.#socket) return;
		this.#socket = null;
		clearTimeout(this.#lastHeard);
		for (const held of this.#held.values()) held.away();
		this.onPresent([]);
		if (this.state.kind === 'refused') return;
		if (this.state.kind !== 'away') this.#stands({ kind: 'away', since: Date.now() });
		await this.#pause.wait(waitAfter(this.#to.waits, ++this.#failures));
		this.start();
	}

	/** A network that has gone does not always say so. */
	#awaitWord(socket: Socket): void {
		clearTimeout(this.#lastHeard);
		this.#lastHeard = setTimeout(() => {
			if (socket !== this.#socket) return;
			socket.close();
			void this.#ended(socket); // it may take minutes until a dead one says that it has ended
		}, this.#to.silence);
	}

	#stands(state: LinkState): void {
		this.state = state;
		this.onState();
	}
}

const NONE = new Uint8Array(0);
