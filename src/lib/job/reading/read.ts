import { crossCheck } from '../cross';
import { USUAL_CURRENCY } from '../fields';
import { guard } from './guard';
import { showHidden, takeOutHidden } from './hidden-letters';
import { issuePath, problemsOf, type Issue } from './issue-words';
import { job, jobIn, type Job } from '../job';
import {
	entryOf,
	leaveOut,
	pathInFile,
	removeField,
	shorten,
	type Sources,
	type Path,
	type Problem,
	valueAt,
} from '../problems';
import { CURRENCY } from '../shop';
import { upgrade } from '../upgrades';

/** What was read of a file: a job that can be planned, and all that is wrong with the file. */
export interface ReadJob {
	readonly job: Job;
	/** Paths are those of the file. */
	readonly problems: readonly Problem[];
	/**
	 * Maps an entry of `job` back to its place in the file, see {@link pathInFile}; empty when
	 * nothing was left out.
	 */
	readonly sources: Sources;
	/**
	 * Cloths read with a default for a field that could not be read: good enough for the boards,
	 * not for a blank.
	 */
	readonly doubtfulCloths: readonly string[];
}

/**
 * Each round leaves out what the one before found; a file that is not clean by then is given up.
 */
const ROUNDS = 12;
/** Nobody mends more at once, and a hostile file could name millions. */
const MOST = 500;

/**
 * Reads a job from what a file holds. Never throws: what is wrong comes back as problems, all at
 * once, and what can still be planned is in the job. Older versions are lifted to the present one
 * first.
 */
export function readJob(file: unknown): ReadJob {
	const refused = guard(file);
	if (refused) return nothing([{ ...refused, what: showHidden(refused.what) }]);
	const lifted = upgrade(file as Record<string, unknown>);
	if ('problem' in lifted)
		return nothing([{ ...lifted.problem, what: showHidden(lifted.problem.what) }]);
	const { file: now } = lifted;
	const read = parse(now, jobIn(currencyIn(now)));
	if (!read.job) return nothing(read.problems);
	const crossed = crossCheck(read.job, read.sources, clothsIn(now));
	const problems = [...read.problems, ...crossed.problems].slice(0, MOST);
	return { ...crossed, problems, doubtfulCloths: read.doubtfulCloths };
}

/** The currency a file names; the usual one while it names none that could be read. */
function currencyIn(file: Record<string, unknown>): string {
	const code = valueAt(file, ['shop', 'currency']);
	return typeof code === 'string' && CURRENCY.test(code) ? code : USUAL_CURRENCY;
}

/** The empty job every field of which is its default. */
export function emptyJob(): Job {
	return job.parse({});
}

function nothing(problems: readonly Problem[]): ReadJob {
	return { job: emptyJob(), problems, sources: {}, doubtfulCloths: [] };
}

interface Parsed {
	readonly job: Job | null;
	readonly problems: readonly Problem[];
	readonly sources: Sources;
	readonly doubtfulCloths: readonly string[];
}

function parse(file: Record<string, unknown>, schema: typeof job): Parsed {
	const tree = structuredClone(file); // the rounds take things out of it
	const problems: Problem[] = takeOutHidden(tree);
	const doubtful = new Set<string>();
	let sources: Sources = {};
	for (let round = 0; round < ROUNDS; round++) {
		const result = schema.safeParse(tree);
		if (result.success)
			return { job: result.data, problems, sources, doubtfulCloths: [...doubtful] };
		for (const { path, ...rest } of problemsOf(result.error.issues, schema, tree)) {
			const inFile = pathInFile(sources, path);
			if (isEmpty(tree, path) && !isEmpty(file, inFile)) continue;
			const fix = isCloth(path) ? `${rest.fix} ${UNTIL_THEN}` : rest.fix;
			problems.push({ ...rest, fix, what: showHidden(rest.what), path: inFile });
		}
		sources = prune(tree, result.error.issues, sources, doubtful);
	}
	return { job: null, problems, sources, doubtfulCloths: [] };
}

/**
 * Nothing where something is needed; when the file had it, a round before took it out and has said
 * so.
 */
function isEmpty(tree: object, path: Path): boolean {
	const value = valueAt(tree, path);
	return value === undefined || (Array.isArray(value) && value.length === 0);
}

const UNTIL_THEN = 'Until then nothing is cut from this cloth.';

const isCloth = (path: Path): boolean =>
	path[0] === 'stock' && path[1] === 'cloths' && path.length > 3;

/** The marks of all cloths a file holds, whether they can be read or not. */
function clothsIn(file: object): string[] {
	const list = valueAt(file, ['stock', 'cloths']);
	if (!Array.isArray(list)) return [];
	return list.flatMap((cloth: unknown) => {
		const id = typeof cloth === 'object' && cloth !== null ? valueAt(cloth, ['id']) : null;
		return typeof id === 'string' ? [id] : [];
	});
}

/** What of a cloth may be missing, so that a default stands in. */
const mayBeMissing = (key: Path[number] | undefined): boolean =>
	!['id', 'name', 'loose', 'pressed'].includes(String(key));

/** Takes a field out of a cloth where a default stands in; false where none does. */
function withoutField(tree: object, path: Path, doubtful: Set<string>): boolean {
	if (!isCloth(path) || !mayBeMissing(path[3])) return false;
	const id = valueAt(tree, [...path.slice(0, 3), 'id']);
	if (typeof id !== 'string') return false;
	doubtful.add(id);
	removeField(tree, path.slice(0, 4));
	return true;
}

function prune(
	tree: object,
	issues: readonly Issue[],
	sources: Sources,
	doubtful: Set<string>,
): Sources {
	const out: Path[] = [];
	for (const issue of issues) {
		const path = issuePath(issue);
		if (issue.code === 'unrecognized_keys') {
			for (const key of issue.keys) removeField(tree, [...path, key]);
		} else if (issue.code === 'too_big' && issue.origin === 'array' && !entryOf(path)) {
			shorten(tree, path, Number(issue.maximum));
		} else if (!withoutField(tree, path, doubtful)) {
			out.push(path);
		}
	}
	return leaveOut(tree, out, sources);
}
