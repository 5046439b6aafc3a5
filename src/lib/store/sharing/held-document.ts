import type { Keeper } from '../keeping';
import {
	type DeviceWord,
	LIMITS,
	type NotKept,
	type Right,
	type ShopStanding,
	type ShopWord,
} from './words';

/** What the shop says of one document. */
type WordOfDocument = Extract<ShopWord, { say: 'state' | 'update' | 'kept' | 'not kept' }>;

interface Ways {
	readonly say: (word: DeviceWord, bytes: Uint8Array) => void;
	/** Told before something of another device is taken in. */
	readonly taking: () => void;
	/** Told when it comes into step, or falls behind. */
	readonly tell: () => void;
	/** How long after a refusal it is tried again, milliseconds. */
	readonly again: number;
}

const WHY: Readonly<Record<NotKept, string>> = {
	'look only': 'this device may only look',
	'too large': 'it is larger than a shop takes',
	'too many': 'the shop has as many jobs as it takes',
	'no room': "the shop's disk does not take it: make room there",
	unreadable: 'the shop could not read it',
};

/**
 * A document in use here and at the shop. What is done to it here is told the shop at once, by
 * whichever window; what the shop has is taken in and kept here.
 */
export class HeldDocument {
	/** Where the shop has it, as far as was told. */
	standing: ShopStanding | null = null;
	/** In words, why the shop has not taken what was told it; null for no reason. */
	why: string | null = null;
	readonly #keeper: Keeper;
	readonly #ways: Ways;
	/** Has the shop said where it stands? */
	#known = false;
	/** Where this copy stood when the shop was asked where it stands. */
	#asked = new Uint8Array(0);
	#right: Right = 'look';
	#n = 0;
	readonly #unanswered = new Set<number>();
	#isTaking = false;
	readonly #stopListening: () => void;
	#again: ReturnType<typeof setTimeout> | undefined;
	#waiting: { done: () => void; failed: (fault: Error) => void }[] = [];

	constructor(keeper: Keeper, ways: Ways) {
		this.#keeper = keeper;
		this.#ways = ways;
		this.#stopListening = keeper.doc.onUpdate((update) => {
			if (!this.#isTaking && this.#known) this.#tell(update);
		});
	}

	/** Are both alike, as far as anybody can know? */
	get inStep(): boolean {
		return this.#known && this.#unanswered.size === 0 && this.why === null;
	}

	whenInStep(): Promise<void> {
		if (this.inStep) return Promise.resolve();
		return new Promise((done, failed) => this.#waiting.push({ done, failed }));
	}

	/** Asks the shop where it stands. */
	open(right: Right): void {
		this.#right = right;
		this.#known = false;
		this.#unanswered.clear();
		this.#asked = this.#keeper.doc.standing() as Uint8Array<ArrayBuffer>;
		this.#ways.say({ say: 'open', doc: this.#keeper.name }, this.#asked);
	}

	hear(word: WordOfDocument, bytes: Uint8Array): void {
		if (word.say !== 'not kept') this.standing = { mark: word.mark, at: word.at };
		if (word.say === 'state') this.#meet(bytes.subarray(0, word.size), bytes.subarray(word.size));
		else if (word.say === 'update') this.#take(bytes);
		else {
			this.#unanswered.delete(word.n);
			if (word.say === 'not kept') this.#refused(WHY[word.why]);
		}
		this.#look();
	}

	/** The connection has ended. */
	away(): void {
		this.#known = false;
		this.#unanswered.clear();
		this.#ways.tell();
	}

	/** It is in use no more. */
	let(): void {
		clearTimeout(this.#again);
		this.#stopListening();
		for (const { failed } of this.#waiting.splice(0)) failed(new Error('The document was let go.'));
	}

	/**
	 * Takes in what is lacking here, and tells what is lacking there.
	 *
	 * @param theirs where the shop stands; empty when it stands where this copy stood as it asked
	 */
	#meet(lacks: Uint8Array, theirs: Uint8Array): void {
		if (lacks.length > 0) this.#take(lacks);
		this.#known = true;
		this.why = null;
		const mine = this.#keeper.doc.lacking(theirs.length > 0 ? theirs : this.#asked);
		if (mine) this.#tell(mine);
	}

	#take(update: Uint8Array): void {
		this.#ways.taking();
		this.#isTaking = true;
		try {
			this.#keeper.takeIn(update);
		} finally {
			this.#isTaking = false;
		}
	}

	#tell(update: Uint8Array): void {
		if (this.#right === 'look') return;
		if (update.length > LIMITS.message - 1000) return this.#refused(WHY['too large']);
		const n = ++this.#n;
		this.#unanswered.add(n);
		this.#ways.say({ say: 'update', doc: this.#keeper.name, n }, update);
		if (this.#unanswered.size === 1) this.#ways.tell();
	}

	/** What is here stays here; where it can help it is tried again after a while. */
	#refused(why: string): void {
		this.why = why;
		for (const { failed } of this.#waiting.splice(0)) failed(new Error(why));
		clearTimeout(this.#again);
		this.#again = setTimeout(() => {
			if (this.#known) this.open(this.#right);
		}, this.#ways.again);
		this.#ways.tell();
	}

	#look(): void {
		if (!this.inStep) return;
		for (const { done } of this.#waiting.splice(0)) done();
		this.#ways.tell();
	}
}
