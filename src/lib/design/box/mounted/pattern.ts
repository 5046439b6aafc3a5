import { nth } from '../../../measure';
import { distanceTo, flatten, type Outline, type Point, whereIs } from '../../../geometry';
import type { Hole, HolePattern } from '../board';
import { roundHole } from '../shell';

/* Small holes that stand in a pattern round a middle: bolts of a driver, screws of a terminal. */

/** Middles of holes evenly round a circle, the first `angle` degrees right of straight up. */
export function onCircle(middle: Point, diameter: number, count: number, angle: number): Point[] {
	return Array.from({ length: count }, (_, i) => {
		const turn = ((angle + (360 * i) / count) * Math.PI) / 180;
		const r = diameter / 2;
		return { x: middle.x + r * Math.sin(turn), y: middle.y + r * Math.cos(turn) };
	});
}

/** Middles at the corners of a rectangle. */
export function onRectangle(middle: Point, across: number, up: number): Point[] {
	const [dx, dy] = [across / 2, up / 2];
	return [
		[-dx, -dy],
		[dx, -dy],
		[dx, dy],
		[-dx, dy],
	].map(([x = 0, y = 0]) => ({ x: middle.x + x, y: middle.y + y }));
}

export function patternHoles(
	at: readonly Point[],
	diameter: number,
	own: Pick<Hole, 'of' | 'name'> & { readonly pattern: HolePattern },
): Hole[] {
	return at.map((p) => ({ ...roundHole(p, diameter), ...own }));
}

/** How far straight pieces may lie off an arc when a distance to it is looked at, ticks. */
const FINE = 16;

/** What is wrong with the first of some holes that cannot be drilled, in words; null with none. */
export function amiss(
	holes: readonly Hole[],
	face: readonly Point[],
	opening: Outline,
): 'off the board' | 'in the opening' | 'in each other' | null {
	const edge = flatten(opening, FINE);
	const radius = (h: Hole): number => nth(h.size, 0) / 2;
	const near = (h: Hole, outline: readonly Point[]): boolean =>
		distanceTo(h.centre, outline) < radius(h);
	if (holes.some((h) => whereIs(h.centre, face) !== 'inside' || near(h, face)))
		return 'off the board';
	if (holes.some((h) => whereIs(h.centre, edge) === 'inside' || near(h, edge)))
		return 'in the opening';
	const close = (a: Hole, b: Hole): boolean =>
		Math.hypot(a.centre.x - b.centre.x, a.centre.y - b.centre.y) < radius(a) + radius(b);
	return holes.some((a, i) => holes.slice(i + 1).some((b) => close(a, b))) ? 'in each other' : null;
}
