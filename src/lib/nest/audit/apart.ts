import { nth, around } from '../../measure';
import type { Rect } from '../../geometry';
import type { AuditFault, Piece, Placed } from '../types';

/*
 * Are pieces apart by the kerf? Rectangles by plain comparison; two tapered pieces that share a
 * slanted cut by a line that separates them, in whole numbers beyond 2^53.
 */

interface Spot {
	readonly x: number;
	readonly y: number;
}

/** Apart along x or along y by at least the gap. */
export function rectsApart(a: Rect, b: Rect, gap: number): boolean {
	return (
		a.x + a.length + gap <= b.x ||
		b.x + b.length + gap <= a.x ||
		a.y + a.width + gap <= b.y ||
		b.y + b.width + gap <= a.y
	);
}

/** Corners of a straight-sided piece where it lies. */
export function rectCorners(piece: Piece, placed: Placed): Spot[] {
	const { length: l, width: w } = piece;
	const rect = [
		{ x: 0, y: 0 },
		{ x: l, y: 0 },
		{ x: l, y: w },
		{ x: 0, y: w },
	];
	return (piece.outline ?? rect).map(({ x, y }) => {
		if (placed.turn === 90) return { x: placed.x + w - y, y: placed.y + x };
		if (placed.turn === 180) return { x: placed.x + l - x, y: placed.y + w - y };
		if (placed.turn === 270) return { x: placed.x + y, y: placed.y + l - x };
		return { x: placed.x + x, y: placed.y + y };
	});
}

/** Some side of one of two convex shapes keeps all of the other at least the gap away. */
export function convexApart(a: readonly Spot[], b: readonly Spot[], gap: number): boolean {
	return sideParts(a, b, gap) || sideParts(b, a, gap);
}

function sideParts(a: readonly Spot[], b: readonly Spot[], gap: number): boolean {
	return a.some((from, i) => {
		const to = around(a, i + 1);
		// outward normal of a counter-clockwise side
		const nx = BigInt(to.y - from.y);
		const ny = BigInt(from.x - to.x);
		return b.every((p) => {
			const away = BigInt(p.x - from.x) * nx + BigInt(p.y - from.y) * ny;
			return away >= 0n && away * away >= BigInt(gap) ** 2n * (nx * nx + ny * ny);
		});
	});
}

/**
 * Faults of each two pieces on one sheet that are too close. `skip`: pieces whose outlines are
 * checked elsewhere.
 */
export function auditApart(
	placed: readonly Placed[],
	pieces: ReadonlyMap<string, Piece>,
	gap: number,
	where: string,
): AuditFault[] {
	const faults: AuditFault[] = [];
	const sorted = [...placed].sort((a, b) => a.x - b.x);
	sorted.forEach((a, i) => {
		for (let j = i + 1; j < sorted.length; j++) {
			const b = nth(sorted, j);
			if (b.x >= a.x + a.length + gap) break;
			if (rectsApart(a, b, gap) || slantApart(a, b, pieces, gap)) continue;
			faults.push({
				where,
				what: `${a.id} (copy ${a.copy}) and ${b.id} (copy ${b.copy}) are not one kerf apart.`,
			});
		}
	});
	return faults;
}

function slantApart(
	a: Placed,
	b: Placed,
	pieces: ReadonlyMap<string, Piece>,
	gap: number,
): boolean {
	const [pa, pb] = [pieces.get(a.id), pieces.get(b.id)];
	if (!pa?.outline || !pb?.outline) return false;
	if ([...pa.outline, ...pb.outline].some((c) => c.bulge)) return false;
	return convexApart(rectCorners(pa, a), rectCorners(pb, b), gap);
}
