import type { Operation, WorkFace } from '../../design';
import { ticks } from '../../measure';
import type { Point } from '../../geometry';
import { type Mark, onPaper } from '../drawing';
import { running, runningDepth, type Stage, stageFor } from '../marks';
import type { Figures } from '../wording';

/** Distance of the running figures from the board, mm on paper. */
const OFFSET = 3;
/** More figures than these along one edge say nothing any more; the words below give every one. */
const MOST = { 88: 11, 180: 26 } as const;
/** Widths of paper a card may take, mm, and the tallest that its board is drawn. */
export const TALL = { 88: 50, 180: 90 } as const;
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
	const [xs, ys] = [ordinates(face, 'x', width, f), ordinates(face, 'y', width, f)];
	const room = (list: readonly Ordinate[]): number =>
		runningDepth(
			OFFSET,
			list.map((o) => o.text),
		) + 1.5;
	const margins = { left: room(ys), right: 5, top: 2.5, bottom: room(xs) - 0.5 };
	const tall = TALL[width] + margins.top + margins.bottom;
	const work = { x: 0, y: 0, length: face.across, width: face.up };
	const stage = stageFor(work, margins, { room: { width, height: tall } });
	const { box, view } = stage;
	const along = (list: readonly Ordinate[], axis: 'x' | 'y') =>
		list.map(({ at, text }) => ({ at: onPaper({ x: at, y: at }, view)[axis], text }));
	return {
		stage,
		figures: [
			...running({
				axis: 'x',
				datum: box.x,
				edge: box.y + box.height,
				offset: OFFSET,
				places: along(xs, 'x'),
				room: [box.x - 2, width - 2],
			}),
			...running({
				axis: 'y',
				datum: box.y + box.height,
				edge: box.x,
				offset: OFFSET,
				places: along(ys, 'y'),
				room: [2, stage.height - 4],
			}),
		],
	};
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
