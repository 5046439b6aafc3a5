import { printMoney, type Ruler } from '../../measure';
import type { Plan } from '../../plan';
import { liveFigures, showPull } from '../shell';

/** What the shop asks of a plan first, a row each: its name, then the figure. */
export function planFigures(plan: Plan, ruler: Ruler): readonly (readonly [string, string])[] {
	const { sheets, pull, material } = liveFigures(plan);
	const { currency } = plan.job.shop;
	return [
		['Sheets to buy', String(sheets)],
		['Cloth to pull', showPull(pull, ruler)],
		['Order', printMoney(material, currency, ruler.decimal)],
		['Quote', printMoney(plan.quote.total, currency, ruler.decimal)],
	];
}
