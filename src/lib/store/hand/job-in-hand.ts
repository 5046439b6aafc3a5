import { VERSION, type JobFile } from '../../job';
import type { StoredJob } from '../database';
import { factIn, fileIn, likeBefore, takeBack, writeFact, writeFile } from '../document';
import type { Keeper } from '../keeping';
import { lifted, liftedRack } from '../rack';
import type { OwnSteps, StepChanges, StepEdits } from './own-steps';

/** Register of a job's document that says whose rack it draws on. */
export const SHARES_RACK = 'shares rack';

/**
 * A job in hand: one plain file made of the job's document and, where it draws on the shop's rack,
 * of the shop's. Every change goes into the documents, as a step that can be taken back; what other
 * windows change comes into the file by itself.
 */
export class JobInHand {
	readonly id: string;
	/** The file as all windows together have it. */
	file: JobFile;
	/** Told the file when other windows have changed it, and what it was before. */
	onOther: (file: JobFile, before: JobFile) => void = () => undefined;
	readonly #job: Keeper;
	readonly #shop: Keeper;
	readonly #steps: OwnSteps;
	/** What the two documents hold. */
	#own: JobFile;
	#rack: unknown;
	#changed: number;
	#stale = false;
	#closed = false;
	readonly #leaveShop: () => void;

	/** Of documents that are loaded and seeded. */
	constructor(
		id: string,
		docs: { readonly job: Keeper; readonly shop: Keeper },
		steps: OwnSteps,
		changed: number,
	) {
		this.id = id;
		this.#job = docs.job;
		this.#shop = docs.shop;
		this.#steps = steps;
		this.#changed = changed;
		this.#own = fileIn(docs.job.doc) as JobFile;
		this.#rack = fileIn(docs.shop.doc);
		this.file = this.#made();
		this.#lift();
		const hear = (_: Uint8Array, by: string): void => {
			if (by === 'elsewhere') this.#hear();
		};
		docs.job.doc.onUpdate(hear);
		this.#leaveShop = docs.shop.doc.onUpdate(hear);
		docs.job.keeping.beside = () => ({ job: this.record(), things: { open: id } });
		docs.job.touch();
	}

