import { clothOf, type Job } from '../../lib/job';
import { planPanel } from '../../lib/design';
import { auditRoll, nestRoll, type RollProblem } from '../../lib/nest';
import { nth } from '../../lib/measure';
import { wrapCovering, wrapShop } from '../../lib/wrap';
import type { Note } from './families';
import { now } from './measure';
import { layeredPanel, thirtyBlanks } from './panel-instance';

/**
 * Processor milliseconds of one kind of work: the first call of the run, and the middle of many
 * once it is warm.
 */
export interface PaceRow {
	readonly what: string;
	readonly first: number;
	readonly warm: number;
}

const WARM_UP = 60;
const TIMED = 41;

/**
 * Panels with five layers from the opening to blanks and relief cuts, and the first answer for
 * thirty blanks on a roll.
 */
export function paceTable(note: Note): PaceRow[] {
	const panels = [200, 50, 800].map((corners) => {
		note(`panel of ${corners} corners`);
		const job = layeredPanel(corners);
		return timed(`five layers, ${corners} corners each: parts, blanks, cuts`, () => through(job));
	});
	const rolls = (['rectangle', 'outline'] as const).flatMap((by) =>
		[false, true].map((alike) => {
			const problem = thirtyBlanks(by, alike);
			const kinds = alike ? '6 kinds by 5' : 'all different';
			note(`thirty blanks by ${by}, ${kinds}`);
			return timed(`thirty blanks by ${by}, ${kinds}: first layout`, () => firstLayout(problem));
		}),
	);
	return [...panels, ...rolls];
}

function timed(what: string, work: () => void): PaceRow {
	const once = (): number => {
		const start = now();
		work();
		return now() - start;
	};
	const first = once();
	for (let i = 0; i < WARM_UP; i++) work();
	const times = Array.from({ length: TIMED }, once).sort((a, b) => a - b);
	return { what, first, warm: nth(times, TIMED >> 1) };
}

function through(job: Job): void {
	const [panel] = job.panels;
	if (!panel) throw new Error('bug: a job without a panel');
	const made = planPanel(panel, job, ['panels', 0]);
	const blanks = made.coverings.flatMap((covering) => {
		const cloth = clothOf(job, covering.cloth);
		return cloth ? wrapCovering(covering, cloth, wrapShop(job, cloth), ['panels', 0]).blanks : [];
	});
	if (made.parts.length < 6 || blanks.every((b) => b.reliefs.notches === 0))
		throw new Error('bug: the panel came out without its parts and cuts');
}

/** Up to the first answer; it must pass the auditor as any other. */
function firstLayout(problem: RollProblem): void {
	const step = nestRoll(problem, { seed: 1, effort: 100_000 }).next();
	const answer = step.done === true ? step.value : step.value.best;
	const [fault] = auditRoll(problem, answer);
	if (fault) throw new Error(`bug: ${fault.where}: ${fault.what}`);
}

export function paceText(rows: readonly PaceRow[]): string {
	const lines = rows.map((r) => `| ${r.what} | ${r.first.toFixed(1)} | ${r.warm.toFixed(1)} |`);
	const head = '| work | first call, ms | then, ms |\n|---|---:|---:|';
	return `Panels and cloth: processor time\n\n${head}\n${lines.join('\n')}\n\nThe first call of each row still has its code to compile; later ones are the middle of ${TIMED} after ${WARM_UP}.\n`;
}
