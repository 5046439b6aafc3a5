import { cutPlan, type SawRegion } from '../cutting';
import { PartialLayout, type LayoutSnapshot } from './partial-layout';
import type { SearchState, OpenSheet } from './open-sheet';
import { anyOpening, drawOrder, makePairs, recreate } from './recreate';
import { ruin, type Tools } from './ruin';

/*
 * What is left to win once the money is settled: the largest single offcut, then fewer fence
 * settings, then fewer cuts. Small parts of the layout are laid anew at no more cost, and what is
 * not worse is kept.
 */

const OFFCUT_STEPS = 200; // an offcut counts as larger from half a per cent of the largest sheet
const PATIENCE = 200; // steps without gain
const WORK_PER_LEAF = 50; // to plan the cuts of a sheet

/** What one sheet is judged by. */
interface Worth {
	readonly offcut: number;
	readonly settings: number;
	readonly cuts: number;
	readonly first: number; // 1 when the first cut runs the wrong way
}

/** Different fence settings in a region: equal strips are cut together wherever they lie. */
function settingsOf(r: SawRegion, seen: Set<string>): void {
	if (r.axis === null) return;
	for (const part of r.parts.slice(0, -1)) seen.add(`${r.axis}${r.axis === 'x' ? part.w : part.h}`);
	for (const part of r.parts) settingsOf(part, seen);
}

export class Finishing {
	private readonly partial: PartialLayout;
	private readonly worths = new WeakMap<OpenSheet, { version: number; worth: Worth }>();
	private readonly tools: Tools;
	private readonly unit: number;
	private score: number;
	private idle = 0;
	best: LayoutSnapshot;

	constructor(
		private readonly search: SearchState,
		first: LayoutSnapshot,
	) {
		this.partial = new PartialLayout(search);
		this.partial.restore(first);
		this.best = first;
		const pieces = search.model.demand.reduce((a, b) => a + b, 0);
		this.tools = { empty: 0.1, swap: 0, most: 8, leaves: new Int32Array(pieces + 1) };
		this.unit = search.model.kinds.reduce((m, k) => Math.max(m, k.w * k.h), 1) / OFFCUT_STEPS;
		search.blinkEvery = 20;
		search.blink = 10;
		this.score = this.judge();
	}

	get done(): boolean {
		return this.idle >= PATIENCE || this.best.trees.length === 0;
	}

	private worthOf(sheet: OpenSheet): Worth {
		const known = this.worths.get(sheet);
		if (known?.version === sheet.tree.version) return known.worth;
		this.search.work += WORK_PER_LEAF * (4 + sheet.tree.leaves);
		const plan = cutPlan(sheet.tree, this.search.model.problem);
		if (!plan) throw new Error('bug: a sheet that the saw cannot cut');
		const seen = new Set<string>();
		settingsOf(plan.region, seen);
		const worth = {
			offcut: plan.offcut,
			settings: seen.size,
			cuts: plan.cuts,
			first: plan.first ? 0 : 1,
		};
		this.worths.set(sheet, { version: sheet.tree.version, worth });
		return worth;
	}

	/**
	 * Higher is better: whole steps of offcut first; settings and cuts never add up to one step.
	 */
	private judge(): number {
		let [offcut, settings, cuts, first] = [0, 0, 0, 0];
		for (const sheet of this.partial.sheets) {
			const worth = this.worthOf(sheet);
			offcut = Math.max(offcut, worth.offcut);
			settings += worth.settings;
			cuts += worth.cuts;
			first += worth.first;
		}
		const many =
			1 + 2 * this.search.model.demand.reduce((a, b) => a + b, 0) + 4 * this.partial.sheets.length;
		return ((Math.floor(offcut / this.unit) - first) * many - settings) * 4 * many - cuts;
	}

	/** One step; true when something was gained. */
	step(): boolean {
		const { partial, search, best } = this;
		partial.mark();
		search.blinkEvery = this.idle % 2 === 0 ? 20 : 3;
		search.blink = search.blinkEvery / 2;
		ruin(partial, this.tools, best.cost);
		makePairs(partial, 1, search.dice);
		recreate(partial, drawOrder(partial), best.cost, anyOpening);
		partial.shrink();
		search.work += 50 + partial.sheets.length;
		this.idle++;
		if (partial.cost > best.cost || partial.missing() > best.missing) {
			partial.undo();
			return false;
		}
		const cheaper = partial.cost < best.cost || partial.missing() < best.missing;
		const score = this.judge();
		if (!cheaper && score < this.score) {
			partial.undo();
			return false;
		}
		partial.commit();
		if (!cheaper && score === this.score) return false;
		this.score = score;
		this.idle = 0;
		this.best = partial.keep();
		return true;
	}
}
