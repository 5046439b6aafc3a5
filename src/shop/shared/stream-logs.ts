import type { ShopStanding } from '../../lib/store';
import type { DocumentLog, DocumentLogs, LogEntry } from '../keeping';
import type { Connection } from './connection';
import { StreamLog } from './stream-log';

/** What the things of one shop are called in the store. */
export interface Names {
	readonly about: string;
	readonly links: string;
	/** One hash: where each document stands. */
	readonly standings: string;
	readonly bell: string;
	/** The stream of a document. */
	readonly stream: (doc: string) => string;
}

/** One part of the name in braces, so that a store of many machines keeps a shop on one of them. */
export function namesOf(shop: string): Names {
	const name = (what: string): string => `{kerf-and-nap:${shop}}:${what}`;
	return {
		...{ about: name('about'), links: name('links'), standings: name('standings') },
		...{ bell: name('bell'), stream: name },
	};
}

/** The logs of a shop's documents in the shared store, over one connection to it. */
export class StreamLogs implements DocumentLogs {
	onMoved: DocumentLogs['onMoved'] = () => undefined;
	readonly #connection: Connection;
	readonly #names: Names;
	readonly #open = new Map<string, StreamLog>();

	constructor(connection: Connection, names: Names) {
		this.#connection = connection;
		this.#names = names;
	}

	async standings(): Promise<ReadonlyMap<string, ShopStanding>> {
		const answer = await this.#connection.read('HGETALL', this.#names.standings);
		const told = (Array.isArray(answer) ? answer : []).map(String);
		return new Map(
			told.flatMap((doc, i) => (i % 2 === 0 ? [[doc, standingOf(told[i + 1] ?? '')]] : [])),
		);
	}

	async open(doc: string): Promise<{ log: DocumentLog; entries: readonly LogEntry[] }> {
		const { standings, bell, stream } = this.#names;
		const log = new StreamLog(doc, bell, (script, args) =>
			this.#connection.do(script, [stream(doc), standings], args),
		);
		const close = log.close.bind(log);
		log.close = () => {
			if (this.#open.get(doc) === log) this.#open.delete(doc);
			return close();
		};
		this.#open.set(doc, log); // what is added while it is read is looked for again
		return { log, entries: await log.begin() };
	}

	/** The bell: another server has added to a document, or this one. */
	moved(doc: string, standing: string): void {
		this.#open.get(doc)?.look();
		this.onMoved(doc, standingOf(standing));
	}
}

function standingOf(text: string): ShopStanding {
	const [mark = '', at] = text.split(' ');
	return { mark, at: Number(at) };
}
