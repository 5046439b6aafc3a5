import { nth } from '../../measure';
import type { Covering } from '../../design';
import {
	common,
	cropped,
	boundsOfPoints,
	area,
	finder,
	flatten,
	type Outline,
	type Point,
	type Rect,
	minus,
	plus,
	snapPoint,
} from '../../geometry';
import type { Blank, BlankMark } from '../blank';
import type { ClothShape, WindowShape } from './cloth-shape';
import { STILL, type LaidCloth, CHORD_ERROR } from '../girth';
import { reliefsOf, type ReliefRule, type Reliefs } from '../reliefs';
import { movedMark } from './moved-mark';
import { stepReliefs } from './step-reliefs';
import { trimLines } from './trim-lines';

/** All that is drawn on the back of a panel's cloth, in the front view's frame. */
export interface PanelMarks {
	readonly marks: readonly BlankMark[];
	readonly reliefs: Blank['reliefs'];
	/** Places where a fold nearby leaves no room for a relief. */
	readonly blocked: number;
}

export function panelMarks(
	shape: ClothShape,
	covering: Pick<Covering, 'outline' | 'steps'>,
	rule: ReliefRule,
): PanelMarks {
	const folds = [...shape.folds, ...shape.windows.flatMap((w) => w.folds)];
	const ground = { board: finder(covering.outline), laid: shape.laid, folds };
	const all = [
		reliefsOf(shape.flaps, shape.laid.climb, rule, folds),
		...shape.windows.map((w) => windowReliefs(w, rule, folds)),
		...covering.steps.map((s) => stepReliefs(s, ground, rule)),
	];
	const sum = (of: 'notches' | 'slits' | 'corners') => all.reduce((n, r) => n + r[of], 0);
	return {
		marks: [
			...shape.folds.map((line) => open('fold', line)),
			...trimLines(shape.flaps, shape.laid.climb).map((line) => open('trim', line)),
			...shape.windows.flatMap((w) => windowMarks(w)),
			...stepMarks(covering.steps, shape.laid),
			...all.flatMap((r) => r.marks).flatMap((m) => trimmedTo(m, shape.outline)),
		],
		reliefs: { notches: sum('notches'), slits: sum('slits'), corners: sum('corners') },
		blocked: all.reduce((n, r) => n + r.blocked.length, 0),
	};
}

/** A notch as far as there is cloth: the needle of a sharp corner is cut off already. */
function trimmedTo(mark: BlankMark, cloth: Outline): BlankMark[] {
	if (!mark.closed) return [mark];
	const outline = cropped(cloth, roomRound(mark.line));
	const off = (p: Point) => !within(p, outline) && !onEdge(p, outline);
	if (!mark.line.some(off)) return [mark];
	const parts = common([mark.line.map(snapPoint)], [outline]).map((r) => r.outline);
	// A cut through a neighbour's notch can leave crumbs; the cut itself is the largest part.
	const largest = parts.sort((a, b) => area(b) - area(a))[0];
	return largest ? [{ ...mark, line: largest }] : [mark];
}

/** The box of a mark and a little more than is counted as lying on an edge. */
function roomRound(line: readonly Point[]): Rect {
	const box = boundsOfPoints(line);
	const more = NEAR + 4;
	return {
		x: box.x - more,
		y: box.y - more,
		length: box.length + 2 * more,
		width: box.width + 2 * more,
	};
}

/** A corner this near to the cloth's edge lies on it, ticks. */
const NEAR = 4;

/**
 * Does a point lie within a few ticks of an outline without arcs? No objects are made: every notch
 * asks this often.
 */
function onEdge(p: Point, outline: Outline): boolean {
	for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
		const a = nth(outline, j);
		const b = nth(outline, i);
		const [dx, dy] = [b.x - a.x, b.y - a.y];
		const square = dx * dx + dy * dy;
		const t = square === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / square;
		const s = Math.min(1, Math.max(0, t));
		if (Math.hypot(p.x - a.x - s * dx, p.y - a.y - s * dy) <= NEAR) return true;
	}
	return false;
}

/** Is a point inside an outline without arcs? On its edge it may be either. */
function within(p: Point, outline: Outline): boolean {
	let inside = false;
	for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
		const a = nth(outline, i);
		const b = nth(outline, j);
		if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x))
			inside = !inside;
	}
	return inside;
}

const open = (kind: BlankMark['kind'], line: readonly Point[]): BlankMark => ({
	kind,
	line,
	closed: false,
});

/** A window is worked out in its place on the board and then moved with the cloth. */
function windowReliefs(
	w: WindowShape,
	rule: ReliefRule,
	folds: readonly (readonly Point[])[],
): Reliefs {
	const here = folds.map((fold) => fold.map((p) => minus(p, w.by)));
	const reliefs = reliefsOf(w.flaps, STILL, rule, here);
	return { ...reliefs, marks: reliefs.marks.map((m) => movedMark(m, w.by)) };
}

function windowMarks(w: WindowShape): BlankMark[] {
	const trims = trimLines(w.flaps, STILL).map((line) => movedMark(open('trim', line), w.by));
	const cuts = w.cut.map((line) => ({ kind: 'window' as const, line, closed: true }));
	if (w.folds.length === 0) return [...cuts, ...trims];
	const round = w.folds.flatMap((fold) => fold.slice(0, -1));
	return [{ kind: 'fold', line: round, closed: true }, ...cuts, ...trims];
}

/** Where the cloth bends over the edge of each layer, to lay it by. */
function stepMarks(steps: Covering['steps'], laid: LaidCloth): BlankMark[] {
	return steps.map((step) => {
		const box = boundsOfPoints(step.outline);
		const by = laid.moved({ x: box.x + box.length / 2, y: box.y + box.width / 2 });
		const line = flatten(step.outline, CHORD_ERROR).map((p) => plus(p, by));
		return { kind: 'step', line, closed: true };
	});
}
