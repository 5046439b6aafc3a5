import fc from 'fast-check';
import type { Point } from '../src/lib/geometry/outline';

/** Corners round 0,0 on the grid, at even angles and these distances: it never crosses itself. */
export function starOf(radii: readonly number[]): Point[] {
	return radii.map((r, i) => {
		const angle = (2 * Math.PI * i) / radii.length;
		return { x: Math.round(r * Math.cos(angle)), y: Math.round(r * Math.sin(angle)) };
	});
}

/** Any star with corners this near and this far, and so many of them. */
export function stars(
	[near, far]: readonly [number, number],
	[least, most]: readonly [number, number],
): fc.Arbitrary<Point[]> {
	return fc
		.array(fc.integer({ min: near, max: far }), { minLength: least, maxLength: most })
		.map(starOf);
}
