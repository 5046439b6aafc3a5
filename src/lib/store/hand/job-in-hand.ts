import { type JobFile, rulerOf, VERSION } from '../../job';
import type { Ruler } from '../../measure';
import type { StoredJob, StoredStep } from '../database';
import type { Booking } from '../../layout';
import {
	ClaimedRack,
	fallenWords,
	heldAnew,
	type HeldLine,
	heldLines,
	lostWords,
	MARK,
	type NetRack,
	stockHeld,
	unsettle,
} from '../claims';
import {
	byChance,
	factIn,
	fileIn,
	likeBefore,
	type RegisterEdit,
	takeBack,
	writeFact,
	writeFile,
} from '../document';
import type { Keeper } from '../keeping';
import { lifted, liftedRack } from '../rack';
import { withLines, withoutOffcuts, withOwnRack } from './rack-lines';
import type { OwnSteps, StepChanges, StepEdits } from './own-steps';

/** Register of a job's document that says whose rack it draws on. */
export const SHARES_RACK = 'shares rack';
const DAY = 86_400_000; // ms
/** Claims older than this are settled: nobody takes them back any more, or hardly ever. */
const SETTLED = 90 * DAY;
/** On a device whose clock is ahead, claims older than this may be. */
const NEARLY = 60 * DAY;

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
	/** What bookings leave of the rack, the shop's or the job's own. */
	readonly #claimed: { readonly job: ClaimedRack; readonly shop: ClaimedRack };
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
		this.#claimed = {
			job: new ClaimedRack(docs.job.doc, id),
			shop: new ClaimedRack(docs.shop.doc, id),
		};
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

	/** In words, each booking that has not got what it claims. */
	get lost(): readonly string[] {
		this.#catchUp();
		return lostWords(this.#netRack(), this.#ruler);
	}
	/** Who holds what of the rack for work that is not cut yet. */
	get held(): readonly HeldLine[] {
		this.#catchUp();
		return heldLines(this.#netRack(), this.#ruler);
	}
	get #ruler(): Ruler {
		return rulerOf(this.file);
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
		const edits = this.#write(after);
		this.#keep(this.#steps.made([...edits, ...this.#hold()], what, run));
		return true;
	}

	/**
	 * Books work done, as a step of its own: claims beside the rack, which is not counted down.
	 * False when there is nothing to book.
	 */
	book(make: (file: JobFile) => Booking | null, what: string): boolean {
		this.#catchUp();
		const booking = make(this.file);
		if (!booking) return false;
		const edits = [...this.#write(booking.file), this.#claim(booking), ...this.#hold()];
		this.#settle();
		this.#read();
		this.#keep(this.#steps.made(edits, what, null));
		return true;
	}

	/**
	 * Lets go what is held of the rack and not cut, whosever it is. False when it is held no more.
	 *
	 * @param id of the claim
	 */
	letGo(id: string, what: string): boolean {
		this.#catchUp();
		const [keeper, claimed] = this.#rackInUse();
		const held = claimed.claims.filter((claim) => claim.id === id && !claim.cut);
		if (held.length === 0) return false;
		const edits = [this.#edits(keeper, claimed.takeOut(held))];
		this.#read();
		this.#keep(this.#steps.made(edits, what, null));
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
	 * words what it was, and which bookings of others it leaves with nothing; null for none.
	 */
	undo(): string | null {
		const step = this.#steps.last;
		return step ? this.#moved(step, (edits) => this.#steps.undone(edits)) : null;
	}

	redo(): string | null {
		const step = this.#steps.next;
		return step ? this.#moved(step, (edits) => this.#steps.redone(edits)) : null;
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
		this.#keep(this.#steps.made([...edits, ...this.#hold()], what, null));
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
		const rack = this.#drawsOnShop() ? (this.#rack as JobFile) : this.#own;
		const stock = this.#netRack().stock as JobFile['stock'];
		if (rack !== this.#own) return { ...this.#own, stock, shop: rack.shop };
		return stock === rack.stock ? rack : { ...rack, stock };
	}

	#drawsOnShop(): boolean {
		return this.sharesRack && typeof this.#rack === 'object' && this.#rack !== null;
	}

	#netRack(): NetRack {
		return this.#drawsOnShop()
			? this.#claimed.shop.net(stockHeld(this.#rack))
			: this.#claimed.job.net(stockHeld(this.#own));
	}

	/** Writes the file where its parts belong. */
	#write(after: JobFile): StepEdits {
		const { stock, shop } = after;
		const isRackShared = this.sharesRack;
		const own = isRackShared ? withOwnRack(after, this.#own) : after;
		const edits = this.#writeOwn(own, isRackShared);
		const rack = isRackShared ? this.#writeRack({ stock, shop, version: VERSION }) : [];
		const isClaimed = this.#claimed.job.isClaimed || this.#claimed.shop.isClaimed;
		this.file = isClaimed ? (likeBefore(after, this.#made()) as JobFile) : after;
		return [this.#edits(this.#job, edits), ...rack].filter(([, list]) => list.length > 0);
	}

	#writeOwn(own: JobFile, isRackShared: boolean): RegisterEdit[] {
		const before = this.#own;
		const claimed = this.#claimed.job;
		const { stock, edits } = isRackShared
			? { stock: own.stock, edits: [] }
			: claimed.gross(before.stock, this.file.stock, own.stock);
		this.#own = stock === own.stock ? own : { ...own, stock: stock as JobFile['stock'] };
		return [...writeFile(this.#job.doc, before, this.#own), ...edits];
	}

	/** @param rack as it is to be shown */
	#writeRack(rack: Pick<JobFile, 'stock' | 'shop' | 'version'>): StepEdits {
		const before = this.#rack;
		const held = stockHeld(before);
		const claimed = this.#claimed.shop;
		const shown = this.#drawsOnShop() ? this.file.stock : claimed.net(held).stock;
		const { stock, edits } = claimed.gross(held, shown, rack.stock);
		this.#rack = { ...rack, stock };
		const written = writeFile(this.#shop.doc, before, this.#rack);
		return [this.#edits(this.#shop, [...written, ...edits])];
	}

	/** Claims on what a booking takes, beside the rack that the job draws on. */
	#claim({ takings, remnants }: Booking): StepEdits[number] {
		const [keeper, claimed] = this.#rackInUse();
		const holder = this.#holder();
		const before = fileIn(keeper.doc);
		const yields = takings.flatMap((taking) => taking.yields);
		const after = withLines(before, { offcuts: yields, rolls: remnants });
		const fallen = writeFile(keeper.doc, before, after);
		const claims = takings.map((t) => ({ ...holder, id: byChance(MARK), cut: true, ...t }));
		return this.#edits(keeper, [...fallen, ...claimed.put(claims)]);
	}

	/** Sheets under pinned layouts are held on the shop's rack, for as long as they are pinned. */
	#hold(): StepEdits {
		if (!this.#drawsOnShop()) return [];
		const claimed = this.#claimed.shop;
		const { put, out } = heldAnew(this.file, claimed.claims, this.#holder());
		if (put.length === 0 && out.length === 0) return [];
		const edits = [...claimed.takeOut(out), ...claimed.put(put)];
		this.file = likeBefore(this.file, this.#made()) as JobFile;
		return [this.#edits(this.#shop, edits)];
	}

	#holder(): { readonly job: string; readonly by: string; readonly at: number } {
		const { name } = this.file;
		const by = typeof name === 'string' && name !== '' ? `“${name}”` : 'a job without a name';
		return { job: this.id, by, at: Date.now() };
	}

	/** What was booked long ago is folded; it is no step of anybody's. */
	#settle(): void {
		const [keeper, claimed] = this.#rackInUse();
		const before = fileIn(keeper.doc);
		const gone = new Set(claimed.settle(stockHeld(before), Date.now() - SETTLED));
		if (gone.size > 0) writeFile(keeper.doc, before, withoutOffcuts(before, gone));
	}

	/** The document of the rack that the job draws on, and the claims on it. */
	#rackInUse(): readonly [Keeper, ClaimedRack] {
		return this.#drawsOnShop() ? [this.#shop, this.#claimed.shop] : [this.#job, this.#claimed.job];
	}

	#edits({ name }: Keeper, edits: StepEdits[number][1]): StepEdits[number] {
		return [name, edits];
	}

	/** Takes a step's edits back, or makes them again. */
	#moved({ what, edits }: StoredStep, told: (edits: StepEdits) => StepChanges): string {
		const before = new Set(this.#netRack().verdict.lost.map(({ id }) => id));
		this.#keep(told(this.#back(edits)));
		const fallen = this.#netRack().verdict.lost.filter(({ id }) => !before.has(id));
		return fallen.length > 0 ? `${what}. ${fallenWords(fallen, this.#ruler)}` : what;
	}

	#back(edits: StepEdits): StepEdits {
		const made = edits.toReversed().map(([name, list]): StepEdits[number] => {
			const keeper = name === this.#shop.name ? this.#shop : this.#job;
			const { edits, offcuts } = unsettle(keeper.doc, list, Date.now() - NEARLY);
			const back = takeBack(keeper.doc, list);
			const before = fileIn(keeper.doc);
			const again = writeFile(keeper.doc, before, withLines(before, { offcuts }));
			return [name, [...back, ...edits, ...again]];
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
		this.#claimed.job.refresh();
		this.#claimed.shop.refresh();
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
