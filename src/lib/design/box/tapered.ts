import type { Box } from '../../job/box';
import type { ShapeOf } from '../../job/box-shape';
import type { Plane, TaperedAir } from './air';
import { boardName, boardOf, type Board } from './board';
import { shown } from './shown';
import type { Rack } from './rack';
import type { Seam } from './seam';
import { frameOf, type Frame, type Solid } from './solid';
import type { Trouble } from './trouble';
import { add3, cross3, dot3, length3, middle3, p3, scale3, sub3, unit3, type Point3 } from './vec';
import type { Material } from '../../job/stock';

/*
 * A box that narrows in both directions: front and back stand parallel, the other four boards lean. Six planes outside, the
 * same six set in by each board's thickness inside; every corner is where three of them meet.
 */

export type Six = 'front' | 'back' | 'top' | 'bottom' | 'left' | 'right';
const SIX: readonly Six[] = ['bottom', 'back', 'top', 'front', 'left', 'right'];
const ROUND: readonly Six[] = ['bottom', 'right', 'top', 'left'];

export interface TaperedShell {
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
	readonly air: TaperedAir;
	readonly outer: Readonly<Record<Six, Plane>>;
	/** Corners front bottom left, front bottom right, front top right, front top left, then the same at the back. */
	readonly outerCorners: readonly Point3[];
	readonly innerCorners: readonly Point3[];
	readonly materials: Readonly<Record<Six, Material>>;
}

type Form = Pick<TaperedShell, 'air' | 'outer' | 'outerCorners' | 'innerCorners' | 'materials'> & {
	readonly inner: Readonly<Record<Six, Plane>>;
};

/** Faces and air of a double-tapered box; null when it cannot be made, with the reason told. */
export function taperedForm(
	box: Box,
	shape: ShapeOf<'tapered'>,
	rack: Rack,
	trouble: Trouble,
): Form | null {
	const given = planesOf(shape);
	const found = SIX.map((key) => [key, rack.ofWall(key)] as const);
	if (!found.every(([, m]) => m !== null)) return null;
	const materials = Object.fromEntries(found) as Record<Six, Material>;
	const sign = box.sizes === 'outer' ? 1 : -1;
	const other = mapPlanes(given, (f) => ({
		...f,
		d: f.d - sign * materials[f.key as Six].measured,
	}));
	const [outer, inner] = box.sizes === 'outer' ? [given, other] : [other, given];
	const home = originOf(cornersOf(outer));
	const [placedOuter, placedInner] = [outer, inner].map((planes) =>
		mapPlanes(planes, (f) => ({ ...f, d: f.d - dot3(f.n, home) })),
	) as [Record<Six, Plane>, Record<Six, Plane>];
	const innerCorners = cornersOf(placedInner);
	if (!opens(innerCorners)) {
		trouble.stop(
			['shape'],
			`The form is too thin for its boards: at ${shown(Math.min(shape.back.width, shape.front.width))} x ${shown(Math.min(shape.back.height, shape.front.height))} mm nothing is left inside its narrow end.`,
			'Make the narrow end larger, or take thinner boards.',
		);
		return null;
	}
	const planes = SIX.map((key) => placedInner[key]);
	const air: TaperedAir = { kind: 'tapered', planes, volume: hexVolume(innerCorners) };
	const outerCorners = cornersOf(placedOuter);
	return { air, outer: placedOuter, inner: placedInner, outerCorners, innerCorners, materials };
}

/** Walls of a double-tapered box; null when it cannot be made, with the reason told. */
export function taperedShell(
	box: Box,
	shape: ShapeOf<'tapered'>,
	rack: Rack,
	tiltLimit: number,
	trouble: Trouble,
): TaperedShell | null {
	const form = taperedForm(box, shape, rack, trouble);
	if (!form) return null;
	refuse(box, trouble);
	const boards = boardsOf(box, form.outer, form.inner, form.materials);
	checkTilts(boards, tiltLimit, trouble);
	return { ...form, boards, seams: seamsOf(form.innerCorners, form.materials) };
}

