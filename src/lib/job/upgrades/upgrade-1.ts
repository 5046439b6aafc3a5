import { type Fields, isFields } from './fields';

/**
 * Up to version 1 the price of a roll was for a metre, whatever the ruler; since version 2 a roll
 * that does not say follows the ruler.
 */
export function from1(old: Fields): Fields {
	const lifted: Fields = { ...old, version: 2 };
	const stock = old['stock'];
	if (!isFields(stock) || !Array.isArray(stock['rolls'])) return lifted;
	const rolls: readonly unknown[] = stock['rolls'];
	return { ...lifted, stock: { ...stock, rolls: rolls.map(byTheMetre) } };
}

function byTheMetre(roll: unknown): unknown {
	return isFields(roll) && !('per' in roll) ? { ...roll, per: 'metre' } : roll;
}
