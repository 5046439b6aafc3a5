import type { StoredJob } from '../../../store';
import { holdsWords } from '../../parts';

/** What the list of jobs is ordered by. */
export const ORDERS = {
	changed: 'changed last',
	name: 'name',
	number: 'job number',
} as const;
export type JobOrder = keyof typeof ORDERS;

/** What is looked through: name, number, customer, vehicle and notes. */
const FIELDS = ['name', 'number', 'customer', 'vehicle', 'notes'] as const;

/**
 * Jobs that hold every word looked for, in any of their words and any case, in this order. Without
 * words all of them.
 */
export function foundJobs(
	jobs: readonly StoredJob[],
	words: string,
	order: JobOrder,
): readonly StoredJob[] {
	const found = jobs.filter((job) => holdsWords(textOf(job), words));
	if (order === 'changed') return found;
	const key = (job: StoredJob): string => String(fieldsOf(job)[order] ?? job.name ?? '');
	return found.toSorted((a, b) => compare.compare(key(a), key(b)) || compare.compare(a.id, b.id));
}

/** 'job 2' before 'job 10', and å beside a. */
const compare = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

function fieldsOf({ file }: StoredJob): Readonly<Record<string, unknown>> {
	return typeof file === 'object' && file !== null
		? (file as Readonly<Record<string, unknown>>)
		: {};
}

function textOf(job: StoredJob): string {
	const fields = fieldsOf(job);
	const said = FIELDS.map((name) => fields[name]).filter((value) => typeof value === 'string');
	return [job.name, ...said].join(' ');
}

/** 'Bench box, 0142, A. Client': what tells jobs of one name apart. */
export function jobWords(job: StoredJob): string[] {
	const { number, customer, vehicle } = fieldsOf(job);
	return [number, customer, vehicle].filter(
		(word): word is string => typeof word === 'string' && word !== '',
	);
}
