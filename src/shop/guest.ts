import {
	type DeviceWord,
	frame,
	isDocName,
	LIMITS,
	type NotKept,
	type Present,
	type SentAway,
	type ShopWord,
	type ShopStanding,
	SPEECH,
	type Speech,
	unframe,
} from '../lib/store';
import type { ShopDocuments } from './documents';
import { placeTold, type Presence, type Someone } from './presence';
import { StoreAway } from './keeping';
import type { KeptShop } from './kept-shop';
import { isRight, type KeptLink } from './links';

/** One end of a connection, as far as it is used. */
export interface Wire {
	send(bytes: Uint8Array): void;
	/** Takes no more in for a while. */
	pause(): void;
	resume(): void;
	/** Sends what is waiting, then ends. */
	end(): void;
}

/** What a guest needs of the shop, and of the others in it. */
export interface Host {
	readonly kept: KeptShop;
	readonly presence: Presence;
	/** The devices are told, but for the one that did it; without an update, only that it moved. */
	changed(doc: string, to: ShopStanding, update: Uint8Array | null, by: Guest | null): void;
	/** The devices there by each link. */
	here(link: string): readonly string[];
	withdrawn(link: string): void;
	/** By which other machines reach the shop. */
	readonly addresses: readonly string[];
	/** Of the root certificate they are to trust; null where there are no others. */
	readonly fingerprint: string | null;
	/** How things are going, for who looks after the server. */
	note(line: string): void;
}

const LONGEST_NAME = 60;

/** A device at the shop: what it says is looked at word by word, and never taken on trust. */
export class Guest implements Someone {
	link: KeptLink | null = null;
	device = '';
	readonly #wire: Wire;
	readonly #host: Host;
	readonly #documents: ShopDocuments;
	readonly #docs = new Set<string>();
	#ended = false;
	#allowance: number = LIMITS.burst;
	#counted = Date.now();

	constructor(wire: Wire, host: Host) {
		this.#wire = wire;
		this.#host = host;
		this.#documents = host.kept.documents;
	}

	hasOpen(doc: string): boolean {
		return this.#docs.has(doc);
	}

