import type { BoxPlan, Covering, PanelPlan } from '../design';
import { type Carpet, clothOf, type Job, type Path, type Places, type Problem } from '../job';
import { theOne } from '../measure';
import type { Blank } from './blank';
import { weighed } from './mass';
import { type ClothInShop, wrapShop } from './shop';
import { type BoxWay, wrapBox } from './wrap-box';
import { type Wrapped, wrapCovering } from './wrap-panel';

/** A box with every way its carpet can be cut; the blanks are counted for all boxes of its kind. */
export interface CarpetOffer {
	readonly owner: string;
	readonly asked: Carpet['way'];
	/** Boxes of its kind. */
	readonly count: number;
	readonly ways: readonly BoxWay[];
	/** What is wrong whichever way is taken. */
	readonly problems: readonly Problem[];
}

/**
 * Every blank a job could take: those of its panels, and those of its boxes in each way there is.
 */
export interface ClothOffer {
	readonly panels: readonly Wrapped[];
	readonly boxes: readonly CarpetOffer[];
}

/**
 * Wraps all panels and boxes of a job. Which way a box is carpeted is left to whoever can lay the
 * blanks out. Nothing is cut from a `doubtful` cloth, one that was not read whole.
 */
export function wrapAll(
	job: Job,
	designed: { readonly boxes: readonly BoxPlan[]; readonly panels: readonly PanelPlan[] },
	places: Places,
	doubtful: readonly string[] = [],
): ClothOffer {
	return {
		panels: designed.panels.flatMap((panel, i) => {
			const path = places.of('panels', panel.id, i);
			return panel.coverings
				.filter((c) => !doubtful.includes(c.cloth))
				.flatMap((c) => wrapPanelCovering(job, c, path));
		}),
		boxes: designed.boxes.flatMap((box) => carpetOf(job, box, places, doubtful)),
	};
}

/** Nothing for a cloth the rack does not hold: that has been said where it was read. */
function wrapPanelCovering(job: Job, covering: Covering, path: Path): Wrapped[] {
	const cloth = clothOf(job, covering.cloth);
	if (!cloth) return [];
	const wrapped = wrapCovering(covering, cloth, wrapShop(job, cloth), path);
	return [{ ...wrapped, blanks: weighed(wrapped.blanks, cloth) }];
}

function carpetOf(
	job: Job,
	plan: BoxPlan,
	places: Places,
	doubtful: readonly string[],
): CarpetOffer[] {
	const n = job.boxes.findIndex((b) => b.id === plan.id);
	const box = job.boxes[n];
	if (!box?.carpet || !plan.skin) return [];
	const path = [...places.of('boxes', plan.id, n), 'carpet'];
	const cloths = clothsOn(job, box.carpet).filter((c) => !doubtful.includes(c.cloth.id));
	const { ways, problems } = wrapBox(plan.skin, box.carpet, cloths, path);
	const { way: asked } = box.carpet;
	const inKg = (of: readonly Blank[]): Blank[] =>
		of.flatMap((b) => weighed([b], theOne(cloths, (c) => c.cloth.id === b.cloth).cloth));
	const counted = ways.map((w) => ({ ...w, blanks: copies(inKg(w.blanks), box.count) }));
	const { count } = box;
	return [{ owner: plan.id, asked, count, ways: counted, problems }];
}

/** The cloths a carpet asks for, as far as the rack has them. */
function clothsOn(job: Job, wish: Carpet): ClothInShop[] {
	const marks = new Set([wish.cloth, ...wish.other.map((o) => o.cloth)]);
	return [...marks].flatMap((mark) => {
		const cloth = clothOf(job, mark);
		return cloth ? [{ cloth, shop: wrapShop(job, cloth) }] : [];
	});
}

function copies(blanks: readonly Blank[], count: number): Blank[] {
	return blanks.map((b) => ({ ...b, count: b.count * count }));
}
