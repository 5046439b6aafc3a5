import { picturesNamed } from '../../job';
import { docOfJob, docOfPicture, hashIn, SHOP_DOC, type StoredJob } from '../database';
import { seedOf } from '../document';
import { recordOfJob } from '../hand';
import { type Keeper, type Shelf, waitAfter } from '../keeping';
import type { Link } from './link';
import { isDocName, type ShopStanding } from './words';

/** Of each document, the shop's mark and the last update here when both were alike. */
type Alike = Record<string, readonly [mark: string, n: number]>;
const ALIKE = 'alike with the shop';
/** Documents brought into step at once. */
const AT_ONCE = 4;

/**
 * Brings the jobs that nobody has in hand into step with the shop, so that all of them are here
 * when the network is not, and the pictures of those that are worked at. Which are so already is
 * told by two numbers, without a look at them.
 */
export class Carrier {
	/** Told when jobs have come, or have changed. */
	onCarried: () => void = () => undefined;
	readonly #shelf: Shelf;
	readonly #link: Link;
	readonly #at = new Map<string, ShopStanding>();
	readonly #failed = new Set<string>();
	#running: Promise<void> | null = null;
	#again = false;
	/** Looks in a row after which something was left over. */
	#failures = 0;
	#later: ReturnType<typeof setTimeout> | undefined;
	#stopped = false;

	constructor(shelf: Shelf, link: Link) {
		this.#shelf = shelf;
		this.#link = link;
	}

	/** The shop has these documents where this says. */
	hear(moved: ReadonlyMap<string, ShopStanding>): void {
		for (const [doc, standing] of moved) this.#at.set(doc, standing);
		this.#failed.clear();
		this.look();
	}

	stop(): void {
		this.#stopped = true;
		clearTimeout(this.#later);
	}

	/** Looks for what is not alike; once more when it is looking already. */
	look(): void {
		this.#again = true;
		this.#running ??= this.#look();
	}

	async #look(): Promise<void> {
		while (this.#again) {
			this.#again = false;
			await this.#run().catch((fault) => console.error(fault));
		}
		this.#running = null;
		if (this.#failed.size > 0) this.#tryAgain();
		else this.#failures = 0;
	}

	/** What could not be done now is tried ever more slowly: nobody may say a word of it again. */
	#tryAgain(): void {
		clearTimeout(this.#later);
		if (this.#stopped) return;
		this.#later = setTimeout(
			() => {
				this.#failed.clear();
				this.look();
			},
			waitAfter(this.#shelf.waits, ++this.#failures),
		);
	}

	/** Resolves when it has looked for all it was told of. */
	async idle(): Promise<void> {
		while (this.#running) await this.#running;
	}

	async #run(): Promise<void> {
		if (this.#link.state.kind !== 'joined') return;
		const { store } = this.#shelf;
		const jobs = new Map(
			[...(await store.jobs()), ...(await store.thrownJobs())].map((job) => [job.id, job]),
		);
		const alike = ((await store.thing(ALIKE)) ?? {}) as Alike;
		const last = await store.lastUpdates();
		const pictures = picturesOf(jobs.values());
		const names = new Set([
			...[...this.#at.keys()].filter((doc) => hashIn(doc) === null),
			...[...jobs.keys()].map(docOfJob),
			...pictures.filter((doc) => last.has(doc) || this.#at.has(doc)),
		]);
		const open = [...names].filter((doc) => {
			if (doc === SHOP_DOC || !isDocName(doc) || this.#shelf.has(doc) || this.#failed.has(doc))
				return false;
			const [mark, n] = alike[doc] ?? [];
			return mark !== this.#at.get(doc)?.mark || n !== last.get(doc) || mark === undefined;
		});
		if (open.length === 0) return;
		// A job that has come may name pictures that are not here.
		if (open.some((doc) => hashIn(doc) === null)) this.#again = true;
		const rack = await store.thing('rack');
		const carry = async (): Promise<void> => {
			for (let doc = open.shift(); doc !== undefined; doc = open.shift()) {
				const is = await this.#carry(doc, jobs.get(idOf(doc)), rack);
				if (is) alike[doc] = is;
				else this.#failed.add(doc);
			}
		};
		await Promise.all(Array.from({ length: AT_ONCE }, carry));
		await store.setThing(ALIKE, alike);
		this.onCarried();
	}

	/** Null when it could not be done now. */
	async #carry(
		doc: string,
		job: StoredJob | undefined,
		rack: unknown,
	): Promise<Alike[string] | null> {
		const keeper = this.#shelf.borrow(doc);
		try {
			keeper.hold(); // the document and the record of it go into the store together
			await keeper.load();
			if (job && keeper.doc.isEmpty) keeper.takeIn(seedOf(job.file));
			if (hashIn(doc) === null) this.#besides(keeper, job, rack);
			await this.#link.inStep(doc);
			const mark = this.#link.standing(doc)?.mark;
			keeper.touch();
			keeper.release();
			await keeper.settled();
			return mark === undefined || keeper.saving !== 'saved' ? null : [mark, keeper.seen];
		} catch {
			return null;
		} finally {
			keeper.release();
			this.#shelf.giveBack(doc);
		}
	}

	/** The record is made of the document as it is when it is written. */
	#besides(keeper: Keeper, job: StoredJob | undefined, rack: unknown): void {
		const id = idOf(keeper.name);
		keeper.keeping.beside = () => {
			const at = this.#link.standing(keeper.name)?.at ?? 0;
			const changed = Math.max(at, job?.changed ?? 0) || Date.now();
			const record = recordOfJob(keeper.doc, { id, rack, changed });
			return record ? { job: record } : {};
		};
	}
}

/** The documents of the pictures of all jobs that are neither put away nor thrown away. */
function picturesOf(jobs: Iterable<StoredJob>): string[] {
	const used = [...jobs].filter((job) => (job.thrown ?? job.archived) === undefined);
	return used.flatMap(({ file }) => picturesNamed(file)).map(docOfPicture);
}

const idOf = (doc: string): string => doc.replace(/^job /, '');
