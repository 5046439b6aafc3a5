import { nth } from '../../measure';
import { boundsOfPoints, orient, type Point, type Rect } from '../../geometry';

type Line = readonly Point[];

/** Edges of a fold that are looked at together. */
const STRETCH = 16;

/**
 * Lines no relief cut may lie across. They are kept by stretches with a box round each: of the many
 * folds of a curved edge, and of one long fold, a cut comes near to little.
 */
export class Folds {
	private readonly lines: readonly Line[];
	private readonly boxes: readonly Rect[];

	constructor(lines: readonly Line[]) {
		this.lines = lines.flatMap(stretches);
		this.boxes = this.lines.map(boundsOfPoints);
	}

	crossedBy(cut: Line): boolean {
		const box = boundsOfPoints(cut);
		return this.boxes.some((b, i) => touch(box, b) && crosses(cut, nth(this.lines, i)));
	}
}

/** Each begins where the one before ends. */
function stretches(line: Line): Line[] {
	const starts = Math.ceil(Math.max(0, line.length - 1) / STRETCH);
	return Array.from({ length: starts }, (_, i) => line.slice(i * STRETCH, (i + 1) * STRETCH + 1));
}

function touch(a: Rect, b: Rect): boolean {
	return (
		a.x <= b.x + b.length && b.x <= a.x + a.length && a.y <= b.y + b.width && b.y <= a.y + a.width
	);
}

/** Do two open lines of points cross or touch? */
export function crosses(a: Line, b: Line): boolean {
	for (let i = 0; i + 1 < a.length; i++)
		for (let j = 0; j + 1 < b.length; j++)
			if (meets(nth(a, i), nth(a, i + 1), nth(b, j), nth(b, j + 1))) return true;
	return false;
}

function meets(p: Point, q: Point, r: Point, s: Point): boolean {
	if (Math.max(p.x, q.x) < Math.min(r.x, s.x) || Math.max(r.x, s.x) < Math.min(p.x, q.x))
		return false;
	if (Math.max(p.y, q.y) < Math.min(r.y, s.y) || Math.max(r.y, s.y) < Math.min(p.y, q.y))
		return false;
	return orient(p, q, r) * orient(p, q, s) <= 0 && orient(r, s, p) * orient(r, s, q) <= 0;
}
