import {
	boundsOfPoints,
	area,
	union,
	without,
	type Outline,
	type Point,
	tidy,
	plus,
	snapPoint,
} from '../../geometry';
import type { Covering, Window } from '../../design';
import {
	clothEdge,
	flapAreas,
	foldLine,
	flapsOf,
	type Flap,
	layOver,
	STILL,
	type Climb,
	type LaidCloth,
	boardSpans,
	windowSpans,
	type Span,
} from '../girth';

/** A cloth laid flat, as the finished panel is seen from the front. */
export interface ClothShape {
	readonly outline: Outline;
	readonly laid: LaidCloth;
	readonly flaps: readonly Flap[];
	/** Fold of each edge of the board that is turned under. */
	readonly folds: readonly (readonly Point[])[];
	readonly windows: readonly WindowShape[];
}

/** A window in the cloth: what is cut out, and the flaps left to fold back round its edge. */
export interface WindowShape {
	readonly flaps: readonly Flap[];
	readonly folds: readonly (readonly Point[])[];
	readonly cut: readonly Outline[];
	/** How far the window lies from its place on the board, because of the steps. */
	readonly by: Point;
}

export function clothShape(covering: Covering): ClothShape {
	const laid = layOver(covering);
	const { climb } = laid;
	const line = boardSpans(covering);
	const flaps = flapsOf(line);
	return {
		outline: outlineOf(clothEdge(flaps, climb)),
		laid,
		flaps,
		folds: foldsOf(flaps, line, climb),
		windows: covering.windows.map((w) => windowShape(w, laid)),
	};
}

/** Corners this near (ticks) are one: the grid and the clipping leave such crumbs. */
const CRUMB = 4;

/** The outline of all that a path winds round. */
function outlineOf(path: readonly Point[]): Outline {
	const regions = union([path.map(snapPoint)]);
	// The board is one piece, so its cloth is; holes are slots that the flaps have closed.
	const largest = regions.map((r) => r.outline).sort((a, b) => area(b) - area(a))[0];
	if (!largest) throw new Error('bug: a cloth of no size');
	return tidy(largest, CRUMB).outline;
}

function foldsOf(flaps: readonly Flap[], line: readonly Span[], climb: Climb): Point[][] {
	return flaps.flatMap((f, i) => (f.folds ? [foldLine(line, i, climb)] : []));
}

function windowShape(window: Window, laid: LaidCloth): WindowShape {
	const line = windowSpans(window);
	const flaps = flapsOf(line);
	const box = boundsOfPoints(window.outline);
	const centre = { x: box.x + box.length / 2, y: box.y + box.width / 2 };
	const by = laid.moved(centre);
	const opened = without(
		[window.outline],
		flapAreas(flaps).map((a) => a.map(snapPoint)),
	);
	return {
		flaps,
		folds: foldsOf(flaps, line, STILL).map((fold) => fold.map((p) => plus(p, by))),
		cut: opened.map((r) => tidy(r.outline, CRUMB).outline.map((p) => plus(p, by))),
		by,
	};
}
