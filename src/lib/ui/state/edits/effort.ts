import { type JobFile, valueAt } from '../../../job';
import { type SearchRecord, EFFORT } from '../../../layout';

/** The job with the search behind its plan; the file itself when it says so already. */
export function withSearchRecord(file: JobFile, record: SearchRecord): JobFile {
	const now = recordOf(file);
	const same = now.effort === record.effort && now.stopped === record.stopped;
	if (same && now.seed === record.seed) return file;
	const { seed, effort, stopped } = record;
	return { ...file, seed, look: { effort, stopped } };
}

/** The job with the usual search. */
export function withoutSearchRecord(file: JobFile): JobFile {
	const usual = { ...file };
	delete usual.look;
	delete usual.seed;
	return usual;
}

/** Does the job carry a search of its own? */
export function hasSearchRecord(file: JobFile): boolean {
	return (file.look ?? null) !== null;
}

function recordOf(file: JobFile): Omit<SearchRecord, 'seed'> & { readonly seed: unknown } {
	const [effort, stopped] = [valueAt(file, ['look', 'effort']), valueAt(file, ['look', 'stopped'])];
	return {
		seed: file.seed ?? 1,
		effort: typeof effort === 'number' ? effort : EFFORT,
		stopped: typeof stopped === 'number' ? stopped : null,
	};
}
