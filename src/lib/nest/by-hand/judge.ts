import { nth, sayLength, ticks, type Ruler } from '../../measure';
import type { Rect } from '../../geometry';
import { auditSheets } from '../audit';
import { wordsOf } from '../saw';
import type { Piece, Placed, Sheet, SheetsAnswer } from '../types';
import { blocksOf, laidAt, type HandPiece } from './blocks';
import { gapOf, handSheet, type HandProblem, type HandSheet, type Refused } from './hand-sheet';

/** What is wrong with pieces where a hand has laid them; `of`: places among those pieces. */
export interface HandFault {
	readonly kind: 'turn' | 'outside' | 'over' | 'near' | 'uncut' | 'audit';
	readonly of: readonly number[];
	/** A sentence, with the pieces by their ids. */
	readonly what: string;
}

/** Where a hand has laid a piece: its lower left corner from the corner of the sheet, ticks. */
export type HandSpot = Pick<Placed, 'id' | 'x' | 'y' | 'turn'>;

/** A sheet laid by hand with all that is wrong with it; `sheet` only where nothing is. */
export interface Judgement {
	readonly faults: readonly HandFault[];
	readonly sheet: HandSheet | null;
}

/**
 * Judges pieces laid by hand on one sheet: each of its own way to lie, inside the trimmed sheet, a
 * blade apart, and to be cut from edge to edge; the auditor of every layout has the last word. Ids
 * that the problem does not know are faults as well.
 */
export function judgeByHand(
	problem: HandProblem,
	sheet: Sheet,
	spots: readonly HandSpot[],
): Judgement {
	const pieces = new Map(problem.pieces.map((p) => [p.id, p]));
	const unknown = spots.flatMap(({ id }, i): HandFault[] =>
		pieces.has(id) ? [] : [{ kind: 'turn', of: [i], what: `${id} is no part of this board.` }],
	);
	if (unknown.length > 0) return { faults: unknown, sheet: null };
	const laid = spots.map((s, i) => laidAt(pieces.get(s.id) as Piece, s, i));
	const ruler = wordsOf('kerf' in problem ? problem : {});
	const faults = [
		...laid.flatMap((p, i) => [...turnFault(p, i), ...outside(p, i, sheet, ruler)]),
		...apartFaults(laid, problem, ruler),
	];
	if (faults.length > 0) return { faults, sheet: null };
	const made = handSheet(problem, sheet, laid);
	if ('refused' in made) return { faults: [uncutFault(made.refused, laid, ruler)], sheet: null };
	const audited = auditFaults(problem, sheet, made);
	return { faults: audited, sheet: audited.length === 0 ? made : null };
}

function turnFault({ piece, turn }: HandPiece, i: number): HandFault[] {
	const turns = { none: [0], half: [0, 180], any: [0, 90, 180, 270] }[piece.turns];
	if (turns.includes(turn)) return [];
	const what = `${piece.id} may not lie turned by ${turn}°: its grain runs along the sheet.`;
	return [{ kind: 'turn', of: [i], what }];
}

function outside(p: HandPiece, i: number, sheet: Sheet, ruler: Ruler): HandFault[] {
	const { left, right, bottom, top } = sheet.trim;
	const over = [
		['left', left - p.x, left],
		['right', p.x + p.length - (sheet.length - right), right],
		['lower', bottom - p.y, bottom],
		['upper', p.y + p.width - (sheet.width - top), top],
	] as const;
	return over.flatMap(([edge, by, trim]) => {
		if (by <= 0) return [];
		const where = trim > 0 ? `into the trim at the ${edge} edge` : `over the ${edge} edge`;
		const what = `${p.id} reaches ${sayLength(ticks(by), ruler)} ${where}.`;
		return [{ kind: 'outside', of: [i], what } satisfies HandFault];
	});
}

/** Each two that lie on each other, or nearer than the blade is thick; a pair counts as one. */
function apartFaults(laid: readonly HandPiece[], problem: HandProblem, ruler: Ruler): HandFault[] {
	const gap = gapOf(problem);
	// Outlines by router may nestle: the auditor looks at their true shapes.
	const isShape = (p: Piece): boolean =>
		!('kerf' in problem) && (p.outline !== undefined || (p.holes?.length ?? 0) > 0);
	const blocks =
		'kerf' in problem ? blocksOf(laid, gap) : laid.map((p, i) => ({ rect: p, of: [i] }));
	return blocks.flatMap((a, n) =>
		blocks.slice(n + 1).flatMap((b): HandFault[] => {
			const [one, other] = [nth(laid, nth(a.of, 0)), nth(laid, nth(b.of, 0))];
			const room = between(a.rect, b.rect);
			if (room >= gap || (isShape(one.piece) && isShape(other.piece))) return [];
			const of = [...a.of, ...b.of];
			if (room < 0)
				return [
					{
						kind: 'over',
						of,
						what: `${one.id} and ${other.id} overlap by ${sayLength(ticks(-room), ruler)}.`,
					},
				];
			const blade = `the ${'kerf' in problem ? 'blade' : 'bit'} needs ${sayLength(gap, ruler)}`;
			const what = `${one.id} and ${other.id} are ${sayLength(ticks(room), ruler)} apart; ${blade}.`;
			return [{ kind: 'near', of, what }];
		}),
	);
}

/** How far two rectangles are apart, along or across; below zero, how deep they overlap. */
function between(a: Rect, b: Rect): number {
	const x = Math.max(a.x - (b.x + b.length), b.x - (a.x + a.length));
	const y = Math.max(a.y - (b.y + b.width), b.y - (a.y + a.width));
	return Math.max(x, y);
}

function uncutFault(refused: Refused, laid: readonly HandPiece[], ruler: Ruler): HandFault {
	if (refused.why === 'limits')
		return {
			kind: 'uncut',
			of: laid.map((_, i) => i),
			what: 'No order of cuts keeps to the limits of the saw: its stages, its fence or its narrowest safe rip.',
		};
	const { of } = refused;
	const names = [...new Set(of.map((i) => nth(laid, i).id))].join(', ');
	const wide = sayLength(ticks(refused.wide), ruler);
	const what =
		refused.why === 'crossed'
			? `No straight cut from edge to edge parts ${names}: each way the saw would run through one of them.`
			: `Only ${wide} would be left beside ${names} at the ${refused.side}, less than the blade takes: move it by ${wide}, or farther in.`;
	return { kind: 'uncut', of, what };
}

/** The sheet as an answer of its own, put before the auditor. */
function auditFaults(problem: HandProblem, sheet: Sheet, { layout }: HandSheet): HandFault[] {
	const count = (id: string): number => layout.placed.filter((p) => p.id === id).length;
	const copies = new Map<string, number>();
	const placed = layout.placed.map((p) => {
		const copy = copies.get(p.id) ?? 0;
		copies.set(p.id, copy + 1);
		return { ...p, copy };
	});
	const answer: SheetsAnswer = {
		layouts: [{ ...layout, placed }],
		...{ unplaced: [], cost: sheet.price, bound: { sheets: 0, cost: 0 } },
		...{ proven: false, effort: 0 },
	};
	const pieces = problem.pieces
		.map((p) => ({ ...p, count: count(p.id) }))
		.filter((p) => p.count > 0);
	return auditSheets({ ...problem, pieces, sheets: [sheet] }, answer).map(({ what }) => ({
		kind: 'audit',
		of: layout.placed.map((_, i) => i),
		what,
	}));
}
