import { guard, problemsOf, type Path, type Problem, type z } from '../../lib/job';
import { ticks } from '../../lib/measure';
import {
	auditRoll,
	type Placed,
	type RollProblem,
	type RollSpot,
	type RouterProblem,
	type SawProblem,
} from '../../lib/nest';
import { shapeOf } from './outline';
import { rollSchema, sheetsSchema, type RollFile, type SheetsFile } from './schema';

/** A plain nest problem, ready for the search that takes it. */
export type NestProblem =
	| { readonly kind: 'saw'; readonly problem: SawProblem }
	| { readonly kind: 'router'; readonly problem: RouterProblem }
	| { readonly kind: 'roll'; readonly problem: RollProblem };

export type ReadNest = { readonly nest: NestProblem } | { readonly problems: readonly Problem[] };

/**
 * Reads a plain nest problem. Any fault refuses it whole: a layout of half the pieces would be no
 * answer.
 */
export function readNest(file: unknown): ReadNest {
	const refused = guard(file);
	if (refused)
		return { problems: [{ ...refused, what: refused.what.replace('a job', 'a nest problem') }] };
	const kind = (file as { nest?: unknown }).nest;
	if (kind === 'sheets') return through(sheetsSchema, file, sheetsProblem);
	if (kind === 'roll') return through(rollSchema, file, rollProblem);
	const seen = kind === undefined ? '"nest" is missing.' : `"nest" is ${JSON.stringify(kind)}.`;
	return { problems: [stop(['nest'], seen, 'It should be "sheets" or "roll".')] };
}

function through<S extends z.ZodType>(
	schema: S,
	file: unknown,
	build: (read: z.output<S>, problems: Problem[]) => NestProblem,
): ReadNest {
	const parsed = schema.safeParse(file);
	if (!parsed.success) {
		const problems = problemsOf(parsed.error.issues, schema, file, null);
		return { problems: problems.map((p) => ({ ...p, kind: 'stop' })) };
	}
	const problems: Problem[] = [];
	const nest = build(parsed.data, problems);
	return problems.length > 0 ? { problems } : { nest };
}

function sheetsProblem(read: SheetsFile, problems: Problem[]): NestProblem {
	tooMany(read.pieces, problems);
	doubles(read.sheets, 'sheets', problems);
	doubles(read.pieces, 'pieces', problems);
	const { trim } = read;
	const sheets = read.sheets.map((s) => ({
		...s,
		price: Math.round(s.price * 100),
		rank: s.price === 0 ? 1 : 2,
		trim: { left: trim, right: trim, bottom: trim, top: trim },
	}));
	const pieces = read.pieces.flatMap(({ id, count, turns, ...given }, i) => {
		const shape = shapeOf({ id, ...given }, ['pieces', i], problems);
		return shape && count > 0 ? [{ id, count, turns, ...shape }] : [];
	});
	const { keep, kerf, stages } = read;
	if (read.method === 'router') {
		return { kind: 'router', problem: { bit: kerf, sheets, pieces, useHoles: false, keep } };
	}
	const limits = { fenceLimit: null, narrowestRip: null, first: 'any' as const };
	return { kind: 'saw', problem: { kerf, sheets, pieces, stages, keep, ...limits } };
}

function rollProblem(read: RollFile, problems: Problem[]): NestProblem {
	tooMany(read.pieces, problems);
	doubles(read.pieces, 'pieces', problems);
	const pieces = read.pieces.flatMap(({ id, count, turns, ...given }, i) => {
		const shape = shapeOf({ id, ...given }, ['pieces', i], problems);
		return shape && count > 0 ? [{ id, count, turns, ...shape }] : [];
	});
	const by = pieces.some((p) => p.outline) ? 'outline' : 'rectangle';
	const { width, gap, limit, repeat, start } = read;
	const problem = { width, gap, pieces, limit, repeat, by } as const;
	if (start === undefined) return { kind: 'roll', problem };
	problems.push(...faultsOfStart(problem, start));
	return { kind: 'roll', problem: { ...problem, start } };
}

/** What is wrong with a layout to go on from. */
function faultsOfStart(problem: RollProblem, start: readonly RollSpot[]): Problem[] {
	const next = new Map<string, number>();
	const placed = start.map((spot): Placed => {
		const copy = next.get(spot.id) ?? 0;
		next.set(spot.id, copy + 1);
		const piece = problem.pieces.find(({ id }) => id === spot.id);
		const [length, width] = [piece?.length ?? ticks(0), piece?.width ?? ticks(0)];
		const across = spot.turn === 90 || spot.turn === 270;
		return { ...spot, copy, ...(across ? { length: width, width: length } : { length, width }) };
	});
	const length = ticks(Math.max(0, ...placed.map((p) => p.x + p.length)));
	const figures = { length, unplaced: [], bound: ticks(0), proven: false, effort: 0 };
	return auditRoll(problem, { placed, ...figures }).map(({ what }) =>
		stop(['start'], what, 'Give a layout that can be cut, with all pieces in it, or leave it out.'),
	);
}

/** Copies of all pieces together: more are laid in minutes, not in seconds. */
const MOST_LAID = 5000;

function tooMany(pieces: readonly { readonly count: number }[], problems: Problem[]): void {
	const laid = pieces.reduce((sum, { count }) => sum + count, 0);
	if (laid <= MOST_LAID) return;
	const what = `The pieces come to ${laid}, their counts added up; a problem holds at most ${MOST_LAID}.`;
	problems.push(stop(['pieces'], what, 'Split the problem, or lower the counts.'));
}

function doubles(things: readonly { id: string }[], list: string, problems: Problem[]): void {
	const seen = new Set<string>();
	for (const [i, { id }] of things.entries()) {
		if (seen.has(id)) {
			const what = `The mark "${id}" is taken already.`;
			problems.push(stop([list, i, 'id'], what, 'Give each its own mark, or raise the count.'));
		}
		seen.add(id);
	}
}

function stop(path: Path, what: string, fix: string): Problem {
	return { path, what, fix, kind: 'stop' };
}
