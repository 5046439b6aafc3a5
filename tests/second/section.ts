/*
 * The side view of a box worked with plain numbers, mm: outer corners from the fields of its form,
 * walls as lines moved inward by their thickness. A second way to the same figures: nothing here is
 * taken from the planner.
 */

export interface Spot {
	readonly x: number; // behind the front
	readonly y: number; // above the bottom
}

export interface Form {
	readonly kind: 'plain' | 'slanted' | 'stepped';
	readonly width: number;
	readonly height: number;
	readonly depth: number;
	/** Of 'slanted': depth at the top, the back leaning. */
	readonly top: number;
	/** Of 'stepped': taken out at the bottom of the back. */
	readonly step: Spot;
}

/** Outer corners, front at the left, from the lower front corner on against the clock. */
export function cornersOf({ kind, height: h, depth: d, top, step }: Form): Spot[] {
	const front = [
		{ x: 0, y: h },
		{ x: 0, y: 0 },
	];
	if (kind === 'plain') return [{ x: d, y: 0 }, { x: d, y: h }, ...front];
	if (kind === 'slanted') return [{ x: d, y: 0 }, { x: top, y: h }, ...front];
	const foot = d - step.x;
	return [{ x: foot, y: 0 }, { x: foot, y: step.y }, { x: d, y: step.y }, { x: d, y: h }, ...front];
}

/** The board of each side, the one that leaves corner k. */
export function boardsOf(kind: Form['kind']): string[] {
	return kind === 'stepped'
		? ['step-face', 'step-top', 'back', 'top', 'front', 'bottom']
		: ['back', 'top', 'front', 'bottom'];
}

/** A line as a x + b y = c, (a, b) of length 1 and pointing out of the box. */
export interface Line {
	readonly a: number;
	readonly b: number;
	readonly c: number;
}

export function linesOf(corners: readonly Spot[]): Line[] {
	return corners.map((p, k) => {
		const q = corners[(k + 1) % corners.length]!;
		const long = Math.hypot(q.x - p.x, q.y - p.y);
		const a = (q.y - p.y) / long;
		const b = (p.x - q.x) / long;
		return { a, b, c: a * p.x + b * p.y };
	});
}

export const inward = ({ a, b, c }: Line, by: number): Line => ({ a, b, c: c - by });

export function meet(p: Line, q: Line): Spot {
	const det = p.a * q.b - q.a * p.b;
	return { x: (p.c * q.b - q.c * p.b) / det, y: (p.a * q.c - q.a * p.c) / det };
}

/**
 * Is the spot inside a ring of corners? A ray to the right crosses its sides an odd number of
 * times.
 */
export function holds(ring: readonly Spot[], { x, y }: Spot): boolean {
	let odd = false;
	ring.forEach((p, k) => {
		const q = ring[(k + 1) % ring.length]!;
		if (p.y > y !== q.y > y && x < p.x + ((y - p.y) * (q.x - p.x)) / (q.y - p.y)) odd = !odd;
	});
	return odd;
}

/** The inside corners: where the inner faces of neighbours meet. */
export function innerCorners(lines: readonly Line[], thick: readonly number[]): Spot[] {
	return lines.map((line, k) => {
		const before = (k + lines.length - 1) % lines.length;
		return meet(inward(lines[before]!, thick[before]!), inward(line, thick[k]!));
	});
}
