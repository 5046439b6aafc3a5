import { bounds, type Outline, type Point } from '../../../geometry';
import type { Hole } from '../board';
import { roundHole } from '../shell';
import type { Framed } from './framed';

/** The farthest a cut-out reaches from its centre, ticks. */
export function cutRadius({ cutout }: Framed): number {
	if (cutout.kind === 'round') return cutout.diameter / 2;
	if (cutout.kind === 'oval') return Math.max(cutout.length, cutout.width) / 2;
	const b = bounds(cutout.outline);
	return Math.hypot(b.length, b.width) / 2;
}

/** Outline of the cut-out round its centre, and its size for the drawing. */
export function cutHole(driver: Framed, at: Point): Hole {
	const { cutout } = driver;
	if (cutout.kind === 'round') return roundHole(at, cutout.diameter);
	if (cutout.kind === 'oval')
		return {
			...roundHole(at, cutout.width),
			outline: oval(at, cutout.length, cutout.width),
			size: [cutout.length, cutout.width],
		};
	const b = bounds(cutout.outline);
	const outline = cutout.outline.map((c) => ({
		...('bulge' in c && c.bulge ? { bulge: c.bulge } : {}),
		x: c.x - b.x - b.length / 2 + at.x,
		y: c.y - b.y - b.width / 2 + at.y,
	}));
	return { ...roundHole(at, 0), outline, size: [b.length, b.width] };
}

/** Straight sides with half circles at the ends of the longer way. */
function oval(at: Point, length: number, width: number): Outline {
	const r = Math.min(length, width) / 2;
	const [dx, dy] = length >= width ? [length / 2 - r, r] : [r, width / 2 - r];
	const c = (x: number, y: number, bulge = 0): Outline[number] => ({
		x: at.x + x,
		y: at.y + y,
		...(bulge ? { bulge } : {}),
	});
	return length >= width
		? [c(-dx, -dy), c(dx, -dy, 1), c(dx, dy), c(-dx, dy, 1)]
		: [c(dx, -dy), c(dx, dy, 1), c(-dx, dy), c(-dx, -dy, 1)];
}
