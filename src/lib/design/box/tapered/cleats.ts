import { nth } from '../../../measure';
import type { Cleats, Material } from '../../../job';
import {
	airHolds,
	type Plane,
	apart,
	ENDS,
	level,
	meet3,
	ROUND,
	type Across,
	type Six,
	frameOf,
	type Solid,
	cross3,
	dot3,
	length3,
	scale3,
	sub3,
	unit3,
	type Point3,
} from '../solid';
import { boardOf, type Board, woodOf } from '../board';
import { stripSeam, type Cleated } from '../inside';
import { sideName } from './tapered';
import type { TaperedRoom } from './divide';

/*
 * Strips in the corners of a double-tapered box. Each lies on one wall with its bevelled edge
 * against the next: along the four corners from front to back, and round the inside of front and
 * back. All their faces are planes already known.
 */

/** A strip between two planes that cross it. */
interface Strip {
	readonly name: string;
	readonly wall: Six;
	/** The wall it lies on, and its own inner face. */
	readonly on: Plane;
	readonly top: Plane;
	/** The wall its bevelled edge meets, and its free edge. */
	readonly against: Plane;
	readonly free: Plane;
	readonly from: Plane;
	readonly to: Plane;
	/** The axis it runs along. */
	readonly along: Across;
}

/** The strips of one chamber, parted where a frame stands across them. */
export function taperedCleats(
	room: TaperedRoom,
	wish: Cleats,
	material: Material,
	braces: readonly Board[],
	first: number,
): Cleated {
	const boards: Board[] = [];
	const missed = new Set<string>();
	for (const strip of stripsOf(room, wish, material.measured)) {
		const pieces = parted(strip, braces);
		const made = pieces
			.map(solidOf)
			.filter((s) => stands(s, room, wish, material.measured, braces));
		if (made.length < pieces.length || pieces.length === 0) missed.add(strip.name);
		for (const solid of made)
			boards.push(boardOfStrip(strip, solid, material, first + boards.length));
	}
	const taken = boards.reduce((sum, b) => sum + woodOf(b), 0);
	return { boards, seams: boards.map(stripSeam), taken, missed: [...missed] };
}

/** Is it a wall of the box, and not a divider or what else closes a chamber? */
const isWall = (plane: Plane): boolean => !plane.key.startsWith('divider');

function stripsOf(room: TaperedRoom, wish: Cleats, t: number): Strip[] {
	const { sides } = room.air;
	const hips = wish.where === 'ends' ? [] : ROUND.map((_, i) => hipStrip(room, i, wish.width, t));
	const along = hips.filter((s) => s !== null);
	if (wish.where === 'corners') return along;
	const ends = (['front', 'back'] as const).filter((end) => isWall(sides[end]));
	return [...along, ...ends.flatMap((end) => roundEnd(room, end, hips, wish.width, t))];
}

/** Along the corner where two leaning walls meet, lying on the one before. */
function hipStrip(room: TaperedRoom, i: number, width: number, t: number): Strip | null {
	const { sides } = room.air;
	const [wall, next] = [nth(ROUND, (i + 3) % 4), nth(ROUND, i)];
	if (!isWall(sides[wall]) || !isWall(sides[next])) return null;
	return {
		...lying(sides[wall], sides[next], sides.front, width, t),
		name: `${sideName(wall)} / ${sideName(next)}`,
		wall,
		from: sides.front,
		to: sides.back,
		along: 'depth',
	};
}

