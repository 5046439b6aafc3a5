import type { Need } from '../../design';
import { clothOf, type Job, priceOfLength, type Problem, rollOf } from '../../job';
import { ticks, toMm, type Length, money, type Money, sumMoney } from '../../measure';
import type { Budget } from '../../nest';
import type { Blank, BoxWay, CarpetOffer, ClothOffer } from '../../wrap';
import { pullCloth } from './rolls';

/** What a way to carpet a box takes of one cloth. */
export interface ClothPull {
	readonly cloth: string;
	readonly length: Length;
	readonly cost: Money;
	readonly fits: boolean;
}

/** One way to carpet a box, with what it takes if the box were the only thing on the roll. */
export interface PricedWay {
	readonly way: BoxWay['way'];
	readonly blanks: number;
	readonly seams: number;
	/** Of one box. */
	readonly seamLength: Length;
	/** What is pulled of each cloth, for all boxes of the kind. */
	readonly pulls: readonly ClothPull[];
	/** Cloth, and the work of the seams, of all boxes of the kind. */
	readonly cost: Money;
	readonly seamCost: Money;
	readonly fits: boolean;
}

/** The ways a box could be carpeted, and the one taken. */
export interface Carpeting {
	readonly owner: string;
	readonly ways: readonly PricedWay[];
	readonly chosen: BoxWay['way'];
}

/** The blanks a job is made with, each box in the way chosen for it. */
export interface ClothWork {
	readonly blanks: readonly Blank[];
	readonly carpets: readonly Carpeting[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
	/** Seams in all of it. */
	readonly seamLength: Length;
}

/** Work units for each way: enough to compare two ways of carpeting a box. */
const QUICK = 200;

/**
 * Chooses a way to carpet each box by laying every offered way out: the one asked for, else the
 * cheaper.
 */
export async function chooseWays(job: Job, offer: ClothOffer, budget: Budget): Promise<ClothWork> {
	const quick = { ...budget, effort: QUICK };
	const panels: ClothWork[] = offer.panels.map((wrapped) => ({ ...wrapped, carpets: [] }));
	const boxes: ClothWork[] = [];
	for (const box of offer.boxes) boxes.push(await chooseWay(job, box, quick));
	const all = [...panels, ...boxes];
	return {
		blanks: all.flatMap((w) => w.blanks),
		carpets: all.flatMap((w) => w.carpets),
		problems: all.flatMap((w) => w.problems),
		needs: all.flatMap((w) => w.needs),
		seamLength: ticks(all.reduce((sum, w) => sum + w.seamLength, 0)),
	};
}

async function chooseWay(job: Job, box: CarpetOffer, budget: Budget): Promise<ClothWork> {
	const { owner, ways, problems } = box;
	const priced = await Promise.all(ways.map((w) => price(job, box, w, budget)));
	// Both ways stay priced side by side; the person's own choice goes before the cheaper one.
	const taken = ways.find((w) => w.way === box.asked) ?? cheaper(ways, priced);
	if (!taken) return { blanks: [], carpets: [], problems, needs: [], seamLength: ticks(0) };
	return {
		blanks: taken.blanks,
		carpets: [{ owner, ways: priced, chosen: taken.way }],
		problems: [...problems, ...taken.problems],
		needs: taken.needs,
		seamLength: ticks(taken.seamLength * box.count),
	};
}

async function price(job: Job, of: CarpetOffer, way: BoxWay, budget: Budget): Promise<PricedWay> {
	const marks = [...new Set(way.blanks.map((b) => b.cloth))];
	const pulls = await Promise.all(marks.map((mark) => priceCloth(job, mark, way, budget)));
	return {
		way: way.way,
		blanks: way.blanks.reduce((sum, b) => sum + b.count, 0),
		seams: way.seams,
		seamLength: way.seamLength,
		pulls,
		cost: sumMoney(pulls.map((p) => p.cost)),
		seamCost: seamCost(job, way.seamLength * of.count),
		fits: pulls.every((p) => p.fits),
	};
}

async function priceCloth(job: Job, mark: string, way: BoxWay, budget: Budget): Promise<ClothPull> {
	const cloth = clothOf(job, mark);
	if (!cloth) throw new Error(`bug: a carpet of cloth '${mark}', which the stock does not hold`);
	const mine = way.blanks.filter((b) => b.cloth === mark);
	const laid = await pullCloth(job, mine, {
		...{ cloth, budget, watch: () => true },
		by: cloth.cut === 'rectangle' ? 'rectangle' : 'outline',
	});
	const cost = laid.rolls.reduce((sum, r) => {
		const roll = rollOf(job, r.roll);
		return sum + (roll ? priceOfLength(roll, r.pull, job.shop.ruler) : 0);
	}, 0);
	return {
		cloth: mark,
		length: ticks(laid.rolls.reduce((sum, r) => sum + r.pull, 0)),
		cost: money(cost),
		fits: laid.unplaced.length === 0,
	};
}

/** What the work of so much seam costs at the shop's minutes. */
function seamCost({ shop }: Job, length: number): Money {
	const { hour, minutes } = shop.labour;
	return money(((toMm(length) / 1000) * minutes.seamMetre * hour) / 60);
}

/** The way that fits, then the cheaper with its seams, then the one with less seam to cut. */
function cheaper(ways: readonly BoxWay[], priced: readonly PricedWay[]): BoxWay | undefined {
	const order = priced
		.map((p, i) => ({ p, way: ways[i] }))
		.sort(
			(a, b) =>
				Number(b.p.fits) - Number(a.p.fits) ||
				a.p.cost + a.p.seamCost - b.p.cost - b.p.seamCost ||
				a.p.seamLength - b.p.seamLength,
		);
	return order[0]?.way;
}
