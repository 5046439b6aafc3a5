import { lastOf, nth, around } from '../../../measure';
import {
	alongEdge,
	edgeLength,
	edgesOf,
	type Edge,
	type Outline,
	type Point,
	headingsAt,
	dot,
	snapPoint,
} from '../../../geometry';

/** A place on an outline: its distance along it and the point. */
export interface OnLine {
	readonly along: number;
	readonly at: Point;
}

/** Corners sharper than this (cosine of the turn) get a fixing of their own. */
const SHARP = Math.cos((30 * Math.PI) / 180);

/**
 * Points round an outline, one at each sharp corner and evenly between them, no farther apart than
 * `spacing` along it; at least two.
 */
export function spaced(outline: Outline, spacing: number): Point[] {
	return spacedOn(outline, spacing).map((p) => p.at);
}

export function spacedOn(outline: Outline, spacing: number): OnLine[] {
	const edges = edgesOf(outline);
	const starts: number[] = [0];
	for (const e of edges) starts.push(lastOf(starts) + edgeLength(e));
	const total = lastOf(starts);
	const corners = edges
		.flatMap((e, i) => {
			const [into, out] = headingsAt(around(edges, i + edges.length - 1), e);
			const sharp = dot(into, out) < SHARP ? [nth(starts, i)] : [];
			return roundCorner(e, spacing) ? [...sharp, nth(starts, i) + edgeLength(e) / 2] : sharp;
		})
		.sort((a, b) => a - b);
	const walk = new Walk(outline);
	const stations = corners.length > 0 ? thinned(corners, spacing / 3, total) : [0];
	return stations.flatMap((from, k) => {
		const to = k + 1 < stations.length ? nth(stations, k + 1) : nth(stations, 0) + total;
		const least = stations.length === 1 ? 2 : 1;
		const n = Math.max(least, Math.ceil((to - from) / spacing - 1e-9));
		return Array.from({ length: n }, (_, j) => {
			const along = (from + ((to - from) * j) / n) % total;
			return { along, at: walk.at(along) };
		});
	});
}

/** Corners too near to the one before share its fixing. */
function thinned(corners: readonly number[], near: number, total: number): number[] {
	const kept: number[] = [];
	for (const c of corners) if (kept.length === 0 || c - lastOf(kept) >= near) kept.push(c);
	const around = kept.length > 1 && nth(kept, 0) + total - lastOf(kept) < near;
	return around ? kept.slice(0, -1) : kept;
}

/** A rounding small beside the spacing is a corner too; its fixing sits in the middle of it. */
function roundCorner(e: Edge, spacing: number): boolean {
	const turns = Math.abs(4 * Math.atan(e.bulge));
	return turns > Math.acos(SHARP) && turns < (2 * Math.PI) / 3 && edgeLength(e) < spacing / 2;
}

/** Walks an outline: the point that far along it from its first corner, on the grid. */
export class Walk {
	private readonly edges: readonly Edge[];
	private readonly lengths: readonly number[];
	readonly total: number;

	constructor(outline: Outline) {
		this.edges = edgesOf(outline);
		this.lengths = this.edges.map(edgeLength);
		this.total = this.lengths.reduce((sum, l) => sum + l, 0);
	}

	at(along: number): Point {
		let left = ((along % this.total) + this.total) % this.total;
		for (const [i, e] of this.edges.entries()) {
			const length = nth(this.lengths, i);
			if (left <= length && length > 0) return snapPoint(alongEdge(e, left / length));
			left -= length;
		}
		return snapPoint(nth(this.edges, 0).from);
	}
}
