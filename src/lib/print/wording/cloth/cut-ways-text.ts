import { clothName } from '../../../job';
import type { ClothLayouts, CutWay } from '../../../layout';
import { type Money, money, plainMoney } from '../../../measure';
import type { Plan } from '../../../plan';
import { type Figures, figuresOn } from '../figures';

/** Rectangles beside outlines, for one cloth. */
export interface CutWays {
	readonly title: string;
	readonly rows: readonly (readonly string[])[];
	/** Which was taken, and by how much it is the cheaper. */
	readonly taken: string;
}

export const CUT_WAY_HEADS = [
	...['Blanks cut', 'Pull', 'Along outlines'],
	...['Cloth', 'Cutting', 'Together'],
];

const WAYS: Readonly<Record<CutWay['by'], string>> = {
	rectangle: 'as rectangles',
	outline: 'by their outlines',
};

/** Of each cloth whose blanks could be cut both ways. */
export function cutWays(plan: Plan): CutWays[] {
	const { currency, ruler } = plan.job.shop;
	const print = (m: Money): string => plainMoney(m, currency, ruler.decimal);
	const figures = figuresOn(ruler);
	return plan.cloths.flatMap(({ cloth, ways }) =>
		ways
			? [
					{
						title: `${clothName(plan.job, cloth)}: rectangles or outlines`,
						rows: ways.map((way) => wayRow(way, figures, print)),
						taken: takenText(plan, ways, figures),
					},
				]
			: [],
	);
}

function wayRow(way: CutWay, figures: Figures, print: (m: Money) => string): string[] {
	return [
		WAYS[way.by],
		way.fits ? figures.bench(way.pull) : 'does not fit the rolls',
		way.along > 0 ? figures.bench(way.along) : 'none',
		...[way.cost, way.cutCost, together(way)].map(print),
	];
}

const together = ({ cost, cutCost }: CutWay): Money => money(cost + cutCost);

function takenText(
	{ job }: Plan,
	[taken, other]: NonNullable<ClothLayouts['ways']>,
	figures: Figures,
): string {
	if (!taken || !other) return '';
	return [
		`Taken: ${WAYS[taken.by]}${againstText(job.shop, taken, other)}.`,
		pullText(taken, other, figures),
		job.shop.labour.minutes.outlineMetre === 0
			? 'The time to cut along outlines is not counted: the shop gives no minutes for a metre of it.'
			: '',
	]
		.filter((t) => t !== '')
		.join(' ');
}

function againstText({ currency, ruler }: Plan['job']['shop'], taken: CutWay, other: CutWay) {
	if (taken.fits && !other.fits) return '; the other does not fit the rolls';
	if (taken.cost === 0 && other.cost === 0)
		return '; the rolls have no price, so only the pull counts';
	const apart = together(other) - together(taken);
	const amount = `${currency} ${plainMoney(money(Math.abs(apart)), currency, ruler.decimal)}`;
	if (apart === 0) return '; both cost the same';
	return apart > 0 ? `, cheaper by ${amount}` : `, as asked; the other costs ${amount} less`;
}

function pullText(taken: CutWay, other: CutWay, figures: Figures): string {
	const apart = other.pull - taken.pull;
	if (apart === 0 || !taken.fits || !other.fits) return '';
	const share = ((Math.abs(apart) / Math.max(taken.pull, other.pull)) * 100).toFixed(1);
	const length = figures.bench(Math.abs(apart));
	return `It pulls ${length} ${apart > 0 ? 'less' : 'more'} (${share} %).`;
}

/**
 * For the bench: how the blanks come off the roll, and what that saves of it; '' where only one
 * way was looked at.
 */
export function cutAsText({ ways }: Pick<ClothLayouts, 'ways'>, figures: Figures): string {
	const [taken, other] = ways ?? [];
	if (!taken || !other) return '';
	const less = other.fits ? other.pull - taken.pull : 0;
	const than = WAYS[other.by];
	return `cut ${WAYS[taken.by]}${less > 0 ? `, ${figures.bench(less)} less than ${than}` : ''}`;
}
