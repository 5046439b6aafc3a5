import { around, lastOf, nth } from '../../measure';
import { type Point, moved } from '../../geometry';
import type { BlankMark } from '../blank';
import type { BoxFace, BoxFaces } from './faces';
import type { Extra } from '../marks';
import type { FlapWidth } from '../girth';
import { notch, slit, type CutPlace } from '../reliefs';

/** Part of a face as a band runs over it, ticks up its outline. */
export interface Stretch {
	/** Place of the face in the order round the box. */
	readonly at: number;
	readonly face: BoxFace;
	readonly from: number;
	readonly to: number;
}

export interface Band {
	readonly stretches: readonly Stretch[];
	/** Does it run all the way round and meet itself? */
	readonly ring: boolean;
	/** A ring that could only be closed along an edge between show faces. */
	readonly shown: boolean;
}

const heightOf = (face: BoxFace): number => Math.max(...face.face.outline.map((p) => p.y));

/**
 * The covered faces that follow each other round the box; one band for each unbroken row of them in
 * one cloth.
 */
export function bandsOf(faces: BoxFaces, overlap: number): Band[] {
	const { round } = faces;
	const start = rowStart(round);
	if (start === null) return round[0]?.cloth ? [ring(faces, overlap)] : [];
	const rows: Stretch[][] = [];
	let before: string | null = null;
	for (let k = 0; k < round.length; k++) {
		const at = (start + k) % round.length;
		const face = nth(round, at);
		const stretch = { at, face, from: 0, to: heightOf(face) };
		if (face.cloth && face.cloth === before) lastOf(rows).push(stretch);
		else if (face.cloth) rows.push([stretch]);
		before = face.cloth;
	}
	return rows.map((stretches) => ({ stretches, ring: false, shown: false }));
}

/** A face at which no row runs on from the one before; null where one cloth goes all the way. */
function rowStart(round: readonly BoxFace[]): number | null {
	const bare = round.findIndex((f) => !f.cloth);
	const found =
		bare >= 0 ? bare : round.findIndex((f, i) => f.cloth !== around(round, i - 1).cloth);
	return found < 0 || round.every((f) => !f.cloth) ? null : found;
}

/**
 * Faces a seam is looked for on, best first: they are seen least in the vehicle. Common practice,
 * no source.
 */
const HIDDEN = ['bottom', 'back', 'step-top', 'step-face', 'cut'];

function ring(faces: BoxFaces, overlap: number): Band {
	const { round } = faces;
	const rank = (i: number) => {
		const r = HIDDEN.indexOf(nth(round, i).face.key);
		return r < 0 ? HIDDEN.length : r;
	};
	const hidden = round.map((_, i) => i).filter((i) => !nth(round, i).show);
	const at = hidden.sort((a, b) => rank(a) - rank(b) || a - b)[0];
	const start = at ?? 0;
	const cut = at === undefined ? 0 : seamOn(nth(round, at), overlap);
	const stretches = round.map((_, k): Stretch => {
		const i = (start + k) % round.length;
		const face = nth(round, i);
		return { at: i, face, from: k === 0 ? cut : 0, to: heightOf(face) };
	});
	const first = nth(round, start);
	const last: Stretch = { at: start, face: first, from: 0, to: cut };
	return {
		stretches: cut > 0 ? [...stretches, last] : stretches,
		ring: true,
		shown: at === undefined,
	};
}

/** Room kept between a seam and a hole, ticks: 10 mm. */
const CLEAR = 16_000;

/**
 * Where up a face a seam across it meets no hole: as near its middle as can be, else at its lower
 * edge.
 */
function seamOn(face: BoxFace, overlap: number): number {
	const height = heightOf(face);
	const taken = face.face.holes.map((h): [number, number] => {
		const ys = h.map((p) => p.y);
		const reach = overlap / 2 + CLEAR;
		const round = h.some((p) => p.bulge)
			? (Math.max(...h.map((p) => p.x)) - Math.min(...h.map((p) => p.x))) / 2
			: 0;
		const lo = Math.min(...ys);
		const hi = Math.max(...ys);
		return [
			Math.min(lo, (lo + hi) / 2 - round) - reach,
			Math.max(hi, (lo + hi) / 2 + round) + reach,
		];
	});
	const free = (y: number) =>
		y > overlap && y < height - overlap && !taken.some(([lo, hi]) => y > lo && y < hi);
	const tries = [height / 2, ...taken.flatMap(([lo, hi]) => [lo, hi])].filter(free);
	tries.sort((a, b) => Math.abs(a - height / 2) - Math.abs(b - height / 2));
	return Math.round(tries[0] ?? 0);
}

