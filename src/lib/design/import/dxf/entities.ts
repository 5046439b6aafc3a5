import {
	type EdgeRun,
	arcsAlong,
	ellipse,
	type Corner,
	type Point,
	corner,
	direction,
	plus,
	times,
} from '../../../geometry';
import { numberOf, numbersOf, type DxfEntity } from './groups';
import { curveThrough } from './fit-spline';
import { spansOf, splineCurve } from './spline';

/**
 * A run of edges; `doubt`: how far from it the curve may really lie, where the file leaves that
 * open, in the drawing's unit.
 */
export interface Followed extends EdgeRun {
	readonly doubt?: number;
}

/**
 * One entity as a run of edges; null for one that draws nothing an outline is made of, 'unclear'
 * for one that should but cannot be followed. `fine`: how closely curves are followed, in the
 * drawing's unit.
 */
export function runOf(e: DxfEntity, fine: number): Followed | 'unclear' | null {
	const make = MAKERS[e.type];
	if (!make) return null;
	const run = make(e, fine);
	if (!run || !run.corners.every((c) => Number.isFinite(c.x) && Number.isFinite(c.y)))
		return 'unclear';
	return numberOf(e, 230, 1) < 0 && FLAT_IN_THEIR_OWN_PLANE.has(e.type) ? mirroredRun(run) : run;
}

/**
 * Entities whose coordinates are seen from their own side: with the plane turned over, x runs the
 * other way.
 */
const FLAT_IN_THEIR_OWN_PLANE = new Set(['ARC', 'CIRCLE', 'LWPOLYLINE', 'POLYLINE']);

const MAKERS: Readonly<Record<string, (e: DxfEntity, fine: number) => Followed | null>> = {
	LINE: (e) => open([corner(point(e, 10)), corner(point(e, 11))]),
	CIRCLE: (e) => {
		const [c, r] = [point(e, 10), numberOf(e, 40)];
		return r > 0
			? closed([corner({ x: c.x - r, y: c.y }, 1), corner({ x: c.x + r, y: c.y }, 1)])
			: null;
	},
	ARC: arcRun,
	LWPOLYLINE: (e) => lightPolyline(e),
	POLYLINE: (e) => heavyPolyline(e),
	ELLIPSE: ellipseRun,
	SPLINE: splineRun,
};

const open = (corners: Corner[]): EdgeRun => ({ corners, closed: false });
const closed = (corners: Corner[]): EdgeRun => ({ corners, closed: true });

function point(e: DxfEntity, code: number): Point {
	return { x: numberOf(e, code), y: numberOf(e, code + 10) };
}

function arcRun(e: DxfEntity): EdgeRun | null {
	const c = point(e, 10);
	const r = numberOf(e, 40);
	const [start, end] = [numberOf(e, 50), numberOf(e, 51)];
	const sweep = (((end - start) % 360) + 360) % 360 || 360;
	if (!(r > 0)) return null;
	const at = (degrees: number): Point => plus(c, times(direction(degrees), r));
	// Two halves: the bulge of one long arc grows without limit.
	const bulge = Math.tan((sweep * Math.PI) / 1440);
	return open([corner(at(start), bulge), corner(at(start + sweep / 2), bulge), corner(at(end))]);
}

/** Vertices run x, y, bulge; a new x starts the next one. */
function lightPolyline(e: DxfEntity): EdgeRun | null {
	const corners: { x: number; y: number; bulge: number }[] = [];
	for (const [code, value] of e.groups) {
		const n = Number(value);
		const last = corners.at(-1);
		if (code === 10) corners.push({ x: n, y: 0, bulge: 0 });
		else if (last && code === 20) last.y = n;
		else if (last && code === 42) last.bulge = Number.isFinite(n) ? n : 0;
	}
	return polyline(corners, (numberOf(e, 70) & 1) === 1);
}

/**
 * The vertices were gathered under their polyline (see {@link gathered}), under codes of their own.
 */
