import {
	clothOf,
	rollOf,
	type Box,
	type Job,
	type Places,
	type Path,
	type Problem,
	type Cloth,
} from '../../job';
import type { BoxPlan, Covering, Need, PanelPlan } from '../../design';
import { mm, ticks, toMm, type Length, money, type Money } from '../../measure';
import type { Budget } from '../../nest';
import { type Blank, paceOf, wrapBox, type BoxWay, wrapCovering, type WrapShop } from '../../wrap';
import { pullCloth } from './rolls';

/** One way to carpet a box, with what it takes if the box were the only thing on the roll. */
export interface PricedWay {
	readonly way: BoxWay['way'];
	readonly blanks: number;
	readonly seams: number;
	readonly seamLength: Length;
	readonly pull: Length;
	readonly cost: Money;
	readonly fits: boolean;
}

export interface Carpeting {
	readonly owner: string;
	readonly cloth: string;
	readonly ways: readonly PricedWay[];
	readonly chosen: BoxWay['way'];
}

interface Designed {
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
}

export interface ClothWork {
	readonly blanks: readonly Blank[];
	readonly carpets: readonly Carpeting[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
}

/** Every blank of the job: of the panels' coverings, and of the boxes in the cheaper way or the one asked for. */
export async function wrapAll(
	job: Job,
	designed: Designed,
	places: Places,
	budget: Budget,
): Promise<ClothWork> {
	const panels = designed.panels.flatMap((p, i) =>
		p.coverings.map((c) => wrapPanelCovering(job, c, places.of('panels', p.id, i))),
	);
	const boxes: ClothWork[] = [];
	for (const box of designed.boxes) boxes.push(await carpetBox(job, box, places, budget));
	const all = [...panels, ...boxes];
	return {
		blanks: all.flatMap((w) => w.blanks),
		carpets: all.flatMap((w) => w.carpets),
		problems: all.flatMap((w) => w.problems),
		needs: all.flatMap((w) => w.needs),
	};
}

const NOTHING: ClothWork = { blanks: [], carpets: [], problems: [], needs: [] };

function wrapPanelCovering(job: Job, covering: Covering, path: Path): ClothWork {
	const cloth = clothOf(job, covering.cloth);
	// An unknown cloth is the reader's problem and has been said there.
	if (!cloth) return NOTHING;
	const wrapped = wrapCovering(covering, cloth, wrapShop(job, cloth), path);
	return { ...wrapped, carpets: [] };
}

/** Seams are laid over each other by this much before both layers are cut through in one stroke. Common practice, no source. */
const OVERLAP_MM = 20;

export function wrapShop(job: Job, cloth: Cloth): WrapShop {
	const widths = job.stock.rolls.filter((r) => r.cloth === cloth.id).map((r) => r.usable);
	return {
		ruler: job.shop.ruler,
		usable: widths.length > 0 ? Math.max(...widths) : null,
		overlap: mm(OVERLAP_MM),
		pace: paceOf(job.shop.adhesive),
	};
}

async function carpetBox(
	job: Job,
	plan: BoxPlan,
	places: Places,
	budget: Budget,
): Promise<ClothWork> {
	const n = job.boxes.findIndex((b) => b.id === plan.id);
	const box = job.boxes[n];
	const cloth = clothOf(job, box?.carpet?.cloth);
	if (!box?.carpet || !plan.skin || !cloth) return NOTHING;
	const path = [...places.of('boxes', plan.id, n), 'carpet'];
	const made = wrapBox(plan.skin, box.carpet, cloth, wrapShop(job, cloth), path);
	const ways = made.ways.map((w) => ({ ...w, blanks: copies(w.blanks, box) }));
	const priced = await Promise.all(ways.map((w) => price(job, cloth, w, budget)));
	// Both ways stay priced side by side; the person's own choice goes before the cheaper one.
	const taken = ways.find((w) => w.way === box.carpet?.way) ?? cheaper(ways, priced);
	if (!taken) return { ...NOTHING, problems: made.problems };
	return {
		blanks: taken.blanks,
		carpets: [{ owner: plan.id, cloth: cloth.id, ways: priced, chosen: taken.way }],
		problems: [...made.problems, ...taken.problems],
		needs: taken.needs,
	};
}

function copies(blanks: readonly Blank[], box: Box): Blank[] {
	return blanks.map((b) => ({ ...b, count: b.count * box.count }));
}

async function price(job: Job, cloth: Cloth, way: BoxWay, budget: Budget): Promise<PricedWay> {
	const laid = await pullCloth(job, way.blanks, { cloth, budget, watch: () => true });
	const pull = laid.rolls.reduce((sum, r) => sum + r.pull, 0);
	const cost = laid.rolls.reduce((sum, r) => {
		const roll = rollOf(job, r.roll);
		return sum + ((roll?.price ?? 0) * toMm(r.pull)) / 1000;
	}, 0);
	return {
		way: way.way,
		blanks: way.blanks.reduce((sum, b) => sum + b.count, 0),
		seams: way.seams,
		seamLength: way.seamLength,
		pull: ticks(pull),
		cost: money(cost),
		fits: laid.unplaced.length === 0,
	};
}

/** The way that fits, then the cheaper, then the one with less seam to cut. */
function cheaper(ways: readonly BoxWay[], priced: readonly PricedWay[]): BoxWay | undefined {
	const order = priced
		.map((p, i) => ({ p, way: ways[i] }))
		.sort(
			(a, b) =>
				Number(b.p.fits) - Number(a.p.fits) ||
				a.p.cost - b.p.cost ||
				a.p.seamLength - b.p.seamLength,
		);
	return order[0]?.way;
}
