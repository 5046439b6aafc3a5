import { type Cutting, isDocName, type PlaceOpen, type Present } from '../lib/store';

/**
 * Said at most so often, milliseconds: a saw that ticks fast is told of no faster than it is read.
 */
const OFTEN = 150;
const LONGEST = 40;
const LONGEST_KEY = 300;
/** How often a server says again who is at it, milliseconds; one unheard so many times is gone. */
const BEAT = 5000;
const GONE = 3;

/** Somebody at a place, and how they are told of the others there. */
export interface Someone {
	readonly device: string;
	tellPresent(doc: string, devices: readonly Present[]): void;
}

/** What a server says of who is at it: job by job, or of all its jobs. */
export interface SaidHere {
	readonly docs: readonly (readonly [doc: string, devices: readonly Present[]])[];
	readonly whole: boolean;
}

/** Who is at another server of this shop, job by job, and for how many beats it was not heard. */
interface There {
	readonly docs: Map<string, readonly Present[]>;
	silent: number;
}

/**
 * Who has which job open, and what is in which saw: told to those who have the same job open, as
 * long as they are there, at whichever server of the shop, and kept nowhere.
 */
export class Presence {
	/** Told who is at this server, for the others. */
	onHere: (said: SaidHere) => void = () => undefined;
	readonly #places = new Map<Someone, PlaceOpen>();
	readonly #there = new Map<string, There>();
	/** Jobs of which the other servers have to be told. */
	readonly #news = new Set<string>();
	readonly #due = new Map<string, ReturnType<typeof setTimeout>>();
	readonly #beat = setInterval(() => this.beat(), BEAT).unref();

	/** Null where they have gone. */
	put(one: Someone, place: PlaceOpen | null): void {
		const before = this.#places.get(one);
		if (place) this.#places.set(one, place);
		else this.#places.delete(one);
		for (const doc of new Set([before?.doc, place?.doc]))
			if (doc !== undefined) this.#tellSoon(doc);
	}

	/** Another server says who is at it, in these jobs; in no others, where that is the whole. */
	hear(server: string, { docs, whole }: SaidHere): void {
		const there = this.#there.get(server) ?? { docs: new Map(), silent: 0 };
		this.#there.set(server, there);
		there.silent = 0;
		const said = new Map(docs);
		for (const doc of whole ? there.docs.keys() : []) if (!said.has(doc)) said.set(doc, []);
		for (const [doc, devices] of said) {
			if (JSON.stringify(there.docs.get(doc) ?? []) === JSON.stringify(devices)) continue;
			if (devices.length > 0) there.docs.set(doc, devices);
			else there.docs.delete(doc);
			this.#tellSoon(doc, 'here');
		}
	}

	/** Says again all who are here, and lets go of servers that have said nothing for long. */
	beat(): void {
		const open = [...new Set([...this.#places.values()].map(({ doc }) => doc))];
		this.onHere({ docs: open.map((doc) => [doc, this.#here(doc, null)]), whole: true });
		for (const [server, there] of this.#there) {
			if (++there.silent < GONE) continue;
			this.#there.delete(server);
			for (const doc of there.docs.keys()) this.#tellSoon(doc, 'here');
		}
	}

	close(): void {
		clearInterval(this.#beat);
		for (const timer of this.#due.values()) clearTimeout(timer);
		this.#due.clear();
		this.#places.clear();
		this.#there.clear();
	}

	/** Who has a job open at this server, but for this one. */
	#here(doc: string, but: Someone | null): Present[] {
		return [...this.#places]
			.filter(([one, place]) => place.doc === doc && one !== but)
			.map(([{ device }, { page, cutting }]) => ({ device, page, cutting }));
	}

	/** @param whom what others say is for those who are here alone */
	#tellSoon(doc: string, whom: 'here' | 'all' = 'all'): void {
		if (whom === 'all') this.#news.add(doc);
		if (this.#due.has(doc)) return;
		const tell = (): void => {
			this.#due.delete(doc);
			const there = [...this.#there.values()].flatMap(({ docs }) => docs.get(doc) ?? []);
			for (const [one, place] of this.#places)
				if (place.doc === doc) one.tellPresent(doc, [...this.#here(doc, one), ...there]);
			if (this.#news.delete(doc))
				this.onHere({ docs: [[doc, this.#here(doc, null)]], whole: false });
		};
		this.#due.set(doc, setTimeout(tell, OFTEN));
	}
}

/** Who is there, as another server of the shop says it. Throws on what it cannot have said. */
export function saidTold(told: unknown): SaidHere {
	const { docs, whole } = (told ?? {}) as Readonly<Record<string, unknown>>;
	if (!Array.isArray(docs)) throw new TypeError('nobody is there so');
	return {
		docs: (docs as readonly [unknown, readonly unknown[]][]).map(([doc, devices]) => {
			if (!isDocName(doc)) throw new TypeError('no name of a document');
			return [doc, devices.map((one) => presentTold(doc, one))];
		}),
		whole: whole === true,
	};
}

function presentTold(doc: string, told: unknown): Present {
	const { device, ...place } = told as Readonly<Record<string, unknown>>;
	const at = placeTold({ ...place, doc });
	if (typeof device !== 'string' || !at) throw new TypeError('nobody is there so');
	return { device, page: at.page, cutting: at.cutting };
}

/** A place as a device tells of it; null for none. Throws on what is no place. */
export function placeTold(told: unknown): PlaceOpen | null {
	if (told === null) return null;
	const { doc, page, cutting } = (told ?? {}) as Readonly<Record<string, unknown>>;
	if (!isDocName(doc) || typeof page !== 'string') throw new TypeError('no place');
	return { doc, page: page.slice(0, LONGEST), cutting: cuttingTold(cutting ?? null) };
}

function cuttingTold(told: unknown): Cutting | null {
	if (told === null) return null;
	const { sheet, n, done, of } = told as Readonly<Record<string, unknown>>;
	const counts = [n, done, of].map(Number);
	if (
		typeof sheet !== 'string' ||
		sheet.length > LONGEST_KEY ||
		!counts.every(Number.isSafeInteger)
	)
		throw new TypeError('no sheet in a saw');
	const [nth = 0, made = 0, all = 0] = counts;
	return { sheet, n: nth, done: made, of: all };
}
