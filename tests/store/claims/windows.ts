import type { JobFile } from '../../../src/lib/job/job';
import type { TakenStock, Taking, Yielded } from '../../../src/lib/layout/booked';
import type { Addition, Store } from '../../../src/lib/store/database/store';
import { seedOf } from '../../../src/lib/store/document/seed';
import { JobInHand, SHARES_RACK } from '../../../src/lib/store/hand/job-in-hand';
import { OwnSteps } from '../../../src/lib/store/hand/own-steps';
import { Keeper } from '../../../src/lib/store/keeping/keeper';

/** What a store was given of each document. */
type Kept = Map<string, Uint8Array[]>;

/** A store that nobody else writes in. */
function storeIn(kept: Kept): Store {
	let n = 0;
	const append = (addition: Addition): Promise<number> => {
		addition.take([]);
		const bytes = addition.unkept(false);
		if (bytes) kept.set(addition.doc, [...(kept.get(addition.doc) ?? []), bytes]);
		addition.beside();
		return Promise.resolve(++n);
	};
	return { append, compact: () => Promise.resolve(++n) } as unknown as Store;
}

/** A job on the shop's rack, on a device of its own until it is told what others did. */
export class Device {
	readonly hand: JobInHand;
	readonly job: Keeper;
	readonly #shop: Keeper;
	readonly #kept: Kept;
	readonly #begun: readonly [name: string, rack: unknown, sharesRack: boolean];

	constructor(name: string, rack: unknown, sharesRack = true, kept: Kept = new Map()) {
		this.#begun = [name, rack, sharesRack];
		this.#kept = kept;
		const file = { name, ...(sharesRack ? {} : (rack as object)) };
		const store = storeIn(kept);
		this.job = new Keeper(store, `job ${name}`);
		this.#shop = new Keeper(store, 'shop');
		this.job.doc.take(seedOf(file, sharesRack ? { [SHARES_RACK]: true } : {}));
		this.#shop.doc.take(seedOf(rack));
		for (const keeper of [this.job, this.#shop])
			for (const update of kept.get(keeper.name) ?? []) keeper.doc.take(update);
		this.hand = new JobInHand(name, { job: this.job, shop: this.#shop }, new OwnSteps(name), 0);
	}

	/** The job as it is opened another day, of nothing but what the store was given. */
	async another(): Promise<Device> {
		await Promise.all([this.job.settled(), this.#shop.settled()]);
		return new Device(...this.#begun, new Map(this.#kept));
	}

	get file(): JobFile {
		this.hand.change((file) => file, '', null); // so that what came in is read
		return this.hand.file;
	}

	/** How many claims lie in the shop's document. */
	claims(): number {
		return this.#shop.doc.keys('claims').length;
	}

	hears(other: Device): void {
		this.#shop.doc.take(other.#shop.doc.whole());
	}

	book(
		takes: Partial<TakenStock>,
		yields: readonly Partial<Yielded>[] = [],
		what = 'a sheet',
	): void {
		this.take([{ takes: taken(takes), yields: yields.map(yielded) }], what);
	}

	take(takings: readonly Taking[], what = 'work'): void {
		this.hand.book((file) => ({ takings, remnants: [], file }), what);
	}
}

const PIECE = { material: 'ply', length: 800, width: 300 };
const taken = (takes: Partial<TakenStock>): TakenStock => ({
	...PIECE,
	kind: 'owned',
	id: 'S',
	...takes,
});
const yielded = (offcut: Partial<Yielded>): Yielded => ({ ...PIECE, id: 'R1', ...offcut });

/** All devices hear of all that was done. */
export function meet(...devices: readonly Device[]): void {
	for (const one of devices) for (const other of devices) if (one !== other) one.hears(other);
}

/** The one text these racks say a length in. */
const millimetres = (left: unknown): number => (left === '1 m' ? 1000 : Number(left));

/** How much of each sheet, offcut, roll and sundry the rack shows. */
export function shown({ stock }: JobFile): Record<string, number> {
	const there: Record<string, number> = {};
	for (const { id, owned } of stock?.sheets ?? []) there[id ?? ''] = (owned as number) ?? 0;
	for (const { id, count } of stock?.offcuts ?? [])
		there[id ?? ''] = (there[id ?? ''] ?? 0) + ((count as number) ?? 1);
	for (const { id, left } of stock?.rolls ?? []) there[id ?? ''] = millimetres(left);
	for (const { id, owned } of stock?.sundries ?? []) there[id ?? ''] = owned ?? 0;
	return there;
}
