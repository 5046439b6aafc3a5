import { currencyOf, type JobFile, type Path, type Problem, rulerOf } from '../../job';
import type { Booking, SearchRecord } from '../../layout';
import type { Ruler } from '../../measure';
import type { OutputKind, PdfKind, ShownPages } from '../../print';
import type { FaceUrls, PagesAsked, ReadyFile, Planner, Printer } from '../planning';
import type { JobInHand, Store } from '../../store';
import {
	changedParts,
	hasSearchRecord,
	JobEdits,
	pathKey,
	startsWith,
	withoutSearchRecord,
	withSearchRecord,
} from './edits';
import {
	type DeskOpening,
	type Documents,
	fetchDocuments,
	firstJob,
	OpenedJob,
	openingOfRecord,
} from './opening';
import { pictured } from './pictured';
import { OptionWatch, PRICED } from './option-watch.svelte';
import { BEHIND, PlanWatch } from './plan-watch.svelte';
import { HourlyRevisions, type LeftJob, Saver, takeWriterMark } from './saving';
import { SharedView } from './sharing';

/** The documents come at the latest so many milliseconds after a job was opened. */
const ATTACH = 3000;

const NONE: DeskOpening = { id: '', file: {}, sharesRack: false, standsIn: true };

/**
 * The open job: the file as typed, what can be taken back, its plan, and its place in the browser's
 * database. Every change goes through here; nothing else writes a job.
 */
export class Desk extends JobEdits {
	/** Whatever of the open job is shown; read anew after each change. */
	#file = $state.raw<JobFile>({});
	id = $state('');
	sharesRack = $state(false);
	/** In words, what 'Undo' would take back; null when there is nothing. */
	undoes = $state<string | null>(null);
	redoes = $state<string | null>(null);
	/** In words, each booking on the rack that has not got what it claims. */
	lost = $state.raw<readonly string[]>([]);
	/** Who holds what of the rack for work that is not cut yet. */
	held = $state.raw<JobInHand['held']>([]);
	/** What a screen reader is told of the last undo or redo. */
	said = $state('');
	/** In words, what another window has changed in the open job; empty for nothing. */
	heard = $state('');
	/** In words, what happened when the job was opened; empty for nothing. */
	notice = $state('');
	/** The paper that is looked at in its chapter, and that the browser prints. */
	paper = $state<PdfKind>('print-pack');
	/** Told when a job has been changed here for the first time. */
	onFirstEdit: () => void = () => undefined;
	/** Marks what is done in this window. */
	readonly writer: string;
	readonly watch: PlanWatch;
	readonly options = new OptionWatch();
	readonly saver: Saver;
	/** The shop this browser has joined, if it has. */
	readonly shared: SharedView;
	readonly #store: Store;
	readonly #printer: Printer;
	#job = new OpenedJob(NONE, null);
	#fetched: Promise<Documents> | null = null;
	#documents: Documents | null = null;
	#isEdited = false;
	readonly #hourly: HourlyRevisions;

	/**
	 * @param writer the mark of this window; another one than it had cannot take back what it did
	 */
	constructor(
		store: Store,
		planner: Planner,
		printer: Printer,
		writer = takeWriterMark(),
		shared = new SharedView(),
	) {
		super();
		this.shared = shared;
		this.#store = store;
		this.#hourly = new HourlyRevisions(store);
		this.#printer = printer;
		this.writer = writer;
		this.watch = new PlanWatch(planner);
		this.watch.onSearched = (record, by) => this.#keepSearch(record, by);
		this.watch.onShown = () => this.#attachSoon();
		this.saver = new Saver();
	}

