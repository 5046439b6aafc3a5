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

/**
 * What one panel is planned with: what was asked, the rack, and the log of what is wrong with it.
 */
export interface Bench {
	readonly panel: Panel;
	readonly job: Job;
	readonly log: ProblemLog;
	/** Position of the panel in the job, from 1: the start of its parts' marks. */
	readonly number: number;
}

export function benchFor(panel: Panel, job: Job, path: Path): Bench {
	const at = job.panels.findIndex((p) => p.id === panel.id);
	return { panel, job, log: new ProblemLog(path, job.shop.ruler), number: at + 1 || 1 };
}

/** Ticks on the job's own ruler. */
export function say(bench: Bench, n: number): string {
	return showLength(snap(n), bench.job.shop.ruler);
}

/** The cloth with that mark; null for none. A mark the rack does not know is a problem. */
export function clothAsked(bench: Bench, id: string | null, path: Path): Cloth | null {
	if (id === null) return null;
	const { cloths } = bench.job.stock;
	return clothOf(bench.job, id) ?? missing(bench, cloths, 'cloth', { id, path });
}

export function boardAsked(bench: Bench, id: string, path: Path): Material | null {
	const { materials } = bench.job.stock;
	return materialOf(bench.job, id) ?? missing(bench, materials, 'board', { id, path });
}

/** Says that the rack has it not, and what it has. */
function missing(
	bench: Bench,
	list: readonly { readonly id: string }[],
	word: 'cloth' | 'board',
	asked: { readonly id: string; readonly path: Path },
): null {
	const marks = list.slice(0, 6).map((thing) => `'${thing.id}'`);
	bench.log.stop(
		asked.path,
		`There is no ${word} '${asked.id}' on the rack.`,
		list.length === 0
			? `Add the ${word} to the rack first.`
			: `Choose one of ${marks.join(', ')}, or add it to the rack.`,
	);
	return null;
}

/** What an outline has to complain of, at its place in the job. */
export function complain(bench: Bench, path: Path, complaints: readonly Complaint[]): void {
	for (const c of complaints) bench.log[c.kind](path, c.what, c.fix);
}
