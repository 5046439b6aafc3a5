import { type Cutting, isDocName, type PlaceOpen, type Present } from '../lib/store';

/**
 * Said at most so often, milliseconds: a saw that ticks fast is told of no faster than it is read.
 */
const OFTEN = 150;
const LONGEST = 40;
const LONGEST_KEY = 300;

/** Somebody at a place, and how they are told of the others there. */
export interface Someone {
	readonly device: string;
	tellPresent(doc: string, devices: readonly Present[]): void;
}

/**
 * Who has which job open, and what is in which saw: told to those who have the same job open, as
 * long as they are there, and kept nowhere.
 */
export class Presence {
	readonly #places = new Map<Someone, PlaceOpen>();
	readonly #due = new Map<string, ReturnType<typeof setTimeout>>();

	/** Null where they have gone. */
	put(one: Someone, place: PlaceOpen | null): void {
		const before = this.#places.get(one);
		if (place) this.#places.set(one, place);
		else this.#places.delete(one);
		for (const doc of new Set([before?.doc, place?.doc]))
			if (doc !== undefined) this.#tellSoon(doc);
	}

	close(): void {
		for (const timer of this.#due.values()) clearTimeout(timer);
		this.#due.clear();
		this.#places.clear();
	}

	#tellSoon(doc: string): void {
		if (this.#due.has(doc)) return;
		const tell = (): void => {
			this.#due.delete(doc);
			const there = [...this.#places].filter(([, place]) => place.doc === doc);
			for (const [one] of there)
				one.tellPresent(
					doc,
					there
						.filter(([other]) => other !== one)
						.map(([{ device }, { page, cutting }]) => ({ device, page, cutting })),
				);
		};
		this.#due.set(doc, setTimeout(tell, OFTEN));
	}
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
