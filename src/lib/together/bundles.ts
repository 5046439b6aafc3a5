import type { Job } from '../job';
import { type Money, printMoney, showLength, ticks } from '../measure';
import type { Plan } from '../plan';
import type { Bundle } from './groups';

/*
 * What each job takes of its rack: the boards, cloths and sundries its plan uses, and no others.
 * How much there is of a thing and the day of its price are left out: they make it no other.
 */

type Said = Readonly<Record<string, unknown>>;

/** Boards with their sheets and offcuts. */
export function boardBundles(plans: readonly Plan[], racks: readonly Job[]): Bundle[] {
	return plans.flatMap((plan, job) => {
		const { stock } = racks[job] ?? plan.job;
		const used = new Set([...plan.parts, ...plan.job.pinned].map((p) => p.material));
		return stock.materials
			.filter((m) => used.has(m.id))
			.map((material): Bundle => {
				const { id, name, ...said } = asNotAccepted(material);
				const sheets = stock.sheets.filter((s) => s.material === id);
				const offcuts = stock.offcuts.filter((o) => o.material === id);
				const lines = [
					...sheets.map(({ id, owned: _, buy, priced: __, ...sheet }): [string, Said] => [
						id,
						{ ...sheet, buyable: buy !== 0, ...sellerOf(stock, sheet.supplier) },
					]),
					...offcuts.map(({ id, count: _, ...offcut }): [string, Said] => [id, offcut]),
				];
				return { job, id, name, said: { ...said, name }, lines: new Map(lines) };
			});
	});
}

/** Cloths with their rolls. */
export function clothBundles(plans: readonly Plan[], racks: readonly Job[]): Bundle[] {
	return plans.flatMap((plan, job) => {
		const { stock } = racks[job] ?? plan.job;
		const used = new Set(plan.blanks.map((b) => b.cloth));
		return stock.cloths
			.filter((c) => used.has(c.id))
			.map((cloth): Bundle => {
				const { id, name } = cloth;
				const rolls = stock.rolls.filter((r) => r.cloth === id);
				const lines = rolls.map(({ id, left, priced: _, ...roll }): [string, Said] => [
					id,
					{ ...roll, owned: left !== null, ...sellerOf(stock, roll.supplier) },
				]);
				return { job, id, name, said: { ...cloth }, lines: new Map(lines) };
			});
	});
}

/** Sundries that something is taken of: counted by the plan, or typed for the job. */
export function sundryBundles(plans: readonly Plan[], racks: readonly Job[]): Bundle[] {
	return plans.flatMap((plan, job) => {
		const { stock } = racks[job] ?? plan.job;
		return stock.sundries
			.filter((s) => s.use > 0 || plan.needs.some((need) => servedBy(stock, need) === s.id))
			.map(({ owned: _, use: __, priced: ___, ...sundry }): Bundle => ({
				...{ job, id: sundry.id, name: sundry.name },
				said: { ...sundry, ...sellerOf(stock, sundry.supplier) },
				lines: new Map(),
			}));
	});
}

/** Mark of the sundry a need is taken from; '' for none. */
export function servedBy(stock: Job['stock'], need: Plan['needs'][number]): string {
	return need.of ?? stock.sundries.find((s) => s.kind === need.kind)?.id ?? '';
}

/** Sellers are alike by what is said of them, whatever their mark. */
function sellerOf(stock: Job['stock'], id: string | undefined): Said {
	const seller = stock.suppliers.find((s) => s.id === id);
	const terms = seller ? [seller.least, seller.contact] : [];
	return { supplier: seller?.name ?? null, terms };
}

/** Fields whose name says too little, or not in the words of the trade. */
const WORDS: Readonly<Record<string, string>> = {
	measured: 'measured thickness',
	nominal: 'nominal thickness',
	massPerArea: 'mass per area',
	factoryEdges: 'factory edges',
	soldBy: 'sold by',
	breaks: 'price breaks',
	least: 'the least sold',
	buyable: 'whether it can be bought',
	owned: 'whether it is a rest on the rack',
	pack: 'what one pack holds',
	loose: 'thickness loose',
	pressed: 'thickness pressed',
	usable: 'usable width',
	per: 'what the price is for',
	terms: 'least order or contact of the supplier',
};
const LENGTHS: ReadonlySet<string> = new Set([
	...['measured', 'nominal', 'length', 'width', 'loose', 'pressed', 'usable', 'step', 'repeat'],
	...['repeatAcross', 'tightest', 'standOff'],
]);

/** 'price EUR 84.50, not EUR 79.00': the later job's figure first, as `b`. */
export function tellIn({ shop }: Job) {
	const { ruler, currency } = shop;
	const value = (field: string, seen: unknown): string => {
		if (typeof seen === 'number' && LENGTHS.has(field)) return showLength(ticks(seen), ruler);
		if (typeof seen === 'number' && field === 'price')
			return printMoney(seen as Money, currency, ruler.decimal);
		if (typeof seen === 'boolean') return seen ? 'yes' : 'no';
		return seen === '' || seen === null || seen === undefined ? 'none' : String(seen);
	};
	return (field: string, a: unknown, b: unknown): string => {
		const what = WORDS[field] ?? field.replace(/[A-Z]/g, (big) => ` ${big.toLowerCase()}`);
		const plain = [a, b].every((seen) => typeof seen !== 'object' || seen === null);
		return plain ? `${what} ${value(field, b)}, not ${value(field, a)}` : `another ${what}`;
	};
}

/** What a person has said of a problem is no difference. */
const asNotAccepted = ({ accepted: _, ...material }: Job['stock']['materials'][number]) => material;
