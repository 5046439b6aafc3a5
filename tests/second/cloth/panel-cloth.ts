import type { Spot } from '../section';
import type { Flat } from './flat';
import { cornersOfL, innerRadius, placesOf, setBackOf, type Field } from './panel-job';
import { BOARDS, CLOTHS, type LayerWish, type PanelWish, type SideWish } from './random-panel';

/*
 * The cloth of a panel by the tape: laid along a section from where it is cut off behind, round the
 * edge, over every step and round the other edge. mm.
 */

/** Foam lies on the face beneath the cloth, so that the cloth turns down over it as well. */
const foamOf = (w: PanelWish): number => w.foam ?? 0;

/** On the back: to the groove, down into it and a grip, or the plain margin. */
const behind = (w: PanelWish): number =>
	w.groove ? w.groove.offset + w.groove.depth + w.grip : w.margin;

/** What is glued to the board is not the grip. */
const gluedBehind = (w: PanelWish): number =>
	w.groove ? w.groove.offset + w.groove.depth : w.margin;

/** Past a side of the board whose edge is `high`. */
const pastSide = (w: PanelWish, s: SideWish, high: number): number =>
	s.end === 'wrapped' ? high + foamOf(w) + behind(w) : w.grip;

/** How far a layer's covered face stands off the board, up or down. */
function stepOf(w: PanelWish, l: LayerWish): number {
	const foam = l.foam ?? 0;
	return l.place === 'raised' ? BOARDS[l.board] + foam : BOARDS[w.board] - foam;
}

interface Laid {
	readonly field: Field;
	readonly wish: LayerWish;
}

/** Layers under the one cloth of the face. */
function laid(w: PanelWish): Laid[] {
	const at = placesOf(w);
	return (['left', 'right'] as const).flatMap((key) => {
		const wish = w[key];
		return wish?.covering === 'with' ? [{ field: at[key], wish }] : [];
	});
}

const SAME = 0.001;

/** The tape across at many heights: what it climbs within the board, and at its left end. */
function across(w: PanelWish): { climbs: number; leftEdge: number } {
	const { board } = placesOf(w);
	let [climbs, leftEdge] = [0, 0];
	const layers = laid(w);
	for (let y = board.low.y + 0.25; y < board.high.y; y += 0.5) {
		let [sum, edge] = [0, 0];
		for (const { field, wish } of layers) {
			if (y < field.low.y || y > field.high.y) continue;
			const step = stepOf(w, wish);
			// At the very edge of the board the layer only makes the edge higher.
			if (Math.abs(field.low.x - board.low.x) < SAME) edge = Math.max(edge, step);
			else sum += step;
			sum += step;
		}
		climbs = Math.max(climbs, sum);
		leftEdge = Math.max(leftEdge, edge);
	}
	return { climbs, leftEdge };
}

function upwards(w: PanelWish): number {
	const { board } = placesOf(w);
	let climbs = 0;
	for (let x = board.low.x + 0.25; x < board.high.x; x += 0.5) {
		const met = laid(w).filter(({ field }) => x > field.low.x && x < field.high.x);
		climbs = Math.max(
			climbs,
			met.reduce((sum, { wish }) => sum + 2 * stepOf(w, wish), 0),
		);
	}
	return climbs;
}

/** The cloth of the face of a rectangular panel: to the right, and upwards. */
export function faceSize(w: PanelWish): { x: number; y: number } {
	const { board } = placesOf(w);
	const thick = BOARDS[w.board];
	const [bottom, right, top, left] = w.sides as [SideWish, SideWish, SideWish, SideWish];
	const { climbs, leftEdge } = across(w);
	const ends = {
		x: pastSide(w, left, thick + leftEdge) + pastSide(w, right, thick),
		y: pastSide(w, bottom, thick) + pastSide(w, top, thick),
	};
	return {
		x: board.high.x - board.low.x + climbs + ends.x,
		y: board.high.y - board.low.y + upwards(w) + ends.y,
	};
}

