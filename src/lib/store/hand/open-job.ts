import type { JobFile } from '../../job';
import { docOfJob, SHOP_DOC, type StoredJob } from '../database';
import { ClaimedRack, stockHeld, stockOnRack } from '../claims';
import { factIn, fileIn, seedOf, writeFact, writeFile } from '../document';
import { type Keeper, type Shelf, waitAfter, type Waits, within } from '../keeping';
import { keepRack } from '../rack';
import { JobInHand, SHARES_RACK } from './job-in-hand';
import { OwnSteps } from './own-steps';

/** What is opened: a record of the store, or a job that is in none yet. */
export interface JobToOpen {
	readonly id: string;
	readonly file: JobFile;
	readonly sharesRack: boolean;
	/** The record it was read from; absent for a new job. */
	readonly record?: StoredJob;
	/** What a page that closed had not kept of it. */
	readonly left?: { readonly job: Uint8Array | null; readonly shop: Uint8Array | null };
}

/**
 * Takes a job in hand. A job that has a document in the store waits until the store gives it, for
 * as long as that takes: one made up in its place would double every thing in it. A new job goes on
 * in memory. Rejects only when told to stop.
 */
export async function openJob(
	shelf: Shelf,
	opening: JobToOpen,
	stopped: () => boolean,
): Promise<JobInHand> {
	const { id, file, sharesRack, record } = opening;
	const job = shelf.keeper(docOfJob(id));
	const shop = shelf.keeper(SHOP_DOC);
	shop.keeping.beside = () => rackOf(shop);
	await Promise.all([
		loaded(job, shelf.waits, record?.merged ? stopped : null),
		loaded(shop, shelf.waits, sharesRack ? stopped : null),
	]);
	job.hold();
	if (opening.left?.job) job.takeIn(opening.left.job);
	if (opening.left?.shop) shop.takeIn(opening.left.shop);
	if (job.doc.isEmpty) job.takeIn(seedOf(file, sharesRack ? { [SHARES_RACK]: true } : {}));
	else if (record && !record.merged) writePlain(job, record.file);
	else if (record) fillGap(job, record.file);
	if (sharesRack) await seedShop(shelf, file);
	const steps = await stepsOf(shelf, `${docOfJob(id)} ${shelf.writer}`);
	const changed = record?.changed ?? Date.now();
	const hand = new JobInHand(id, { job, shop }, steps, changed);
	job.release();
	shelf.keepOnly(new Set([docOfJob(id), SHOP_DOC]));
	return hand;
}

/**
 * A plain record over the document there is, where it knows more than that: its rack is the one
 * that was shown.
 */
function writePlain({ doc }: Keeper, file: unknown): void {
	const before = fileIn(doc);
	const claimed = new ClaimedRack(doc, null);
	const held = stockHeld(before);
	const { stock } = claimed.gross(held, claimed.net(held).stock, stockHeld(file));
	const after = stock === stockHeld(file) ? file : { ...(file as object), stock };
	writeFile(doc, before, after);
}

/** Set once a gap was filled: what never came may stay away for good, and the record grows old. */
const FILLED = 'gap filled';

/**
 * A planner of some days did not keep one update of a booking, and all that was done after it hangs
 * on that. The record beside the document was written with it: what was shown last is in there.
 */
function fillGap(keeper: Keeper, record: unknown): void {
	const { doc } = keeper;
	if (!doc.hasGap || factIn(doc, FILLED) === true) return;
	doc.together(() => {
		if (typeof record === 'object' && record !== null) writePlain(keeper, record);
		writeFact(doc, FILLED, true);
	});
}

/** The rack as it is kept beside the shop's document. */
export function rackOf(shop: Keeper): { things?: Record<string, unknown> } {
	const rack = fileIn(shop.doc);
	if (rack === undefined) return {};
	const held = stockHeld(rack);
	const stock = stockOnRack(shop.doc, held, null);
	return { things: { rack: stock === held ? rack : { ...(rack as object), stock } } };
}

/** Stops being waited for: another job was opened meanwhile. */
export class Overtaken extends Error {
	override readonly name = 'Overtaken';
}

/**
 * Loads a document: over and over, and waited for where it must be had.
 *
 * @param stopped null where it need not be had
 */
async function loaded(
	keeper: Keeper,
	waits: Waits,
	stopped: (() => boolean) | null,
): Promise<void> {
	if (keeper.loaded) return;
	const isThere = await keeper.load().then(
		() => true,
		() => false,
	);
	if (isThere) return;
	const later = loadLater(keeper, waits, stopped ?? (() => false));
	if (stopped) await later;
	else later.catch(() => undefined);
}

async function loadLater(keeper: Keeper, waits: Waits, stopped: () => boolean): Promise<void> {
	for (let failures = 1; !keeper.loaded; failures++) {
		await new Promise((resolve) => setTimeout(resolve, waitAfter(waits, failures)));
		if (keeper.isClosed || stopped()) throw new Overtaken();
		await keeper.load().catch(() => undefined);
	}
}

/** Waits until the store has given the shop's rack, for as long as that takes. */
export async function shopAtHand(shelf: Shelf, stopped: () => boolean): Promise<void> {
	await loaded(shelf.keeper(SHOP_DOC), shelf.waits, stopped);
	await seedShop(shelf, null);
}

/** The shop's document is made of the rack as it was kept before there were documents. */
async function seedShop(shelf: Shelf, file: JobFile | null): Promise<void> {
	const shop = shelf.keeper(SHOP_DOC);
	const isWhole = !shop.doc.isEmpty && !shop.doc.hasGap;
	if (isWhole || !shop.loaded) return;
	const rack = await untilAnswered(shelf.waits, () => shelf.store.thing('rack'));
	if (!shop.doc.isEmpty) return fillGap(shop, rack);
	if (typeof rack === 'object' && rack !== null) shop.takeIn(seedOf(rack));
	else if (file) shop.takeIn(seedOf(keepRack(file)));
}

/** Asks again, ever more slowly. */
async function untilAnswered<T>(waits: Waits, ask: () => Promise<T>): Promise<T> {
	for (let failures = 1; ; failures++) {
		try {
			return await within(waits.answer, ask());
		} catch {
			await new Promise((resolve) => setTimeout(resolve, waitAfter(waits, failures)));
		}
	}
}

/**
 * Without an answer there is nothing to take back; new steps are numbered past any that there are.
 */
async function stepsOf(shelf: Shelf, owner: string): Promise<OwnSteps> {
	try {
		return new OwnSteps(owner, await within(shelf.waits.answer, shelf.store.steps(owner)));
	} catch {
		return new OwnSteps(owner, [], Date.now());
	}
}
