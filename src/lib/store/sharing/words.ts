import { hashIn } from '../database';
import { VERSION } from '../../job';

/*
 * What a device and the shop's server say to each other: one frame a message, a short head of JSON
 * and the bytes that go with it. Both ends take the words from here.
 */

/** Raised when an older planner would take these words wrong. */
const WORDS = 3;

/** Which words, and which form of the job, one end speaks. */
export interface Speech {
	readonly words: number;
	readonly job: number;
}
export const SPEECH: Speech = { words: WORDS, job: VERSION };

/** What a link lets its devices do; who may do all may also make links and withdraw them. */
export type Right = 'all' | 'work' | 'look';
export const RIGHTS: readonly Right[] = ['all', 'work', 'look'];

/**
 * Bytes a message; jobs and pictures a shop; bytes a document, and of words before a device is
 * known. How large a picture may be, a job says.
 */
export const LIMITS = {
	message: 16_000_000,
	documents: 5000,
	pictures: 10_000,
	document: 64_000_000,
	stranger: 4096,
	/** Messages a second, and how many may come at once after a rest. */
	rate: 200,
	burst: 2000,
} as const;

/** Why a device is not let in, or is sent away. */
export type SentAway = 'secret' | 'withdrawn' | 'older' | 'newer' | 'crowded' | 'words' | 'ending';

/** Why the shop did not keep an update. */
export type NotKept = 'look only' | 'too large' | 'too many' | 'no room' | 'unreadable';

/** Where a document stands at the shop: a mark of all that went into it, and when the last did. */
export interface ShopStanding {
	readonly mark: string;
	/** Milliseconds since 1970, by the clock of the shop. */
	readonly at: number;
}

/** A link as the list of links shows it. */
export interface LinkLine {
	readonly id: string;
	readonly name: string;
	readonly right: Right;
	/** Milliseconds since 1970. */
	readonly made: number;
	readonly withdrawn?: number;
	/** Devices that are there now, by their names. */
	readonly here: readonly string[];
}

/** A sheet in a saw, and how far it is cut. */
export interface Cutting {
	/** The key its cuts are ticked under. */
	readonly sheet: string;
	/** Its number on that device. */
	readonly n: number;
	readonly done: number;
	readonly of: number;
}

/** Where a device is: which job it has open, on which page, and what is in its saw. */
export interface PlaceOpen {
	readonly doc: string;
	readonly page: string;
	readonly cutting: Cutting | null;
}

/** Another device that has the same job open. */
export interface Present extends Omit<PlaceOpen, 'doc'> {
	readonly device: string;
}

export type DeviceWord =
	| { say: 'hello'; secret: string; device: string; speech: Speech }
	/** With the standing of this copy: from here on each change of the document is told. */
	| { say: 'open'; doc: string }
	| { say: 'leave'; doc: string }
	/** With the update; `n` comes back with the answer. */
	| { say: 'update'; doc: string; n: number }
	/** Told to others who have the same job open, and kept nowhere. */
	| { say: 'at'; place: PlaceOpen | null }
	| { say: 'links' }
	| { say: 'make'; name: string; right: Right }
	| { say: 'withdraw'; id: string };

export type ShopWord =
	| {
			say: 'welcome';
			shop: string;
			right: Right;
			/** The link this device came by. */
			link: string;
			docs: readonly (readonly [doc: string, mark: string, at: number])[];
	  }
	| { say: 'refused'; why: SentAway }
	/** With what the device lacks (`size` bytes), then the standing here; none when alike. */
	| ({ say: 'state'; doc: string; size: number } & ShopStanding)
	| ({ say: 'update'; doc: string } & ShopStanding)
	| ({ say: 'kept'; doc: string; n: number } & ShopStanding)
	| { say: 'not kept'; doc: string; n: number; why: NotKept }
	/** A document this device has not open has changed. */
	| ({ say: 'moved'; doc: string } & ShopStanding)
	/**
	 * `addresses`: by which other machines reach this shop; none on one machine only.
	 * `fingerprint`: of the certificate they are to trust, null where there is none.
	 */
	| {
			say: 'links';
			links: readonly LinkLine[];
			addresses: readonly string[];
			fingerprint: string | null;
	  }
	| { say: 'made'; secret: string; name: string; right: Right }
	/** Who else has this job open. */
	| { say: 'present'; doc: string; devices: readonly Present[] }
	| { say: 'still here' };

/** A message. */
export function frame(
	word: DeviceWord | ShopWord,
	...parts: readonly Uint8Array[]
): Uint8Array<ArrayBuffer> {
	const head = new TextEncoder().encode(JSON.stringify(word));
	const size = parts.reduce((sum, part) => sum + part.length, 4 + head.length);
	const bytes = new Uint8Array(size);
	new DataView(bytes.buffer).setUint32(0, head.length);
	bytes.set(head, 4);
	let at = 4 + head.length;
	for (const part of parts) {
		bytes.set(part, at);
		at += part.length;
	}
	return bytes;
}

/** What a message says, unlooked at but for its form. Throws on bytes that are no message. */
export function unframe(bytes: Uint8Array): {
	readonly word: Readonly<Record<string, unknown>>;
	readonly rest: Uint8Array;
} {
	const size = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0);
	if (4 + size > bytes.length) throw new RangeError('a torn message');
	const word: unknown = JSON.parse(new TextDecoder().decode(bytes.subarray(4, 4 + size)));
	if (typeof word !== 'object' || word === null) throw new TypeError('no word');
	return { word: word as Record<string, unknown>, rest: bytes.subarray(4 + size) };
}

/** The documents of a shop: its rack and settings, one for each job, one for each picture. */
export function isDocName(doc: unknown): doc is string {
	if (typeof doc !== 'string') return false;
	return hashIn(doc) !== null || /^(shop|job [a-z0-9-]{1,100})$/.test(doc);
}
