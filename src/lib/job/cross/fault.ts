import type { Path, Problem } from '../problems';

/** What a check across the job found. */
export interface Fault {
	readonly problem: Problem;
	/** The field or the thing that cannot be planned with; null where the job stays as it is. */
	readonly leavesOut: Path | null;
	/** It follows from what has been said already. */
	readonly said?: boolean;
}

/** Cannot be planned with: whatever the path leads into is left out. */
export function refusal(path: Path, what: string, fix: string): Fault {
	return { problem: { path, what, fix, kind: 'stop' }, leavesOut: path };
}

/** Planned as asked, and nothing wrong with it: only to be known, until it is accepted. */
export function remark(
	path: Path,
	what: string,
	fix: string,
	accept?: NonNullable<Problem['accept']>,
): Fault {
	const problem: Problem = { path, what, fix, kind: 'note', ...(accept ? { accept } : {}) };
	return { problem, leavesOut: null };
}

/** Planned as asked; somebody has to look. */
export function doubt(path: Path, what: string, fix: string): Fault {
	return { problem: { path, what, fix, kind: 'check' }, leavesOut: null };
}
