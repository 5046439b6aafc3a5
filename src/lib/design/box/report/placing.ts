import { around, mm, nth } from '../../../measure';
import { area, common, type Outline, type Point, boundsOfPoints } from '../../../geometry';
import type { Part } from '../../part';
import type { Board, Role } from '../board';
import type { Foot, Placing } from '../box-plan';
import { cross3, dot3, flat, type Frame, over, type Point3, scale3, sub3 } from '../solid';

/*
 * Placing lines: what each board that stands inside covers of the boards it stands on. They are
 * found from the bodies alone: two faces that lie in one plane and look at each other.
 */

/** What carries what: a board carries those further down, and the later ones of its own kind. */
const ORDER: readonly Role[] = ['doubler', 'divider', 'slot', 'brace', 'cleat'];
const rankOf = ({ role }: Board): number => ORDER.indexOf(role);

/** Faces this near lie in one plane, ticks. */
const FLUSH = 2;
/** Less is a touch of edges and nothing to mark, square ticks. */
const LEAST = mm(1) ** 2;

/**
 * What stands on each face of board `i`, each face looked at so that it lies upward; none where
 * nothing does.
 */
export function placingOf(boards: readonly Board[], parts: readonly Part[], i: number): Placing[] {
	const board = nth(boards, i);
	// A layer outside, a ring and a cleat carry nothing that stands inside.
	if (['overlay', 'ring', 'cleat'].includes(board.role)) return [];
	const faces = rankOf(board) > 0 ? (['inside', 'outside'] as const) : (['inside'] as const);
	return faces.flatMap((side): Placing[] => {
		const face = lookedAt(board, side);
		const feet = boards.flatMap((other, k): Foot[] => {
			const carried = rankOf(other) > rankOf(board) || (rankOf(other) === rankOf(board) && k > i);
			if (rankOf(other) < 0 || !carried) return [];
			const { key, name } = other;
			const own = { key, label: nth(parts, k).label, name };
			return footOf(other, face).map((outline) => ({ ...own, outline }));
		});
		return feet.length === 0 ? [] : [{ face: side, outline: face.outline, feet }];
	});
}

/** A face of a board, and where a point lies on it as it is looked at. */
interface Face {
	readonly frame: Frame;
	/** Height of the face over the plane of the frame, and which way it looks. */
	readonly height: number;
	readonly looks: Point3;
	readonly outline: Outline;
	readonly place: (p: Point3) => Point;
}

function lookedAt({ solid, frame }: Board, side: 'inside' | 'outside'): Face {
	const corners = solid[side].map((p) => flat(p, frame));
	const { x, y, length } = boundsOfPoints(corners);
	const mirror = side === 'inside';
	const home = (p: Point): Point => ({ x: mirror ? x + length - p.x : p.x - x, y: p.y - y });
	const place = (p: Point3): Point => home(flat(p, frame));
	const looks = scale3(frame.n, mirror ? -1 : 1);
	const outline = onGrid(solid[side].map(place));
	return { frame, height: over(nth(solid[side], 0), frame), looks, outline, place };
}

/** What of a face a board covers with one of its own faces. */
function footOf(board: Board, face: Face): Outline[] {
	return facesOf(board).flatMap(({ points, looks }) => {
		const meets = points.every((p) => Math.abs(over(p, face.frame) - face.height) < FLUSH);
		if (!meets || dot3(looks, face.looks) > 0) return [];
		return common([face.outline], [onGrid(points.map(face.place))])
			.map((region) => region.outline)
			.filter((outline) => Math.abs(area(outline)) > LEAST);
	});
}

interface Side {
	readonly points: readonly Point3[];
	readonly looks: Point3;
}

/** The faces a board is glued by: of a cleat and a layer only the broad one on its wall. */
function facesOf({ solid: { outside, inside }, frame: { n }, role }: Board): Side[] {
	const broad = { points: outside, looks: n };
	if (role === 'cleat' || role === 'doubler') return [broad];
	const edges = outside.map((p, k): Side => {
		const [a, b] = [nth(inside, k), around(inside, k + 1)];
		const looks = cross3(sub3(a, p), sub3(b, p));
		return { points: [p, a, b, around(outside, k + 1)], looks };
	});
	return [broad, { points: inside, looks: scale3(n, -1) }, ...edges];
}

/** Counter-clockwise on the grid, whichever way it was looked at. */
function onGrid(points: readonly Point[]): Outline {
	const on = points.map((p) => ({ x: Math.round(p.x) + 0, y: Math.round(p.y) + 0 }));
	return area(on) < 0 ? on.reverse() : on;
}
