import { foamMinutes, type Job, type JobFile } from '../../job';
import { MINUTES_OF } from './against';
import type { OwnTime } from './own-times';

/** The shop's figure for an operation as it stands; 0 for one that has none. */
export function minutesNow(job: Pick<Job, 'shop'>, { what }: Pick<OwnTime, 'what'>): number {
	const key = MINUTES_OF[what];
	if (!key) return 0;
	return job.shop.labour.minutes[key] ?? foamMinutes(job);
}

/**
 * The shop's own time taken as its figure, and no other figure moved by it: foam that went by the
 * minutes of cloth keeps what those were. Returns a new file.
 */
export function takeOwnTime(
	file: JobFile,
	job: Pick<Job, 'shop'>,
	{ what, minutes }: Pick<OwnTime, 'what' | 'minutes'>,
): JobFile {
	const key = MINUTES_OF[what];
	if (!key) return file;
	const { shop } = file;
	const kept = key === 'bondedSquareMetre' ? { foamSquareMetre: foamMinutes(job) } : {};
	const own = { ...shop?.labour?.minutes, ...kept, [key]: Math.round(minutes * 100) / 100 };
	return { ...file, shop: { ...shop, labour: { ...shop?.labour, minutes: own } } };
}
