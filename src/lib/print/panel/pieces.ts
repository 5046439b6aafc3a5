import { bounds, type Outline, type Point } from '../../geometry';
import type { CoverFigure, RingFigure } from '../../design';
import { toMm, type Length } from '../../measure';
import { type Drawing, type Mark, circlePath, onPaper } from '../drawing';
import type { Figures } from '../wording';
import { centreMark, outlineMark, overall, stageFor } from '../marks';
import { footNotes, NOTE, viewOn } from './view';

interface NamedLine {
	readonly outline: Outline;
	readonly line: 'wide' | 'narrow' | 'dashed' | 'phantom';
	/** Dimensioned under this name. */
	readonly name?: string;
}

/**
 * A service cover: hole in the panel, its own board, what is seen, the ledge behind and the magnets
 * on it.
 */
export function coverView(
	c: CoverFigure,
	title: string,
	figures: Figures,
	mirror: boolean,
): Drawing {
	const lines: NamedLine[] = [
		{ outline: c.ledge.outer, line: 'dashed', name: 'ledge' },
		{ outline: c.ledge.inner, line: 'dashed' },
		{ outline: c.hole, line: 'narrow', name: 'hole' },
		{ outline: c.board, line: 'narrow', name: 'board' },
		{ outline: c.finished, line: 'wide', name: 'finished' },
		...(c.finger ? [{ outline: c.finger, line: 'wide' as const }] : []),
	];
	const notes = [
		`Gap ${figures.length(c.gap)}, board to board ${figures.length(c.boardGap)}`,
		...(c.magnet === null
			? []
			: [`${c.magnets.length} magnets Ø ${figures.length(c.magnet)} in the middle of the rim`]),
	];
	return nested({ lines, magnets: c.magnets, magnet: c.magnet, notes }, title, figures, mirror);
}

/** A trim ring: the hole it trims, its board, and the ring finished. */
export function ringView(r: RingFigure, title: string, figures: Figures, mirror: boolean): Drawing {
	const lines: NamedLine[] = [
		{ outline: r.finished.outer, line: 'wide', name: 'finished' },
		{ outline: r.board.outer, line: 'narrow', name: 'board' },
		{ outline: r.hole, line: 'phantom', name: 'hole' },
		{ outline: r.board.inner, line: 'narrow', name: 'board inside' },
		{ outline: r.finished.inner, line: 'wide' },
	];
	const notes = r.rebate
		? [`Let into a rebate ${figures.length(r.rebate.depth)} deep`]
		: ['Lies on the wall'];
	return nested({ lines, magnets: [], magnet: null, notes }, title, figures, mirror);
}

/** A piece as outlines one inside the other, with its magnets and what is written under it. */
interface Piece {
	readonly lines: readonly NamedLine[];
	readonly magnets: readonly Point[];
	readonly magnet: Length | null;
	readonly notes: readonly string[];
}

function nested(piece: Piece, title: string, figures: Figures, mirror: boolean): Drawing {
	const { lines, magnets, magnet, notes } = piece;
	const radius = toMm(magnet ?? 0) / 2;
	const named = lines.flatMap(({ name, outline }) =>
		name === undefined ? [] : [{ name, box: bounds(outline) }],
	);
	const sorted = [...named].sort((a, b) => a.box.length - b.box.length);
	const out = 11 + (sorted.length - 1) * 7;
	const margins = { left: 8, right: out + 6, top: 8, bottom: out + 3 + notes.length * NOTE };
	const largest = sorted.at(-1);
	if (!largest) throw new Error('bug: a drawing of no line');
	const stage = stageFor(largest.box, margins, mirror);
	const marks: Mark[] = [
		...lines.map((l) => outlineMark([l.outline], stage.view, l.line)),
		...magnets.flatMap((p): Mark[] => {
			const { x, y } = onPaper(p, stage.view);
			return [
				{
					kind: 'path',
					steps: circlePath(x, y, Math.max(0.8, radius * stage.scale)),
					line: 'narrow',
				},
				centreMark(p, stage.view, 2),
			];
		}),
		...sorted.flatMap((n, i) => overall(n.box, stage, i, n.name, figures)),
		...footNotes(notes, stage),
	];
	return viewOn(stage, title, marks);
}
