import { nth } from '../../measure';
import { auditOutlines } from './outline';
import type { AuditFault, Placed, RollAnswer, RollPiece, RollProblem } from '../types';

/**
 * Re-check a roll layout on its own terms, knowing nothing of how it was found: whole ticks, inside
 * the width and the limit, only allowed turns, nothing flipped or stretched, every blank laid once
 * or reported, starts on the pattern, blanks apart by the gap, and no more claimed than is true.
 * Empty when the layout may be cut.
 */
export function auditRoll(problem: RollProblem, answer: RollAnswer): AuditFault[] {
	return [
		...answer.placed.flatMap((placed, i) => auditPlaced(problem, placed, `placed[${i}]`)),
		...auditCounts(problem, answer),
		...(problem.by === 'outline'
			? auditOutlines(answer.placed, problem.pieces, problem.gap)
			: auditApart(problem, answer)),
		...auditFigures(problem, answer),
	];
}

function auditPlaced(problem: RollProblem, placed: Placed, where: string): AuditFault[] {
	const piece = problem.pieces.find((p) => p.id === placed.id);
	if (piece === undefined) return [{ where, what: `${placed.id} is not among the blanks.` }];
	const faults: string[] = [];
	const numbers = [placed.x, placed.y, placed.length, placed.width];
	if (!numbers.every(Number.isSafeInteger)) faults.push('does not lie on the grid');
	if (!piece.turns.includes(placed.turn))
		faults.push(`is turned by ${placed.turn} degrees, which is not allowed`);
	if (!keepsSize(piece, placed)) faults.push('does not have its own length and width');
	if (placed.x < 0 || placed.y < 0 || placed.y + placed.width > problem.width)
		faults.push('lies outside the usable width');
	if (problem.limit !== null && placed.x + placed.length > problem.limit)
		faults.push('lies beyond the end of the roll');
	if (!startsOnPattern(problem, piece, placed)) faults.push('does not start on the pattern');
	return faults.map((fault) => ({ where, what: `${placed.id} ${fault}.` }));
}

function keepsSize(piece: RollPiece, placed: Placed): boolean {
	const quarter = placed.turn === 90 || placed.turn === 270;
	const [length, width] = quarter ? [piece.width, piece.length] : [piece.length, piece.width];
	return placed.length === length && placed.width === width;
}

/**
 * Every blank must see the pattern as its own place in it wants: whole columns across, whole
 * repeats along each column.
 */
function startsOnPattern(problem: RollProblem, piece: RollPiece, placed: Placed): boolean {
	const { repeat, drop } = problem;
	const wide = drop?.across ?? problem.across ?? 0;
	const own = piece.phase ?? { along: 0, across: 0 };
	const columnOf = (y: number): number => (wide > 0 ? Math.floor(y / wide) : 0);
	if (wide > 0 && (placed.y - own.across) % wide !== 0) return false;
	if (repeat === 0) return true;
	const start = (column: number): number =>
		drop !== undefined && Math.abs(column) % 2 === 1 ? Math.floor(repeat / 2) : 0;
	const seen = placed.x - start(columnOf(placed.y));
	return (seen - (own.along - start(columnOf(own.across)))) % repeat === 0;
}

function auditCounts(problem: RollProblem, answer: RollAnswer): AuditFault[] {
	const faults: AuditFault[] = [];
	const copies = new Set(answer.placed.map((p) => `${p.id} ${p.copy}`));
	if (copies.size !== answer.placed.length)
		faults.push({ where: 'placed', what: 'A copy is laid twice.' });
	for (const piece of problem.pieces) {
		const laid = answer.placed.filter((p) => p.id === piece.id);
		const left = answer.unplaced.filter((u) => u.id === piece.id).reduce((n, u) => n + u.count, 0);
		if (laid.length + left !== Math.max(0, piece.count))
			faults.push({
				where: piece.id,
				what: `${piece.count} are wanted; ${laid.length} are laid and ${left} reported.`,
			});
		if (laid.some((p) => p.copy < 0 || p.copy >= piece.count))
			faults.push({ where: piece.id, what: 'A copy has a number past the count.' });
	}
	for (const u of answer.unplaced)
		if (u.why.trim() === '')
			faults.push({ where: u.id, what: 'No reason is given for leaving it out.' });
	return faults;
}

/**
 * Rectangles must be apart by the gap along the roll or across it. Sorted by start, so that few
 * pairs are compared.
 */
function auditApart(problem: RollProblem, answer: RollAnswer): AuditFault[] {
	const faults: AuditFault[] = [];
	const sorted = [...answer.placed].sort((a, b) => a.x - b.x);
	sorted.forEach((a, i) => {
		for (let j = i + 1; j < sorted.length; j++) {
			const b = nth(sorted, j);
			if (b.x >= a.x + a.length + problem.gap) break;
			const apart = b.y >= a.y + a.width + problem.gap || a.y >= b.y + b.width + problem.gap;
			if (!apart)
				faults.push({ where: `${a.id} and ${b.id}`, what: 'They lie closer than the gap.' });
		}
	});
	return faults;
}

function auditFigures(problem: RollProblem, answer: RollAnswer): AuditFault[] {
	const faults: AuditFault[] = [];
	const end = answer.placed.reduce((far, p) => Math.max(far, p.x + p.length), 0);
	if (answer.length !== end)
		faults.push({
			where: 'length',
			what: `It says ${answer.length} ticks; the last blank ends at ${end}.`,
		});
	if (problem.limit !== null && answer.length > problem.limit)
		faults.push({ where: 'length', what: 'It is longer than the roll.' });
	if (answer.bound > answer.length)
		faults.push({ where: 'bound', what: 'The bound is above the length.' });
	if (answer.proven && (answer.bound !== answer.length || answer.unplaced.length > 0))
		faults.push({
			where: 'proven',
			what: 'It is called proven, but the bound is not met or blanks are left.',
		});
	return faults;
}
