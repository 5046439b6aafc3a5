import { nth } from '../../measure';
import type { BoxSkin, SkinFace } from '../../design';
import { edgeLength, edgesOf, headingAt, type Point, dot } from '../../geometry';
import { type Carpet, clothOnFace } from '../../job';
import { outOf, turnTo } from '../girth';

/** A face of a box, what the person wants of it, and what lies across each of its edges. */
export interface BoxFace {
	readonly face: SkinFace;
	/** Mark of the cloth it gets; null where it is left bare. */
	readonly cloth: string | null;
	readonly show: boolean;
	/** For each edge of the outline the key of the face beyond it. */
	readonly beside: readonly (string | null)[];
	/**
	 * Nap that runs down the face as the box stands, degrees counter-clockwise from +x of its
	 * outline.
	 */
	readonly nap: number;
	readonly end: boolean;
}

/** What a person asks of the faces. */
type FacesWish = Pick<Carpet, 'cloth' | 'cover' | 'other' | 'show'>;

export interface BoxFaces {
	/** In their order round the box. */
	readonly round: readonly BoxFace[];
	readonly ends: readonly BoxFace[];
	/** Radians the profile turns from round[i] to round[i + 1], positive at an outside corner. */
	readonly turns: readonly number[];
}

/**
 * The faces of a box with their neighbours. A face not named in a wish that names any is left bare.
 */
export function boxFaces(skin: BoxSkin, wish: FacesWish): BoxFaces {
	const asked = (key: string) => ({
		cloth: clothOnFace(wish, key),
		show: wish.show.some((k) => k === key),
	});
	if (skin.across === null) return { ...uprightFaces(skin, asked), turns: [] };
	const orders = skin.ends.map((end) => ({ end, order: edgeOrder(end, skin.round) }));
	const n = skin.round.length;
	const side = orders.find((o) => o.order !== null);
	const profile = side?.order ? profileOf(side.end, side.order, n) : null;
	const round = skin.round.map((face, i) => ({
		face,
		...asked(face.key),
		beside: besideRound(skin, i),
		nap: (profile?.[i]?.up ?? 1) < -0.05 ? 90 : -90,
		end: false,
	}));
	const ends = orders.map(({ end, order }) => ({
		face: end,
		...asked(end.key),
		beside: end.outline.map((_, e) => skin.round[order?.[e] ?? -1]?.key ?? null),
		nap: -90,
		end: true,
	}));
	return { round, ends, turns: profile?.map((p) => p.turn) ?? skin.round.map(() => Math.PI / 2) };
}

/**
 * What lies beyond the edges of each face of a box that leans both ways: every face upright as seen
 * from outside, its outline starting at the lower left corner. The top is seen with the front
 * below, the bottom with the back below.
 */
const AROUND: Readonly<Record<string, readonly string[]>> = {
	front: ['bottom', 'right', 'top', 'left'],
	back: ['bottom', 'left', 'top', 'right'],
	top: ['front', 'right', 'back', 'left'],
	bottom: ['back', 'right', 'front', 'left'],
	left: ['bottom', 'front', 'top', 'back'],
	right: ['bottom', 'back', 'top', 'front'],
};

function uprightFaces(
	skin: BoxSkin,
	asked: (key: string) => Pick<BoxFace, 'cloth' | 'show'>,
): Pick<BoxFaces, 'round' | 'ends'> {
	const faceOf = (face: SkinFace, end: boolean): BoxFace => ({
		face,
		...asked(face.key),
		beside: face.outline.map((_, e) => AROUND[face.key]?.[e] ?? null),
		nap: -90,
		end,
	});
	return {
		round: skin.round.map((f) => faceOf(f, false)),
		ends: skin.ends.map((f) => faceOf(f, true)),
	};
}

/**
 * A swept face is a rectangle that stands on the one before: its right and left edges meet the
 * ends.
 */
function besideRound(skin: BoxSkin, i: number): (string | null)[] {
	const n = skin.round.length;
	const end = (key: string) => skin.ends.find((e) => e.key === key)?.key ?? null;
	const before = skin.round[(i + n - 1) % n]?.key ?? null;
	const after = skin.round[(i + 1) % n]?.key ?? null;
	return [before, end('right'), after, end('left')];
}

/** Where the faces of an upright box look, seen from its right end with the front on the left. */
const LOOKS: Readonly<Record<string, Point>> = {
	front: { x: -1, y: 0 },
	back: { x: 1, y: 0 },
	top: { x: 0, y: 1 },
	bottom: { x: 0, y: -1 },
};

/**
 * Which of the round faces lies along each edge of an end: they follow each other against the sense
 * of the right end's outline and with that of the left one's, and each edge is as long as its face
 * is high. Null when nothing fits.
 */
function edgeOrder(end: SkinFace, round: readonly SkinFace[]): number[] | null {
	const edges = edgesOf(end.outline);
	const n = round.length;
	if (edges.length !== n) return null;
	const left = end.key === 'left';
	const heights = round.map((f) => Math.max(...f.outline.map((p) => p.y)));
	let best: { order: number[]; score: number } | null = null;
	for (let first = 0; first < n; first++) {
		const order = edges.map((_, e) => (left ? first + e : first + n - e) % n);
		const misfit = edges.reduce(
			(sum, e, k) => sum + Math.abs(edgeLength(e) - nth(heights, nth(order, k))),
			0,
		);
		const facing = edges.reduce((sum, e, k) => {
			const look = LOOKS[nth(round, nth(order, k)).key];
			const out = outOf(headingAt(e, 0));
			return sum + (look ? dot({ x: left ? -out.x : out.x, y: out.y }, look) : 0);
		}, 0);
		// Lengths decide to within rounding; where several fit, the way the faces look does.
		const score = facing - misfit / 100;
		if (!best || score > best.score) best = { order, score };
	}
	return best?.order ?? null;
}

/**
 * For each round face the turn to the next one and how steeply its outline runs upwards, read off
 * an end.
 */
function profileOf(
	end: SkinFace,
	order: readonly number[],
	n: number,
): { turn: number; up: number }[] {
	const edges = edgesOf(end.outline);
	const heading = (face: number): Point => headingAt(nth(edges, order.indexOf(face)), 0);
	return Array.from({ length: n }, (_, i) => {
		const here = heading(i);
		const next = heading((i + 1) % n);
		// The faces run round the left end as its outline does, and against the outline of the
		// right one.
		return end.key === 'left'
			? { turn: turnTo(here, next), up: here.y }
			: { turn: turnTo(next, here), up: -here.y };
	});
}
