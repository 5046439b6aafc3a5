import { valueAt, type Path } from '../../job';
import type { Desk } from '../state';

/** What a field is of, and how its text and what the file holds become each other. */
export interface Typed {
	readonly path: Path;
	readonly label: string;
	/** What the file holds when it is emptied, and while it says nothing. */
	readonly empty: null | undefined | '';
	readonly fallback: unknown;
	readonly show: (stored: unknown) => string;
	readonly store: (text: string) => unknown;
}

/**
 * The text of a field as it was typed, while it is in hand; dropped when the file says something
 * else (an undo, the same field typed on the drawing).
 */
export class Draft {
	#held = $state.raw<{ readonly text: string; readonly stored: unknown } | null>(null);
	readonly #desk: Desk;
	readonly #of: () => Typed;

	constructor(desk: Desk, of: () => Typed) {
		this.#desk = desk;
		this.#of = of;
	}

	get stored(): unknown {
		return valueAt(this.#desk.file, this.#of().path);
	}

	get text(): string {
		const { stored } = this;
		if (this.#held && this.#held.stored === stored) return this.#held.text;
		const { show, fallback } = this.#of();
		return show(stored === undefined ? fallback : stored);
	}

	type(text: string): void {
		const { path, label, empty, store } = this.#of();
		const stored = text.trim() === '' ? empty : store(text);
		this.#held = { text, stored };
		this.#desk.type(path, stored, label);
	}

	/**
	 * The field was left: it shows what the file holds, and what is typed next is a step of its
	 * own.
	 */
	leave(): void {
		this.#held = null;
		this.#desk.settle();
	}
}
