import {
	auditSheets,
	packSheets,
	readyRouter,
	nestSaw,
	type SawProblem,
	type SheetsAnswer,
} from '../../lib/nest';

/** How long one instance may take: seconds, or units of effort, whichever ends first. */
export interface Allowance {
	readonly seconds: number;
	readonly effort: number;
	readonly seed: number;
}

export interface Measured {
	readonly first: SheetsAnswer;
	readonly firstMs: number;
	readonly answer: SheetsAnswer;
	readonly ms: number;
}

/**
 * Milliseconds of this process's own work: a machine that is busy with something else does not
 * change the figures.
 */
export function now(): number {
	const { user, system } = process.cpuUsage();
	return (user + system) / 1000;
}

/**
 * One run of the saw nest. Every answer goes through the auditor; one that fails it ends the bench.
 */
export function measure(problem: SawProblem, allowance: Allowance): Measured {
	const start = now();
	const search = nestSaw(problem, allowance);
	let step = search.next();
	const firstMs = now() - start;
	const first = step.done ? step.value : step.value.best;
	let answer = first;
	while (!step.done) {
		answer = step.value.best;
		if (now() - start > allowance.seconds * 1000) break;
		step = search.next();
		if (step.done) answer = step.value;
	}
	const ms = now() - start;
	const [fault] = auditSheets(problem, answer);
	if (fault) throw new Error(`bug: ${fault.where}: ${fault.what}`);
	return { first, firstMs, answer, ms };
}

const LOGICS = ['area', 'edge', 'fill'] as const;
const ORDERS = ['area', 'edge', 'width', 'length'] as const;

export const PACKER_WAYS = LOGICS.flatMap((logic) => ORDERS.map((order) => ({ logic, order })));

/**
 * Sheets that the free rectangle packer takes, in each of its modes and orders. Most of its layouts
 * no saw could cut.
 */
export function packed(problem: SawProblem): number[] {
	const model = readyRouter({ ...problem, bit: problem.kerf, useHoles: false });
	const counts = model.types.map((t) => t.piece.count);
	return PACKER_WAYS.map((way) => packSheets(model, 0, counts, way).length);
}
