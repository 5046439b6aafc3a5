import type { JobFile, Problem } from '../../../job';
import type { StoredJob } from '../../../store';
import type { LeftJob } from '../saving';

/** What a desk is opened on. */
export interface DeskOpening {
	readonly id: string;
	readonly file: JobFile;
	readonly sharesRack: boolean;
	/** The record it was read from; absent for a job that is not in the database. */
	readonly record?: StoredJob;
	/** What a page that closed had not kept of it. */
	readonly left?: LeftJob;
	/** What the text of its file told beyond what it holds; said until another job is opened. */
	readonly noted?: readonly Problem[];
	/** In words, what happened on the way. */
	readonly notice?: string;
	/** It stands in for a job that cannot be had: nothing of it is kept until it is changed. */
	readonly standsIn?: boolean;
	/** Nothing was ever opened in this browser before. */
	readonly isFirst?: boolean;
}

/** What a record opens; null for one that is torn. */
export function openingOfRecord(record: StoredJob): DeskOpening | null {
	const { id, file, sharesRack } = record;
	return isFile(file) ? { id, file, sharesRack: sharesRack === true, record } : null;
}

function isFile(file: unknown): file is JobFile {
	return typeof file === 'object' && file !== null && !Array.isArray(file);
}
