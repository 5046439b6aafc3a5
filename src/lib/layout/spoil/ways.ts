import { type Job, type JobFile, materialOf } from '../../job';
import {
	type Budget,
	nestRouter,
	nestSaw,
	type Piece,
	type Search,
	type Sheet,
	type SheetLayout,
	type SheetsAnswer,
} from '../../nest';
import type { Part } from '../../design';
import { freshLabels, offcutLabels, pieces, pinnedOf } from '../boards';
import type { BoardLayouts } from '../layouts';
import { pursue } from '../pace';
import type { SpoiledAt } from './mark';

type Pinned = NonNullable<JobFile['pinned']>[number];

/** A way to get a spoiled part again: the sheet it is cut from, kept as it is said. */
export interface WayAgain {
	/** `planned`: laid out with all that is still to be cut, on whatever that takes. */
	readonly by: 'offcut' | 'sheet' | 'owned' | 'buy' | 'planned';
	/** The sheet with the part on it, to be pinned; null where the plan itself lays it. */
	readonly record: Pinned | null;
}

/** What of a plan the ways are found in. */
interface Standing {
	readonly job: Job;
	readonly parts: readonly Part[];
	readonly boards: readonly BoardLayouts[];
}

/** More for one part and a few beside it finds nothing better. */
const EFFORT = 200;

/**
 * The ways to cut a part again: from the smallest offcut that takes it, from the free room of a
 * sheet still to be cut, from a whole sheet of the rack, from a new one, or with all that is left
 * laid out anew. No sheet that is cut or printed is touched. None where the job needs no more of
 * it; of cloth, only as it is planned.
 */
export async function waysAgain(standing: Standing, at: SpoiledAt): Promise<WayAgain[]> {
	const planned: WayAgain = { by: 'planned', record: null };
	if (at.of === 'cloth') return [planned];
	const boards = standing.boards.find((b) => b.material === at.material);
	const id = boards?.answer.layouts[at.index]?.placed[at.place]?.id;
	const part = standing.parts.find((p) => p.id === id && p.material === at.material);
	if (!boards || !part) return [planned];
	const [piece] = pieces([{ ...part, count: 1 }], materialOf(standing.job, at.material));
	if (!piece) return [planned];
	const ways = [
		await onFirst(standing, boards, piece, 'offcut'),
		await inOpenSheet(standing, boards, piece),
		await onFirst(standing, boards, piece, 'owned'),
		await onFirst(standing, boards, piece, 'buy'),
	];
	return [...ways.filter((way) => way !== null), planned];
}

/** Alone on the smallest sheet of its kind that takes it and that nothing else lies on. */
async function onFirst(
	standing: Standing,
	boards: BoardLayouts,
	piece: Piece,
	by: 'offcut' | 'owned' | 'buy',
): Promise<WayAgain | null> {
	const left = ({ id, count }: Sheet): boolean => {
		const taken = boards.answer.layouts.filter(
			(l, i) => l.sheet === id && boards.sources[i]?.pinned !== true,
		);
		return count === null || count > taken.length;
	};
	const sheets = boards.problem.sheets
		.filter((s) => s.id.startsWith(`${by}/`) && left(s))
		.sort((a, b) => a.price - b.price || a.length * a.width - b.length * b.width);
	for (const sheet of sheets) {
		const record = await laidOn(standing, boards, sheet, [piece]);
		if (record) return { by, record };
	}
	return null;
}

/** Beside the parts of a sheet still to be cut, all of them on that one sheet. */
async function inOpenSheet(
	standing: Standing,
	boards: BoardLayouts,
	piece: Piece,
): Promise<WayAgain | null> {
	for (const [i, layout] of boards.answer.layouts.entries()) {
		const source = boards.sources[i];
		const sheet = boards.problem.sheets.find((s) => s.id === layout.sheet);
		if (!sheet || !source || source.pinned || source.byHand !== null) continue;
		const record = await laidOn(standing, boards, sheet, withOne(boards, layout, piece));
		if (record) return { by: 'sheet', record };
	}
	return null;
}

/** What lies on a sheet as pieces, and one more. */
function withOne({ problem }: BoardLayouts, { placed }: SheetLayout, piece: Piece): Piece[] {
	const many = (id: string): number => placed.filter((p) => p.id === id).length;
	const there = problem.pieces
		.filter((p) => p.id !== piece.id && many(p.id) > 0)
		.map((p) => ({ ...p, count: many(p.id) }));
	return [...there, { ...piece, count: many(piece.id) + 1 }];
}

/** The record of one sheet with these pieces on it; null where it does not take them all. */
async function laidOn(
	{ job, boards: all }: Standing,
	boards: BoardLayouts,
	sheet: Sheet,
	asked: readonly Piece[],
): Promise<Pinned | null> {
	const problem = { ...boards.problem, sheets: [{ ...sheet, count: 1 }], pieces: asked };
	const answer = await pursue(searchOf(problem, { seed: job.seed, effort: EFFORT }), () => true);
	const [layout] = answer.layouts;
	if (!layout || answer.unplaced.length > 0) return null;
	return pinnedOf({ boards, layout, labels: freeLabels(job, all, layout.offcuts.length) }, false);
}

function searchOf(problem: BoardLayouts['problem'], budget: Budget): Search<SheetsAnswer> {
	return problem.method === 'saw' ? nestSaw(problem, budget) : nestRouter(problem, budget);
}

/** Labels that nothing on the rack, on a printed sheet or on any other of the plan has. */
function freeLabels(job: Job, all: readonly BoardLayouts[], count: number): string[] {
	const next = freshLabels(job, [...offcutLabels(job, all).values()].flat(2));
	return Array.from({ length: count }, () => next());
}
