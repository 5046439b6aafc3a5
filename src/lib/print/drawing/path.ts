import { toMm, around } from '../../measure';
import type { Outline, Point } from '../../geometry';
import type { PathStep } from './drawing';

/** A point on paper: millimetres, y down. */
export interface Spot {
	readonly x: number;
	readonly y: number;
}

/**
 * How the work (ticks, y up) lies on paper (millimetres, y down). `x`, `y`: where the work's origin
 * comes to lie. `scale`: paper millimetres for one real millimetre. `mirror`: left and right
 * changed, as the back is seen.
 */
export interface View {
	readonly x: number;
	readonly y: number;
	readonly scale: number;
	readonly mirror?: boolean;
}

export function onPaper(point: Point, view: View): Spot {
	const side = view.mirror === true ? -1 : 1;
	return {
		x: view.x + side * toMm(point.x) * view.scale,
		y: view.y - toMm(point.y) * view.scale,
	};
}

export function rect(x: number, y: number, width: number, height: number): PathStep[] {
	return polygon([
		{ x, y },
		{ x: x + width, y },
		{ x: x + width, y: y + height },
		{ x, y: y + height },
	]);
}

export function line(x1: number, y1: number, x2: number, y2: number): PathStep[] {
	return [
		['M', x1, y1],
		['L', x2, y2],
	];
}

export function polyline(spots: readonly Spot[]): PathStep[] {
	return spots.map((s, i) => [i === 0 ? 'M' : 'L', s.x, s.y]);
}

export function polygon(spots: readonly Spot[]): PathStep[] {
	return [...polyline(spots), ['Z']];
}

export function circlePath(cx: number, cy: number, r: number): PathStep[] {
	const right = { x: cx + r, y: cy };
	const left = { x: cx - r, y: cy };
	return [['M', right.x, right.y], ...arc(right, left, 1), ...arc(left, right, 1), ['Z']];
}

/**
 * Outlines with their arcs as curves, closed; several (a part and its holes) in one path for an
 * even-odd fill.
 */
export function outlineSteps(outlines: readonly Outline[], view: View): PathStep[] {
	return outlines.flatMap((outline) => oneOutline(outline, view));
}

function oneOutline(outline: Outline, view: View): PathStep[] {
	const first = outline[0];
	if (first === undefined) return [];
	const start = onPaper(first, view);
	const steps: PathStep[] = [['M', start.x, start.y]];
	outline.forEach((corner, i) => {
		const to = onPaper(around(outline, i + 1), view);
		// On paper y points down, which turns a left-hand arc to the right; a mirrored view turns
		// it back.
		const bulge = (corner.bulge ?? 0) * (view.mirror === true ? 1 : -1);
		if (bulge !== 0) steps.push(...arc(onPaper(corner, view), to, bulge));
		else if (i < outline.length - 1) steps.push(['L', to.x, to.y]);
	});
	return [...steps, ['Z']];
}

/**
 * An arc by its bulge (positive turns from +x towards +y of the paper), as cubics of at most a
 * quarter turn.
 */
export function arc(from: Spot, to: Spot, bulge: number): PathStep[] {
	const { centre, radius, start, sweep } = arcOf(from, to, bulge);
	const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9));
	const step = sweep / pieces;
	const k = (4 / 3) * Math.tan(step / 4) * radius;
	const steps: PathStep[] = [];
	for (let i = 0; i < pieces; i++) {
		const a = start + i * step;
		const b = a + step;
		const end = i === pieces - 1 ? to : at(centre, radius, b);
		const begin = at(centre, radius, a);
		steps.push([
			'C',
			begin.x - k * Math.sin(a),
			begin.y + k * Math.cos(a),
			end.x + k * Math.sin(b),
			end.y - k * Math.cos(b),
			end.x,
			end.y,
		]);
	}
	return steps;
}

function arcOf(from: Spot, to: Spot, bulge: number) {
	const dx = to.x - from.x;
	const dy = to.y - from.y;
	// centre's offset to the left of the chord, in chords
	const h = (1 - bulge * bulge) / (4 * bulge);
	const centre = { x: (from.x + to.x) / 2 - dy * h, y: (from.y + to.y) / 2 + dx * h };
	return {
		centre,
		radius: Math.hypot(from.x - centre.x, from.y - centre.y),
		start: Math.atan2(from.y - centre.y, from.x - centre.x),
		sweep: 4 * Math.atan(bulge),
	};
}

function at(centre: Spot, radius: number, angle: number): Spot {
	return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/**
 * The outline on paper as a ring of straight edges, arcs stepped finely enough for hatching (0.1
 * mm).
 */
export function ringPath(outline: Outline, view: View): Spot[] {
	return outline.flatMap((corner, i) => {
		const from = onPaper(corner, view);
		const bulge = (corner.bulge ?? 0) * (view.mirror === true ? 1 : -1);
		if (bulge === 0) return [from];
		const { centre, radius, start, sweep } = arcOf(
			from,
			onPaper(around(outline, i + 1), view),
			bulge,
		);
		const widest = 2 * Math.acos(Math.max(0, 1 - 0.1 / Math.max(radius, 0.1)));
		const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / Math.max(widest, 0.05)));
		return [...Array(pieces).keys()].map((n) => at(centre, radius, start + (sweep * n) / pieces));
	});
}
