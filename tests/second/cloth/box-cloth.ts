import { boardsOf, cornersOf, type Form, type Spot } from '../section';
import { FlatCloth, Strips, type Extent, type Laid } from './flat';

/*
 * The carpet of a box by going round it with the tape. Faces follow each other up the front, over
 * the top and down the back; at each of their edges it is asked who lies over whom. mm.
 */

export interface CarpetWish {
	/** Mark of the cloth on each face; absent where it is bare. */
	readonly on: ReadonlyMap<string, string>;
	readonly show: readonly string[];
	readonly overlap: number;
	readonly margin: number;
}

interface RoundFace {
	readonly key: string;
	readonly long: number;
}

/** Sides of the box from the front on, each as long as it is in the side view. */
export function roundOf(form: Form): RoundFace[] {
	const corners = cornersOf(form);
	const keys = boardsOf(form.kind);
	const faces = keys.map((key, k) => {
		const [a, b] = [corners[k]!, corners[(k + 1) % corners.length]!];
		return { key, long: Math.hypot(b.x - a.x, b.y - a.y) };
	});
	const front = keys.indexOf('front');
	return faces.map((_, i) => faces[(front - i + faces.length) % faces.length]!);
}

/** How far the cloth of a face goes past an edge, or, below nothing, stays inside it. */
function past(w: CarpetWish, face: string, beyond: string, over: boolean): number {
	if (!w.on.has(beyond)) return w.margin;
	const [own, other] = [face, beyond].map((key) => w.show.includes(key));
	// Two faces that show meet at their edge; a seam stays off a face that does.
	if (own && other) return w.overlap / 2;
	const turn = Math.max(w.margin, w.overlap);
	return (own === other ? over : own) ? turn : w.overlap - turn;
}

/** One blank: the cloth it is of and how it lies. */
export interface Worked {
	readonly key: string;
	readonly cloth: string;
	readonly laid: Laid;
}

const ENDS = ['left', 'right'];

/** The side view as an end is seen from outside, with the face along each of its sides. */
function endOf(form: Form, key: string): { face: Spot[]; along: string[] } {
	const corners = cornersOf(form);
	const keys = boardsOf(form.kind);
	// From the right the front is on the left hand, as in the side view.
	if (key === 'right') return { face: corners, along: keys };
	const flipped = corners.map(({ x, y }) => ({ x: -x, y })).reverse();
	// Turned about, side k runs from corner n-1-k to the one before it.
	const n = keys.length;
	return { face: flipped, along: flipped.map((_, k) => keys[(2 * n - 2 - k) % n]!) };
}

function capOf(form: Form, w: CarpetWish, key: string, over: (beyond: string) => boolean): Laid {
	const { face, along } = endOf(form, key);
	return new FlatCloth({ face, reach: along.map((b) => past(w, key, b, over(b))) });
}

/** Face by face: the one further on in the order round the box lies under. */
export function faceByFace(form: Form, w: CarpetWish): Worked[] {
	const round = roundOf(form);
	const order = [...round.map((f) => f.key), ...ENDS];
	const over = (face: string) => (beyond: string) => order.indexOf(face) < order.indexOf(beyond);
	const n = round.length;
	const swept = round.map(({ key, long }, i): { key: string; laid: Laid } => {
		const reach = (beyond: string): number => past(w, key, beyond, over(key)(beyond));
		const strip: Extent = {
			low: { x: -reach('left'), y: -reach(round[(i + n - 1) % n]!.key) },
			high: { x: form.width + reach('right'), y: long + reach(round[(i + 1) % n]!.key) },
		};
		return { key, laid: new Strips([strip]) };
	});
	const caps = ENDS.map((key) => ({ key, laid: capOf(form, w, key, over(key)) }));
	return [...swept, ...caps].flatMap((f) => {
		const cloth = w.on.get(f.key);
		return cloth === undefined ? [] : [{ ...f, cloth }];
	});
}

interface Row {
	readonly faces: readonly RoundFace[];
	readonly ring: boolean;
}

/** Faces in one cloth that follow each other. */
function rowsOf(round: readonly RoundFace[], w: CarpetWish): Row[] {
	const n = round.length;
	const on = (i: number): string | undefined => w.on.get(round[(i + n) % n]!.key);
	const starts = round.flatMap((_, i) => (on(i) !== undefined && on(i) !== on(i - 1) ? [i] : []));
	if (starts.length === 0)
		return on(0) === undefined ? [] : [{ faces: seamFirst(round, w), ring: true }];
	return starts.map((start) => {
		const faces: RoundFace[] = [];
		for (let i = start; on(i) === on(start) && faces.length < n; i++) faces.push(round[i % n]!);
		return { faces, ring: false };
	});
}

/** Where a band meets itself: in the middle of the face that is seen least. */
const SEEN_LEAST = ['bottom', 'back', 'step-top', 'step-face'];

function seamFirst(round: readonly RoundFace[], w: CarpetWish): RoundFace[] {
	const found = [...SEEN_LEAST, ...round.map((f) => f.key)].find(
		(key) => !w.show.includes(key) && round.some((f) => f.key === key),
	);
	if (found === undefined) return [...round];
	const at = round.findIndex((f) => f.key === found);
	const { key, long } = round[at]!;
	const half = { key, long: long / 2 };
	return [half, ...round.slice(at + 1), ...round.slice(0, at), half];
}

function bandOf(form: Form, w: CarpetWish, { faces, ring }: Row): Laid {
	const order = roundOf(form).map((f) => f.key);
	const across = (face: string, step: number): number => {
		if (ring) return w.overlap / 2;
		const at = order.indexOf(face);
		const beyond = order[(at + step + order.length) % order.length]!;
		return past(w, face, beyond, at < order.indexOf(beyond));
	};
	let y = 0;
	return new Strips(
		faces.map(({ key, long }, i): Extent => {
			const foot = i === 0 ? across(key, -1) : 0;
			const head = i === faces.length - 1 ? across(key, 1) : 0;
			const strip = {
				low: { x: -past(w, key, 'left', true), y: y - foot },
				high: { x: form.width + past(w, key, 'right', true), y: y + long + head },
			};
			y += long;
			return strip;
		}),
	);
}

/** A band round the box for each cloth on it, over the two ends. */
export function inABand(form: Form, w: CarpetWish): Worked[] {
	const bands = rowsOf(roundOf(form), w).map((row) => ({
		key: 'band',
		cloth: w.on.get(row.faces[0]!.key)!,
		laid: bandOf(form, w, row),
	}));
	const caps = ENDS.flatMap((key) => {
		const cloth = w.on.get(key);
		return cloth === undefined ? [] : [{ key, cloth, laid: capOf(form, w, key, () => false) }];
	});
	return [...bands, ...caps];
}

/** Edges along which two cloths meet, together. */
export function seamsOf(form: Form, w: CarpetWish, way: 'band' | 'faces'): number {
	const round = roundOf(form);
	const n = round.length;
	const covered = round.filter((f) => w.on.has(f.key));
	const caps = ENDS.filter((key) => w.on.has(key));
	const atEnds = caps.length * covered.reduce((sum, f) => sum + f.long, 0);
	const between = round.filter((f, i) => {
		const [own, next] = [w.on.get(f.key), w.on.get(round[(i + 1) % n]!.key)];
		return own !== undefined && next !== undefined && (way === 'faces' || own !== next);
	});
	const itself = way === 'band' && rowsOf(round, w).some((r) => r.ring) ? 1 : 0;
	return atEnds + (between.length + itself) * form.width;
}
