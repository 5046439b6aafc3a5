import type { JobFile } from '../../../job';
import { FIRST_SAMPLE, SAMPLES, sample } from '../../samples';
import type { Store, StoredJob } from '../../../store';
import { type DeskOpening, openingOfRecord } from './desk-opening';
import { asLeftBehind, leftOpening } from './left-job';
import type { LeftJob } from '../saving';

/** How long the start waits for the database, milliseconds. */
const PATIENCE = 2000;

const SLOW =
	"This browser's database has not answered yet. A sample is shown; the jobs kept here can be opened on the page Jobs as soon as it does.";
const REFUSED =
	"This browser's database cannot be read, so nothing can be kept: save what you do as a file.";
const torn = (name: string): string =>
	`The job open last, “${name}”, cannot be read. It is left as it is: on the page Jobs its raw record can be saved to a file.`;

/**
 * The job to open with: the one a page left behind, else the one the address asks for, else the one
 * open last, else the first sample.
 * A database that cannot be read, or does not answer, is no reason not to start.
 */
export async function firstJob(
	store: Store,
	left: LeftJob | null,
	patience = PATIENCE,
	asked: string | null = null,
): Promise<DeskOpening> {
	try {
		const known = await soon(patience, keptOrLeft(store, left, asked));
		return known ?? { ...(await newFromSample(first())), isFirst: true };
	} catch (error) {
		const notice = error === TOO_SLOW ? SLOW : REFUSED;
		if (left) return { ...leftAlone(left, error === TOO_SLOW), notice };
		return { ...(await newFromSample(first())), notice, standsIn: true };
	}
}

async function keptOrLeft(
	store: Store,
	left: LeftJob | null,
	asked: string | null,
): Promise<DeskOpening | null> {
	if (left) return leftOpening(store, left);
	// One that is not there, or torn, is told of once the last one stands in for it.
	const named = asked === null ? undefined : await store.job(asked);
	const opening = named && openingOfRecord(named);
	if (opening) return opening;
	const last = await store.thing('open');
	const record = typeof last === 'string' ? await store.job(last) : undefined;
	if (!record) return null;
	return (
		openingOfRecord(record) ?? { ...(await newFromSample(first())), notice: torn(nameOf(record)) }
	);
}

const TOO_SLOW = new Error('the database does not answer');

function soon<T>(patience: number, answer: Promise<T>): Promise<T> {
	return new Promise((resolve, reject) => {
		const timer = setTimeout(() => reject(TOO_SLOW), patience);
		void answer.then(resolve, reject).finally(() => clearTimeout(timer));
	});
}

/**
 * The database says nothing of the job: what was left goes on as a job of its own, for the one it
 * was part of may have been changed since.
 */
function leftAlone({ job }: LeftJob, isThere: boolean): DeskOpening {
	const name = isThere ? asLeftBehind(job.name) : job.name;
	return { id: newId(), file: { ...(job.file as JobFile), name }, sharesRack: false };
}

const nameOf = ({ name, id }: StoredJob): string => (typeof name === 'string' && name) || id;

const first = (): string =>
	SAMPLES.includes(FIRST_SAMPLE) ? FIRST_SAMPLE : (SAMPLES[0] ?? 'empty');

/**
 * In a shop nobody's sample becomes a job of all: it only stands there until one of them is opened,
 * or it is changed.
 */
export function firstOfShop(opening: DeskOpening): DeskOpening {
	if (opening.record || opening.left) return opening;
	return { ...opening, standsIn: true, notice: opening.notice ?? NONE_OPEN };
}

const NONE_OPEN =
	'No job of the shop is open on this device yet: a sample stands here. The page Jobs lists those there are.';

/** A job of its own made from a sample: it carries the sample's rack. */
export async function newFromSample(name: string): Promise<DeskOpening> {
	return { id: newId(), file: await sample(name), sharesRack: false };
}

/** Marks of jobs need only differ among those who share them; not every page has `randomUUID`. */
export function newId(): string {
	const bytes = crypto.getRandomValues(new Uint8Array(16));
	return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * An empty job on the shop's rack; the first one makes the rack, from the sample's saws and boards.
 */
export async function newEmpty(store: Store): Promise<DeskOpening> {
	const rack = await store.thing('rack').catch(() => null);
	const { stock, shop } = await sample(FIRST_SAMPLE);
	const file = await sample('empty');
	return {
		id: newId(),
		file: rack ? file : { ...file, stock: stock ?? {}, shop: shop ?? {} },
		sharesRack: true,
	};
}
