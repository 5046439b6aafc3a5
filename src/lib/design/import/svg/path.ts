import { lastOf, nth } from '../../../measure';
import svgpath from 'svgpath';
import {
	type EdgeRun,
	arcsAlong,
	cubic,
	type Curve,
	type Corner,
	type Point,
	corner,
	between,
} from '../../../geometry';
import { MOST_EDGES } from '../drawing-file';
import { SAME, type Affine } from '../affine';
import { ellipticArc } from './arc';

/*
 * The one file the path library enters through: it reads path data and applies transforms; the
 * curves are followed here.
 */

interface Made {
	readonly runs: readonly EdgeRun[];
	/** What is wrong with the path data, or null. */
	readonly fault: string | null;
	/** False when there was more of it than is looked at. */
	readonly whole: boolean;
}

/** Numbers of path data looked at: a curve has six. */
const MOST_NUMBERS = 8 * MOST_EDGES;

/**
 * Path data as runs of edges, y turned up, moved by `to`. `fine`: how closely curves are followed,
 * in the unit they end up in. Of data beyond all measure nothing is read.
 */
export function runsOfPath(data: string, fine: number, to: Affine = SAME): Made {
	if (numbersBeyond(data, MOST_NUMBERS)) return { runs: [], fault: null, whole: false };
	const path = svgpath(data);
	const fault = faultOf(path);
	const pen = new Pen(fine);
	path
		.matrix([to.a, to.b, to.c, to.d, to.e, to.f])
		.abs()
		.unshort()
		.iterate((segment, _index, x, y) => pen.draw(segment, { x, y }));
	return { runs: pen.finish(), fault: fault ?? pen.fault, whole: pen.whole };
}

/** Counted before the library makes a list of each of them. */
function numbersBeyond(data: string, most: number): boolean {
	if (data.length <= most) return false;
	const one = /[a-z]|[-+]?[\d.]+/gi;
	for (let n = 0; one.test(data); n++) if (n >= most) return true;
	return false;
}

function faultOf(path: unknown): string | null {
	const err = (path as { err?: unknown }).err;
	return typeof err === 'string' && err !== '' ? err : null;
}

class Pen {
	private readonly runs: EdgeRun[] = [];
	private current: Corner[] = [];
	private made = 0;
	/** False when the edges made of it came to more than a drawing may have. */
	whole = true;
	/** Said of a lone sign, which the library takes for a number. What follows it is not drawn. */
	fault: string | null = null;

	constructor(private readonly fine: number) {}

	draw([name, ...values]: readonly (string | number)[], from: Point): void {
		if (this.fault === null && !values.every(Number.isFinite)) this.fault = 'a number is missing';
		this.whole &&= this.made + this.current.length <= MOST_EDGES;
		if (!this.whole || this.fault !== null) return;
		const v = values as number[];
		const at = (i: number): Point => ({ x: v[i] ?? 0, y: v[i + 1] ?? 0 });
		const to = at(v.length - 2);
		if (name === 'M') this.start(to);
		else if (name === 'Z') this.close();
		else if (name === 'L') this.line(to);
		else if (name === 'H') this.line({ x: v[0] ?? 0, y: from.y });
		else if (name === 'V') this.line({ x: from.x, y: v[0] ?? 0 });
		else if (name === 'C') this.curve(cubic(from, at(0), at(2), to), to);
		else if (name === 'Q') this.curve(quadratic(from, at(0), to), to);
		else if (name === 'A') this.arc(from, v, to);
	}

	finish(): EdgeRun[] {
		this.end(false);
		return this.runs;
	}

	private start(p: Point): void {
		this.end(false);
		this.current = [corner(up(p))];
	}

	private close(): void {
		const first = this.current[0];
		this.end(true);
		// What follows without a move starts where this one started.
		if (first) this.current = [corner(first)];
	}

	private line(to: Point): void {
		this.current.push(corner(up(to)));
	}

	private curve(curve: Curve, to: Point): void {
		const bent = arcsAlong((t) => up(curve(t)), this.fine);
		this.current.pop();
		this.current.push(...bent, corner(up(to)));
	}

	private arc(from: Point, v: readonly number[], to: Point): void {
		const [rx = 0, ry = 0, turn = 0, large = 0, sweep = 0] = v;
		const chord = Math.hypot(to.x - from.x, to.y - from.y);
		if (chord === 0) return;
		const round = Math.abs(Math.abs(rx) - Math.abs(ry)) < 1e-6 * Math.abs(rx);
		if (rx === 0 || ry === 0) this.line(to);
		else if (round)
			this.circular(Math.max(Math.abs(rx), chord / 2), chord, large === 1, sweep === 1, to);
		else
			this.curve(
				ellipticArc(from, to, { rx, ry, turn, large: large === 1, sweep: sweep === 1 }),
				to,
			);
	}

	private circular(radius: number, chord: number, large: boolean, sweep: boolean, to: Point): void {
		const half = Math.asin(Math.min(1, chord / 2 / radius));
		const bulge = Math.tan((large ? Math.PI - half : half) / 2);
		const last = this.current.pop();
		// Seen with y up, the positive sweep of the format turns right.
		if (last) this.current.push(corner(last, sweep ? -bulge : bulge), corner(up(to)));
	}

	private end(closed: boolean): void {
		const corners = this.current;
		this.current = [];
		this.made += corners.length;
		if (corners.length < 2) return;
		const first = nth(corners, 0);
		const last = lastOf(corners);
		const back = closed && first.x === last.x && first.y === last.y && corners.length > 2;
		this.runs.push({ corners: back ? corners.slice(0, -1) : corners, closed });
	}
}

const up = (p: Point): Point => ({ x: p.x, y: -p.y });

function quadratic(a: Point, b: Point, c: Point): Curve {
	return cubic(a, between(a, b, 2 / 3), between(c, b, 2 / 3), c);
}
