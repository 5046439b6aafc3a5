import { nth } from '../../measure';
import { PACKER_MODES, packSheets, type PackerMode } from './maxrects';
import {
	fits,
	isCheaper,
	isLesser,
	laidOn,
	type RouterModel,
	type RouterPlan,
	type RouterSheet,
} from './model';

/**
 * Past this many pieces only the first modes are tried at the start: the packer's time grows with
 * the square.
 */
const MANY = 400;

/**
 * First layouts by the free rectangle packer: what is owned is filled first, the rest is bought as
 * one kind of sheet, each kind tried; then every sheet is exchanged for a cheaper one that takes
 * the same pieces. Yields each plan that is better than those before it.
 */
export function* firstPlans(model: RouterModel): Generator<RouterPlan, void, void> {
	let best: RouterPlan | null = null;
	const pieces = model.types.reduce((sum, type) => sum + type.piece.count, 0);
	const modes = pieces > MANY ? PACKER_MODES.slice(0, 1) : PACKER_MODES;
	for (const mode of modes) {
		for (const kinds of supplies(model)) {
			const plan = exchange(model, fill(model, kinds, mode), mode);
			if (best !== null && !isCheaper(model, plan, best)) continue;
			best = plan;
			yield plan;
		}
	}
}

/**
 * Which kinds may be used, in order: all that is owned, then the kinds to buy with each of them
 * first once.
 */
function supplies(model: RouterModel): number[][] {
	const all = model.kinds.map((_, k) => k);
	const owned = all.filter((k) => nth(model.kinds, k).sheet.price === 0);
	const bought = all.filter((k) => nth(model.kinds, k).sheet.price > 0);
	if (bought.length === 0) return [owned];
	return bought.map((first) => [...owned, first, ...bought.filter((k) => k !== first)]);
}

function fill(model: RouterModel, kinds: readonly number[], mode: PackerMode): RouterPlan {
	const sheets: RouterSheet[] = [];
	const left = model.types.map((type) => type.piece.count);
	for (const kind of kinds) {
		const packed = packSheets(model, kind, left, mode);
		for (const sheet of fullest(model, packed).slice(
			0,
			Math.min(nth(model.kinds, kind).count, packed.length),
		)) {
			if (sheet.spots.length === 0) continue;
			sheets.push(sheet);
			for (const { type } of sheet.spots) left[type] = nth(left, type) - 1;
		}
	}
	return { sheets, left };
}

/** Where stock is short, the fullest sheets are kept. */
function fullest(model: RouterModel, sheets: readonly RouterSheet[]): RouterSheet[] {
	const filled = (sheet: RouterSheet): number =>
		sheet.spots.reduce((sum, spot) => sum + nth(model.types, spot.type).area, 0);
	return [...sheets].sort((a, b) => filled(b) - filled(a));
}

/** Put what lies on each sheet on the cheapest kind still in stock that takes it all. */
export function exchange(model: RouterModel, plan: RouterPlan, mode: PackerMode): RouterPlan {
	const used = model.kinds.map((_, k) => plan.sheets.filter((s) => s.kind === k).length);
	const sheets = plan.sheets.map((sheet) => {
		for (const kind of cheaperKinds(model, sheet.kind)) {
			if (nth(used, kind) >= nth(model.kinds, kind).count) continue;
			const moved = moveTo(model, sheet, kind, mode);
			if (moved === null) continue;
			used[sheet.kind] = nth(used, sheet.kind) - 1;
			used[kind] = nth(used, kind) + 1;
			return moved;
		}
		return sheet;
	});
	return { sheets, left: plan.left };
}

function cheaperKinds(model: RouterModel, than: number): number[] {
	const { kinds } = model;
	const lesser = kinds.map((_, k) => k).filter((k) => isLesser(nth(kinds, k), nth(kinds, than)));
	return lesser.sort((a, b) => (isLesser(nth(kinds, a), nth(kinds, b)) ? -1 : 1));
}

function moveTo(
	model: RouterModel,
	sheet: RouterSheet,
	kind: number,
	mode: PackerMode,
): RouterSheet | null {
	const target = nth(model.kinds, kind);
	const counts = laidOn(model, [sheet]);
	const area = counts.reduce((sum, n, t) => sum + n * nth(model.types, t).area, 0);
	if (area > target.length * target.width) return null;
	const { bit } = model.problem;
	const all = counts.every(
		(n, t) => n === 0 || nth(model.types, t).orientations.some((o) => fits(o, target, bit)),
	);
	if (!all) return null;
	const packed = packSheets(model, kind, counts, mode);
	return packed.length === 1 ? nth(packed, 0) : null;
}
