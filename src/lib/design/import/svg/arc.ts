import { ellipse, type Curve, type Point, direction } from '../../../geometry';

export interface SvgArc {
	readonly rx: number;
	readonly ry: number;
	/** Turn of the axes, degrees. */
	readonly turn: number;
	readonly large: boolean;
	readonly sweep: boolean;
}

/**
 * The elliptical arc of path data, in the path's own frame. From end points to centre as the format
 * defines it (W3C, SVG, elliptical arc implementation notes), radii too small for the chord scaled
 * up.
 */
export function ellipticArc(from: Point, to: Point, arc: SvgArc): Curve {
	const axis = direction(arc.turn);
	const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
	const p = { x: axis.x * half.x + axis.y * half.y, y: axis.x * half.y - axis.y * half.x };
	const [rx, ry] = largeEnough(Math.abs(arc.rx), Math.abs(arc.ry), p);
	const on = (p.x / rx) ** 2 + (p.y / ry) ** 2;
	const k = (arc.large === arc.sweep ? -1 : 1) * Math.sqrt(Math.max(0, 1 / on - 1));
	const c = { x: (k * rx * p.y) / ry, y: (-k * ry * p.x) / rx };
	const centre = {
		x: axis.x * c.x - axis.y * c.y + (from.x + to.x) / 2,
		y: axis.y * c.x + axis.x * c.y + (from.y + to.y) / 2,
	};
	const start = Math.atan2((p.y - c.y) / ry, (p.x - c.x) / rx);
	const end = Math.atan2((-p.y - c.y) / ry, (-p.x - c.x) / rx);
	return ellipse(
		centre,
		{ x: axis.x * rx, y: axis.y * rx },
		ry / rx,
		start,
		swept(start, end, arc.sweep),
	);
}

function largeEnough(rx: number, ry: number, p: Point): readonly [number, number] {
	const need = Math.sqrt((p.x / rx) ** 2 + (p.y / ry) ** 2);
	return need > 1 ? [rx * need, ry * need] : [rx, ry];
}

function swept(start: number, end: number, positive: boolean): number {
	const turn = 2 * Math.PI;
	const forward = (((end - start) % turn) + turn) % turn;
	return positive ? forward : forward - turn;
}
