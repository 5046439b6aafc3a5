import type { PartialLayout } from './partial-layout';
import type { OpenSheet } from './open-sheet';
import { NONE, PARENT } from '../tree';

/** How much one step takes apart. */
export interface Tools {
	/** Chance that whole sheets are emptied instead of pieces taken off. */
	readonly empty: number;
	/** Chance, with several kinds of sheet, that one is swapped for another kind first. */
	readonly swap: number;
	/** Most pieces taken off in a step. */
	readonly most: number;
	/** Room for the leaves of the fullest sheet. */
	readonly leaves: Int32Array;
}

/** Takes a part of the layout off; the pieces are out. */
export function ruin(laying: PartialLayout, tools: Tools, limit: number): void {
	const { dice, model } = laying.job;
	if (laying.sheets.length === 0) return;
	if (model.kinds.length > 1 && dice.unit() < tools.swap) swapOne(laying, limit);
	if (dice.unit() < tools.empty) emptySheets(laying, tools);
	else takeSome(laying, tools);
	laying.dropEmpty();
	dropUncuttable(laying, tools);
}

/** A sheet that lost the wide part its narrow ones were held by may be past the limits of the saw: it is emptied whole. */
function dropUncuttable(laying: PartialLayout, { leaves }: Tools): void {
	const { allowed } = laying.job;
	if (!allowed) return;
	for (let i = laying.sheets.length - 1; i >= 0; i--) {
		const sheet = laying.sheets[i]!;
		if (laying.touched(sheet) && !allowed(sheet.tree)) laying.drop(i, leaves);
	}
}

function emptySheets(laying: PartialLayout, { leaves }: Tools): void {
	const { dice } = laying.job;
	const count = dice.unit() < 0.3 ? 2 : 1;
	for (let i = 0; i < count && laying.sheets.length > 0; i++)
		laying.drop(dice.int(laying.sheets.length), leaves);
}

function takeSome(laying: PartialLayout, { most, leaves }: Tools): void {
	const { dice } = laying.job;
	const sheets = 1 + dice.int(3);
	let left = 1 + dice.int(most);
	for (let i = sheets; i > 0 && left > 0; i--) {
		const share = Math.ceil(left / i);
		left -= takeFrom(laying, drawSheet(laying), share, leaves);
	}
}

/** Half the time any sheet, half the time the emptier one of two: what is nearly empty is soonest gone. */
function drawSheet(laying: PartialLayout): number {
	const { dice } = laying.job;
	const { sheets } = laying;
	const one = dice.int(sheets.length);
	if (dice.unit() < 0.5) return one;
	const two = dice.int(sheets.length);
	const spare = ({ tree }: OpenSheet): number => tree.width * tree.height - tree.area;
	return spare(sheets[two]!) > spare(sheets[one]!) ? two : one;
}

/** Half the time single leaves, half the time the leaves of one strip; returns how many came off. */
function takeFrom(laying: PartialLayout, index: number, count: number, leaves: Int32Array): number {
	const { dice } = laying.job;
	if (laying.sheets[index]!.tree.root === NONE) return 0;
	const sheet = laying.touch(index);
	const { tree } = sheet;
	const all = tree.leavesUnder(tree.root, leaves);
	if (count >= all) {
		for (let i = 0; i < all; i++) laying.remove(sheet, leaves[i]!);
		return all;
	}
	if (dice.unit() < 0.5) {
		for (let i = 0; i < count; i++) {
			const pick = i + dice.int(all - i);
			const leaf = leaves[pick]!;
			leaves[pick] = leaves[i]!;
			laying.remove(sheet, leaf);
		}
		return count;
	}
	let top = leaves[dice.int(all)]!;
	let under = 1;
	while (under < count && tree.nodes[top + PARENT] !== NONE) {
		top = tree.nodes[top + PARENT]!;
		under = tree.leavesUnder(top, leaves);
	}
	if (under === 1) leaves[0] = top;
	const off = Math.min(count, under);
	const start = under > off ? dice.int(under - off + 1) : 0;
	for (let i = 0; i < off; i++) laying.remove(sheet, leaves[start + i]!);
	return off;
}

/** Another kind of sheet for what lies on one: usually larger, so that more may be added. */
function swapOne(laying: PartialLayout, limit: number): void {
	const { dice, model } = laying.job;
	const index = dice.int(laying.sheets.length);
	const kind = dice.int(model.kinds.length);
	const { tree } = laying.sheets[index]!;
	const { w, h, cost, count } = model.kinds[kind]!;
	if (kind === tree.kind || laying.used[kind]! >= count) return;
	if (w * h <= tree.width * tree.height || w < tree.width || h < tree.height) return;
	if (laying.cost - model.kinds[tree.kind]!.cost + cost > limit) return;
	laying.swap(laying.touch(index), kind);
}
