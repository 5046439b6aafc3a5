import { type Path, valueAt } from '../../job';
import type { Plan } from '../../plan';
import type { Desk } from './desk.svelte';
import { pathKey, startsWith } from './edits';

/** A field in hand: what it held when it was taken up, and the plan of then. */
export interface InHand {
	readonly path: Path;
	readonly label: string;
	/** Of a drag, all fields that move. */
	readonly all: readonly Path[];
	readonly was: readonly unknown[];
	readonly before: Plan | null;
}

/**
 * What the person works at: a field in the list, the same one on the drawing, or a thing picked
 * there. Drawing and list both light it.
 */
export class Holding {
	/** The field being typed or dragged; it stands until another one is taken up. */
	field = $state.raw<InHand | null>(null);
	/** What is lit: the field while it has the keyboard, or a thing picked on the drawing. */
	path = $state.raw<Path | null>(null);
	/**
	 * The last of those: what belongs to it stays on the drawing while the keyboard is elsewhere.
	 */
	#near = $state.raw<Path | null>(null);
	/**
	 * Id of the part in hand, picked on a solid, on a sheet or in a list: it is lit on all of them.
	 */
	part = $state<string | null>(null);
	readonly key: string | null = $derived(this.path && pathKey(this.path));
	readonly #desk: Desk;

	constructor(desk: Desk) {
		this.#desk = desk;
	}

	/** A field takes the keyboard, or a grip is taken hold of. */
	take(path: Path, label: string, all: readonly Path[] = [path]): void {
		this.path = this.#near = path;
		const same = this.field?.all.map(pathKey).join() === all.map(pathKey).join();
		if (same && this.isChanged) return;
		this.field = { path, label, all, ...this.#now(all) };
	}

	/** A thing is picked on the drawing. */
	pick(path: Path): void {
		this.path = this.#near = path;
	}

	/** The field was left; what its change came to stays in view. */
	leave(path: Path): void {
		if (this.key === pathKey(path)) this.path = null;
		if (!this.isChanged) this.field = null;
	}

	/** Is this thing, or a field of it, what was in hand last? */
	holds(thing: Path): boolean {
		return this.#near !== null && startsWith(this.#near, thing);
	}

	get isChanged(): boolean {
		const { field } = this;
		return field !== null && field.all.some((p, i) => valueAt(this.#desk.file, p) !== field.was[i]);
	}

	/**
	 * What the field at this place held when it was taken up; undefined while another is in hand.
	 */
	typedOver(path: Path): unknown {
		return this.key === pathKey(path) ? this.field?.was[0] : undefined;
	}

	/** The change is good: what is typed next is weighed against this. */
	accept(): void {
		this.#desk.settle();
		if (this.field) this.field = { ...this.field, ...this.#now(this.field.all) };
	}

	/** The field holds again what it held when it was taken up; false where nothing was changed. */
	takeBack(): boolean {
		if (!this.isChanged) return false;
		this.#desk.undo();
		this.#desk.settle();
		return true;
	}

	/** Nothing is in hand any more: another job, another thing. */
	drop(): void {
		this.field = this.path = this.#near = null;
	}

	#now(all: readonly Path[]): Pick<InHand, 'was' | 'before'> {
		return { was: all.map((p) => valueAt(this.#desk.file, p)), before: this.#desk.plan };
	}
}