	say(word: ShopWord, ...parts: readonly Uint8Array[]): void {
		if (!this.#ended) this.#wire.send(frame(word, ...parts));
	}

	tellPresent(doc: string, devices: readonly Present[]): void {
		this.say({ say: 'present', doc, devices });
	}

	/** A message came. Whatever is in it, nobody else is harmed. */
	async hear(bytes: Uint8Array): Promise<void> {
		if (this.#ended) return;
		this.#count(bytes.length);
		if (!this.link && bytes.length > LIMITS.stranger) return this.sendAway('words');
		try {
			const { word, rest } = unframe(bytes);
			if (this.link) await this.#answer(word as DeviceWord, rest);
			else this.#greet(word);
		} catch (fault) {
			this.#host.note(`${this.device || 'a stranger'}: ${String(fault)}`);
			this.sendAway(fault instanceof StoreAway ? 'ending' : 'words');
		}
	}

	sendAway(why: SentAway): void {
		this.say({ say: 'refused', why });
		this.#wire.end();
		void this.gone();
	}

	/** The connection has ended. */
	async gone(): Promise<void> {
		if (this.#ended) return;
		this.#ended = true;
		this.#host.presence.put(this, null);
		const docs = [...this.#docs];
		this.#docs.clear();
		for (const doc of docs) await this.#documents.leave(doc);
	}

	#greet({ say, secret, device, speech }: Readonly<Record<string, unknown>>): void {
		if (say !== 'hello') return this.sendAway('words');
		const link = this.#host.kept.links.of(secret);
		if (!link) return this.sendAway('secret');
		if (link.withdrawn !== undefined) return this.sendAway('withdrawn');
		const apart = whoIsOlder(speech);
		if (apart) return this.sendAway(apart);
		this.device = typeof device === 'string' ? device.slice(0, LONGEST_NAME) : '';
		this.link = link;
		const shop = this.#host.kept.id;
		const docs = this.#documents.list();
		this.say({ say: 'welcome', shop, right: link.right, link: link.id, docs });
	}

	async #answer(word: DeviceWord, rest: Uint8Array): Promise<void> {
		switch (word.say) {
			case 'open':
				return this.#opens(named(word.doc), rest);
			case 'leave':
				return this.#leaves(named(word.doc));
			case 'update':
				return this.#update(named(word.doc), Number(word.n), rest);
			case 'at':
				return this.#host.presence.put(this, placeTold(word.place));
			case 'links':
			case 'make':
			case 'withdraw':
				return this.#manage(word);
			case 'hello':
				throw new TypeError('said hello twice');
			default:
				throw new TypeError('a word nobody knows');
		}
	}

	async #opens(doc: string, standing: Uint8Array): Promise<void> {
		const held = this.#docs.has(doc) ? null : await this.#takes(doc);
		if (held === 'too many') return this.say({ say: 'not kept', doc, n: 0, why: 'too many' });
		const shared = await this.#documents.use(doc);
		if (!shared) return;
		try {
			// From here to the last word nothing comes between: no update is told twice or missed.
			const lacks = shared.lacking(standing) ?? NOTHING;
			const mine = shared.standing();
			const ours = isAlike(mine, standing) ? NOTHING : mine;
			const { mark, at } = this.#documents.standing(doc);
			this.say({ say: 'state', doc, size: lacks.length, mark, at }, lacks, ours);
		} finally {
			await this.#documents.leave(doc);
		}
	}

	async #takes(doc: string): Promise<'too many' | null> {
		this.#docs.add(doc);
		const shared = await this.#documents.use(doc);
		if (shared && !this.#ended) return null;
		this.#docs.delete(doc);
		if (shared) await this.#documents.leave(doc);
		return shared ? null : 'too many';
	}

	async #leaves(doc: string): Promise<void> {
		if (this.#docs.delete(doc)) await this.#documents.leave(doc);
	}

	async #update(doc: string, n: number, update: Uint8Array): Promise<void> {
		const refuse = (why: NotKept): void => this.say({ say: 'not kept', doc, n, why });
		if (this.link?.right === 'look') return refuse('look only');
		if (!this.#docs.has(doc)) throw new TypeError('an update to a document that is not open');
		const added = await this.#documents.add(doc, update);
		if (!added.kept) {
			if (added.fault) this.#host.note(`${doc} could not be written: ${String(added.fault)}`);
			return refuse(added.why);
		}
		const { mark, at } = added;
		this.say({ say: 'kept', doc, n, mark, at });
		if (added.isNew) this.#host.changed(doc, { mark, at }, update, this);
	}

	async #manage(word: Extract<DeviceWord, { say: 'links' | 'make' | 'withdraw' }>): Promise<void> {
		if (this.link?.right !== 'all') throw new TypeError('asks for what its link does not allow');
		const { links } = this.#host.kept;
		if (word.say === 'make') {
			const { name, right } = word;
			if (typeof name !== 'string' || !isRight(right)) throw new TypeError('no such link');
			const secret = await links.make(name, right);
			if (secret !== null) this.say({ say: 'made', secret, name, right });
		}
		if (word.say === 'withdraw' && (await links.withdraw(String(word.id))))
			this.#host.withdrawn(String(word.id));
		const lines = links.all.map(({ hash: _, ...link }) => ({
			...link,
			here: this.#host.here(link.id),
		}));
		const { addresses, fingerprint } = this.#host;
		this.say({ say: 'links', links: lines, addresses, fingerprint });
	}

	/** Whoever says more than can be borne is heard more slowly; nothing of it is lost. */
	#count(bytes: number): void {
		const now = Date.now();
		const rested = ((now - this.#counted) / 1000) * LIMITS.rate;
		this.#counted = now;
		this.#allowance = Math.min(LIMITS.burst, this.#allowance + rested) - 1 - bytes / 100_000;
		if (this.#allowance >= 0) return;
		this.#wire.pause();
		setTimeout(() => this.#wire.resume(), (-this.#allowance / LIMITS.rate) * 1000);
	}
}

const NOTHING = new Uint8Array(0);

function named(doc: unknown): string {
	if (!isDocName(doc)) throw new TypeError('no name of a document');
	return doc;
}

const isAlike = (a: Uint8Array, b: Uint8Array): boolean => Buffer.from(a).equals(Buffer.from(b));

/** Two that speak differently never merge: who is older is told so. */
function whoIsOlder(speech: unknown): 'older' | 'newer' | null {
	const { words, job } = (speech ?? {}) as Partial<Speech>;
	const [theirs, ours] = words === SPEECH.words ? [job, SPEECH.job] : [words, SPEECH.words];
	if (theirs === ours) return null;
	return Number(theirs) > ours ? 'newer' : 'older';
}
