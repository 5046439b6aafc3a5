import type { JobFile } from '../../src/lib/job/job';
import { BOXES } from './boxes';
import { changesOf, likeness, outspoken, type Change } from './changes';
import { DONE } from './done';
import { LISTS } from './lists';
import { PANELS } from './panels';

/** Every small job with all said in it that is usual, and little search. */
const said = (jobs: readonly JobFile[]): JobFile[] =>
	jobs.map((job) => outspoken({ look: { effort: 5, stopped: null }, ...job }));

/** The shop and the rack are changed in these: together they use all of both. */
const MAIN = [
	'Cabinet',
	'Routed',
	'Half cut',
	'Sealed and filled',
	'Carpeted, and where it goes',
].concat('Trim panel', 'Floor with devices', 'Patterned', 'Wired');
const OWN = /^(boxes|panels|parts|runs|pinned|pulled|used)/;

/**
 * Thousands of pieces take minutes in the nest by router, and in every other nest seconds; a long
 * look is long by what it is.
 */
const LONG: Readonly<Record<string, number>> = {
	'parts[].count': 200,
	'panels[].count': 50,
	'boxes[].count': 50,
	'look.effort': 1000,
};

const isShort = ({ field, value }: Change): boolean =>
	typeof value !== 'number' || value <= (LONG[field] ?? Infinity);

/** Every job whose fields are walked. */
export const allJobs = (): JobFile[] => said([...LISTS, ...DONE, ...BOXES, ...PANELS]);

/** Changes alike, in every job that has the field. */
export function allChanges(): ReadonlyMap<string, readonly Change[]> {
	const all = allJobs().flatMap((base) =>
		changesOf(base).filter((c) => OWN.test(c.field) || MAIN.includes(base.name ?? '')),
	);
	const groups = new Map<string, Change[]>();
	for (const change of all.filter(isShort)) {
		const like = likeness(change);
		groups.set(like, [...(groups.get(like) ?? []), change]);
	}
	return groups;
}
