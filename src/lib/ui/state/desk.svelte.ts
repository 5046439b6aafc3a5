import type { JobFile, Problem, Path } from '../../job';
import type { SearchRecord, Saving } from '../../layout';
import type { Ruler } from '../../measure';
import type { OutputKind } from '../../print';
import type { FaceUrls, ReadyFile, Planner, Printer } from '../planning';
import type { Store, StoredJob } from '../store';
import { amend, begin, change, redo, settle, undo, type History } from './history';
import { hasSearchRecord, withSearchRecord, withoutSearchRecord } from './effort';
import { insert, move, pathKey, put, remove, startsWith } from './path';
import { PlanWatch } from './plan-watch.svelte';
import { currencyOf, keepRack, lifted, rulerOf, withRack } from './rack';
import { Saver } from './saving';

/** What a desk is opened on. */
export interface DeskOpening {
	readonly id: string;
	readonly file: JobFile;
	readonly sharesRack: boolean;
	/** What the text of its file told beyond what it holds; said until another job is opened. */
	readonly noted?: readonly Problem[];
}

/**
 * The open job: the file exactly as typed, its history, its plan, and its place in the browser's
 * database. Every change goes through here; nothing else writes a job.
 */
export class Desk {
	#history = $state.raw<History<JobFile>>(begin({}));
	id = $state('');
	sharesRack = $state(false);
	/** What a screen reader is told of the last undo or redo. */
	said = $state('');
	/** Told the mark of the job after each edit that has been written; opening a job is no edit. */
	onEdit: (id: string) => void = () => undefined;
	#newest: StoredJob | null = null;
	readonly watch: PlanWatch;
	readonly saver: Saver;
	readonly #store: Store;
	readonly #printer: Printer;

	constructor(store: Store, planner: Planner, printer: Printer) {
		this.#store = store;
		this.#printer = printer;
		this.watch = new PlanWatch(planner);
		this.watch.onSearched = (record, by) => this.#keepSearch(record, by);
		this.saver = new Saver(store);
	}