function heavyPolyline(e: DxfEntity): EdgeRun | null {
	const flags = numberOf(e, 70);
	// Meshes are no outlines.
	if ((flags & (16 | 64)) !== 0) return null;
	const corners: { x: number; y: number; bulge: number }[] = [];
	for (const [code, value] of e.groups) {
		const n = Number(value);
		const last = corners.at(-1);
		if (code === VERTEX + 10) corners.push({ x: n, y: 0, bulge: 0 });
		else if (last && code === VERTEX + 20) last.y = n;
		else if (last && code === VERTEX + 42) last.bulge = Number.isFinite(n) ? n : 0;
		// The frame of a spline is not on the curve.
		else if (last && code === VERTEX + 70 && (n & 16) !== 0) corners.pop();
	}
	return polyline(corners, (flags & 1) === 1);
}

function polyline(
	corners: readonly { x: number; y: number; bulge: number }[],
	shut: boolean,
): EdgeRun | null {
	const made = corners.map((c) => corner(c, c.bulge));
	if (made.length < 2) return null;
	return shut ? closed(made) : open(made);
}

const VERTEX = 10_000;

/** Polylines of the older kind with their vertices put under them. */
export function gathered(entities: readonly DxfEntity[]): DxfEntity[] {
	const out: { type: string; groups: (readonly [number, string])[] }[] = [];
	let owner: (typeof out)[number] | null = null;
	for (const e of entities) {
		if (e.type === 'VERTEX' && owner) {
			for (const [code, value] of e.groups) owner.groups.push([code + VERTEX, value]);
			continue;
		}
		if (e.type === 'SEQEND' || e.type === 'VERTEX') {
			owner = null;
			continue;
		}
		const own = { type: e.type, groups: [...e.groups] };
		owner = e.type === 'POLYLINE' ? own : null;
		out.push(own);
	}
	return out;
}

function ellipseRun(e: DxfEntity, fine: number): EdgeRun | null {
	const ratio = numberOf(e, 40);
	const axis = point(e, 11);
	const [a0, a1] = [numberOf(e, 41), numberOf(e, 42, 2 * Math.PI)];
	const whole = 2 * Math.PI;
	const sweep = (((a1 - a0) % whole) + whole) % whole || whole;
	if (!(ratio > 0) || Math.hypot(axis.x, axis.y) === 0) return null;
	const back = numberOf(e, 230, 1) < 0 ? -1 : 1;
	const curve = ellipse(point(e, 10), axis, ratio * back, a0, sweep);
	const corners = arcsAlong(curve, fine, Math.max(1, Math.ceil(sweep / (Math.PI / 2) - 1e-9)));
	return whole - sweep < 1e-6 ? closed(corners) : open([...corners, corner(curve(1))]);
}

function splineRun(e: DxfEntity, fine: number): Followed | null {
	const spline = {
		degree: numberOf(e, 71, 3),
		knots: numbersOf(e, 40),
		points: pointsOf(e, 10),
		weights: numbersOf(e, 41),
	};
	if (spline.points.length === 0) return fitRun(e, fine);
	const curve = splineCurve(spline);
	if (!curve || spline.points.length > 2000) return null;
	const corners = arcsAlong(curve, fine, spansOf(spline));
	return open([...corners, corner(curve(1))]);
}

/**
 * A spline without control points: only what it passes through, and perhaps how it starts and ends.
 */
function fitRun(e: DxfEntity, fine: number): Followed | null {
	const shut = (numberOf(e, 70) & 1) === 1;
	const heading = (code: number): Point | null => {
		const [way] = pointsOf(e, code);
		return way && Math.hypot(way.x, way.y) > 0 ? way : null;
	};
	const asked = { points: pointsOf(e, 11), closed: shut, starts: heading(12), ends: heading(13) };
	const guess = curveThrough(asked);
	if (!guess || !Number.isFinite(guess.doubt)) return null;
	const corners = arcsAlong(guess.curve, fine, guess.spans);
	const run = shut ? closed(corners) : open([...corners, corner(guess.curve(1))]);
	return { ...run, doubt: guess.doubt };
}

function pointsOf(e: DxfEntity, code: number): Point[] {
	const ys = numbersOf(e, code + 10);
	return numbersOf(e, code).map((x, i) => ({ x, y: ys[i] ?? 0 }));
}

function mirroredRun(run: Followed): Followed {
	return { ...run, corners: run.corners.map((c) => corner({ x: -c.x, y: c.y }, -(c.bulge ?? 0))) };
}
