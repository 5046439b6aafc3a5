import type { Box } from '../../job/box';
import type { Dimension, Shape } from '../../job/box-shape';
import type { Job } from '../../job/job';
import { mm, ticks, TICKS_PER_INCH, TICKS_PER_MM, type Length } from '../../measure/length';
import type { Solved } from './box-plan';
import { shown } from './profile';

/** Whatever the person typed, no box is larger than this: 4 m. */
const LARGEST = mm(4000);

/** The dimension of a form as it stands, and the form with another one; null where the form has no such dimension. */
export function dimensionOf(shape: Shape, which: Dimension): Length | null {
	if (shape.kind === 'tapered') return which === 'depth' ? shape.depth : shape.front[which];
	if (which === 'width') return shape.width;
	if (shape.kind === 'free') return null;
	if (which === 'height') return shape.height;
	if (shape.kind !== 'slanted') return shape.depth;
	return shape.lean.by === 'depths' ? shape.lean.bottom : shape.lean.depth;
}

/** Both depths of a slanted box move alike, so its angle stays; both mouths of a tapered one move alike, so its taper does. */
export function withDimension(shape: Shape, which: Dimension, value: Length): Shape {
	const by = ticks(value - (dimensionOf(shape, which) ?? value));
	if (shape.kind === 'tapered') {
		if (which === 'depth') return { ...shape, depth: value };
		const grown = (m: typeof shape.front): typeof shape.front => ({
			...m,
			[which]: ticks(m[which] + by),
		});
		return { ...shape, front: grown(shape.front), back: grown(shape.back) };
	}
	if (which === 'width') return { ...shape, width: value };
	if (shape.kind === 'free') return shape;
	if (which === 'height') return { ...shape, height: value };
	if (shape.kind !== 'slanted') return { ...shape, depth: value };
	const { lean } = shape;
	if (lean.by !== 'depths') return { ...shape, lean: { ...lean, depth: value } };
	return { ...shape, lean: { ...lean, bottom: value, top: ticks(lean.top + by) } };
}

/** Net litres of the chamber wanted at one value of the dimension; null where no box comes of it. */
export type NetAt = (value: Length) => number | null;

/**
 * The dimension that gives the wanted volume: net volume grows with it, nearly as a straight line, so a few steps of the
 * secant inside a closing bracket find it to the tick. Null when it lies beyond reach.
 */
export function solveFor(wanted: number, start: Length, net: NetAt): Length | null {
	let low = 0;
	let high: number = LARGEST;
	let a: [number, number] | null = null;
	let x: number = start;
	for (let i = 0; i < 60 && high - low > 1; i++) {
		const v = net(ticks(Math.round(x)));
		// Where nothing can be built the dimension is too small: boards in each other's way only ever need more room.
		const off = v === null ? null : v - wanted;
		if (off === null || off < 0) low = Math.max(low, x);
		else high = Math.min(high, x);
		if (off !== null && Math.abs(off) < 1e-9) return ticks(Math.round(x));
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

/** To the nearest mark a fence can be set to: 0.1 mm, or the fraction of the inch the shop works to. */
export function toMark(l: Length, ruler: Job['shop']['ruler']): Length {
	const mark = ruler.unit === 'in' ? TICKS_PER_INCH / ruler.fraction : TICKS_PER_MM / 10;
	return ticks(Math.round(l / mark) * mark);
}

/** How much a dimension is past what the space takes of the finished box; null without a space. */
export type OverAt = (shape: Shape) => Partial<Record<Dimension, number>> | null;

export interface Solution {
	readonly shape: Shape;
	readonly solved: Solved | null;
	readonly trouble: { readonly what: string; readonly fix: string } | null;
}

/** Solves the box for its wanted volume; when the space does not allow it, says by how much and what else would do. */
export function solveBox(
	box: Box,
	job: Job,
	netOf: (shape: Shape) => number | null,
	over: OverAt,
): Solution {
	const { target, shape } = box;
	const which = target?.solve;
	if (!target || !which) return { shape, solved: null, trouble: null };
	const found = solveOne(shape, which, target.litres, netOf);
	if (found === null) return { shape, solved: null, trouble: unreachable(box, which, netOf, over) };
	const rounded = toMark(found, job.shop.ruler);
	const made = withDimension(shape, which, rounded);
	const solved = {
		dimension: which,
		exact: found,
		rounded,
		wanted: target.litres,
		gives: netOf(made) ?? 0,
	};
	const past = over(made)?.[which] ?? 0;
	if (past <= 0) return { shape: made, solved, trouble: null };
	const most = netOf(withDimension(shape, which, ticks(rounded - past)));
	const short =
		most === null
			? ''
			: `, which gives ${litreText(most)}: ${litreText(target.litres - most)} too little`;
	return {
		shape: made,
		solved,
		trouble: {
			what: `For ${litreText(target.litres)} the ${which} has to be ${shown(rounded)} mm; the space takes ${shown(rounded - past)} mm${short}.`,
			fix: others(box, which, netOf, over),
		},
	};
}

function solveOne(
	shape: Shape,
	which: Dimension,
	wanted: number,
	netOf: (shape: Shape) => number | null,
): Length | null {
	const start = dimensionOf(shape, which);
	if (start === null) return null;
	return solveFor(wanted, start, (value) => netOf(withDimension(shape, which, value)));
}

function unreachable(
	box: Box,
	which: Dimension,
	netOf: (shape: Shape) => number | null,
	over: OverAt,
): { what: string; fix: string } {
	const wanted = litreText(box.target!.litres);
	const what =
		dimensionOf(box.shape, which) === null
			? `Free corners have no one ${which} to work out.`
			: `No ${which} up to ${shown(LARGEST)} mm gives ${wanted}.`;
	return { what, fix: others(box, which, netOf, over) };
}

/** Other dimensions that would reach the volume inside the space. */
function others(
	box: Box,
	which: Dimension,
	netOf: (shape: Shape) => number | null,
	over: OverAt,
): string {
	const words = (['width', 'height', 'depth'] as const).flatMap((other) => {
		if (other === which) return [];
		const found = solveOne(box.shape, other, box.target!.litres, netOf);
		if (found === null) return [];
		const past = over(withDimension(box.shape, other, found))?.[other] ?? 0;
		return past > 0 ? [] : [`a ${other} of ${shown(found)} mm`];
	});
	return words.length > 0
		? `With the rest as it is, ${words.join(' or ')} would do.`
		: 'No other dimension reaches it in this space either: ask for less volume, or put less into the box.';
}

const litreText = (l: number): string => `${Math.round(l * 100) / 100} L`;
