import { nth } from '../../../measure';
import type { Box, ShapeOf, Material } from '../../../job';
import {
	type TaperedAir,
	type Plane,
	hexCorners,
	hexVolume,
	mapPlanes,
	opens,
	SIX,
	type Planes,
	type Six,
	dot3,
	p3,
	sub3,
	unit3,
	type Point3,
} from '../solid';
import type { BoardRack } from '../rack';
import type { ProblemLog } from '../../problem-log';

/*
 * A box that narrows in both directions: six planes outside, the same six set in by each board's
 * thickness inside.
 */

export interface Form {
	readonly air: TaperedAir;
	readonly outer: Planes;
	readonly inner: Planes;
	readonly outerCorners: readonly Point3[];
	readonly innerCorners: readonly Point3[];
	readonly materials: Readonly<Record<Six, Material>>;
}

/** The air inside six planes; null where nothing is left inside them. */
export function airWithin(sides: Planes): TaperedAir | null {
	const corners = hexCorners(sides);
	if (!opens(corners)) return null;
	const planes = SIX.map((key) => sides[key]);
	return { kind: 'tapered', sides, planes, volume: hexVolume(corners) };
}

/** Faces and air of a double-tapered box; null when it cannot be made, with the reason told. */
export function taperedForm(
	box: Box,
	shape: ShapeOf<'tapered'>,
	rack: BoardRack,
	log: ProblemLog,
): Form | null {
	const given = planesOf(shape);
	const found = SIX.map((key) => [key, rack.ofWall(key)] as const);
	if (!found.every(([, m]) => m !== null)) return null;
	const materials = Object.fromEntries(found) as Record<Six, Material>;
	const sign = box.sizes === 'outer' ? 1 : -1;
	const other = mapPlanes(given, (f, key) => ({
		...f,
		d: f.d - sign * materials[key].measured,
	}));
	const both = box.sizes === 'outer' ? [given, other] : [other, given];
	const home = originOf(hexCorners(nth(both, 0)));
	const [outer, inner] = both.map((planes) =>
		mapPlanes(planes, (f) => ({ ...f, d: f.d - dot3(f.n, home) })),
	) as [Planes, Planes];
	const air = airWithin(inner);
	if (!air) {
		tooThin(shape, log);
		return null;
	}
	const [outerCorners, innerCorners] = [hexCorners(outer), hexCorners(inner)];
	return { air, outer, inner, outerCorners, innerCorners, materials };
}

function tooThin({ front, back }: ShapeOf<'tapered'>, log: ProblemLog): void {
	const end = [Math.min(back.width, front.width), Math.min(back.height, front.height)];
	log.stop(
		['shape'],
		`The form is too thin for its boards: at ${log.say(end)} nothing is left inside its narrow end.`,
		'Make the narrow end larger, or take thinner boards.',
	);
}

/** The six planes of a frustum whose front and back are upright rectangles. */
function planesOf(shape: ShapeOf<'tapered'>): Planes {
	const { front, back, depth } = shape;
	const left = shape.shift ?? (front.width - back.width) / 2;
	const low = shape.rise ?? (front.height - back.height) / 2;
	// The lean of each board along the depth: how its face moves outward from front to back.
	const plane = (key: Six, out: Point3, at: number, grows: number): Plane => {
		const n = unit3(sub3(out, p3(0, grows / depth, 0)));
		return { key, n, d: at * dot3(out, n) };
	};
	return {
		left: plane('left', p3(-1, 0, 0), 0, -left),
		right: plane('right', p3(1, 0, 0), front.width, left + back.width - front.width),
		bottom: plane('bottom', p3(0, 0, -1), 0, -low),
		top: plane('top', p3(0, 0, 1), front.height, low + back.height - front.height),
		front: { key: 'front', n: p3(0, -1, 0), d: 0 },
		back: { key: 'back', n: p3(0, 1, 0), d: depth },
	};
}

function originOf(corners: readonly Point3[]): Point3 {
	const least = (pick: (p: Point3) => number): number => Math.min(...corners.map(pick));
	return p3(
		least((p) => p.x),
		least((p) => p.y),
		least((p) => p.z),
	);
}
