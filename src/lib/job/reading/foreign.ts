import { job } from '../job';
import { nearest } from '../problems';

/** What only a job holds; a name, a date and notes stand in files of many kinds. */
const HELD = ['shop', 'stock', 'boxes', 'panels', 'parts', 'pinned', 'ticked'];
const NAMED = 6;

/**
 * Why a file that is sound JSON holds no job, or null when it may be one: opened as an empty job it
 * would look as if all had been lost. A slip in the name of a field is left to the reader, who says
 * what is meant; so is a file with nothing in it.
 */
export function foreign(file: unknown): readonly [what: string, fix: string] | null {
	if (Array.isArray(file)) return ['The file holds a list, not a job.', RIGHT];
	if (file === null) return ['The file holds nothing, not a job.', RIGHT];
	if (typeof file !== 'object') return [`The file holds a ${kindOf(file)}, not a job.`, RIGHT];
	const keys = Object.keys(file);
	const unknown = keys.filter((key) => !Object.hasOwn(job.shape, key));
	const ours = 'format' in file || keys.some((key) => HELD.includes(key));
	if (ours || unknown.length === 0 || unknown.some((key) => nearest(key, HELD))) return null;
	const names = unknown.slice(0, NAMED).map((key) => `"${key.slice(0, 40)}"`);
	const more = unknown.length > NAMED ? ` and ${unknown.length - NAMED} more` : '';
	const what = `The file is no job: it holds ${names.join(', ')}${more}, and no boxes, panels, parts, stock or shop.`;
	return [what, 'nest' in file ? 'A plain problem of layout is for the command "nest".' : RIGHT];
}

const RIGHT = 'Open a job file, such as one saved from here.';

const kindOf = (value: unknown): string => (typeof value === 'string' ? 'text' : typeof value);
