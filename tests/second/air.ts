import { holds, innerCorners, inward, linesOf, cornersOf, boardsOf, meet } from './section';
import type { Form, Line, Spot } from './section';

/*
 * The air of a box found by trying points: each is in a board, in a vent, or in air, as the numbers
 * of the job say where things are. x runs from the inside of the left end, y from outside the
 * front to the back, z from the outside of the bottom up. mm.
 */

interface Point {
	readonly x: number;
	readonly y: number;
	readonly z: number;
}
type Takes = (p: Point) => boolean;

/** What stands in the box, as the job gives it. Thicknesses beside. */
export interface Filling {
	/** One layer glued inside the front. */
	readonly doubler: number | null;
	/** Upright from end to end of the depth. */
	readonly divider: { readonly at: number; readonly thick: number } | null;
	readonly frame: {
		readonly at: number;
		readonly rim: number;
		readonly windows: number;
		readonly thick: number;
	} | null;
	readonly shelf: {
		readonly at: number;
		readonly from: number;
		readonly length: number;
		readonly thick: number;
	} | null;
	/** Along the height: from the left, from the front. */
	readonly rod: { readonly a: number; readonly b: number; readonly diameter: number } | null;
	readonly cleats: { readonly width: number; readonly thick: number } | null;
	/** A cut-out in the front: across from the left edge of the board, up from its lower edge. */
	readonly cutout: { readonly at: Spot; readonly diameter: number; readonly litres: number } | null;
	/** In the back: its middle as the cut-out's, but seen from behind. */
	readonly tube: {
		readonly at: Spot;
		readonly diameter: number;
		readonly wall: number;
		readonly length: number;
	} | null;
	readonly slot: { readonly gap: number; readonly length: number; readonly thick: number } | null;
}

export interface Room {
	/** Litres between the walls and dividers, and of air once all stands in it. */
	readonly gross: number;
	readonly net: number;
}

/** The chambers, from the left. `inside`: from end to end. */
export function roomsOf(
	form: Form,
	thick: (board: string) => number,
	inside: { readonly width: number; readonly leftEnd: number },
	filling: Filling,
	points: number,
): Room[] {
	const lines = linesOf(cornersOf(form));
	const walls = boardsOf(form.kind).map(thick);
	const ring = innerCorners(lines, walls);
	const low = { x: Math.min(...ring.map((p) => p.x)), y: Math.min(...ring.map((p) => p.y)) };
	const high = { x: Math.max(...ring.map((p) => p.x)), y: Math.max(...ring.map((p) => p.y)) };
	const { divider, cutout } = filling;
	const full = takers(
		form,
		thick,
		{ inside, ring, walls: lines.map((l, k) => inward(l, walls[k]!)) },
		filling,
	);
	const rooms = (divider ? [0, 1] : [0]).map(() => ({ gross: 0, net: 0 }));
	const each = (inside.width * (high.x - low.x) * (high.y - low.y)) / points / 1e6;
	for (let n = 1; n <= points; n++) {
		const [u, v, w] = spread(n, points);
		const p = {
			x: u * inside.width,
			y: low.x + v * (high.x - low.x),
			z: low.y + w * (high.y - low.y),
		};
		if (!holds(ring, { x: p.y, y: p.z })) continue;
		if (divider && p.x >= divider.at && p.x <= divider.at + divider.thick) continue;
		const room = rooms[divider && p.x > divider.at ? 1 : 0]!;
		room.gross += each;
		if (!full.some((takes) => takes(p))) room.net += each;
	}
	if (cutout) {
		const across = cutout.at.x - inside.leftEnd;
		rooms[divider && across > divider.at ? 1 : 0]!.net -= cutout.litres;
	}
	return rooms;
}

interface Walls {
	readonly inside: { readonly width: number; readonly leftEnd: number };
	readonly ring: readonly Spot[];
	readonly walls: readonly Line[];
}

