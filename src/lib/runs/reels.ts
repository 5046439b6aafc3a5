import { type Job, reelOf, type Sundry } from '../job';
import { type Length, mm, ticks, toMm } from '../measure';
import { type LengthCut, packLengths } from './pack';
import type { RunPlan } from './run-plan';

/** A length of cable, loom or hose and what is cut from it. */
export interface ReelLength {
	/** It lies on the rack, or is bought. */
	readonly source: 'rack' | 'buy';
	readonly length: Length;
	/** Marks of the runs cut from it, the longest first, one for each of several alike. */
	readonly runs: readonly string[];
	readonly left: Length;
}

/** A cable, loom or hose, and the lengths of it that the runs are cut from. */
export interface ReelPlan {
	/** Its mark on the rack. */
	readonly reel: string;
	readonly name: string;
	/** What all its runs come to. */
	readonly need: Length;
	/** How much of that is cut from what lies on the rack. */
	readonly fromRack: Length;
	/** Packs to buy for the rest. */
	readonly packs: number;
	readonly lengths: readonly ReelLength[];
}

/** The longest run that one length of it holds; null where any is cut off in one piece. */
export function longestOf(reel: Pick<Sundry, 'lengths' | 'pack'>): Length | null {
	return reel.lengths === 'cut' ? null : packLength(reel);
}

const packLength = ({ pack }: Pick<Sundry, 'pack'>): Length => mm(1000 * pack);

/** No rest on a rack is longer; one of that many packs is past all number. */
const FAR = 1e13; // ticks, over six thousand kilometres

/** Lengths on the rack: whole packs and a rest; all in one rest where they are cut off. */
function onRack({ owned, pack, lengths }: Sundry, most: number): number[] {
	const one = packLength({ pack });
	if (lengths === 'cut') return [Math.floor(Math.min(FAR, owned * one))];
	const whole = Math.floor(owned);
	// A rest that is left by a rounding error is none.
	const rest = Math.floor((owned - whole) * one + 1e-3);
	return [rest, ...Array.from({ length: Math.min(whole, most) }, () => one)].filter((l) => l > 0);
}

/**
 * What the runs are cut from, reel by reel in the order of the rack. `groups`: the runs of one job
 * each, where several are planned together.
 */
export function layReels(job: Job, groups: readonly (readonly RunPlan[])[]): ReelPlan[] {
	const used = new Set(
		groups.flat().flatMap((r) => (r.uncut === '' && r.count > 0 ? [r.reel] : [])),
	);
	return job.stock.sundries.flatMap(({ id }): ReelPlan[] => {
		const reel = used.has(id) ? reelOf(job, id) : null;
		return reel ? [layReel(reel, groups)] : [];
	});
}

function layReel(reel: Sundry, groups: readonly (readonly RunPlan[])[]): ReelPlan {
	const cuts = groups.map((runs) =>
		runs
			.filter((r) => r.uncut === '' && r.reel === reel.id)
			.flatMap((r) => Array.from({ length: r.count }, () => ({ run: r.label, length: r.cut }))),
	);
	const need = lengthOf(cuts.flat());
	const rack = onRack(reel, cuts.flat().length);
	const one = packLength(reel);
	// What is cut off comes as long as is asked: of so much room no cut is ever the tighter one, so
	// that the rest on the rack is used first.
	const bought = reel.lengths === 'cut' ? Number.MAX_SAFE_INTEGER : one;
	const packed = packLengths(cuts, { rack, bought });
	const lengths = packed.map(({ source, length, cuts }): ReelLength => {
		const taken = lengthOf(cuts);
		// What is cut off is bought in whole packs, and comes in one piece.
		const whole = source === 'buy' ? Math.ceil(taken / one) * one : length;
		return {
			...{ source, length: ticks(whole), runs: cuts.map((c) => c.run) },
			left: ticks(whole - taken),
		};
	});
	const from = (source: 'rack' | 'buy') => packed.filter((p) => p.source === source);
	return {
		...{ reel: reel.id, name: reel.name, need: ticks(need), lengths },
		fromRack: ticks(lengthOf(from('rack').flatMap((p) => p.cuts))),
		packs: from('buy').reduce((sum, { cuts }) => sum + Math.ceil(lengthOf(cuts) / one), 0),
	};
}

const lengthOf = (cuts: readonly LengthCut[]): number =>
	cuts.reduce((sum, cut) => sum + cut.length, 0);

/** Metres of a length: what the order counts a reel in. */
export const inMetres = (length: Length): number => toMm(length) / 1000;
