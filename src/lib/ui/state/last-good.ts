/**
 * Remembers the last good state of a thing that follows what is typed, so that a field emptied to
 * be typed anew takes nothing out of view. Another job has nothing to remember yet.
 */
export function lastGood<T>(): { of(job: string, now: T | null): T | null } {
	let kept: { readonly job: string; readonly good: T } | null = null;
	return {
		of(job, now) {
			if (now !== null) kept = { job, good: now };
			return kept?.job === job ? kept.good : null;
		},
	};
}
