import { clothOf } from '../../../job';
import type { Carpeting, PricedWay } from '../../../layout';
import { type Money, money, plainMoney } from '../../../measure';
import type { Plan } from '../../../plan';
import type { Figures } from '../figures';

/** The ways one box could be carpeted, side by side. */
export interface CarpetWays {
	readonly title: string;
	readonly rows: readonly (readonly string[])[];
	/** Which was taken, and by how much it is the cheaper. */
	readonly taken: string;
}

export const CARPET_HEADS = ['Way', 'Pull', 'Seams', 'Cloth', 'Seam work', 'Together'];

const WAYS: Readonly<Record<PricedWay['way'], string>> = {
	band: 'band and two ends',
	faces: 'face by face',
};

/** Of each box that wears carpet; each as if it were the only thing on its rolls. */
export function carpetWays(plan: Plan, figures: Figures): CarpetWays[] {
	const { currency, ruler } = plan.job.shop;
	const print = (m: Money): string => plainMoney(m, currency, ruler.decimal);
	return plan.carpets.map((carpet) => ({
		title: `Carpet of ${plan.job.boxes.find((b) => b.id === carpet.owner)?.name ?? carpet.owner}`,
		rows: carpet.ways.map((way) => wayRow(plan, way, figures, print)),
		taken: takenText(carpet, (m) => `${currency} ${print(m)}`),
	}));
}

function wayRow(
	plan: Plan,
	way: PricedWay,
	figures: Figures,
	print: (m: Money) => string,
): string[] {
	const pull = way.pulls.map(({ cloth, length }) =>
		way.pulls.length === 1
			? figures.bench(length)
			: `${clothOf(plan.job, cloth)?.name ?? cloth} ${figures.bench(length)}`,
	);
	const seams = way.seams === 0 ? 'none' : `${way.seams}, ${figures.bench(way.seamLength)} in all`;
	return [
		WAYS[way.way],
		way.fits ? pull.join(', ') : 'does not fit the roll',
		seams,
		print(way.cost),
		print(way.seamCost),
		print(together(way)),
	];
}

function together({ cost, seamCost }: PricedWay): Money {
	return money(cost + seamCost);
}

function takenText({ ways, chosen }: Carpeting, print: (m: Money) => string): string {
	const taken = ways.find((w) => w.way === chosen);
	const other = ways.find((w) => w.way !== chosen);
	const name = `Taken: ${WAYS[chosen]}`;
	if (!taken || !other) return `${name}, the only way offered.`;
	if (!other.fits && taken.fits) return `${name}; the other does not fit the roll.`;
	const apart = together(other) - together(taken);
	if (apart === 0) return `${name}; both cost the same.`;
	return apart > 0
		? `${name}, cheaper by ${print(money(apart))} for the box by itself.`
		: `${name}, as asked; the other costs ${print(money(-apart))} less for the box by itself.`;
}
