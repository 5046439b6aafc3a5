import type { Point } from '../../../src/lib/geometry/outline';

/*
 * A picture of a cardboard template with a sheet of A4 paper on it, as a camera leaning by 24
 * degrees would see it. Made, not taken: so the true outline is known and what the planner reads
 * out of it can be held against it.
 */

/** The template as it truly is, millimetres. */
export const TRUE_OUTLINE: readonly Point[] = [
	{ x: 0, y: 0 },
	{ x: 470, y: 0 },
	{ x: 520, y: 120 },
	{ x: 480, y: 330 },
	{ x: 300, y: 380 },
	{ x: 60, y: 350 },
];
/** The paper: 210 x 297, its lower left corner. */
const PAPER_AT: Point = { x: 150, y: 35 };

export const SIZE = { width: 1600, height: 1200 };
const LEAN = (24 * Math.PI) / 180;
const FAR = 900; // mm from lens to the middle of the template
const FOCUS = 1500; // pixels

/** Where a point of the template appears in the picture, pixels, y down. */
export function seen(p: Point): Point {
	const x = p.x - 260;
	const y = p.y - 185;
	const depth = FAR + y * Math.sin(LEAN);
	return {
		x: SIZE.width / 2 + (FOCUS * x) / depth,
		y: SIZE.height / 2 - (FOCUS * y * Math.cos(LEAN)) / depth,
	};
}

const pixel = (p: Point): Point => ({ x: Math.round(p.x), y: Math.round(p.y) });

/**
 * Corners of the paper in the order they are marked: top left, top right, bottom right, bottom
 * left.
 */
export const PAPER_SEEN: readonly Point[] = [
	[0, 297],
	[210, 297],
	[210, 0],
	[0, 0],
].map(([x, y]) => pixel(seen({ x: PAPER_AT.x + x!, y: PAPER_AT.y + y! })));

export const OUTLINE_SEEN: readonly Point[] = TRUE_OUTLINE.map((p) => pixel(seen(p)));

const list = (points: readonly Point[]): string => points.map((p) => `${p.x},${p.y}`).join(' ');

/** The picture itself. */
export function picture(): string {
	return `<svg xmlns="http://www.w3.org/2000/svg" width="${SIZE.width}" height="${SIZE.height}" viewBox="0 0 ${SIZE.width} ${SIZE.height}">
<title>A cardboard template with a sheet of A4 paper on it, seen from above at a lean</title>
<rect width="${SIZE.width}" height="${SIZE.height}" fill="#6f6a63"/>
<polygon points="${list(OUTLINE_SEEN)}" fill="#b48a56" stroke="#8d6a3d" stroke-width="3"/>
<polygon points="${list(PAPER_SEEN)}" fill="#f7f6f2"/>
</svg>
`;
}