	get file(): JobFile {
		return this.#history.now;
	}
	get plan() {
		return this.watch.plan;
	}
	/** The ruler lengths are typed and shown by, as far as the file says one. */
	readonly ruler: Ruler = $derived(rulerOf(this.#history.now));
	readonly currency: string = $derived(currencyOf(this.#history.now));
	/** What the plan says of this very place in the file. */
	problemsAt(path: Path): readonly Problem[] {
		return this.watch.byPlace.get(pathKey(path)) ?? [];
	}
	/** What it says of this place and of everything in it. */
	problemsIn(path: Path): readonly Problem[] {
		return this.plan?.problems.filter((p) => startsWith(p.path, path)) ?? [];
	}
	/** In words, what 'Undo' would take back; null when there is nothing. */
	get undoes(): string | null {
		return this.#history.past.at(-1)?.what ?? null;
	}
	get redoes(): string | null {
		return this.#history.future.at(-1)?.what ?? null;
	}

	/** Opens a job; the one open before is safe in the database already. */
	async open(opening: DeskOpening): Promise<void> {
		const rack = opening.sharesRack ? await this.#store.thing('rack').catch(() => null) : null;
		this.id = opening.id;
		this.sharesRack = opening.sharesRack;
		this.#history = begin(withRack(lifted(opening.file), rack));
		this.watch.clear();
		this.watch.noted = opening.noted ?? [];
		this.watch.follow(this.file, 0);
		this.saver.keepThing('open', opening.id);
		this.#save();
	}

	/** Opens a job of the database; false when it is not there. */
	async openStored(id: string): Promise<boolean> {
		const stored = await this.#store.job(id);
		if (!stored) return false;
		await this.open({ ...stored, file: stored.file as JobFile });
		return true;
	}

	/** A letter typed into the field at `path`; letters of one field are one step of undo. */
	type(path: Path, value: unknown, what: string): void {
		this.#change(put(this.file, path, value), what, pathKey(path));
	}
	/** A change that is a step of its own: a choice, a tick. */
	set(path: Path, value: unknown, what: string): void {
		this.#change(put(this.file, path, value), what, null);
	}
	insert(path: Path, value: unknown, what: string, index?: number): void {
		this.#change(insert(this.file, path, value, index), what, null);
	}
	remove(path: Path, index: number, what: string): void {
		this.#change(remove(this.file, path, index), what, null);
	}
	move(path: Path, from: number, to: number, what: string): void {
		this.#change(move(this.file, path, from, to), what, null);
	}
	/** Several changes as one step. */
	alter(make: (file: JobFile) => JobFile, what: string): void {
		this.#change(make(this.file), what, null);
	}
	/** The field was left: what is typed into it next is a step of its own. */
	settle(): void {
		this.#history = settle(this.#history);
	}

	undo(): void {
		if (this.undoes === null) return;
		this.said = `Undone: ${this.undoes}.`;
		this.#moved(undo(this.#history));
	}
	redo(): void {
		if (this.redoes === null) return;
		this.said = `Done again: ${this.redoes}.`;
		this.#moved(redo(this.#history));
	}

	/**
	 * From here on the job draws on the shop's rack: on the one there is ('take'), or its own
	 * becomes the shop's ('give').
	 */
	async shareRack(way: 'take' | 'give'): Promise<void> {
		const rack = way === 'take' ? await this.#store.thing('rack').catch(() => null) : null;
		this.sharesRack = true;
		const before = this.file;
		this.alter((file) => withRack(file, rack), "use the shop's rack");
		if (this.file === before) this.#save();
	}

	/** Output files of the plan in view; none as long as there is no plan. */
	async outputFiles(kind: OutputKind, faces: FaceUrls): Promise<readonly ReadyFile[]> {
		return this.plan ? this.#printer.outputFiles(kind, this.plan, faces) : [];
	}

	/**
	 * What the database has not got yet, when the page is about to go; null when everything is
	 * kept.
	 */
	unkept(): StoredJob | null {
		return this.saver.state === 'saved' ? null : this.#newest;
	}

	/**
	 * Small changes that would save a sheet of the plan in view; null when stopped or overtaken.
	 */
	async savings(): Promise<readonly Saving[] | null> {
		return this.watch.savings();
	}

	/** Search on for better layouts; what is found is kept with the job. */
	searchFurther(): void {
		this.watch.searchFurther(this.file);
	}
	/** Does the job carry a search of its own? */
	get hasOwnSearch(): boolean {
		return hasSearchRecord(this.file);
	}
	/** Back to the usual search. */
	searchAsUsual(): void {
		this.alter(withoutSearchRecord, 'back to the usual search');
	}

	#change(file: JobFile, what: string, run: string | null): void {
		this.#moved(change(this.#history, file, what, run));
	}

	/**
	 * The plan in view was found by this search: written down with the job, so that it is found
	 * again. It is in view already, so nothing is planned anew. A search that was merely ended is
	 * no step of its own.
	 */
	#keepSearch(record: SearchRecord, by: 'keep looking' | 'stop'): void {
		const file = withSearchRecord(this.file, record);
		if (file === this.file) return;
		this.#history =
			by === 'stop' ? amend(this.#history, file) : change(this.#history, file, by, null);
		this.#written();
	}

	#moved(history: History<JobFile>): void {
		if (history === this.#history) return;
		this.#history = history;
		this.watch.follow(this.file);
		this.#written();
	}

	#written(): void {
		this.#save();
		const { id } = this;
		void this.saver.settled().then(() => this.onEdit(id));
	}

	#save(): void {
		const job: StoredJob = {
			id: this.id,
			name: typeof this.file.name === 'string' ? this.file.name : '',
			file: this.file,
			changed: Date.now(),
			sharesRack: this.sharesRack,
		};
		this.#newest = job;
		this.saver.keep(job);
		if (this.sharesRack) this.saver.keepThing('rack', keepRack(this.file));
	}
}
