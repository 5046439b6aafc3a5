import { nth } from '../../../measure';
import { beside, deflate, inflate, type Actual, type Inflated } from '../../inflated';
import type { SawRegion } from './regions';
import type { SawProblem } from '../../types';

/*
 * The order in which the parts of one region come off, and where the fence stands for each. Only
 * the side against the fence has to be wide enough to be held and near enough for the fence: the
 * other falls free.
 */

export type FenceLimits = Pick<SawProblem, 'fenceLimit' | 'narrowestRip' | 'kerf'>;

/** One part comes off the low (left, bottom) or the high end of what is left. */
export interface FenceStep {
	readonly part: SawRegion;
	readonly end: 'low' | 'high';
	readonly fence: Actual;
	readonly fenceEnd: 'low' | 'high';
}

/** All parts but the last come off in turn; the last one is what remains. */
export interface Sequence {
	readonly steps: readonly FenceStep[];
	readonly last: SawRegion;
}

interface Waiting {
	readonly part: SawRegion;
	readonly size: Inflated; // along the axis
	readonly spare: boolean; // leftover
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
		}))
		.sort((a, b) => Number(a.spare) - Number(b.spare) || b.size - a.size);
}

/** Can the saw hold a part of this size against the fence? */
export function fenceHolds(actual: Actual, { narrowestRip, fenceLimit }: FenceLimits): boolean {
	return (
		actual > 0 &&
		(narrowestRip === null || actual >= narrowestRip) &&
		(fenceLimit === null || actual <= fenceLimit)
	);
}

/**
 * Fence setting for a part coming off while `left`, the part included, is there; null when no side
 * can be held.
 */
function setting(
	size: Inflated,
	left: Inflated,
	limits: FenceLimits,
): { fence: Actual; own: boolean } | null {
	const own = deflate(size, limits.kerf);
	if (fenceHolds(own, limits)) return { fence: own, own: true };
	const other = deflate(beside(left, size), limits.kerf);
	return fenceHolds(other, limits) ? { fence: other, own: false } : null;
}

/** Leftover farther than the fence reaches comes off in slices that it does reach. */
function sliced(waiting: readonly Waiting[], axis: 'x' | 'y', limits: FenceLimits): Waiting[] {
	const { fenceLimit, kerf } = limits;
	if (fenceLimit === null) return [...waiting];
	return waiting.flatMap((w) => {
		const slices: Waiting[] = [];
		let size = w.size;
		const most = inflate(fenceLimit, kerf);
		const cut = (s: Inflated): Waiting => ({
			part: axis === 'x' ? { ...w.part, w: s } : { ...w.part, h: s },
			size: s,
			spare: true,
		});
		while (w.spare && size > most) {
			slices.push(cut(most));
			size = beside(size, most);
		}
		return slices.length > 0 ? [...slices, cut(size)] : [w];
	});
}

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

/** Tries one part as the last to remain; the others come off as soon as some side can be held. */
function sequenceWith(
	waiting: readonly Waiting[],
	last: number,
	total: Inflated,
	limits: FenceLimits,
): Sequence | null {
	const steps: FenceStep[] = [];
	const anchor = nth(waiting, last);
	const rest = waiting.filter((_, i) => i !== last);
	let left = total;
	while (rest.length > 0) {
		const next = firstHeld(rest, left, limits);
		if (next === null) return null;
		const { part, size, spare } = nth(rest, next.index);
		rest.splice(next.index, 1);
		const { fence, own } = next;
		const end = spare ? 'high' : 'low';
		const far = end === 'low' ? 'high' : 'low';
		steps.push({ part, end, fence, fenceEnd: own ? end : far });
		left = beside(left, size);
	}
	return { steps, last: anchor.part };
}

function alike(a: Waiting | undefined, b: Waiting | undefined): boolean {
	return a !== undefined && b !== undefined && a.spare && b.spare && a.size === b.size;
}

/** Null when the saw cannot part this region in any order. */
export function sequenceOf(r: SawRegion, limits: FenceLimits): Sequence | null {
	const axis = r.axis ?? 'x';
	const plain = inOrder(r);
	const total = sizeAlong(r, axis);
	const free = limits.fenceLimit === null && limits.narrowestRip === null;
	const end = plain.length - 1;
	const simple = sequenceWith(plain, end, total, limits);
	if (simple || free) return simple;
	const waiting = sliced(plain, axis, limits);
	for (let last = waiting.length - 1; last >= 0; last--) {
		// One slice is as good as the next: a fence that reaches no way leaves hundreds of them.
		if (alike(waiting[last], waiting[last + 1])) continue;
		const found = sequenceWith(waiting, last, total, limits);
		if (found) return found;
	}
	return null;
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
	const parted = plainlyParted(r, limits) || sequenceOf(r, limits) !== null;
	return parted && r.parts.every((p) => canPart(p, limits));
}
