import type { Plan } from '../../plan';
import type { Store, StoredJob } from '../../store';
import { pictureOfJob, type PictureLine } from './pictures';

/** More lines than these say nothing at this size, and would weigh on a list of a thousand jobs. */
const MOST = 60;

/** Keeps the small drawing of a planned job with its record, where it has one and it is another. */
export async function keepPicture(
	store: Pick<Store, 'job' | 'changeJob'>,
	id: string,
	plan: Plan,
): Promise<void> {
	const picture = pictureOfJob(plan).slice(0, MOST);
	const text = JSON.stringify(picture);
	const record = await store.job(id);
	if (!record || JSON.stringify(record.picture) === text) return;
	await store.changeJob(id, (job) => ({ ...job, picture }));
}

/** The drawing kept with a record; empty where there is none, or what is there is none. */
export function pictureOf({ picture }: Pick<StoredJob, 'picture'>): readonly PictureLine[] {
	return Array.isArray(picture) ? picture.filter(isLine) : [];
}

function isLine(line: unknown): line is PictureLine {
	if (typeof line !== 'object' || line === null) return false;
	const { d, line: kind, fill } = line as Readonly<Record<string, unknown>>;
	const isFill = fill === undefined || (typeof fill === 'string' && /^[a-z-]+$/.test(fill));
	return typeof d === 'string' && typeof kind === 'string' && isFill;
}
