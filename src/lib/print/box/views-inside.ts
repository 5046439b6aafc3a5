import { type BoxBoard, type BoxFigures, hull, type Point3 } from '../../design';
import { boundsOfPoints, type Point, type Rect } from '../../geometry';
import { ticks, toMm } from '../../measure';
import { type Mark, onPaper, type TextMark, type View } from '../drawing';
import { LabelSlots, outlineMark, running, words } from '../marks';
import type { Figures } from '../wording';

type Placed = BoxFigures['placed'][number];
type Axis = 'fromLeft' | 'fromFront' | 'fromBottom';

/** What a view of the inside needs to know of it. */
export interface InsideView {
	readonly toward: Point3;
	/** A point of the box in the view, from the corner of the outside. */
	readonly flat: (p: Point3) => Point;
	readonly view: View;
}

interface Standing {
	readonly placed: Placed;
	readonly board: BoxBoard;
}

/** Plates that stand inside: not what only lies on a wall. */
function standing({ placed, boards }: BoxFigures): Standing[] {
	return placed.flatMap((p) => {
		const board = boards.find((b) => b.key === p.key);
		const plate = board && ['divider', 'brace', 'slot'].includes(board.role);
		return plate ? [{ placed: p, board }] : [];
	});
}

const PAPER = { x: 0, y: 0, width: 180, height: 1000 };
/** Marks of two plates beside each other would read as one, mm. */
const APART = 1.6;

/** Boards inside as a view shows them, dashed, each with its mark where there is room for it. */
export function insideMarks(figures: BoxFigures, look: InsideView, taken: readonly Mark[]): Mark[] {
	const { view, flat, toward } = look;
	const marks: Mark[] = [];
	const slots = new LabelSlots(PAPER, APART);
	slots.keepOff(taken);
	const clear = new LabelSlots(PAPER, APART);
	clear.keepOff(taken);
	clear.keepOffLines(taken);
	for (const { board, placed } of standing(figures)) {
		const { n } = board.frame;
		const faceOn = Math.abs(n.x * toward.x + n.y * toward.y + n.z * toward.z) > 0.5;
		// Seen face on it is drawn only from above, where it stops short of an end.
		const [from, to] = placed.fromLeft;
		const short = from > 2 || to < figures.inside.width - 2;
		if (faceOn && !(toward.z > 0.5 && short)) continue;
		const round = hull([...board.solid.outside, ...board.solid.inside].map(flat));
		const outline = outlineMark([round], view, 'dashed');
		marks.push(outline);
		clear.keepOffLines([outline]);
		const places = markPlaces(placed.label, boundsOfPoints(round), view);
		const label = clear.free(places) ?? slots.free(places);
		if (!label) continue;
		marks.push(label);
		for (const s of [slots, clear]) s.keepOff([label]);
	}
	return marks;
}

/** On the plate, over and under its middle, and beside it. */
function markPlaces(text: string, { x, y, length, width }: Rect, view: View): TextMark[] {
	const half = (toMm(Math.min(length, width)) * view.scale) / 2 + 2.6;
	return [0.5, 0.3, 0.7, 0.15, 0.85].flatMap((share) => {
		const level = length > width;
		const at = level
			? { x: x + share * length, y: y + width / 2 }
			: { x: x + length / 2, y: y + share * width };
		const p = onPaper(at, view);
		const offs = level
			? [[0, 0.9] as const, [0, -half + 1.5] as const, [0, half + 0.9] as const]
			: [[0, 0.9] as const, [half, 0.9] as const, [-half, 0.9] as const];
		return [...offs, [0, -2] as const, [0, 4.2] as const].map(([dx, dy]) =>
			words(p.x + dx, p.y + dy, text, { anchor: 'middle', size: 2.5, halo: true }),
		);
	});
}

/** Where the plates inside reach along one direction, without those at the walls themselves. */
export function reaches(figures: BoxFigures, axis: Axis): { at: number; datum: number }[] {
	const whole = {
		fromLeft: figures.inside.width,
		fromFront: figures.inside.depth,
		fromBottom: figures.inside.height,
	}[axis];
	const along = { fromLeft: 'x', fromFront: 'y', fromBottom: 'z' } as const;
	return standing(figures).flatMap(({ placed, board }) => {
		const points = [...board.solid.outside, ...board.solid.inside];
		const datum = Math.min(...points.map((p) => p[along[axis]])) - placed[axis][0];
		const ends = placed[axis].filter((at) => at > 2 && at < whole - 2);
		return ends.map((at) => ({ at, datum }));
	});
}

/** Running dimensions of those places, from the inside of the wall they count from. */
export function placeDimensions(
	figures: BoxFigures,
	axis: Axis,
	spec: {
		readonly edge: number;
		readonly offset: number;
		readonly view: View;
		readonly low: number;
	},
	print: Figures,
): Mark[] {
	const all = reaches(figures, axis);
	const first = all[0];
	if (!first) return [];
	const { view, low } = spec;
	const on = axis === 'fromBottom' ? 'y' : 'x';
	const paper = (n: number): number => onPaper({ x: n - low, y: n - low }, view)[on];
	const seen = new Map(all.map(({ at }) => [print.bench(ticks(at)), at]));
	return running({
		axis: on,
		datum: paper(first.datum),
		edge: spec.edge,
		offset: spec.offset,
		places: [...seen].map(([text, at]) => ({ at: paper(first.datum + at), text })),
		room: on === 'x' ? [2, 178] : [2, 1000],
	});
}
