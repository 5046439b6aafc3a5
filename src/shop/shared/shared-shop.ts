import { createHash, randomBytes } from 'node:crypto';
import { seedOf, SHOP_DOC, SPEECH } from '../../lib/store';
import { ShopDocuments } from '../documents';
import { type KeptValue, NO_MARK, PlaceRefused } from '../keeping';
import type { KeptShop } from '../kept-shop';
import { Links } from '../links';
import { Connection } from './connection';
import { FOUND, SWAP } from './scripts';
import { type Names, namesOf, StreamLogs } from './stream-logs';

/** Raised when an older planner would read the store wrong. */
const FORMAT = 1;
/** Between two tries to reach the store again, milliseconds. */
const WAIT = 250;

/** Before what servers say to each other on the bell, and nobody keeps. */
const SAID = 'said ';

export interface SharedPlace {
	/** Of Redis or Valkey: redis://host:port, rediss:// for one with TLS. */
	readonly url: string;
	/** Which shop of those in the store. */
	readonly name: string;
	/** What a new shop begins with. */
	readonly rack: unknown;
	readonly note: (line: string) => void;
}

/** All that hangs on one connection, and ends with it. */
interface Opened {
	readonly id: string;
	readonly connection: Connection;
	readonly documents: ShopDocuments;
	readonly links: Links;
	/** Says a word to all servers that stand so, this one too; told what they say. */
	readonly said: { say: (word: string) => void; hear: (word: string) => void };
}

/**
 * A shop in a store that several servers share. The store is what holds: nothing is said to be kept
 * before it has it on its disk, and nothing here outlives the connection to it. While that is away
 * nobody is let in, since nobody knows who may; when it is back, all is read anew.
 */
export class SharedShop implements KeptShop {
	onElsewhere: KeptShop['onElsewhere'] = () => undefined;
	onLinks: KeptShop['onLinks'] = () => undefined;
	onAway: KeptShop['onAway'] = () => undefined;
	onSaid: KeptShop['onSaid'] = () => undefined;
	isAway = false;
	readonly #place: SharedPlace;
	/** By which the others know this server. */
	readonly #mark = randomBytes(6).toString('hex');
	#opened: Opened;
	#closed = false;

	private constructor(place: SharedPlace, opened: Opened) {
		this.#place = place;
		this.#opened = opened;
		this.#take(opened);
	}

	/** Rejects, in words, when it cannot be reached or does not keep what it is given. */
	static async open(place: SharedPlace): Promise<SharedShop> {
		try {
			return new SharedShop(place, await reach(place));
		} catch (fault) {
			if (fault instanceof PlaceRefused) throw fault;
			throw new PlaceRefused(
				`The shop cannot be kept in the shared store at ${hostOf(place.url)}: ${wordsOf(fault)}. ` +
					'Give the address of a Redis or Valkey that runs and is set to keep what it is given, with --store.',
			);
		}
	}

	get id(): string {
		return this.#opened.id;
	}

	get documents(): ShopDocuments {
		return this.#opened.documents;
	}

	get links(): Links {
		return this.#opened.links;
	}

	sayToOthers(word: string): void {
		if (!this.isAway) this.#opened.said.say(`${this.#mark} ${word}`);
	}

	async close(): Promise<void> {
		this.#closed = true;
		await this.#opened.documents.close();
		this.#opened.connection.close();
	}

	#take(opened: Opened): void {
		this.#opened = opened;
		const { connection, documents, links } = opened;
		documents.onElsewhere = (...what) => this.onElsewhere(...what);
		links.onElsewhere = () => this.onLinks();
		opened.said.hear = (word) => {
			const mark = word.slice(0, word.indexOf(' '));
			if (mark !== this.#mark) this.onSaid(mark, word.slice(mark.length + 1));
		};
		connection.onEnd = (why) => this.#ended(why);
	}

	#ended(why: string): void {
		if (this.#closed) return;
		this.isAway = true;
		this.#place.note(`The shared store is away (${why}); devices wait until it is back.`);
		this.onAway();
		void this.#reopen();
	}

	async #reopen(): Promise<void> {
		for (let told = ''; !this.#closed; ) {
			await new Promise((done) => setTimeout(done, WAIT));
			try {
				const opened = await reach(this.#place);
				if (this.#closed) return opened.connection.close();
				if (opened.id !== this.id) {
					opened.connection.close();
					throw new PlaceRefused('another shop stands in the place of this one');
				}
				this.#take(opened);
				this.isAway = false;
				return this.#place.note('The shared store is back.');
			} catch (fault) {
				if (wordsOf(fault) !== told) this.#place.note(`Not yet: ${(told = wordsOf(fault))}`);
			}
		}
	}
}

const wordsOf = (fault: unknown): string => {
	const [first] = fault instanceof AggregateError ? (fault.errors as unknown[]) : [fault];
	return first instanceof Error ? first.message : String(first);
};
/** Never with the password. */
const hostOf = (url: string): string => (URL.canParse(url) ? new URL(url).host : url);

async function reach({ url, name, rack }: SharedPlace): Promise<Opened> {
	const names = namesOf(name);
	let hear = (_: string): void => undefined;
	const connection = await Connection.to(url, names.bell, (word) => hear(word));
	try {
		const logs = new StreamLogs(connection, names);
		const value = sharedLinks(connection, names);
		const said: Opened['said'] = {
			say: (word) => void connection.ring(names.bell, `${SAID}${word}`).catch(() => undefined),
			hear: () => undefined,
		};
		hear = (word) => {
			if (word.startsWith(SAID)) return said.hear(word.slice(SAID.length));
			const [what, mark, at, ...doc] = word.split(' ');
			if (what === 'moved') logs.moved(doc.join(' '), `${mark} ${at}`);
			if (what === 'links') value.onChanged();
			if (what === 'about') connection.end('its form has changed');
		};
		const id = await found(connection, names, rack);
		const documents = await ShopDocuments.in(logs);
		return { id, connection, documents, links: await Links.in(value), said };
	} catch (fault) {
		connection.close();
		throw fault;
	}
}

/** Founds the shop when there is none; whoever joins finds a rack, and so makes none of its own. */
async function found(connection: Connection, names: Names, rack: unknown): Promise<string> {
	const seed = seedOf(rack);
	const mark = createHash('sha1').update(NO_MARK).update(seed).digest('hex').slice(0, 16);
	const answer = await connection.do(
		FOUND,
		[names.about, names.stream(SHOP_DOC), names.standings],
		[
			...[names.bell, randomBytes(8).toString('hex'), String(FORMAT), String(SPEECH.job)],
			...[SHOP_DOC, seed, mark],
		],
	);
	const [id = '', format, job] = (Array.isArray(answer) ? answer : []).map(String);
	if (Number(format) > FORMAT || Number(job) > SPEECH.job)
		throw new PlaceRefused(
			'The shop in the shared store is kept by a newer planner: start all its servers with that one.',
		);
	return id;
}

/** The list of links as one text: of two servers that change it at once, the second looks again. */
function sharedLinks(connection: Connection, names: Names): KeptValue {
	let text = '';
	return {
		read: async () => {
			text = String((await connection.read('GET', names.links)) ?? '');
			return text === '' ? undefined : (JSON.parse(text) as unknown);
		},
		write: async (value) => {
			const to = JSON.stringify(value);
			if ((await connection.do(SWAP, [names.links], [names.bell, text, to])) !== 1) return false;
			text = to;
			return true;
		},
		onChanged: () => undefined,
	};
}
