import { nth } from '../../../measure';
import { deflate, inflate, type Actual, type Inflated } from '../../inflated';
import { setting, type FenceLimits, type FenceStep, type Sequence, fenceHolds } from './held';
import { keptSequence } from './kept-order';
import type { SawRegion } from './regions';

/*
 * The order in which the parts of one region come off, and where the fence stands for each. Only
 * the side against the fence has to be wide enough to be held and near enough for the fence: the
 * other falls free.
 */

interface Waiting {
	readonly part: SawRegion;
	readonly size: Inflated; // along the axis
	readonly spare: boolean; // leftover
	/** So many alike: a leftover far beyond the fence is hundreds of equal slices. */
	readonly times: number;
}

/** Parts that come off one after another at the same setting. */
interface Taken extends Omit<FenceStep, 'part'> {
	readonly part: SawRegion;
	readonly times: number;
}

/** All but the last in turn, equal ones as one. */
interface Order {
	readonly taken: readonly Taken[];
	readonly last: SawRegion;
}

const sizeAlong = (r: SawRegion, axis: 'x' | 'y'): Inflated => (axis === 'x' ? r.w : r.h);

/** Equal settings follow each other, large before small, leftover at the end. */
function inOrder(r: SawRegion): Waiting[] {
	const axis = r.axis ?? 'x';
	return r.parts
		.map((part) => ({
			part,
			size: sizeAlong(part, axis),
			spare: part.leaf < 0 && part.axis === null,
			times: 1,
		}))
		.sort((a, b) => Number(a.spare) - Number(b.spare) || b.size - a.size);
}

/** Leftover farther than the fence reaches comes off in slices that it does reach. */
function sliced(waiting: readonly Waiting[], axis: 'x' | 'y', limits: FenceLimits): Waiting[] {
	const { fenceLimit, kerf } = limits;
	if (fenceLimit === null) return [...waiting];
	const most = inflate(fenceLimit, kerf);
	return waiting.flatMap((w) => {
		if (!w.spare || w.size <= most) return [w];
		const cut = (size: Inflated, times: number): Waiting => ({
			part: axis === 'x' ? { ...w.part, w: size } : { ...w.part, h: size },
			size,
			spare: true,
			times,
		});
		const times = Math.ceil(w.size / most) - 1;
		return [cut(most, times), cut(besideAll(w.size, most, times), 1)];
	});
}

const besideAll = (whole: Inflated, part: Inflated, times: number): Inflated =>
	(whole - times * part) as Inflated;

/** The first part that can come off now, with its fence setting; null when none can. */
function firstHeld(
	rest: readonly Waiting[],
	left: Inflated,
	limits: FenceLimits,
): { index: number; fence: Actual; own: boolean } | null {
	for (const [index, { size }] of rest.entries()) {
		const held = setting(size, left, limits);
		if (held !== null) return { index, ...held };
	}
	return null;
}

/**
 * How many of a row of slices come off before a part that waits ahead of them can be held: as soon
 * as what lies beside it is near enough for the fence.
 */
function slicesAtOnce(
	rest: readonly Waiting[],
	index: number,
	left: Inflated,
	{ fenceLimit, kerf }: FenceLimits,
): number {
	const { size, times } = nth(rest, index);
	if (times === 1 || fenceLimit === null) return 1;
	const reach = inflate(fenceLimit, kerf);
	const until = rest.slice(0, index).map((w) => Math.ceil((left - w.size - reach) / size));
	return Math.min(times, ...until.filter((n) => n > 0));
}

/** Tries one part as the last to remain; the others come off as soon as some side can be held. */
function orderWith(
	waiting: readonly Waiting[],
	last: number,
	total: Inflated,
	limits: FenceLimits,
): Order | null {
	const taken: Taken[] = [];
	const anchor = nth(waiting, last);
	const rest = [...waiting];
	if (anchor.times > 1) rest[last] = { ...anchor, times: anchor.times - 1 };
	else rest.splice(last, 1);
	let left = total;
	while (rest.length > 0) {
		const next = firstHeld(rest, left, limits);
		if (next === null) return null;
		const { part, size, spare, times } = nth(rest, next.index);
		const { fence, own } = next;
		const off = own ? slicesAtOnce(rest, next.index, left, limits) : 1;
		if (off < times) rest[next.index] = { part, size, spare, times: times - off };
		else rest.splice(next.index, 1);
		const end = spare ? 'high' : 'low';
		const far = end === 'low' ? 'high' : 'low';
		taken.push({ part, end, fence, fenceEnd: own ? end : far, times: off });
		left = besideAll(left, size, off);
	}
	return { taken, last: anchor.part };
}

function alike(a: Waiting | undefined, b: Waiting | undefined): boolean {
	return a !== undefined && b !== undefined && a.spare === b.spare && a.size === b.size;
}

/** The order in which the parts of a region come off; null when there is none. */
function orderOf(r: SawRegion, limits: FenceLimits): Order | null {
	const axis = r.axis ?? 'x';
	const plain = inOrder(r);
	const total = sizeAlong(r, axis);
	const free = limits.fenceLimit === null && limits.narrowestRip === null;
	const simple = orderWith(plain, plain.length - 1, total, limits);
	if (simple || free) return simple;
	const waiting = sliced(plain, axis, limits);
	for (let last = waiting.length - 1; last >= 0; last--) {
		// Only sizes count: where one of a size cannot remain, none of that size can.
		if (alike(waiting[last], waiting[last + 1])) continue;
		const found = orderWith(waiting, last, total, limits);
		if (found) return found;
	}
	return null;
}

/** Null when the saw cannot part this region in any order it may take. */
export function sequenceOf(r: SawRegion, limits: FenceLimits): Sequence | null {
	if (r.kept) return keptSequence(r, limits);
	const order = orderOf(r, limits);
	if (!order) return null;
	const { taken, last } = order;
	return {
		steps: taken.flatMap(({ times, ...step }) => Array<FenceStep>(times).fill(step)),
		last,
	};
}

/**
 * Can every part but the last, the leftover or else the smallest, be held itself? Then the plain
 * order will do: most regions end here.
 */
function plainlyParted(r: SawRegion, limits: FenceLimits): boolean {
	const axis = r.axis ?? 'x';
	let last = -1; // index of the part that remains
	let least = Infinity;
	for (const [i, part] of r.parts.entries()) {
		const spare = part.leaf < 0 && part.axis === null;
		const along = spare ? -1 : sizeAlong(part, axis);
		if (along < least) [last, least] = [i, along];
	}
	return r.parts.every(
		(p, i) => i === last || fenceHolds(deflate(sizeAlong(p, axis), limits.kerf), limits),
	);
}

/** Can every region be parted? */
export function canPart(r: SawRegion, limits: FenceLimits): boolean {
	if (r.axis === null) return true;
	const parted = r.kept
		? keptSequence(r, limits) !== null
		: plainlyParted(r, limits) || orderOf(r, limits) !== null;
	return parted && r.parts.every((p) => canPart(p, limits));
}
