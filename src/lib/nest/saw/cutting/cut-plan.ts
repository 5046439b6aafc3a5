import { deflate, type Actual } from '../../inflated';
import { canPart } from './fence';
import { partsPlainly } from './plain-parting';
import { rootLayouts, stagesOf, type SawRegion } from './regions';
import type { SlackTree } from '../tree';
import type { SawProblem } from '../../types';

/** What the search needs to know of the saw when it hands out slack and judges offcuts. */
export type SawRules = Pick<
	SawProblem,
	'kerf' | 'stages' | 'fenceLimit' | 'narrowestRip' | 'keep' | 'first'
>;

/** A way to cut a sheet and what it is worth. */
export interface CutPlan {
	readonly region: SawRegion;
	/** The first cut runs the way that was asked for. */
	readonly first: boolean;
	/** Actual area of the largest offcut worth racking. */
	readonly offcut: number;
	readonly cuts: number;
}

/** Is a leftover of this actual size worth racking, whichever way it lies? */
export function worthKeeping(length: Actual, width: Actual, keep: SawRules['keep']): boolean {
	return (
		Math.max(length, width) >= Math.max(keep.length, keep.width) &&
		Math.min(length, width) >= Math.min(keep.length, keep.width) &&
		length > 0 &&
		width > 0
	);
}

function largestOffcut(r: SawRegion, rules: SawRules): number {
	if (r.axis !== null) return r.parts.reduce((m, p) => Math.max(m, largestOffcut(p, rules)), 0);
	if (r.leaf >= 0) return 0;
	const [length, width] = [deflate(r.w, rules.kerf), deflate(r.h, rules.kerf)];
	return worthKeeping(length, width, rules.keep) ? length * width : 0;
}

function cutCount(r: SawRegion): number {
	return r.axis === null ? 0 : r.parts.reduce((sum, p) => sum + cutCount(p), r.parts.length - 1);
}

function runsFirst(r: SawRegion, first: SawRules['first']): boolean {
	if (first === 'any' || r.axis === null) return true;
	return (first === 'rip') === (r.axis === 'y');
}

function within(r: SawRegion, rules: SawRules): boolean {
	if (rules.stages !== null && stagesOf(r) > rules.stages) return false;
	return (rules.fenceLimit === null && rules.narrowestRip === null) || canPart(r, rules);
}

/**
 * The best way to hand out the slack of a sheet that is not empty; null when the saw's limits leave
 * none.
 */
export function cutPlan(tree: SlackTree, rules: SawRules): CutPlan | null {
	return bestPlan(rootLayouts(tree), rules);
}

/** The best of several ways to cut one sheet up; null when the saw's limits leave none. */
export function bestPlan(regions: Iterable<SawRegion>, rules: SawRules): CutPlan | null {
	let best: CutPlan | null = null;
	for (const region of regions) {
		if (!within(region, rules)) continue;
		const plan: CutPlan = {
			region,
			first: runsFirst(region, rules.first),
			offcut: largestOffcut(region, rules),
			cuts: cutCount(region),
		};
		if (!best || betterPlan(plan, best)) best = plan;
	}
	return best;
}

function betterPlan(a: CutPlan, b: CutPlan): boolean {
	if (a.first !== b.first) return a.first;
	return a.offcut > b.offcut || (a.offcut === b.offcut && a.cuts < b.cuts);
}

/**
 * The check a search makes on each sheet; null where the saw sets no limits and every tree can be
 * cut.
 */
export function limitsOf(rules: SawRules): ((tree: SlackTree) => boolean) | null {
	if (rules.stages === null && rules.fenceLimit === null && rules.narrowestRip === null)
		return null;
	return (tree) => {
		if (rules.stages === null && partsPlainly(tree, rules)) return true;
		for (const region of rootLayouts(tree)) if (within(region, rules)) return true;
		return false;
	};
}
