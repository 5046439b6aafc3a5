import type { JobFile } from '../../../job';

/** What the parts of a job are called where one reads of them. */
const NAMES: Readonly<Record<string, string>> = {
	name: 'the name',
	number: 'the job number',
	revision: 'the revision',
	date: 'the date',
	customer: 'the customer',
	vehicle: 'the vehicle',
	notes: 'the notes',
	shop: 'the shop',
	stock: 'the rack',
	boxes: 'boxes',
	panels: 'panels',
	parts: 'parts',
	runs: 'runs',
	work: 'hours of work',
	pinned: 'layouts',
	byHand: 'parts laid by hand',
	pulled: 'cloth pulled',
	used: 'sundries used',
	took: 'what it took',
	ticked: 'cuts at the bench',
	seed: 'the search',
	look: 'the search',
};

/**
 * In words, which parts of a job differ; parts are compared as objects, for what is alike is one.
 */
export function changedParts(before: JobFile, after: JobFile): string[] {
	const [old, now] = [before, after] as Readonly<Record<string, unknown>>[];
	const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
	const changed = [...keys].filter((key) => old?.[key] !== now?.[key]);
	return [...new Set(changed.map((key) => NAMES[key] ?? 'other figures'))];
}