	get file(): JobFile {
		return this.#file;
	}
	get plan() {
		return this.watch.plan;
	}
	/** The ruler lengths are typed and shown by, as far as the file says one. */
	readonly ruler: Ruler = $derived(rulerOf(this.#file));
	readonly currency: string = $derived(currencyOf(this.#file));
	/** May anything be changed here? */
	get mayEdit(): boolean {
		return this.shared.mayEdit;
	}
	/** What the plan says of this very place in the file. */
	problemsAt(path: Path): readonly Problem[] {
		return this.watch.byPlace.get(pathKey(path)) ?? [];
	}
	/** What it says of this place and of everything in it. */
	problemsIn(path: Path): readonly Problem[] {
		return this.plan?.problems.filter((p) => startsWith(p.path, path)) ?? [];
	}

	/**
	 * Opens a job: shows the file at once and fetches its documents after that. What is not kept
	 * yet of the one open before is written on.
	 */
	async open(opening: DeskOpening): Promise<void> {
		const rack = opening.sharesRack ? await this.#store.thing('rack').catch(() => null) : null;
		this.#job.leave();
		const job = new OpenedJob(opening, rack);
		this.#job = job;
		job.onChange = () => this.#attached(job);
		job.onOther = (file, before) => this.#hear(job, file, before);
		this.id = opening.id;
		this.heard = '';
		this.#hourly.begin();
		this.notice = opening.notice ?? '';
		this.watch.clear();
		this.watch.noted = opening.noted ?? [];
		this.#show(job);
		this.watch.follow(this.file, 0);
		if (!opening.standsIn) setTimeout(() => this.#attachSoon(), ATTACH);
	}

	/** Opens a job of the database; false when it is not there, or is none that can be shown. */
	async openStored(id: string): Promise<boolean> {
		const record = await this.#store.job(id);
		const opening = record && openingOfRecord(record);
		if (!opening) return false;
		await this.open(opening);
		return true;
	}

	/** Books work done, as one step. */
	book(make: (file: JobFile) => Booking | null, what: string): void {
		this.#work((job) => job.book(make, what));
	}
	/** Lets go a sheet that is held on the rack and not cut, whosever it is. */
	letGo(id: string, what: string): void {
		this.#work((job) => job.letGo(id, what));
	}
	/** The field was left: what is typed into it next is a step of its own. */
	settle(): void {
		this.#job.settle();
	}

	/**
	 * Takes back the last step of this window. One that is not in the documents yet is taken back
	 * once they are there.
	 */
	undo(): void {
		if (this.undoes === null) return;
		if (!this.#job.isInDocuments) return void this.#whenAttached(() => this.undo());
		const before = this.file;
		const what = this.#job.undo();
		this.said = this.#saidOf('Undone', what, before);
		this.#moved(this.#job);
	}
	redo(): void {
		if (this.redoes === null) return;
		const before = this.file;
		const what = this.#job.redo();
		this.said = this.#saidOf('Done again', what, before);
		this.#moved(this.#job);
	}

	/**
	 * From here on the job draws on the shop's rack: on the one there is ('take'), or its own
	 * becomes the shop's ('give').
	 */
	async shareRack(way: 'take' | 'give'): Promise<void> {
		if (!this.mayEdit) return this.shared.refuse(this);
		const job = this.#job;
		await job.shareRack(way, () => this.documents());
		this.#moved(job);
	}

	/** Output files of the plan in view; none as long as there is no plan. */
	async outputFiles(kind: OutputKind, faces: FaceUrls): Promise<readonly ReadyFile[]> {
		const { plan, file } = this;
		if (!plan) return [];
		if (this.watch.behind) throw new Error(BEHIND);
		const shown = PRICED.includes(kind) ? await this.options.of(plan, file) : plan;
		return this.#printer.outputFiles(kind, await pictured(shown, kind, this.#store), faces);
	}

	/** Some pages of a paper of the plan in view, from one on, counted from 0. */
	async shownPages(kind: PdfKind, ...which: PagesAsked): Promise<ShownPages> {
		if (!this.plan) return { of: 0, pages: [] };
		const shown = await pictured(this.plan, kind, this.#store);
		return this.#printer.shownPages(kind, shown, ...which);
	}

	/**
	 * What the database has not got yet, when the page is about to go; null when everything is
	 * kept.
	 */
	unkept(): LeftJob | null {
		return this.#job.unkept(this.#documents);
	}

	/** Is anything in memory only after it could not be written? */
	get isUnsaved(): boolean {
		return this.saver.state === 'failed' || this.saver.others.length > 0;
	}

	/** There may be room, or an answer, or news from other windows, again. */
	async lookAgain(): Promise<void> {
		this.shared.lookAgain();
		this.#documents?.shelf.hurry();
		await this.#documents?.shelf.catchUp();
	}

	/** The documents, fetched when they are first asked for. */
	documents(): Promise<Documents> {
		this.#fetched ??= fetchDocuments(this.#store, this.writer, this.shared).then((documents) => {
			this.#documents = documents;
			documents.shelf.onSaving = () => this.#look();
			documents.shelf.onReplaced = () => void this.#openAnew();
			return documents;
		});
		this.#fetched.catch(() => (this.#fetched = null));
		return this.#fetched;
	}

	/** Resolves when all that was typed is kept, or could not be. */
	async settled(): Promise<void> {
		await this.#attach();
		await this.#documents?.shelf.settled();
	}

	/**
	 * Work that puts other things in place of all in the database, such as a backup: what is in
	 * hand is kept first and let go, and every window opens its job anew after it.
	 */
	async replaceAll(work: () => Promise<void>): Promise<void> {
		await this.settled();
		const { shelf } = await this.documents();
		this.#job.leave();
		shelf.forget();
		try {
			await work();
		} finally {
			shelf.tellReplaced();
			await this.#openAnew();
		}
	}

	/** The page is done with it: nothing is written any more. */
	close(): void {
		this.options.stop();
		this.watch.clear();
		this.shared.stop();
		this.#documents?.shelf.close();
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

	protected change(make: (file: JobFile) => JobFile, what: string, run: string | null): void {
		this.#work((job) => job.change(make, what, run));
	}

	/** @param does works on the job; false when that has changed nothing */
	#work(does: (job: OpenedJob) => boolean): void {
		if (!this.mayEdit) return this.shared.refuse(this);
		const job = this.#job;
		if (!does(job)) return;
		this.heard = '';
		this.#moved(job);
		this.#hourly.keep(job.id, 'while it was worked on', job.file);
		if (this.#isEdited) return;
		this.#isEdited = true;
		this.onFirstEdit();
	}

	/**
	 * The plan in view was found by this search: written down with the job, so that it is found
	 * again. It is in view already, so nothing is planned anew. A search that was merely ended is
	 * no step of its own.
	 */
	#keepSearch(record: SearchRecord, by: 'keep looking' | 'stop'): void {
		const job = this.#job;
		if (!this.mayEdit || withSearchRecord(this.file, record) === this.file) return;
		const make = (file: JobFile): JobFile => withSearchRecord(file, record);
		if (by === 'stop') job.amend(make);
		else job.change(make, by, null);
		this.#show(job);
		void this.#attach();
	}

	/** The file is another than before by what was done here. */
	#moved(job: OpenedJob): void {
		this.#attached(job);
		if (job === this.#job) void this.#attach();
	}

	#show(job: OpenedJob): void {
		if (job !== this.#job) return;
		this.#file = job.file;
		this.sharesRack = job.sharesRack;
		this.undoes = job.undoes;
		this.redoes = job.redoes;
		this.lost = job.lost;
		this.held = job.held;
		this.#look();
	}

	/** The documents are there; they may hold more than was shown. */
	#attached(job: OpenedJob): void {
		if (job !== this.#job) return;
		const before = this.file;
		this.#show(job);
		if (this.file !== before) this.watch.follow(this.file);
	}

	#look(): void {
		this.saver.look(this.id, this.#job.isInDocuments, this.#documents?.shelf ?? null);
	}

	/** Another window has changed the job: it is planned again, and whatever is wrong is shown. */
	#hear(job: OpenedJob, file: JobFile, before: JobFile): void {
		if (job !== this.#job) return;
		this.shared.changes++;
		this.#hourly.keep(job.id, 'before another window changed it', before);
		this.#show(job);
		this.watch.follow(file);
		const parts = changedParts(before, file);
		if (parts.length > 0) this.heard = `${this.shared.others} changed: ${parts.join(', ')}.`;
	}

	#saidOf(done: string, what: string | null, before: JobFile): string {
		if (this.#job.file !== before) return `${done}: ${what}.`;
		return `Nothing left of it to take back: ${what}. Another window has changed it since.`;
	}

	#attachSoon(): void {
		if (this.shared.membership) void this.documents().catch(() => undefined);
		if (!this.#job.opening.standsIn) void this.#attach();
	}

	/** Brings the open job's documents; tried again until they come. */
	async #attach(): Promise<void> {
		const job = this.#job;
		if (job.id === '') return;
		try {
			await job.attach(() => this.documents());
		} catch (error) {
			if (job === this.#job) this.saver.fail(NO_DOCUMENTS);
			console.error(error);
		}
	}

	async #whenAttached(then: () => void): Promise<void> {
		const job = this.#job;
		await this.#attach();
		if (job === this.#job && job.isInDocuments) then();
	}

	/** Another window has put a backup in place of all. */
	async #openAnew(): Promise<void> {
		const { id } = this;
		this.#job.leave();
		if (await this.openStored(id).catch(() => false)) return;
		await this.open(await firstJob(this.#store, null));
		this.notice = 'A backup was put in place of all jobs; the one open here is not among them.';
	}
}

const NO_DOCUMENTS =
	'A part of the planner could not be fetched: save the job as a file, then reload.';
