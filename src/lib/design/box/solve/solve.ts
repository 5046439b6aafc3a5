import type { Box, Dimension, BoxShape, Job } from '../../../job';
import { sayLength, sayMost, sayVolume, ticks, type Length } from '../../../measure';
import type { Solved } from '../box-plan';
import { LARGEST, solveFor, solveQuickly, toMark } from './solve-step';

/**
 * The dimension of a form as it stands, and the form with another one; null where the form has no
 * such dimension.
 */
function dimensionOf(shape: BoxShape, which: Dimension): Length | null {
	if (shape.kind === 'tapered') return which === 'depth' ? shape.depth : shape.front[which];
	if (which === 'width') return shape.width;
	if (shape.kind === 'free') return null;
	if (which === 'height') return shape.height;
	if (shape.kind !== 'slanted') return shape.depth;
	return shape.lean.by === 'depths' ? shape.lean.bottom : shape.lean.depth;
}

/**
 * Both depths of a slanted box move alike, so its angle stays; both mouths of a tapered one move
 * alike, so its taper does.
 */
function withDimension(shape: BoxShape, which: Dimension, value: Length): BoxShape {
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

/** How much a dimension is past what the space takes of the finished box; null without a space. */
export type OverAt = (shape: BoxShape) => Partial<Record<Dimension, number>> | null;

/**
 * What a form holds, litres; null where no box comes of it. `net` builds the box, `gross` only
 * works its boards into its profile.
 */
export interface Holds {
	net(shape: BoxShape): number | null;
	gross(shape: BoxShape): number | null;
}

export interface Solution {
	readonly shape: BoxShape;
	readonly solved: Solved | null;
	/** Why the wish is not met as it was asked; null when it is. */
	readonly unmet: { readonly what: string; readonly fix: string } | null;
}

/** One dimension asked to give so many litres. */
interface Ask {
	readonly shape: BoxShape;
	readonly which: Dimension;
	readonly wanted: number;
	readonly holds: Holds;
	readonly over: OverAt;
	readonly job: Job;
}

/**
 * Solves the box for its wanted volume; when the space does not allow it, says by how much and what
 * else would do.
 */
export function solveBox(box: Box, job: Job, holds: Holds, over: OverAt): Solution {
	const { target, shape } = box;
	const which = target?.solve;
	if (!target || !which) return { shape, solved: null, unmet: null };
	const ask: Ask = { shape, which, wanted: target.litres, holds, over, job };
	const found = solveOne(shape, which, target.litres, holds, job);
	if (found === null) return { shape, solved: null, unmet: unreachable(ask) };
	const { ruler } = job.shop;
	const volume = (litres: number): string => sayVolume(litres, ruler);
	const rounded = toMark(found, ruler);
	const made = withDimension(shape, which, rounded);
	const solved = {
		dimension: which,
		exact: found,
		rounded,
		wanted: target.litres,
		gives: holds.net(made) ?? 0,
	};
	const past = over(made)?.[which] ?? 0;
	if (past <= 0) return { shape: made, solved, unmet: null };
	const most = holds.net(withDimension(shape, which, ticks(rounded - past)));
	const short =
		most === null
			? ''
			: `, which gives ${volume(most)}: ${volume(target.litres - most)} too little`;
	return {
		shape: made,
		solved,
		unmet: {
			what: `For ${volume(target.litres)} the ${which} has to be ${sayLength(rounded, ruler)}; the space takes ${sayMost(rounded - past, ruler)}${short}.`,
			fix: others(ask),
		},
	};
}

function solveOne(
	shape: BoxShape,
	which: Dimension,
	wanted: number,
	holds: Holds,
	job: Job,
): Length | null {
	const start = dimensionOf(shape, which);
	if (start === null) return null;
	const at = (value: Length): BoxShape => withDimension(shape, which, value);
	const net = (value: Length): number | null => holds.net(at(value));
	const gross = (value: Length): number | null => holds.gross(at(value));
	const mark = (value: Length): Length => toMark(value, job.shop.ruler);
	return solveQuickly(wanted, start, { net, gross, mark }) ?? solveFor(wanted, start, net);
}

function unreachable(ask: Ask): { what: string; fix: string } {
	const { shape, which, job } = ask;
	const { ruler } = job.shop;
	const wanted = sayVolume(ask.wanted, ruler);
	const what =
		dimensionOf(shape, which) === null
			? `Free corners have no one ${which} to work out.`
			: `No ${which} up to ${sayMost(LARGEST, ruler)} gives ${wanted}.`;
	return { what, fix: others(ask) };
}

/** Other dimensions that would reach the volume inside the space. */
function others({ shape, which, wanted, holds, over, job }: Ask): string {
	const words = (['width', 'height', 'depth'] as const).flatMap((other) => {
		if (other === which) return [];
		const found = solveOne(shape, other, wanted, holds, job);
		if (found === null) return [];
		const past = over(withDimension(shape, other, found))?.[other] ?? 0;
		return past > 0 ? [] : [`a ${other} of ${sayLength(found, job.shop.ruler)}`];
	});
	return words.length > 0
		? `With the rest as it is, ${words.join(' or ')} would do.`
		: 'No other dimension reaches it in this space either: ask for less volume, or put less into the box.';
}
