import { nth } from '../../measure';
import { type BoxBoard, flat } from '../box';
import { type Outline, type Point, mirrored, mirrorOrder } from '../../geometry';

/** A rectangle of the board where the inside is cut back. */
export interface Rabbet {
	readonly low: Point;
	readonly high: Point;
	/** How deep it goes from the inside face. */
	readonly deep: number;
}

/**
 * A board as its drawing shows it: from the face its part is cut from. Ticks, from the lower left
 * corner.
 */
export interface Facing extends Pick<
	BoxBoard,
	'label' | 'name' | 'edges' | 'thickness' | 'long' | 'short' | 'shift' | 'grain' | 'notes'
> {
	readonly seen: 'outside' | 'inside';
	/** The face that is seen, and the one behind it. */
	readonly near: Outline;
	readonly far: Outline;
	readonly holes: BoxBoard['holes'];
	readonly devices: BoxBoard['devices'];
	readonly rabbets: readonly Rabbet[];
}

/**
 * Looks at a board from outside, or from inside where its part is turned over to match the other
 * end.
 */
export const facing = (b: BoxBoard): Facing => facingFrom(b, b.view ?? 'outside');

/** Looks at a board from the side asked for. */
export function facingFrom(b: BoxBoard, side: Facing['seen']): Facing {
	const { label, name, edges, thickness, long, short, shift, grain, notes } = b;
	const common = { label, name, thickness, long, short, grain, notes, ...(shift ? { shift } : {}) };
	const rabbets = rabbetsOf(b);
	if (side === 'outside') {
		const { outside: near, inside: far, holes, devices } = b;
		return { ...common, seen: 'outside', near, far, edges, holes, devices, rabbets };
	}
	const flip = (o: Outline): Outline => mirrored(o, long.across / 2);
	return {
		...common,
		seen: 'inside',
		near: flip(b.inside),
		far: flip(b.outside),
		edges: mirrorOrder(edges),
		holes: b.holes.map((h) => ({
			...h,
			outline: flip(h.outline),
			centre: { x: long.across - h.centre.x, y: h.centre.y },
			...(h.pattern ? { pattern: turnedOver(h.pattern, long.across) } : {}),
		})),
		devices: b.devices.map((d) => ({ ...d, body: flip(d.body), space: flip(d.space) })),
		rabbets,
	};
}

/** Bolts or screws as they stand seen from the other side. */
function turnedOver(pattern: Pattern, wide: number): Pattern {
	const middle = { x: wide - pattern.middle.x, y: pattern.middle.y };
	if (pattern.kind === 'rectangle') return { ...pattern, middle };
	return { ...pattern, middle, angle: (360 - pattern.angle) % 360 };
}

type Pattern = NonNullable<BoxBoard['holes'][number]['pattern']>;

/**
 * The rabbets of a wall in the frame of its drawing; a rabbet is cut into the inside face and never
 * turned over.
 */
function rabbetsOf(b: BoxBoard): Rabbet[] {
	const first = flat(nth(b.solid.outside, 0), b.frame);
	const home = { x: first.x - nth(b.outside, 0).x, y: first.y - nth(b.outside, 0).y };
	return b.rabbets.map((cut) => {
		const points = [...cut.outside, ...cut.inside];
		const at = points.map((p) => flat(p, b.frame));
		const up = points.map((p) => depthOf(b, p));
		const of = (pick: (p: Point) => number, most: boolean, from: number): number =>
			(most ? Math.max : Math.min)(...at.map(pick)) - from;
		return {
			low: { x: of((p) => p.x, false, home.x), y: of((p) => p.y, false, home.y) },
			high: { x: of((p) => p.x, true, home.x), y: of((p) => p.y, true, home.y) },
			deep: Math.max(...up) - Math.min(...up),
		};
	});
}

function depthOf(b: BoxBoard, p: { x: number; y: number; z: number }): number {
	const { at, n } = b.frame;
	return (p.x - at.x) * n.x + (p.y - at.y) * n.y + (p.z - at.z) * n.z;
}
