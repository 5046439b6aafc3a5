import type { Random } from '../../random';
import type { SawModel } from '../model';
import { SlackTree, SlotList } from '../tree';
import { kindsToOpen } from './openable';

/** May this sheet be cut within the limits of the saw? Null where the saw has none. */
export type Allowed = ((tree: SlackTree) => boolean) | null;

/**
 * What a search carries along: its dice, the work done, and how often a slot is overlooked on
 * purpose.
 */
export interface SearchState {
	readonly model: SawModel;
	readonly dice: Random;
	readonly allowed: Allowed;
	/**
	 * Smallest width and height, as they may lie, of any piece now to be laid: smaller rooms need
	 * not be looked for.
	 */
	leastW: number;
	leastH: number;
	/** Slots made or looked at. */
	work: number;
	/**
	 * Slots left until one is skipped: a little blindness keeps the search from running in circles.
	 */
	blink: number;
	blinkEvery: number;
	/** Room for the keys by which types are put in order; as long as there are types. */
	readonly orderKeys: Float64Array;
	/** Kinds of sheet that are opened, by index, cheapest first. */
	readonly openable: Int32Array;
}

export function searchState(model: SawModel, dice: Random, allowed: Allowed): SearchState {
	const { leastW, leastH } = model;
	const orderKeys = new Float64Array(model.types.length);
	const openable = kindsToOpen(model);
	const never = { blink: Infinity, blinkEvery: Infinity };
	return { model, dice, allowed, leastW, leastH, work: 0, ...never, orderKeys, openable };
}

function nextBlink(search: SearchState): number {
	return search.blinkEvery === Infinity ? Infinity : 1 + search.dice.int(2 * search.blinkEvery);
}

/**
 * A sheet being filled: its tree, its slots and, per type, the best slot known until the tree
 * changes.
 */
export class OpenSheet {
	readonly tree: SlackTree;
	private readonly slots = new SlotList();
	private listed = -1;
	private readonly lossOf: Float64Array;
	private readonly slotOf: Int32Array; // 2 * slot + (1 when turned)
	private readonly known: Int32Array; // tree version at which the two above held
	private trial: SlackTree | null = null; // made when a saw with limits asks for it
	/** The step that made this copy; the search copies a sheet once per step. */
	step = -1;

	constructor(types: number) {
		this.tree = new SlackTree(0, 0);
		this.lossOf = new Float64Array(types);
		this.slotOf = new Int32Array(types);
		this.known = new Int32Array(types).fill(-1);
	}

	/** Made empty, of one kind of sheet. */
	begin(kind: number, width: number, height: number): void {
		this.tree.clear();
		this.tree.moveTo(kind, width, height);
	}

	/**
	 * Worth of leftover lost by the best place for one piece of the type; Infinity when there is
	 * none.
	 */
	loss(type: number, search: SearchState): number {
		const { tree } = this;
		const known = this.known[type]!;
		if (known === tree.version) return this.lossOf[type]!;
		// what found no room finds none once more has been laid, if only room counts
		if (this.lossOf[type] === Infinity && known >= tree.loosened && !search.allowed)
			return Infinity;
		const { model } = search;
		const small = tree.width * tree.height - tree.area < model.area[type]!;
		if (!small) this.list(search);
		this.known[type] = tree.version;
		this.lossOf[type] = Infinity;
		if (small) return Infinity;
		const w = model.w[type]!;
		const h = model.h[type]!;
		if (search.allowed) {
			this.lossOf[type] = this.bestAllowed(type, search);
			return this.lossOf[type];
		}
		this.look(type, 0, w, h, search);
		if (model.turns[type]) this.look(type, 1, h, w, search);
		return this.lossOf[type];
	}

	private look(type: number, turned: number, w: number, h: number, search: SearchState): void {
		const { slots } = this;
		if (w > slots.widest || h > slots.highest) return;
		let best = this.lossOf[type]!;
		const { count, rooms } = slots;
		search.work += count;
		for (let i = 0; i < count; i++) {
			if (w > rooms[2 * i]! || h > rooms[2 * i + 1]!) continue;
			const lost = slots.loss(i, w, h);
			if (lost >= best) continue;
			if (--search.blink <= 0) {
				search.blink = nextBlink(search);
				continue;
			}
			best = lost;
			this.slotOf[type] = 2 * i + turned;
		}
		this.lossOf[type] = best;
	}

	/**
	 * With limits on the saw each place is tried out, cheapest first, until the sheet can still be
	 * cut.
	 */
	private bestAllowed(type: number, search: SearchState): number {
		const { slots } = this;
		const { w, h, turns } = search.model;
		const tries: { lost: number; slot: number }[] = [];
		for (let turned = 0; turned <= turns[type]!; turned++)
			for (let i = 0; i < slots.count; i++) {
				const lost = turned ? slots.loss(i, h[type]!, w[type]!) : slots.loss(i, w[type]!, h[type]!);
				if (lost < Infinity) tries.push({ lost, slot: 2 * i + turned });
			}
		tries.sort((a, b) => a.lost - b.lost || a.slot - b.slot);
		const trial = (this.trial ??= new SlackTree(0, 0));
		for (const { lost, slot } of tries) {
			if (--search.blink <= 0) {
				search.blink = nextBlink(search);
				continue;
			}
			search.work += 20 + 4 * this.tree.size;
			trial.copyFrom(this.tree);
			this.fillSlot(trial, slots, slot, type, search.model);
			if (!search.allowed!(trial)) continue;
			this.slotOf[type] = slot;
			return lost;
		}
		return Infinity;
	}

	private fillSlot(
		tree: SlackTree,
		slots: SlotList,
		slot: number,
		type: number,
		model: SawModel,
	): void {
		const turned = (slot & 1) === 1;
		const w = model.w[type]!;
		const h = model.h[type]!;
		slots.fill(tree, slot >> 1, tree.leaf(type, turned, turned ? h : w, turned ? w : h));
	}

	/**
	 * Lays one piece into the slot that loss() found on `seen`: this sheet itself or the one it was
	 * copied from.
	 */
	place(type: number, seen: OpenSheet, search: SearchState): void {
		// a copy has the same nodes in the same places, so the slot holds for it without a walk of
		// its own
		this.fillSlot(this.tree, seen.slots, seen.slotOf[type]!, type, search.model);
	}

	/** Takes over from the sheet it was copied from which types find no room. */
	learn(from: OpenSheet, types: readonly number[]): void {
		for (const type of types) {
			if (from.lossOf[type] !== Infinity || from.known[type]! < from.tree.loosened) continue;
			this.known[type] = this.tree.version;
			this.lossOf[type] = Infinity;
		}
	}

	private list(search: SearchState): void {
		const { slots, tree } = this;
		if (this.listed === tree.version) {
			if (slots.holdsFor(search.leastW, search.leastH)) return;
			this.known.fill(-1); // the places known are numbers in a list made for larger pieces
		}
		slots.list(tree, search.leastW, search.leastH);
		this.listed = tree.version;
		// nodes are walked, whether or not they give a slot
		search.work += slots.count + (tree.size >> 2);
	}

	/** A true copy for a step that may be undone; slots are worked out again only if asked for. */
	copyFrom(other: OpenSheet): void {
		this.tree.copyFrom(other.tree);
	}
}
