import {
	mm,
	sayLength,
	sayLengths,
	ticks,
	snap,
	TICKS_PER_INCH,
	type Length,
	type Ruler,
} from '../measure';
import { boundOf, nestSaw, sawModel, wordsOf } from './saw';
import type { Budget, Piece, SawProblem, Search, Sheet, SheetsAnswer } from './types';

/*
 * What would save a sheet: small changes to what was asked, each tried in earnest. A change whose
 * bound already costs as much as the plan is not worth a search.
 */

export interface NearMiss {
	readonly kind: 'grain' | 'kerf' | 'trim' | 'smaller' | 'sheet';
	/** The pieces concerned; empty when it is not about one. */
	readonly pieces: readonly string[];
	/** What to change, a full sentence. */
	readonly what: string;
	/** Minor units of money saved, and sheets. */
	readonly saving: number;
	readonly sheets: number;
}

interface Change {
	readonly kind: NearMiss['kind'];
	readonly pieces: readonly string[];
	readonly what: string;
	/** The side made smaller: of several amounts off it, the smallest that saves is enough. */
	readonly side?: Side;
	readonly problem: SawProblem;
}

type Side = 'width' | 'length';

const MOST_PIECES = 8; // the largest are the ones that decide
const NARROWER = [1, 2, 5, 10].map(mm);
/** The same on an inch ruler: a tape has no 10 mm. */
const NARROWER_INCHES = [1 / 16, 1 / 8, 1 / 4, 1 / 2].map((n) => snap(n * TICKS_PER_INCH));
const amounts = ({ unit }: Ruler): readonly Length[] =>
	unit === 'in' ? NARROWER_INCHES : NARROWER;
// share of the kerf; a thin blade takes about two thirds of a full one
const KERFS = [0.75, 0.5] as const;

function withPiece(problem: SawProblem, id: string, change: Partial<Piece>): SawProblem {
	const pieces = problem.pieces.map((p) => (p.id === id ? { ...p, ...change } : p));
	return { ...problem, pieces };
}

function grainChanges(problem: SawProblem, ids: readonly Piece[]): Change[] {
	const fixed = ids.filter((p) => p.turns !== 'any' && p.length !== p.width);
	const one = fixed.map((p): Change => ({
		kind: 'grain',
		pieces: [p.id],
		what: `Let ${p.id} lie across the grain.`,
		problem: withPiece(problem, p.id, { turns: 'any' }),
	}));
	if (fixed.length < 2) return one;
	const pieces = problem.pieces.map((p) => ({ ...p, turns: 'any' as const }));
	const all: Change = {
		kind: 'grain',
		pieces: [],
		what: 'Let every piece lie either way of the grain.',
		problem: { ...problem, pieces },
	};
	return [...one, all];
}

/**
 * Each large piece a little narrower or shorter. Shaped pieces are left alone: their outline would
 * have to change too.
 */
function sizeChanges(problem: SawProblem, ids: readonly Piece[]): Change[] {
	const ruler = wordsOf(problem);
	return ids
		.filter((p) => !p.outline)
		.flatMap((p) =>
			(['width', 'length'] as const).flatMap((side) =>
				amounts(ruler)
					.filter((n) => n * 4 < p[side])
					.map((n): Change => ({
						kind: 'smaller',
						pieces: [p.id],
						side,
						what: `Make ${p.id} ${sayLength(n, ruler)} ${side === 'width' ? 'narrower' : 'shorter'}.`,
						problem: withPiece(problem, p.id, { [side]: ticks(p[side] - n) }),
					})),
			),
		);
}

function sawChanges(problem: SawProblem): Change[] {
	const thinner =
		problem.kerf === 0
			? []
			: KERFS.map((share): Change => {
					const kerf = snap(problem.kerf * share);
					const what = `Use a blade with a kerf of ${sayLength(kerf, wordsOf(problem))}.`;
					return { kind: 'kerf', pieces: [], what, problem: { ...problem, kerf } };
				});
	const none = { left: ticks(0), right: ticks(0), bottom: ticks(0), top: ticks(0) };
	if (!problem.sheets.some((s) => Object.values(s.trim).some((t) => t > 0))) return thinner;
	const sheets = problem.sheets.map((s) => ({ ...s, trim: none }));
	const what = 'Use the factory edges without a first trim.';
	return [...thinner, { kind: 'trim', pieces: [], what, problem: { ...problem, sheets } }];
}

function sheetChanges(problem: SawProblem, others: readonly Sheet[]): Change[] {
	return others.map((s) => ({
		kind: 'sheet',
		pieces: [],
		what: `Buy sheets of ${sayLengths([s.length, s.width], wordsOf(problem), ' x ')} as well.`,
		problem: { ...problem, sheets: [...problem.sheets, s] },
	}));
}

function changesOf(problem: SawProblem, others: readonly Sheet[]): Change[] {
	const large = [...problem.pieces]
		.filter((p) => p.count > 0)
		.sort((a, b) => b.length * b.width - a.length * a.width || (a.id < b.id ? -1 : 1))
		.slice(0, MOST_PIECES);
	return [
		...sawChanges(problem),
		...grainChanges(problem, large),
		...sizeChanges(problem, large),
		...sheetChanges(problem, others),
	];
}

function ranked(found: readonly NearMiss[]): NearMiss[] {
	return [...found].sort((a, b) => b.saving - a.saving || b.sheets - a.sheets);
}

/**
 * Tries small changes, each with an equal share of the budget, and returns those that save, the
 * best first. `others`: sizes of sheet that could be bought but are not in the stock.
 */
export function* nearMisses(
	problem: SawProblem,
	answer: SheetsAnswer,
	budget: Budget,
	others: readonly Sheet[] = [],
): Search<readonly NearMiss[]> {
	const worthTrying = changesOf(problem, others).filter((c) => mayWin(c.problem, answer));
	const share = Math.floor(budget.effort / Math.max(1, worthTrying.length));
	let found: NearMiss[] = [];
	let effort = 0;
	const done: Change[] = [];
	for (const change of worthTrying) {
		if (done.some((less) => isMoreOf(change, less))) continue;
		const search = nestSaw(change.problem, { seed: budget.seed, effort: share });
		let step = search.next();
		while (!step.done && !saves(step.value.best, answer)) step = search.next();
		const best = step.done ? step.value : step.value.best;
		effort += step.value.effort;
		if (saves(best, answer)) {
			done.push(change);
			const saving = answer.cost - best.cost;
			const sheets = answer.layouts.length - best.layouts.length;
			const { kind, pieces, what } = change;
			found = ranked([...found, { kind, pieces, what, saving, sheets }]);
		}
		yield { best: found, effort };
	}
	return found;
}

/** Does the one take more off the same side of the same piece? */
function isMoreOf(one: Change, less: Change): boolean {
	return one.side !== undefined && one.side === less.side && one.pieces[0] === less.pieces[0];
}

const left = (a: SheetsAnswer): number => a.unplaced.reduce((sum, u) => sum + u.count, 0);

function saves(a: SheetsAnswer, b: SheetsAnswer): boolean {
	if (left(a) !== left(b)) return left(a) < left(b);
	return a.cost < b.cost || (a.cost === b.cost && a.layouts.length < b.layouts.length);
}

/** Could the change save at all? Its bound says so in a moment. */
function mayWin(problem: SawProblem, answer: SheetsAnswer): boolean {
	if (left(answer) > 0) return true;
	const bound = boundOf(sawModel(problem));
	return bound.cost < answer.cost || (answer.cost === 0 && bound.sheets < answer.layouts.length);
}
