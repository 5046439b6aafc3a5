import { join } from 'node:path';
import { nth, ticks } from '../../lib/measure';
import {
	auditRoll,
	packSheets,
	nestRoll,
	readyRouter,
	type RollAnswer,
	type RollProblem,
} from '../../lib/nest';
import type { Note } from './families';
import { PACKER_WAYS, type Allowance } from './measure';
import {
	madeStrips,
	publishedStrips,
	scaleOf,
	stripProblem,
	type StripInstance,
} from './strip-instances';

/** One family of strips: means of length over the best known. */
export interface StripRow {
	readonly family: string;
	readonly turns: 'fixed' | 'quarter turns';
	readonly instances: number;
	readonly first: number;
	readonly ours: number;
	/** Best of all modes of the free rectangle packer; null when it was not asked. */
	readonly packer: number | null;
	/** Instances where ours is longer than the packer's best. */
	readonly worse: number;
	readonly proven: number;
	readonly seconds: number;
}

/** The packer's time grows with the square of the pieces; beyond this many it is not asked. */
const MOST_PACKED = 300;

/**
 * Lengths of our roll layouts beside the free rectangle packer and the best known, on strips made
 * without waste and, when the folder of shared benchmarks lies beside the checkout, on the
 * published ones; of one family alone where that is asked for.
 */
export function runStrip(
	root: string,
	allowance: Allowance,
	note: Note,
	only?: string,
): StripRow[] {
	const published = publishedStrips(join(root, '..', 'shared', 'benchmarks'));
	if (published.length === 0)
		note('No published strips: there is no folder of shared benchmarks beside the checkout.');
	const all = [...madeStrips(2, allowance.seed), ...published];
	const families = [...new Set(all.map((i) => i.family))].filter(
		(family) => only === undefined || family === only,
	);
	return families.flatMap((family) =>
		[false, true].map((turned) => {
			note(`${family}, ${turned ? 'quarter turns' : 'fixed'}`);
			return rowOf(
				all.filter((i) => i.family === family),
				turned,
				allowance,
			);
		}),
	);
}

function rowOf(
	instances: readonly StripInstance[],
	turned: boolean,
	allowance: Allowance,
): StripRow {
	const runs = instances.map((instance) => runOne(instance, turned, allowance));
	const mean = (of: (run: Run) => number): number =>
		runs.reduce((sum, run) => sum + of(run), 0) / runs.length;
	const packed = runs.flatMap(({ packer, ours, best }) =>
		packer === null ? [] : [{ packer, ours, best }],
	);
	return {
		family: nth(instances, 0).family,
		turns: turned ? 'quarter turns' : 'fixed',
		instances: runs.length,
		first: mean((run) => run.first / run.best),
		ours: mean((run) => run.ours / run.best),
		packer:
			packed.length === runs.length
				? packed.reduce((sum, run) => sum + run.packer / run.best, 0) / packed.length
				: null,
		worse: packed.filter((run) => run.ours > run.packer).length,
		proven: runs.filter((run) => run.proven).length,
		seconds: mean((run) => run.seconds),
	};
}

interface Run {
	readonly best: number;
	readonly first: number;
	readonly ours: number;
	readonly packer: number | null;
	readonly proven: boolean;
	readonly seconds: number;
}

function runOne(instance: StripInstance, turned: boolean, allowance: Allowance): Run {
	const problem = stripProblem(instance, turned);
	const start = process.cpuUsage();
	const used = (): number => {
		const { user, system } = process.cpuUsage(start);
		return (user + system) / 1e6;
	};
	const search = nestRoll(problem, allowance);
	let step = search.next();
	let answer: RollAnswer = step.done === true ? step.value : step.value.best;
	const first = answer.length;
	while (step.done !== true && used() < allowance.seconds) {
		step = search.next();
		answer = step.done === true ? step.value : step.value.best;
	}
	const seconds = used();
	const faults = auditRoll(problem, answer);
	if (faults.length > 0) throw new Error(`bug: ${instance.name}: ${nth(faults, 0).what}`);
	const best = (turned ? instance.bestTurned : instance.bestFixed) * scaleOf(instance);
	const pieces = problem.pieces.reduce((n, piece) => n + piece.count, 0);
	const packer = pieces > MOST_PACKED ? null : packedLength(problem, turned, best);
	return { best, first, ours: answer.length, packer, proven: answer.proven, seconds };
}

/**
 * The shortest sheet on which the packer lays everything, the best of its modes and orders; found
 * by halving.
 */
function packedLength(problem: RollProblem, turned: boolean, least: number): number {
	let best = problem.pieces.reduce((sum, p) => sum + p.count * Math.max(p.length, p.width), 0);
	for (const way of PACKER_WAYS) {
		let low = Math.floor(least) - 1;
		let high = best;
		const finest = Math.max(1, Math.round(least * 1e-4));
		while (high - low > finest) {
			const middle = Math.floor((low + high) / 2);
			if (fitsOne(problem, turned, middle, way)) high = middle;
			else low = middle;
		}
		best = Math.min(best, high);
	}
	return best;
}

function fitsOne(
	problem: RollProblem,
	turned: boolean,
	length: number,
	way: (typeof PACKER_WAYS)[number],
): boolean {
	const zero = ticks(0);
	const trim = { left: zero, right: zero, bottom: zero, top: zero };
	const model = readyRouter({
		bit: zero,
		sheets: [
			{
				id: 's',
				length: ticks(length),
				width: problem.width,
				price: 1,
				count: null,
				rank: 2,
				trim,
			},
		],
		pieces: problem.pieces.map(({ id, length: l, width: w, count }) => ({
			id,
			length: l,
			width: w,
			count,
			turns: turned ? 'any' : 'none',
		})),
		useHoles: false,
		keep: { length: zero, width: zero },
	});
	if (model.refused.length > 0) return false;
	const counts = model.types.map((type) => type.piece.count);
	return packSheets(model, 0, counts, way).length <= 1;
}

export function stripText(rows: readonly StripRow[]): string {
	const head =
		'| family | turns | strips | first | ours | packer | ours longer | proven | s each |';
	const rule = '|---|---|---:|---:|---:|---:|---:|---:|---:|';
	const lines = rows.map((r) => {
		const packer = r.packer === null ? '' : r.packer.toFixed(4);
		return `| ${r.family} | ${r.turns} | ${r.instances} | ${r.first.toFixed(4)} | ${r.ours.toFixed(4)} | ${packer} | ${r.worse} | ${r.proven} | ${r.seconds.toFixed(2)} |`;
	});
	return `Strips: mean length over the best known\n\n${[head, rule, ...lines].join('\n')}\n`;
}
