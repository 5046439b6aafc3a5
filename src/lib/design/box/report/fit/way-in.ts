import type { Box } from '../../../../job';
import { cornerAt, type Point } from '../../../../geometry';
import { hull } from '../../board';
import type { Sizes3 } from '../../box-plan';
import type { Point3 } from '../../solid';
import { type ClothRound, sum } from './cloth-round';

/** A way to look at a box, and which of its sizes lie across and up as it is seen then. */
type View = readonly [name: string, look: (p: Point3) => Point, across: Axis, up: Axis];
type Axis = keyof Sizes3;
const VIEWS: readonly View[] = [
	['Front first', (p) => ({ x: p.x, y: p.z }), 'width', 'height'],
	['One end first', (p) => ({ x: p.y, y: p.z }), 'depth', 'height'],
	['Top or bottom first', (p) => ({ x: p.x, y: p.y }), 'width', 'depth'],
];

/**
 * Straight through the opening: the outline seen from the side that goes first, turned in its plane
 * until it fits, at any angle. Square to the opening, each side leaves the cloth on it its room; at
 * any other angle all do, the thickest there is. What passes at none may still be wriggled in,
 * which nobody should count on.
 */
export function turnFor(box: Box, points: readonly Point3[], cloth: ClothRound): string | null {
	const { opening } = box;
	if (!opening) return null;
	for (const [name, look, across, up] of VIEWS) {
		const outline = hull(points.map(look));
		const [x, y] = [sum(cloth[across]), sum(cloth[up])];
		const most = 2 * Math.max(...cloth[across], ...cloth[up]);
		const room = (lessX: number, lessY: number) =>
			[opening.width - lessX, opening.height - lessY] as const;
		const tilted = room(most, most);
		for (const angle of [...ANGLES, ...exactAngles(outline, ...tilted)]) {
			const free = angle === 0 ? room(x, y) : angle === 90 ? room(y, x) : tilted;
			if (!fitsAt(outline, angle, ...free)) continue;
			const shownAngle = Math.round(angle * 100) / 100;
			return angle === 0 ? `${name}, upright as it stands.` : `${name}, turned ${shownAngle}°.`;
		}
	}
	return null;
}

/**
 * Every angle at which an outline that fits at all must fit, degrees. Between two angles at which a
 * side lies flush the spread either way is that of two fixed corners, which rises and falls again:
 * where it is small enough ends where a side is flush or where the spread is the opening itself.
 */
function exactAngles(outline: readonly Point[], width: number, height: number): number[] {
	const found: number[] = [];
	const add = (radians: number): void => {
		const degrees = (radians * 180) / Math.PI;
		found.push(((degrees % 180) + 180) % 180);
	};
	outline.forEach((p, i) => {
		const q = cornerAt(outline, i + 1);
		const flush = -Math.atan2(q.y - p.y, q.x - p.x);
		[flush, flush + Math.PI / 2].forEach(add);
		for (const r of outline) {
			const long = Math.hypot(r.x - p.x, r.y - p.y);
			const lies = Math.atan2(r.y - p.y, r.x - p.x);
			if (long >= width && long > 0)
				for (const side of [1, -1]) add(side * Math.acos(width / long) - lies);
			if (long >= height && long > 0)
				for (const side of [1, -1]) add(side * Math.acos(height / long) + Math.PI / 2 - lies);
		}
	});
	return found.sort((a, b) => Math.min(a, 180 - a) - Math.min(b, 180 - b));
}

/** Upright, then a quarter turn, then whole degrees, the small turns first. */
const ANGLES: readonly number[] = [
	0,
	90,
	...Array.from({ length: 179 }, (_, i) => i + 1).sort(
		(a, b) => Math.min(a, 180 - a) - Math.min(b, 180 - b),
	),
];

function fitsAt(
	outline: readonly Point[],
	degrees: number,
	width: number,
	height: number,
): boolean {
	const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
	const xs = outline.map((p) => p.x * c - p.y * s);
	const ys = outline.map((p) => p.x * s + p.y * c);
	const spread = (n: readonly number[]): number => Math.max(...n) - Math.min(...n);
	return spread(xs) <= width + 1e-6 && spread(ys) <= height + 1e-6;
}
