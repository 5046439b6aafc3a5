import {
	clothOf,
	materialOf,
	type Path,
	type Job,
	type Panel,
	type Cloth,
	type Material,
} from '../../job';
import { snap, showLength } from '../../measure';
import { ProblemLog } from '../problem-log';
import type { Complaint } from '../shape';

/** What one panel is planned with: what was asked, the rack, and where trouble is written down. */
export interface Bench {
	readonly panel: Panel;
	readonly job: Job;
	readonly trouble: ProblemLog;
	/** Position of the panel in the job, from 1: the start of its parts' marks. */
	readonly number: number;
}

export function benchFor(panel: Panel, job: Job, path: Path): Bench {
	const at = job.panels.findIndex((p) => p.id === panel.id);
	return { panel, job, trouble: new ProblemLog(path), number: at + 1 || 1 };
}

/** Ticks on the job's own ruler. */
export function say(bench: Bench, n: number): string {
	return showLength(snap(n), bench.job.shop.ruler);
}

/** The cloth with that mark; null for none. A mark the rack does not know is a problem. */
export function clothAsked(bench: Bench, id: string | null, path: Path): Cloth | null {
	if (id === null) return null;
	const found = clothOf(bench.job, id);
	if (!found)
		bench.trouble.stop(
			path,
			`There is no cloth '${id}' on the rack.`,
			known(bench.job.stock.cloths, 'cloth'),
		);
	return found ?? null;
}

export function boardAsked(bench: Bench, id: string, path: Path): Material | null {
	const found = materialOf(bench.job, id);
	if (!found)
		bench.trouble.stop(
			path,
			`There is no board '${id}' on the rack.`,
			known(bench.job.stock.materials, 'board'),
		);
	return found ?? null;
}

function known(list: readonly { readonly id: string }[], what: string): string {
	if (list.length === 0) return `Add the ${what} to the rack first.`;
	const marks = list.slice(0, 6).map((m) => `'${m.id}'`);
	return `Choose one of ${marks.join(', ')}, or add it to the rack.`;
}

/** What an outline has to complain of, at its place in the job. */
export function complain(bench: Bench, path: Path, complaints: readonly Complaint[]): void {
	for (const c of complaints) bench.trouble[c.kind](path, c.what, c.fix);
}
