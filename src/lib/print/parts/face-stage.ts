import type { Operation, WorkFace } from '../../design';
import { ticks } from '../../measure';
import type { Point } from '../../geometry';
import { type Mark, onPaper } from '../drawing';
import { FIGURE, running, runningDepth, type Stage, stageFor } from '../marks';
import type { Figures } from '../wording';

/** Distance of the running figures from the board, mm on paper. */
const OFFSET = 3;
/** More figures than these along one edge say nothing any more; the words below give every one. */
const MOST = { 58: 8, 88: 11, 180: 26 } as const;
/** Widths of paper a card may take, mm, and the tallest that its board is drawn. */
export const TALL = { 58: 33, 88: 34, 180: 90 } as const;
export type CardWidth = keyof typeof TALL;

interface Ordinate {
	readonly at: number;
	readonly text: string;
}

/** Where a face lies on its card, with the figures along its left and its lower edge. */
export interface FaceStage {
	readonly stage: Stage;
	readonly figures: readonly Mark[];
}

export function faceStage(face: WorkFace, width: CardWidth, f: Figures): FaceStage {
	const asked = { x: ordinates(face, 'x', width, f), y: ordinates(face, 'y', width, f) };
	const stage = stageOf(face, width, asked);
	const [fewer, all] = [Math.floor((stage.height - 6) / (FIGURE * 1.08)), asked.y.length];
	if (all <= fewer) return { stage, figures: figuresOf(stage, width, asked) };
	// A board drawn too low for its figures has only the whole beside it.
	const few = { x: asked.x, y: unlike([face.up], face.up, f) };
	const lower = stageOf(face, width, few);
	return { stage: lower, figures: figuresOf(lower, width, few) };
}

interface Ordinates {
	readonly x: readonly Ordinate[];
	readonly y: readonly Ordinate[];
}

function stageOf(face: WorkFace, width: CardWidth, { x, y }: Ordinates): Stage {
	const room = (list: readonly Ordinate[]): number =>
		runningDepth(
			OFFSET,
			list.map((o) => o.text),
		) + 1.5;
	const margins = { left: room(y), right: 5, top: 2.5, bottom: room(x) - 0.5 };
	const tall = TALL[width] + margins.top + margins.bottom;
	const work = { x: 0, y: 0, length: face.across, width: face.up };
	return stageFor(work, margins, { room: { width, height: tall } });
}

function figuresOf(stage: Stage, width: CardWidth, { x, y }: Ordinates): Mark[] {
	const { box, view } = stage;
	const along = (list: readonly Ordinate[], axis: 'x' | 'y') =>
		list.map(({ at, text }) => ({ at: onPaper({ x: at, y: at }, view)[axis], text }));
	return [
		...running({
			axis: 'x',
			datum: box.x,
			edge: box.y + box.height,
			offset: OFFSET,
			places: along(x, 'x'),
			room: [box.x - 2, width - 2],
		}),
		...running({
			axis: 'y',
			datum: box.y + box.height,
			edge: box.x,
			offset: OFFSET,
			places: along(y, 'y'),
			room: [2, stage.height - 4],
		}),
	];
}

/** Figures along one edge: the whole, its corners, what is cut and set; two alike are one. */
function ordinates(face: WorkFace, axis: 'x' | 'y', width: CardWidth, f: Figures): Ordinate[] {
	const whole = axis === 'x' ? face.across : face.up;
	const corners = [...face.outline.map((p) => p[axis]), whole];
	const made = face.operations.flatMap((op) => pointsOf(op).map((p) => p[axis]));
	const all = unlike([...corners, ...made], whole, f);
	return all.length <= MOST[width] ? all : unlike([whole], whole, f);
}

function unlike(list: readonly number[], whole: number, f: Figures): Ordinate[] {
	const seen = new Map<string, number>();
	for (const n of list)
		if (n > 2 && n < whole + 2) seen.set(f.bench(ticks(Math.round(n))), Math.round(n));
	return [...seen].map(([text, at]) => ({ text, at }));
}

function pointsOf(op: Operation): readonly Point[] {
	if (op.kind === 'holes') return op.at;
	if (op.kind !== 'cut' && op.kind !== 'rabbet' && op.kind !== 'place') return [];
	const { form } = op;
	if (form.kind === 'round') return [form.centre];
	if (form.kind === 'corners') return form.corners.map((c) => c.at);
	const { x, y, length, width } = form.box;
	return [
		{ x, y },
		{ x: x + length, y: y + width },
	];
}
