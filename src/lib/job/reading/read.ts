import { crossCheck } from '../cross';
import { USUAL_CURRENCY } from '../fields';
import { guard } from './guard';
import { showHidden, takeOutHidden } from './hidden-letters';
import { issuePath, problemsOf, type Issue } from './issue-words';
import { job, jobIn, type Job } from '../job';
import type { Ruler } from '../../measure';
import {
	entryOf,
	leaveOut,
	pathInFile,
	removeField,
	setField,
	shorten,
	type Sources,
	type Path,
	type Problem,
	valueAt,
} from '../problems';
import { CURRENCY } from '../shop';
import { clothThickness } from '../stock';
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
	/** Thicknesses of cloth that could not be read; those in the job are no figures to cut by. */
	readonly unsized: readonly Unsized[];
}

/** A thickness of a cloth nobody knows. */
export interface Unsized {
	readonly cloth: string;
	readonly field: 'pressed' | 'loose';
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
	return { ...crossed, problems, doubtfulCloths: read.doubtfulCloths, unsized: read.unsized };
}

/** The currency a file names; the usual one while it names none that could be read. */
function currencyIn(file: Record<string, unknown>): string {
	const code = valueAt(file, ['shop', 'currency']);
	return typeof code === 'string' && CURRENCY.test(code) ? code : USUAL_CURRENCY;
}

/** The ruler a file names; null while it names none that could be read. */
function rulerIn(file: Record<string, unknown>): Ruler | null {
	const named = job.shape.shop.safeParse({ ruler: valueAt(file, ['shop', 'ruler']) });
	return named.success ? named.data.ruler : null;
}

/** The empty job every field of which is its default. */
export function emptyJob(): Job {
	return job.parse({});
}

function nothing(problems: readonly Problem[]): ReadJob {
	return { job: emptyJob(), problems, sources: {}, doubtfulCloths: [], unsized: [] };
}

interface Parsed {
	readonly job: Job | null;
	readonly problems: readonly Problem[];
	readonly sources: Sources;
	readonly doubtfulCloths: readonly string[];
	readonly unsized: readonly Unsized[];
}

/** Cloths a field of which was taken out, and the thicknesses among these. */
interface Doubts {
	readonly cloths: Set<string>;
	readonly unsized: Unsized[];
}

function parse(file: Record<string, unknown>, schema: typeof job): Parsed {
	const ruler = rulerIn(file);
	const tree = structuredClone(file); // the rounds take things out of it
	const problems: Problem[] = takeOutHidden(tree);
	const doubts: Doubts = { cloths: new Set(), unsized: [] };
	let sources: Sources = {};
	for (let round = 0; round < ROUNDS; round++) {
		const result = schema.safeParse(tree);
		if (result.success) {
			const { cloths, unsized } = doubts;
			return { job: result.data, problems, sources, doubtfulCloths: [...cloths], unsized };
		}
		for (const { path, ...rest } of problemsOf(result.error.issues, schema, tree, ruler)) {
			const inFile = pathInFile(sources, path);
			if (isEmpty(tree, path) && !isEmpty(file, inFile)) continue;
			const fix = isCloth(path) ? `${rest.fix} ${UNTIL_THEN}` : rest.fix;
			problems.push({ ...rest, fix, what: showHidden(rest.what), path: inFile });
		}
		sources = prune(tree, result.error.issues, sources, doubts);
	}
	return { job: null, problems, sources, doubtfulCloths: [], unsized: [] };
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

/** Takes a field out of a cloth where something stands in for it; false where nothing does. */
function withoutField(tree: object, path: Path, doubts: Doubts): boolean {
	const key = path[3];
	if (!isCloth(path) || key === 'id' || key === 'name') return false;
	const entry = path.slice(0, 3);
	const id = valueAt(tree, [...entry, 'id']);
	if (typeof id !== 'string') return false;
	doubts.cloths.add(id);
	if (key === 'pressed' || key === 'loose') {
		doubts.unsized.push({ cloth: id, field: key });
		setField(tree, [...entry, key], standIn(key, valueAt(tree, [...entry, 'pressed'])));
	} else removeField(tree, path.slice(0, 4));
	return true;
}

/** Whatever stands in for a thickness must not look odd beside the other one. */
function standIn(key: 'pressed' | 'loose', pressed: unknown): unknown {
	return key === 'loose' && clothThickness.safeParse(pressed).success ? pressed : 0;
}

/** What may fail in the record of a sheet or of pulled cloth without the record being another. */
const ALONE: ReadonlySet<unknown> = new Set(['spoiled', 'kept']);
const ALONE_WHOLE: ReadonlySet<unknown> = new Set(['made', 'price']);

/** The field that is taken out by itself, its record staying; null where there is none. */
function aloneIn([list, index, key, at, field, ...inner]: Path): Path | null {
	if ((list !== 'pinned' && list !== 'pulled') || index === undefined || key === undefined)
		return null;
	if (ALONE_WHOLE.has(key)) return [list, index, key];
	const isMark = key === 'placed' && at !== undefined && inner.length === 0 && ALONE.has(field);
	return isMark ? [list, index, key, at, field ?? ''] : null;
}

function prune(tree: object, issues: readonly Issue[], sources: Sources, doubts: Doubts): Sources {
	const out: Path[] = [];
	for (const issue of issues) {
		const path = issuePath(issue);
		if (issue.code === 'unrecognized_keys') {
			for (const key of issue.keys) removeField(tree, [...path, key]);
		} else if (issue.code === 'too_big' && issue.origin === 'array' && !entryOf(path)) {
			shorten(tree, path, Number(issue.maximum));
		} else if (!withoutField(tree, path, doubts)) {
			const alone = aloneIn(path);
			if (alone) removeField(tree, alone);
			else out.push(path);
		}
	}
	return leaveOut(tree, out, sources);
}
