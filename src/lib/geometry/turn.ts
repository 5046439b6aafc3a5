import { area } from './extent';
import { cornerAt } from './edge';
import type { Corner, Outline, Point, Rect } from './outline';
import { direction, snapPoint } from './vector';

/** A corner with its bulge, leaving the field out for a straight edge. */
export function corner(p: Point, bulge = 0): Corner {
	return bulge === 0 ? { x: p.x, y: p.y } : { x: p.x, y: p.y, bulge };
}

export function moved(outline: Outline, dx: number, dy: number): Outline {
	return outline.map((c) => ({ ...c, x: c.x + dx, y: c.y + dy }));
}

/** Turned counter-clockwise about a point and snapped to the grid; quarter turns are exact. */
export function turned(outline: Outline, degrees: number, about: Point = { x: 0, y: 0 }): Outline {
	const d = direction(degrees);
	return outline.map((c) => {
		const x = c.x - about.x;
		const y = c.y - about.y;
		const p = { x: about.x + x * d.x - y * d.y, y: about.y + x * d.y + y * d.x };
		return corner(snapPoint(p), c.bulge);
	});
}

/**
 * What was drawn within a length x width rectangle, turned counter-clockwise with it; the turned
 * rectangle's lower left corner lies at 0,0 again.
 */
export function turnedInBox(
	outline: Outline,
	{ length, width }: Pick<Rect, 'length' | 'width'>,
	turn: 0 | 90 | 180 | 270,
): Outline {
	const shifts = { 0: [0, 0], 90: [width, 0], 180: [length, width], 270: [0, length] } as const;
	const [dx, dy] = shifts[turn];
	return moved(turned(outline, turn), dx, dy);
}

/** The same outline run the other way round. */
export function reversed(outline: Outline): Outline {
	return outline.map((_, i) => {
		const at = cornerAt(outline, -i);
		return corner(at, -(cornerAt(outline, -i - 1).bulge ?? 0));
	});
}

/**
 * Mirrored left to right about the line x = `axis`, counter-clockwise again. Edge i of the result
 * is the image of edge n - 1 - i (see {@link mirrorOrder}).
 */
export function mirrored(outline: Outline, axis = 0): Outline {
	return reversed(outline.map((c) => corner({ x: 2 * axis - c.x, y: c.y }, -(c.bulge ?? 0))));
}

/** What belongs to the edges of an outline, in the order of the edges of its mirror image. */
export function mirrorOrder<T>(perEdge: readonly T[]): T[] {
	return [...perEdge].reverse();
}

/** The outline counter-clockwise, whichever way it was drawn. */
export function wound(outline: Outline): Outline {
	return area(outline) < 0 ? reversed(outline) : outline;
}

/** Every size times a factor, snapped to the grid. */
export function scaled(outline: Outline, factor: number): Outline {
	return outline.map((c) => corner(snapPoint({ x: c.x * factor, y: c.y * factor }), c.bulge));
}
