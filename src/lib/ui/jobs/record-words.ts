import type { StoredJob } from '../../store';
import { openingOfRecord } from '../state';

/** A torn record holds no job that could be shown; what it does hold can be saved. */
export const isTorn = (job: StoredJob): boolean => openingOfRecord(job) === null;

/** What a record is called, whatever lies in it. */
export function titleOf({ name }: StoredJob): string {
	return typeof name === 'string' && name !== '' ? name : 'Job without a name';
}

/** A moment as this browser writes it; a torn one says so. */
export function whenOf(at: unknown): string {
	return Number.isFinite(at) ? new Date(Number(at)).toLocaleString() : 'at a time not known';
}

/** '1 job', '3 jobs'. */
export function jobCount(n: number): string {
	return n === 1 ? '1 job' : `${n} jobs`;
}