	get sharesRack(): boolean {
		return factIn(this.#job.doc, SHARES_RACK) === true;
	}
	/** In words, what `undo` would take back; null when there is nothing. */
	get undoes(): string | null {
		return this.#steps.last?.what ?? null;
	}
	get redoes(): string | null {
		return this.#steps.next?.what ?? null;
	}

	/** Parts of the file that are alike in what is shown become the very same objects. */
	likeShown(shown: JobFile): void {
		this.#catchUp();
		this.#own = likeBefore(shown, this.#own) as JobFile;
		this.file = likeBefore(shown, this.#made()) as JobFile;
	}

	/**
	 * A change of the file as it now stands. Changes that carry the same `run` one after another
	 * are one step; null always makes a step of its own. False when it changes nothing.
	 */
	change(make: (file: JobFile) => JobFile, what: string, run: string | null): boolean {
		this.#catchUp();
		const after = make(this.file);
		if (after === this.file) return false;
		this.#keep(this.#steps.made(this.#write(after), what, run));
		return true;
	}

	/** What is now said more fully, and no step of its own. */
	amend(make: (file: JobFile) => JobFile): void {
		this.#catchUp();
		const after = make(this.file);
		if (after !== this.file) this.#keep(this.#steps.amended(this.#write(after)));
	}

	/** The field was left: what is typed into it next is a step of its own. */
	settle(): void {
		this.#steps.settle();
	}

	/**
	 * Takes back the last step of this window, as far as nobody has written over it since. In
	 * words what it was; null for none.
	 */
	undo(): string | null {
		const step = this.#steps.last;
		if (!step) return null;
		this.#keep(this.#steps.undone(this.#back(step.edits)));
		return step.what;
	}

	redo(): string | null {
		const step = this.#steps.next;
		if (!step) return null;
		this.#keep(this.#steps.redone(this.#back(step.edits)));
		return step.what;
	}

	/**
	 * From here on the job draws on the shop's rack: on the one there is ('take'), or its own
	 * becomes the shop's ('give'). Its own stays in its document, for `undo`.
	 */
	shareRack(way: 'take' | 'give', what: string): void {
		this.#catchUp();
		const { stock = {}, shop = {} } = this.file;
		const gives = way === 'give' || this.#rack === undefined;
		const given = gives ? this.#writeRack({ stock, shop, version: VERSION }) : [];
		const edits = [...given, this.#edits(this.#job, writeFact(this.#job.doc, SHARES_RACK, true))];
		this.file = this.#made();
		this.#keep(this.#steps.made(edits, what, null));
	}

	/** The plain record that goes beside the document. */
	record(): StoredJob {
		this.#catchUp();
		const { name } = this.file;
		return {
			id: this.id,
			name: typeof name === 'string' ? name : '',
			file: this.file,
			changed: this.#changed,
			sharesRack: this.sharesRack,
			merged: true,
		};
	}

	/** Another job is taken in hand; what is not kept of this one is written on by itself. */
	close(): void {
		this.#closed = true;
		this.#leaveShop();
	}

	#made(): JobFile {
		const rack = this.sharesRack ? this.#rack : null;
		if (typeof rack !== 'object' || rack === null) return this.#own;
		const { stock, shop } = rack as JobFile;
		return { ...this.#own, stock, shop };
	}

	/** Writes the file where its parts belong. */
	#write(after: JobFile): StepEdits {
		const { stock, shop } = after;
		const isRackShared = this.sharesRack;
		const own = isRackShared ? withOwnRack(after, this.#own) : after;
		const edits = writeFile(this.#job.doc, this.#own, own);
		this.#own = own;
		this.file = after;
		const rack = isRackShared ? this.#writeRack({ stock, shop, version: VERSION }) : [];
		return [this.#edits(this.#job, edits), ...rack].filter(([, list]) => list.length > 0);
	}

	#writeRack(rack: object): StepEdits {
		const before = this.#rack;
		this.#rack = rack;
		return [this.#edits(this.#shop, writeFile(this.#shop.doc, before, rack))];
	}

	#edits({ name }: Keeper, edits: StepEdits[number][1]): StepEdits[number] {
		return [name, edits];
	}

	#back(edits: StepEdits): StepEdits {
		const made = edits.toReversed().map(([name, list]): StepEdits[number] => {
			const keeper = name === this.#shop.name ? this.#shop : this.#job;
			return [name, takeBack(keeper.doc, list)];
		});
		this.#read();
		return made;
	}

	#keep(steps: StepChanges): void {
		this.#changed = Date.now();
		this.#job.keepSteps(this.#steps.owner, steps);
	}

	/** Old forms become the present one, the same way in every window, and as no step. */
	#lift(): void {
		const own = lifted(this.#own);
		const rack = liftedRack(this.#rack);
		if (own !== this.#own) writeFile(this.#job.doc, this.#own, own);
		if (rack) writeFile(this.#shop.doc, this.#rack, rack);
		this.#read();
	}

	#read(): void {
		this.#own = likeBefore(this.#own, fileIn(this.#job.doc) ?? {}) as JobFile;
		this.#rack = likeBefore(this.#rack, fileIn(this.#shop.doc));
		this.file = likeBefore(this.file, this.#made()) as JobFile;
		this.#stale = false;
	}

	/** Many updates that come together are read once. */
	#hear(): void {
		if (this.#stale) return;
		this.#stale = true;
		queueMicrotask(() => this.#catchUp());
	}

	#catchUp(): void {
		if (!this.#stale) return;
		const before = this.file;
		this.#read();
		if (this.file !== before && !this.#closed) this.onOther(this.file, before);
	}
}

/** What goes into the job's own document: it keeps the rack it had before it shared one. */
function withOwnRack(file: JobFile, own: JobFile): JobFile {
	const mine: JobFile = { ...file };
	for (const part of ['stock', 'shop'] as const) {
		delete mine[part];
		if (part in own) Object.assign(mine, { [part]: own[part] });
	}
	return mine;
}