/** Where the sides of a face meet when each is moved in by its own set-back. */
function boardOf(corners: readonly Spot[], backs: readonly number[]): Spot[] {
	const normal = (k: number): { n: Spot; c: number } => {
		const [a, b] = [corners[k]!, corners[(k + 1) % corners.length]!];
		const long = Math.hypot(b.x - a.x, b.y - a.y);
		const n = { x: (b.y - a.y) / long, y: (a.x - b.x) / long };
		return { n, c: n.x * a.x + n.y * a.y - backs[k]! };
	};
	return corners.map((_, k) => {
		const [p, q] = [normal((k + corners.length - 1) % corners.length), normal(k)];
		const det = p.n.x * q.n.y - p.n.y * q.n.x;
		return {
			x: (p.c * q.n.y - q.c * p.n.y) / det,
			y: (p.n.x * q.c - q.n.x * p.c) / det,
		};
	});
}

const CHORDS = 90;

/** A quarter of a circle from heading to heading, in short straight pieces. */
function rounded(centre: Spot, radius: number, from: number): Spot[] {
	return Array.from({ length: CHORDS + 1 }, (_, i) => {
		const a = from + (i / CHORDS) * (Math.PI / 2);
		return { x: centre.x + radius * Math.cos(a), y: centre.y + radius * Math.sin(a) };
	});
}

/** Radius the corners of a rounded board have, set in from those of its opening. */
export const roundingOf = (w: PanelWish): number | undefined =>
	w.opening.form === 'rounded'
		? w.opening.radius - setBackOf(w.sides[0]!, CLOTHS[w.cloth])
		: undefined;

/** The cloth of a face without steps, whatever its form. */
export function faceFlat(w: PanelWish): Flat {
	const { length, width, form, radius, shift } = w.opening;
	const thick = BOARDS[w.board];
	const sides = w.sides as [SideWish, SideWish, SideWish, SideWish];
	const back = (s: SideWish): number => setBackOf(s, CLOTHS[w.cloth]);
	const past = (s: SideWish): number => pastSide(w, s, thick);
	if (form === 'L') {
		const corners = cornersOfL(w.opening);
		const all = corners.map(() => sides[0]);
		return { face: boardOf(corners, all.map(back)), reach: all.map(past) };
	}
	if (form === 'trapezoid') {
		const top = { x: shift, y: width };
		const corners = [
			{ x: 0, y: 0 },
			{ x: length, y: 0 },
			{ x: top.x + length - 150, y: width },
			top,
		];
		return { face: boardOf(corners, sides.map(back)), reach: sides.map(past) };
	}
	const by = back(sides[0]);
	const r = radius - by;
	const centre = { x: length / 2, y: width / 2 };
	const half = { x: length / 2 - by - r, y: width / 2 - by - r };
	const face = [
		[1, -1],
		[1, 1],
		[-1, 1],
		[-1, -1],
	].flatMap(([x, y], i) =>
		rounded({ x: centre.x + x! * half.x, y: centre.y + y! * half.y }, r, ((i - 1) * Math.PI) / 2),
	);
	return { face, reach: face.map(() => past(sides[0])) };
}

/** What is cut out of the cloth for the window; below nothing where flaps would meet. */
export function windowSize(w: PanelWish): { x: number; y: number } | null {
	const { window } = w;
	if (!window) return null;
	const round =
		window.clearance +
		(window.thing ? CLOTHS[window.thing] : 0) +
		(window.wrapped ? CLOTHS[w.cloth] : 0);
	const past = window.wrapped ? BOARDS[w.board] + foamOf(w) + behind(w) : w.grip;
	return {
		x: window.length + 2 * (round - past),
		y: window.width + 2 * (round - past),
	};
}