/** The six planes of a frustum whose front and back are upright rectangles. */
function planesOf(shape: ShapeOf<'tapered'>): Record<Six, Plane> {
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

function mapPlanes(planes: Record<Six, Plane>, change: (f: Plane) => Plane): Record<Six, Plane> {
	return Object.fromEntries(SIX.map((key) => [key, change(planes[key])])) as Record<Six, Plane>;
}

/** Where three planes meet. */
export function meet3(a: Plane, b: Plane, c: Plane): Point3 {
	const bc = cross3(b.n, c.n);
	const det = dot3(a.n, bc);
	if (Math.abs(det) < 1e-9) throw new Error('bug: three planes without a common point');
	const sum = add3(
		scale3(bc, a.d),
		add3(scale3(cross3(c.n, a.n), b.d), scale3(cross3(a.n, b.n), c.d)),
	);
	return scale3(sum, 1 / det);
}

function cornersOf(f: Record<Six, Plane>): Point3[] {
	return [f.front, f.back].flatMap((face) => [
		meet3(face, f.bottom, f.left),
		meet3(face, f.bottom, f.right),
		meet3(face, f.top, f.right),
		meet3(face, f.top, f.left),
	]);
}

function originOf(corners: readonly Point3[]): Point3 {
	const least = (pick: (p: Point3) => number): number => Math.min(...corners.map(pick));
	return p3(
		least((p) => p.x),
		least((p) => p.y),
		least((p) => p.z),
	);
}

/** Are the inner corners still on their own sides? */
function opens(c: readonly Point3[]): boolean {
	return (
		[0, 4].every(
			(k) =>
				c[k + 1]!.x - c[k]!.x > 1 && c[k + 3]!.z - c[k]!.z > 1 && c[k + 2]!.x - c[k + 3]!.x > 1,
		) && c[4]!.y - c[0]!.y > 1
	);
}

/**
 * Volume between two parallel rectangles: the prismatoid formula (Moscow papyrus, problem 14; Kern and Bland 1948, p. 75).
 * The frustum formula would be right only for similar rectangles.
 */
export function hexVolume(c: readonly Point3[]): number {
	const area = (k: number, other: number): number => {
		const p = [0, 1, 2, 3].map((i) => middle3(c[k + i]!, c[other + i]!));
		return (p[1]!.x - p[0]!.x) * (p[3]!.z - p[0]!.z);
	};
	return prismatoid(area(0, 0), area(0, 4), area(4, 4), c[4]!.y - c[0]!.y);
}

/** h / 6 (A1 + 4 Am + A2): exact for anything whose section changes as a square of the height or less. */
export function prismatoid(first: number, middle: number, last: number, height: number): number {
	return (height / 6) * (first + 4 * middle + last);
}

type Past = 'level' | 'upright' | 'mitre';

/** What is asked for at the four edges that run from front to back. */
function hipJoint(box: Box, level: Six, upright: Six): Past {
	const wish = box.corners.find((c) => c.between.includes(level) && c.between.includes(upright));
	if (!wish)
		return { 'level-past': 'level', 'upright-past': 'upright', mitre: 'mitre' }[box.joint] as Past;
	if (wish.joint === 'mitre') return 'mitre';
	const first = wish.joint === 'first-past';
	return (wish.between[0] === level) === first ? 'level' : 'upright';
}

function boardsOf(
	box: Box,
	outer: Record<Six, Plane>,
	inner: Record<Six, Plane>,
	materials: Record<Six, Material>,
): Board[] {
	const over = box.ends.fit !== 'between';
	return SIX.map((key) => {
		const closes = key === 'front' || key === 'back';
		const solid = closes
			? closing(key, over ? outer : inner, outer, inner)
			: leaning(box, key, over ? inner : outer, outer, inner);
		const material = materials[key];
		const frame = faceFrame(outer[key], solid);
		const role = key === 'left' || key === 'right' ? ('end' as const) : ('wall' as const);
		return boardOf({
			key,
			wall: key,
			name: key === 'left' ? 'Left side' : key === 'right' ? 'Right side' : boardName(key),
			role,
			material,
			frame,
			solid,
			grain: box.boards[key]?.grain ?? 'along',
		});
	});
}

function faceFrame(plane: Plane, solid: Solid): Frame {
	const level = Math.abs(plane.n.z) > 0.8;
	return frameOf(
		solid.outside[0]!,
		plane.n,
		level ? p3(0, plane.n.z > 0 ? 1 : -1, 0) : p3(0, 0, 1),
	);
}

/** Front or back: over the leaning boards its edges follow their outside, between them their inside. */
function closing(
	key: 'front' | 'back',
	round: Record<Six, Plane>,
	outer: Record<Six, Plane>,
	inner: Record<Six, Plane>,
): Solid {
	const face = (plane: Plane): Point3[] =>
		ROUND.map((side, i) => meet3(plane, round[side], round[ROUND[(i + 3) % 4]!]));
	return { outside: face(outer[key]), inside: face(inner[key]) };
}

/** One of the four: cut by its two neighbours at the hips and by front and back. */
function leaning(
	box: Box,
	key: Six,
	ends: Record<Six, Plane>,
	outer: Record<Six, Plane>,
	inner: Record<Six, Plane>,
): Solid {
	const i = ROUND.indexOf(key);
	const level = key === 'bottom' || key === 'top';
	const corner = (side: Plane, neighbour: Six, end: 'front' | 'back', isOut: boolean): Point3 => {
		const joint = level ? hipJoint(box, key, neighbour) : hipJoint(box, neighbour, key);
		if (joint === 'mitre') return meet3(side, (isOut ? outer : inner)[neighbour], ends[end]);
		const past = (joint === 'level') === level;
		return meet3(side, (past ? outer : inner)[neighbour], ends[end]);
	};
	const face = (plane: Plane, isOut: boolean): Point3[] => {
		const [before, after] = [ROUND[(i + 3) % 4]!, ROUND[(i + 1) % 4]!];
		return [
			corner(plane, before, 'front', isOut),
			corner(plane, after, 'front', isOut),
			corner(plane, after, 'back', isOut),
			corner(plane, before, 'back', isOut),
		];
	};
	return { outside: face(outer[key], true), inside: face(inner[key], false) };
}

/** What is laid out only along a side profile is left out, and said. */
function refuse(box: Box, trouble: Trouble): void {
	const parts: readonly (readonly [keyof Box, boolean, string])[] = [
		['doublers', box.doublers.length > 0, 'Doubled boards'],
		['dividers', box.dividers.length > 0, 'Dividers'],
		['braces', box.braces.length > 0, 'Braces'],
		['cleats', box.cleats !== null, 'Cleats'],
	];
	for (const [field, there, name] of parts) {
		if (!there) continue;
		trouble.stop(
			[field],
			`${name} are worked out for boxes of one side profile; this one tapers in both directions.`,
			'Leave them out of the plan and scribe them in, or make the box slanted.',
		);
	}
	if (box.ends.fit === 'rabbet') {
		trouble.check(
			['ends', 'fit'],
			'A rabbet into four leaning boards cannot be cut on the saw.',
			"Set front and back over or between; the plan has them 'over'.",
		);
	}
}

function checkTilts(boards: readonly Board[], limit: number, trouble: Trouble): void {
	for (const board of boards) {
		const worst = Math.max(...board.edges.map((e) => e.tilt));
		if (worst <= limit + 1e-9) continue;
		trouble.check(
			['corners'],
			`${board.name} needs an edge tilted ${Math.round(worst * 10) / 10}°; the saw stops at ${limit}°.`,
			'Let one board run past the other instead of a mitre, or lean the boards less.',
		);
	}
}

function seamsOf(c: readonly Point3[], materials: Record<Six, Material>): Seam[] {
	const seam = (a: Six, b: Six, from: Point3, to: Point3): Seam => {
		const length = length3(sub3(to, from));
		const t = Math.min(materials[a].measured, materials[b].measured);
		return {
			letter: '',
			between: [a, b],
			kind: 'butt',
			length,
			area: length * t,
			at: middle3(from, to),
			seals: true,
		};
	};
	const hips = ROUND.map((key, i) => seam(ROUND[(i + 3) % 4]!, key, c[i]!, c[i + 4]!));
	const closings = (['front', 'back'] as const).flatMap((end, e) =>
		ROUND.map((key, i) => seam(key, end, c[4 * e + i]!, c[4 * e + ((i + 1) % 4)]!)),
	);
	return [...hips, ...closings];
}