/** Round the front or the back, on each wall from the cleat of one corner to that of the next. */
function roundEnd(
	room: TaperedRoom,
	end: 'front' | 'back',
	hips: readonly (Strip | null)[],
	width: number,
	t: number,
): Strip[] {
	const { sides } = room.air;
	return ROUND.flatMap((wall, i) => {
		if (!isWall(sides[wall])) return [];
		const [before, after] = [nth(ROUND, (i + 3) % 4), nth(ROUND, (i + 1) % 4)];
		// Strips on the wall before reach as far as this wall; the corner's own strip after lies on
		// this one.
		const hip = hips[(i + 1) % 4];
		return [
			{
				...lying(sides[wall], sides[end], sides[before], width, t),
				name: `${sideName(wall)} / ${sideName(end)}`,
				wall,
				from: isWall(sides[before]) ? lifted(sides[before], t) : sides[before],
				to: hip ? hip.free : sides[after],
				along: wall === 'bottom' || wall === 'top' ? ('width' as const) : ('height' as const),
			},
		];
	});
}

const lifted = (wall: Plane, t: number): Plane => ({ ...wall, d: wall.d - t });

/**
 * A strip on `on` with one edge against another wall: its free edge is square, `width` away from
 * their corner.
 */
function lying(
	on: Plane,
	against: Plane,
	crossing: Plane,
	width: number,
	t: number,
): Pick<Strip, 'on' | 'top' | 'against' | 'free'> {
	const run = unit3(cross3(on.n, against.n));
	const across = cross3(run, on.n);
	const away = dot3(across, against.n) < 0 ? across : scale3(across, -1);
	const corner = meet3(on, against, crossing);
	const free = { key: '', n: away, d: dot3(away, corner) + width };
	return { on, top: lifted(on, t), against, free };
}

function solidOf(s: Strip): Solid {
	const face = (plane: Plane): Point3[] => [
		meet3(plane, s.against, s.from),
		meet3(plane, s.against, s.to),
		meet3(plane, s.free, s.to),
		meet3(plane, s.free, s.from),
	];
	return { outside: face(s.on), inside: face(s.top) };
}

/** The strip left and right of every frame that stands right across it. */
function parted(strip: Strip, braces: readonly Board[]): Strip[] {
	return braces.reduce<Strip[]>(
		(pieces, brace) =>
			pieces.flatMap((piece) => {
				const { axis } = ENDS[piece.along];
				const crosses = Math.abs(brace.frame.n[axis]) > 0.99;
				if (!crosses || apart(solidOf(piece), brace.solid)) return [piece];
				const [a, b] = [nth(brace.solid.outside, 0), nth(brace.solid.inside, 0)];
				const sign = piece.to.n[axis] > 0 ? 1 : -1;
				const [low, high] = [Math.min(a[axis], b[axis]), Math.max(a[axis], b[axis])];
				const [near, far] = sign > 0 ? [low, high] : [high, low];
				return [
					{ ...piece, to: level('', piece.along, near, sign) },
					{ ...piece, from: level('', piece.along, far, sign > 0 ? -1 : 1) },
				];
			}),
		[strip],
	);
}

/** Can it be made, does it lie in the air, and is nothing in its place? */
function stands(
	solid: Solid,
	room: TaperedRoom,
	wish: Cleats,
	t: number,
	braces: readonly Board[],
): boolean {
	const { outside, inside } = solid;
	const sound = outside.every((_, k) => {
		const side = (f: readonly Point3[]): Point3 => sub3(nth(f, (k + 1) % 4), nth(f, k));
		return dot3(side(outside), side(inside)) > 0;
	});
	const runs = [0, 2].map((k) => length3(sub3(nth(inside, k + 1), nth(inside, k))));
	if (!sound || Math.min(...runs) <= t || wish.width <= t / 2) return false;
	const within = [...outside, ...inside].every((p) => airHolds(room.air, p, -2));
	return within && braces.every((b) => apart(solid, b.solid));
}

function boardOfStrip(strip: Strip, solid: Solid, material: Material, n: number): Board {
	const run = unit3(sub3(nth(solid.outside, 1), nth(solid.outside, 0)));
	const up = cross3(strip.on.n, run);
	return boardOf({
		key: `cleat-${n}`,
		wall: strip.wall,
		name: `Cleat ${strip.name}`,
		role: 'cleat',
		material,
		solid,
		frame: frameOf(nth(solid.outside, 0), strip.on.n, up),
		grain: 'along',
	});
}
