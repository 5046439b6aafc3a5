import type { Job } from '../../../job';
import { mm, ticks, TICKS_PER_INCH, TICKS_PER_MM, type Length, snap } from '../../../measure';

/** Whatever the person typed, no box is larger than this: 4 m. */
export const LARGEST = mm(4000);

/**
 * Net litres of the chamber wanted at one value of the dimension; null where no box comes of it.
 */
export type NetAt = (value: Length) => number | null;

/**
 * The dimension that gives the wanted volume: net volume grows with it, nearly as a straight line,
 * so a few steps of the secant inside a closing bracket find it to the tick. Null when it lies
 * beyond reach.
 */
export function solveFor(wanted: number, start: Length, net: NetAt): Length | null {
	let low = 0;
	let high: number = LARGEST;
	let a: [number, number] | null = null;
	let x: number = start;
	for (let i = 0; i < 60 && high - low > 1; i++) {
		const v = net(snap(x));
		// Where nothing can be built the dimension is too small: boards in each other's way only
		// ever need more room.
		const off = v === null ? null : v - wanted;
		if (off === null || off < 0) low = Math.max(low, x);
		else high = Math.min(high, x);
		if (off !== null && Math.abs(off) < 1e-9) return snap(x);
		const slope = off !== null && a && a[0] !== x ? (off - a[1]) / (x - a[0]) : null;
		const next =
			off !== null && slope && slope > 0
				? x - off / slope
				: off === null
					? (low + high) / 2
					: x * 1.05 + 1000;
		if (off !== null) a = [x, off];
		x = next > low && next < high ? next : (low + high) / 2;
		if (Math.abs(x - (a?.[0] ?? Infinity)) < 0.5 && i > 2) break;
	}
	const best = Math.round(x);
	const v = net(ticks(best));
	return v !== null && Math.abs(v - wanted) < 1e-3 * wanted ? ticks(best) : null;
}

/**
 * To the nearest mark a fence can be set to: 0.1 mm, or the fraction of the inch the shop works to.
 */
export function toMark(l: Length, ruler: Job['shop']['ruler']): Length {
	const mark = ruler.unit === 'in' ? TICKS_PER_INCH / ruler.fraction : TICKS_PER_MM / 10;
	return ticks(Math.round(l / mark) * mark);
}

/** What one dimension does to a box. */
export interface DimensionSteps {
	/** Costs a whole box, every board of it. */
	readonly net: NetAt;
	/** Costs a profile. */
	readonly gross: NetAt;
	/** The nearest length the ruler shows. */
	mark(value: Length): Length;
}

/**
 * The same answer from two or three boxes built instead of nine: what stands inside is taken to
 * change evenly between the boxes built so far, and the gross volume, which is quick to work out,
 * follows the form exactly. Only lengths the ruler shows are built, so the last one is the box that
 * is planned. Null where a step finds no box, or where a cleat or a vent comes and goes between two
 * steps: then the bracket of {@link solveFor} has to look.
 */
export function solveQuickly(wanted: number, start: Length, steps: DimensionSteps): Length | null {
	let x = start;
	let before: readonly [x: number, lost: number] | null = null;
	for (let i = 0; i < 6; i++) {
		const net = steps.net(x);
		const gross = steps.gross(x);
		if (net === null || gross === null) return null;
		const lost = gross - net;
		const grows = before === null ? 0 : (lost - before[1]) / (x - before[0]);
		const off = (value: number): number | null => {
			const all = steps.gross(ticks(Math.round(value)));
			return all === null ? null : all - lost - grows * (value - x) - wanted;
		};
		const next = rootOf(off, x);
		if (next === null || next > LARGEST) return null;
		const marked = steps.mark(next);
		if (marked === x) return next;
		before = [x, lost];
		x = marked;
	}
	return null;
}

/** The secant from `x`, to the tick; null when it leaves the ground it can stand on. */
function rootOf(off: (value: number) => number | null, x: number): Length | null {
	let [a, b] = [x + 10 * TICKS_PER_MM, x];
	let [fa, fb] = [off(a), off(b)];
	for (let i = 0; i < 12 && fa !== null && fb !== null; i++) {
		const slope = (fb - fa) / (b - a);
		if (!(slope > 0)) return null;
		const next = b - fb / slope;
		if (!(next > 0) || next > 2 * LARGEST) return null;
		if (Math.abs(next - b) < 0.6) return ticks(Math.round(next));
		[a, fa, b, fb] = [b, fb, Math.round(next), off(Math.round(next))];
	}
	return null;
}
