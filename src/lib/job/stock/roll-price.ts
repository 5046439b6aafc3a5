import { mm, toMm, type Length, type Ruler } from '../../measure';
import type { Roll } from './stock';

type PricedRoll = Pick<Roll, 'price' | 'per' | 'step'>;

/** The length a roll's price is for: a yard is 914.4 mm (international yard, 1959). */
export function pricedLength(roll: Pick<Roll, 'per' | 'step'>, ruler: Pick<Ruler, 'unit'>): Length {
	const per = roll.per ?? (ruler.unit === 'in' ? 'yard' : 'metre');
	return per === 'piece' ? roll.step : mm(per === 'yard' ? 914.4 : 1000);
}

/** What a length of the roll costs, in minor units as a fraction: rounded where it is summed up. */
export function priceOfLength(
	roll: PricedRoll,
	length: number,
	ruler: Pick<Ruler, 'unit'>,
): number {
	return (roll.price * toMm(length)) / toMm(pricedLength(roll, ruler));
}

/** A step begun by less than this share is a rounding error. */
const CRUMB = 1e-9;

/** Steps to order for so much cloth: none for none, else no less than the seller cuts. */
export function stepsFor(roll: Pick<Roll, 'step' | 'least'>, pull: number): number {
	return pull > 0 ? Math.ceil(Math.max(pull, roll.least) / roll.step - CRUMB) : 0;
}