/** Everything that takes air away. */
function takers(form: Form, thick: (board: string) => number, of: Walls, f: Filling): Takes[] {
	const { inside, walls } = of;
	const front = thick('front');
	const floor = thick('bottom');
	const step = front + (f.doubler ?? 0);
	const takes: Takes[] = [];
	const round = (x: number, z: number, mid: Spot, diameter: number): boolean =>
		Math.hypot(x - mid.x, z - mid.y) <= diameter / 2;
	if (f.doubler !== null) {
		const hole = f.cutout;
		takes.push(
			({ x, y, z }) => y <= step && !(hole && round(x + inside.leftEnd, z, hole.at, hole.diameter)),
		);
	}
	if (f.frame) {
		const { at, rim, windows, thick: t } = f.frame;
		const open = windowsOf(
			walls.map((l) => (l.a < -0.5 ? inward(l, f.doubler ?? 0) : l)),
			rim,
			windows,
		);
		takes.push(({ x, y, z }) => Math.abs(x - at) <= t / 2 && !open({ x: y, y: z }));
	}
	if (f.shelf) {
		const { at, from, length, thick: t } = f.shelf;
		takes.push(({ x, z }) => Math.abs(z - floor - at) <= t / 2 && x >= from && x <= from + length);
	}
	if (f.rod) {
		const { a, b, diameter } = f.rod;
		takes.push(({ x, y }) => Math.hypot(x - a, y - front - b) <= diameter / 2);
	}
	if (f.cleats) takes.push(inCorner(walls, f.cleats, f.doubler ?? 0));
	if (f.tube) {
		const { at, diameter, wall, length } = f.tube;
		const mid = { x: form.width - at.x - inside.leftEnd, y: at.y };
		takes.push(({ x, y, z }) => y >= form.depth - length && round(x, z, mid, diameter + 2 * wall));
	}
	if (f.slot) {
		const { gap, length, thick: t } = f.slot;
		takes.push(({ y, z }) => z <= floor + gap + t && y <= length);
	}
	return takes;
}

/** Is a spot of the side view in one of the windows, a rim apart and a rim from the walls? */
function windowsOf(walls: readonly Line[], rim: number, count: number): (p: Spot) => boolean {
	const lines = walls.map((l) => inward(l, rim));
	const ring = lines.map((l, k) => meet(lines[(k + lines.length - 1) % lines.length]!, l));
	const low = Math.min(...ring.map((p) => p.x));
	const long = Math.max(...ring.map((p) => p.x)) - low;
	const each = (long - (count - 1) * rim) / count;
	return (p) => holds(ring, p) && (p.x - low) % (each + rim) <= each;
}

/** Strips along the four corners of a plain box, their width on the level boards. */
function inCorner(
	walls: readonly Line[],
	{ width, thick }: { readonly width: number; readonly thick: number },
	doubler: number,
): Takes {
	const gap = (p: Spot, level: boolean): number =>
		Math.min(
			...walls
				.filter(({ a }) => Math.abs(a) < 0.5 === level)
				.map((l) => l.c - (l.a < -0.5 ? doubler : 0) - l.a * p.x - l.b * p.y),
		);
	return ({ y, z }) => gap({ x: y, y: z }, true) <= thick && gap({ x: y, y: z }, false) <= width;
}

/**
 * The n-th of a row of points in the unit cube that leaves no large gap and no heap (Hammersley):
 * even in the first direction, the digits of n mirrored in the others.
 */
const spread = (n: number, of: number): [number, number, number] => [
	(n - 0.5) / of,
	mirrored(n, 2),
	mirrored(n, 3),
];

/** The digits of n to a base, written behind the point from the last to the first. */
function mirrored(n: number, base: number): number {
	let sum = 0;
	for (let rest = n, place = 1 / base; rest > 0; rest = Math.floor(rest / base), place /= base)
		sum += (rest % base) * place;
	return sum;
}
