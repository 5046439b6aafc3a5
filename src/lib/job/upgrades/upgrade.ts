import { from0 } from './upgrade-0';
import { from1 } from './upgrade-1';
import type { Problem } from '../problems';

/**
 * One step up: takes the file as the version before wrote it. Never throws, whatever stands in the
 * file.
 */
type Upgrade = (old: Record<string, unknown>) => Record<string, unknown>;

/**
 * `UPGRADES[n]` lifts version n to n + 1. Never changed once released; shared/jobs/old/ holds a
 * file of each version.
 */
const UPGRADES: readonly Upgrade[] = [from0, from1];

/** The version of the job file that this planner writes. */
export const VERSION = UPGRADES.length;

/**
 * The file in the present form, or why its version cannot be read. The file given is left as it is.
 */
export function upgrade(
	file: Record<string, unknown>,
): { readonly file: Record<string, unknown> } | { readonly problem: Problem } {
	const version = versionOf(file);
	if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
		return refused(
			`The version ${JSON.stringify(version) ?? 'given'} is no version of a job file.`,
			`Write "version": ${VERSION}.`,
		);
	}
	if (version > VERSION) {
		return refused(
			`The file has version ${version}; this planner reads up to version ${VERSION}.`,
			'Open it with the newer planner it was saved by.',
		);
	}
	return { file: UPGRADES.slice(version).reduce((old, step) => step(old), file) };
}

/** Files of version 0 did not say so: they are known by boards with a single thickness. */
function versionOf(file: Record<string, unknown>): unknown {
	if (file['version'] !== undefined) return file['version'];
	return from0.fits(file) ? 0 : VERSION;
}

function refused(what: string, fix: string): { problem: Problem } {
	return { problem: { path: ['version'], what, fix, kind: 'stop' } };
}