/** The cloth of a layer wrapped by itself, or of the floor of a recess. */
export function ownSize(w: PanelWish, key: 'left' | 'right'): { x: number; y: number } | null {
	const wish = w[key];
	if (wish?.covering !== 'own') return null;
	const { low, high } = placesOf(w)[key];
	// A floor laps 20 behind the board all round, and is cut flush.
	const past =
		wish.place === 'raised' ? BOARDS[wish.board] + (wish.foam ?? 0) + w.margin : 20 + w.grip;
	return { x: high.x - low.x + 2 * past, y: high.y - low.y + 2 * past };
}

export function coverSize(w: PanelWish): { x: number; y: number } | null {
	if (!w.cover) return null;
	const { low, high } = placesOf(w).cover;
	const own = CLOTHS[w.cover.cloth ?? w.cloth];
	const past = BOARDS[w.board] + behind(w) - w.cover.gap / 2 - own;
	return { x: high.x - low.x + 2 * past, y: high.y - low.y + 2 * past };
}

/** A ring laps over the wall; its outer cloth, and what is cut out of it. */
export function ringSizes(w: PanelWish): Record<'cloth' | 'cut', { x: number; y: number }> | null {
	if (!w.ring) return null;
	const { low, high } = placesOf(w).cover;
	const hole = { x: high.x - low.x, y: high.y - low.y };
	const { lap, lip, board, cloth } = w.ring;
	const past = BOARDS[board] + w.margin;
	const [out, back] = [lap - CLOTHS[cloth] + past, -lip + CLOTHS[cloth] - past];
	return {
		cloth: { x: hole.x + 2 * out, y: hole.y + 2 * out },
		cut: { x: hole.x + 2 * back, y: hole.y + 2 * back },
	};
}

/** Glued: the face, the sides of its steps, and what is turned under as far as the groove. mm2 */
export function gluedArea(w: PanelWish): number | null {
	if (w.opening.form !== 'plain' || w.window || w.cover || w.ring) return null;
	if ([w.left, w.right].some((l) => l?.covering === 'own') || across(w).leftEdge > 0) return null;
	const { board } = placesOf(w);
	const x = board.high.x - board.low.x;
	const y = board.high.y - board.low.y;
	const walls = laid(w).reduce((sum, { field: { low, high }, wish }) => {
		return sum + 2 * (high.x - low.x + high.y - low.y) * stepOf(w, wish);
	}, 0);
	const under = w.sides.reduce((sum, s, k) => {
		const deep = s.end === 'wrapped' ? BOARDS[w.board] + foamOf(w) + gluedBehind(w) : 0;
		return sum + deep * (k % 2 === 0 ? x : y);
	}, 0);
	return x * y + walls + under;
}

/**
 * The patch of the inside corner of an L: its edge is `high` and rounded less than that. At the
 * foot the two flaps, cut apart, leave bare what neither of them reaches: tried point by point.
 */
export function patchSize(w: PanelWish): Spot[] | null {
	if (w.opening.form !== 'L' || !w.patches) return null;
	const high = BOARDS[w.board] + foamOf(w);
	const back = setBackOf(w.sides[0]!, CLOTHS[w.cloth]);
	const asked = innerRadius(w.opening.radius);
	// Seen from the board the corner is hollow: set in, its radius grows.
	const radius = asked + back * (asked === 0 ? 0 : 1);
	const LAP = 20;
	const fold = (radius * Math.PI) / 2;
	// A flap laid flat ends where it meets its neighbour: as far short of the corner of the two
	// straight edges as it is deep.
	const bare = (deep: number): number => {
		let short = 0;
		for (let along = 0; along < deep; along += 0.01)
			if (along + radius < deep) short = along + 0.01;
		return short;
	};
	const foot = fold / 2 + LAP + bare(high);
	const top = fold / 2 + LAP;
	const end = high + behind(w);
	return [
		{ x: -top, y: 0 },
		{ x: top, y: 0 },
		{ x: foot, y: high },
		{ x: foot, y: end },
		{ x: -foot, y: end },
		{ x: -foot, y: high },
	];
}
