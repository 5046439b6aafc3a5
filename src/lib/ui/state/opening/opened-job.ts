import type { JobFile } from '../../../job';
import {
	type JobInHand,
	type JobToOpen,
	type StoredJob,
	withRack,
	lifted,
	docOfJob,
	SHOP_DOC,
} from '../../../store';
import { bookedIn, type Booking } from '../../../layout';
import type { Documents } from './documents';
import type { DeskOpening } from './desk-opening';
import type { LeftJob } from '../saving';

/** A change made before the documents were there, to be made in them. */
interface Early {
	readonly make: (file: JobFile) => JobFile;
	/** Where the change is a booking. */
	readonly book?: Book;
	readonly what: string;
	readonly run: string | null;
}
type Book = (file: JobFile) => Booking | null;

/** The step of what a page that closed had not kept. */
const LEFT = 'what was typed last';

/**
 * A job that was opened: at first the file as it was shown, which wants no documents, then the job
 * in hand. What is typed in between is shown at once and written into the documents when they come,
 * be it long after another job was opened.
 */
export class OpenedJob {
	readonly opening: DeskOpening;
	/** Told when the file, or what can be taken back, is another than before. */
	onChange: () => void = () => undefined;
	/** Told the file when other windows have changed it, and what it was before. */
	onOther: (file: JobFile, before: JobFile) => void = () => undefined;
	#file: JobFile;
	#sharesRack: boolean;
	#early: Early[] = [];
	#hand: JobInHand | null = null;
	#attaching: Promise<void> | null = null;
	#left = false;
	#changed = Date.now();

	/** @param rack of the shop, as it is kept beside its document */
	constructor(opening: DeskOpening, rack: unknown) {
		this.opening = opening;
		const file = lifted(opening.file);
		this.#file = opening.sharesRack ? withRack(file, rack) : file;
		this.#sharesRack = opening.sharesRack;
		const { left } = opening;
		if (!left) return;
		const last = left.job.file as JobFile;
		this.#file = last;
		if (left.isEarly) this.#early.push({ make: () => last, what: LEFT, run: null });
	}

	get id(): string {
		return this.opening.id;
	}
	get file(): JobFile {
		return this.#hand?.file ?? this.#file;
	}
	get sharesRack(): boolean {
		return this.#hand?.sharesRack ?? this.#sharesRack;
	}
	get undoes(): string | null {
		return this.#hand
			? this.#hand.undoes
			: (this.#early.findLast(({ what }) => what !== '')?.what ?? null);
	}
	get redoes(): string | null {
		return this.#hand?.redoes ?? null;
	}
	/** In words, each booking on the rack that has not got what it claims. */
	get lost(): readonly string[] {
		return this.#hand?.lost ?? [];
	}
	/** Who holds what of the rack for work that is not cut yet. */
	get held(): JobInHand['held'] {
		return this.#hand?.held ?? [];
	}
	/** Lets go what is held of the rack; false when it is held no more. */
	letGo(id: string, what: string): boolean {
		return this.#hand?.letGo(id, what) ?? false;
	}
	/** Are all changes in the documents? Whether those are kept is for their keepers to say. */
	get isInDocuments(): boolean {
		return this.#early.length === 0;
	}

	/** False when it changes nothing. */
	change(make: Early['make'], what: string, run: string | null): boolean {
		this.#changed = Date.now();
		if (this.#hand) return this.#hand.change(make, what, run);
		const after = make(this.#file);
		if (after === this.#file) return false;
		this.#file = after;
		this.#early.push({ make, what, run });
		return true;
	}

	/** Books work done; false when there is nothing to book. */
	book(book: Book, what: string): boolean {
		this.#changed = Date.now();
		if (this.#hand) return this.#hand.book(book, what);
		const booking = book(this.#file);
		if (!booking) return false;
		this.#file = bookedIn(booking);
		this.#early.push({ make: (file) => file, book, what, run: null });
		return true;
	}

	amend(make: Early['make']): void {
		if (this.#hand) this.#hand.amend(make);
		else this.change(make, '', null);
	}

	settle(): void {
		this.#hand?.settle();
	}

	/** In words what was taken back; null for nothing. */
	undo(): string | null {
		return this.#hand?.undo() ?? null;
	}
	redo(): string | null {
		return this.#hand?.redo() ?? null;
	}

	/** Fetches the documents; resolves when they are there. */
	attach(documents: () => Promise<Documents>): Promise<void> {
		this.#attaching ??= this.#attach(documents);
		return this.#attaching;
	}

	async #attach(documents: () => Promise<Documents>): Promise<void> {
		const { shelf, openJob } = await documents();
		const isIdle = (): boolean => this.#left && this.#early.length === 0;
		const hand = await openJob(shelf, this.#toOpen(), isIdle);
		for (const { make, book, what, run } of this.#early.splice(0)) {
			if (book) hand.book(book, what);
			else if (what === '') hand.amend(make);
			else hand.change(make, what, run);
		}
		hand.likeShown(this.#file);
		this.#hand = hand;
		hand.onOther = (file, before) => this.onOther(file, before);
		if (this.#left) hand.close();
		this.onChange();
	}

	#toOpen(): JobToOpen {
		const { id, file, sharesRack, record, left } = this.opening;
		return {
			...{ id, file: lifted(file), sharesRack },
			...(record ? { record } : {}),
			...(left ? { left: left.updates } : {}),
		};
	}

	/** From here on it draws on the shop's rack. */
	async shareRack(way: 'take' | 'give', documents: () => Promise<Documents>): Promise<void> {
		await this.attach(documents);
		const { shelf, shopAtHand } = await documents();
		await shopAtHand(shelf, () => this.#left);
		this.#hand?.shareRack(way, "use the shop's rack");
	}

	/** What the store has not got, when the page is about to go; null when everything is kept. */
	unkept(documents: Documents | null): LeftJob | null {
		const job = documents?.shelf.unkept(docOfJob(this.id)) ?? null;
		const shop = this.sharesRack ? (documents?.shelf.unkept(SHOP_DOC) ?? null) : null;
		const isEarly = this.#early.length > 0;
		if (!job && !shop && !isEarly) return null;
		return { job: this.#hand?.record() ?? this.#record(), updates: { job, shop }, isEarly };
	}

	#record(): StoredJob {
		const { id, file, sharesRack } = this;
		const name = typeof file.name === 'string' ? file.name : '';
		return { id, name, file, changed: this.#changed, sharesRack };
	}

	/** Another job is opened; what is typed into this one still goes into its documents. */
	leave(): void {
		this.#left = true;
		this.#hand?.close();
	}
}