/** How far up the band each of its stretches starts; one more for the end of the last. */
export function levels(band: Band): number[] {
	const ys = [0];
	for (const s of band.stretches) ys.push(lastOf(ys) + s.to - s.from);
	return ys;
}

/** One edge of a band where it goes round on to an end. */
export interface BandSide {
	/** x of the edge of the box. */
	readonly x: number;
	/** How far the cloth of each stretch reaches round; null where it does not. */
	readonly reach: readonly (number | null)[];
	/** Which way the band is walked along this side, so that the box lies on the left. */
	readonly up: boolean;
}

/**
 * Folds between the faces, holes, and the cuts that let the sides of the band follow the profile
 * round on to the ends.
 */
export function bandExtra(
	band: Band,
	faces: BoxFaces,
	across: number,
	sides: readonly BandSide[],
	short: number,
): Extra {
	const ys = levels(band);
	const marks: BlankMark[] = [];
	const count = { notches: 0, slits: 0, corners: 0 };
	band.stretches.slice(1).forEach((_, k) => {
		const y = nth(ys, k + 1);
		marks.push({
			kind: 'fold',
			line: [
				{ x: 0, y },
				{ x: across, y },
			],
			closed: false,
		});
		for (const side of sides) {
			const cut = sideCut({ band, faces, ys, short }, side, k);
			if (!cut) continue;
			count[cut.kind === 'notch' ? 'notches' : 'slits']++;
			marks.push(cut);
		}
	});
	const holes = band.stretches.flatMap((s, k) =>
		s.face.face.holes
			.map((h) => moved(h, 0, nth(ys, k) - s.from))
			.filter((h) => within(h, nth(ys, k), nth(ys, k + 1))),
	);
	return { marks, reliefs: count, holes };
}

function within(hole: readonly Point[], lo: number, hi: number): boolean {
	const y = hole.reduce((sum, p) => sum + p.y, 0) / hole.length;
	return y >= lo && y <= hi;
}

/**
 * The notch or slit where the profile turns between stretch k and the next; null on a side that is
 * not turned there.
 */
function sideCut(
	{ band, faces, ys, short }: { band: Band; faces: BoxFaces; ys: readonly number[]; short: number },
	side: BandSide,
	k: number,
): BlankMark | null {
	const [below, above] = [side.reach[k] ?? null, side.reach[k + 1] ?? null];
	if (below === null || above === null) return null;
	const reach = Math.min(below, above);
	const half = Math.min(nth(ys, k + 1) - nth(ys, k), nth(ys, k + 2) - nth(ys, k + 1)) / 2;
	const place = sidePlace(
		side,
		nth(ys, k + 1),
		faces.turns[nth(band.stretches, k).at] ?? Math.PI / 2,
		reach,
	);
	const [flap] = place.flaps;
	if (place.turn > 0) {
		const line = notch(
			place,
			[
				{ flap, half },
				{ flap, half },
			],
			{ tip: short, lap: short },
		);
		return line && { kind: 'notch', line, closed: true };
	}
	const line = slit(place, short);
	return line && { kind: 'slit', line, closed: false };
}

/**
 * All cloth past the edge comes to lie on the one plane of the end, so its cuts start at the edge:
 * a flap without a wall.
 */
function sidePlace(side: BandSide, y: number, turn: number, reach: number): CutPlace {
	const heading = { x: 0, y: side.up ? 1 : -1 };
	const flap: FlapWidth = { wall: 0, back: reach, total: reach, folds: true, wanted: reach };
	return {
		at: { x: side.x, y },
		before: heading,
		after: heading,
		turn,
		flaps: [flap, flap],
	};
}
