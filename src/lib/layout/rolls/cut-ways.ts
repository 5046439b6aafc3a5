import { buyLength, type Job, priceOfLength, rollOf } from '../../job';
import { money, nth, ticks, toMm } from '../../measure';
import type { Blank } from '../../wrap';
import type { ClothLayouts, CutWay } from '../layouts';
import { isShaped, pullCloth, type RollDemand } from './rolls';

type Pulled = Awaited<ReturnType<typeof pullCloth>>;

/** The blanks of one cloth laid in the way it is to be cut in, beside the other way. */
export interface CutChoice {
	readonly taken: Pulled;
	readonly by: CutWay['by'];
	/** Absent where only one way was looked at. */
	readonly ways?: ClothLayouts['ways'];
}

/**
 * Lays the blanks as rectangles, by their outlines, or both, as the cloth asks; where outlines are
 * asked for and come to more cloth, rectangles are taken.
 */
export async function chooseCut(
	job: Job,
	blanks: readonly Blank[],
	ask: Omit<RollDemand, 'by'>,
): Promise<CutChoice> {
	const straight = await pullCloth(job, blanks, { ...ask, by: 'rectangle' });
	const { cut } = ask.cloth;
	if (cut === 'rectangle' || !blanks.some(isShaped)) return { taken: straight, by: 'rectangle' };
	const shaped = await pullCloth(job, blanks, { ...ask, by: 'outline' });
	const both = [
		{ taken: straight, by: 'rectangle', way: wayOf(job, 'rectangle', straight) },
		{ taken: shaped, by: 'outline', way: wayOf(job, 'outline', shaped) },
	] as const;
	const [best, other] = comesFirst(both[1], both[0], cut) ? [both[1], both[0]] : both;
	return { taken: best.taken, by: best.by, ways: [best.way, other.way] };
}

function wayOf(job: Job, by: CutWay['by'], { rolls, unplaced }: Pulled): CutWay {
	const along = rolls.reduce((sum, roll) => sum + (roll.along ?? 0), 0);
	return {
		by,
		pull: ticks(rolls.reduce((sum, roll) => sum + roll.pull, 0)),
		cost: money(rolls.reduce((sum, roll) => sum + worth(job, roll), 0)),
		along: ticks(along),
		cutCost: cutCost(job, along),
		fits: unplaced.length === 0,
	};
}

/** Of what is bought, what is paid for it; of the rack, its price by the length. */
function worth({ stock, shop }: Job, { roll: id, pull, owned }: Pulled['rolls'][number]): number {
	const roll = rollOf({ stock }, id);
	if (!roll) return 0;
	return owned ? priceOfLength(roll, pull, shop.ruler) : buyLength(roll, pull, shop.ruler).total;
}

/** What cutting so much along outlines comes to at the shop's minutes. */
export function cutCost({ shop }: Pick<Job, 'shop'>, along: number): CutWay['cutCost'] {
	const { hour, minutes } = shop.labour;
	return money(((toMm(along) / 1000) * minutes.outlineMetre * hour) / 60);
}

interface Laid {
	readonly taken: Pulled;
	readonly way: CutWay;
}

/** Are outlines to be taken? Where they gain nothing, rectangles are cut sooner. */
function comesFirst(outlines: Laid, rectangles: Laid, cut: 'outline' | 'cheaper'): boolean {
	const [mine, other] = [outlines, rectangles].map(({ taken, way }) => [
		taken.unplaced.reduce((sum, u) => sum + u.count, 0),
		// Of rolls without a price the shorter pull is the cheaper.
		cut === 'cheaper' && way.cost > 0 ? way.cost + way.cutCost : 0,
		way.pull,
	]);
	if (!mine || !other) return false;
	const at = mine.findIndex((n, i) => n !== other[i]);
	return at < 0 ? cut === 'outline' : nth(mine, at) < nth(other, at);
}
