import { pullIn } from '../../estimate';
import { sumMoney, type Money, ticks, type Length } from '../../measure';
import { notesOf, troublesOf } from '../../job';
import type { Plan } from '../../plan';

/** The figures a title block carries. */
export interface LiveFigures {
	readonly sheets: number;
	readonly pull: Length;
	readonly material: Money;
	readonly problems: number;
	readonly notes: number;
	readonly cautions: number;
}

/** What there is to buy, pull, pay and heed. */
export function liveFigures(plan: Plan): LiveFigures {
	const sheets = plan.order.lines.filter((l) => l.group === 'sheets');
	const pulls = plan.cloths.map(pullIn);
	return {
		sheets: sheets.reduce((sum, l) => sum + l.buy, 0),
		pull: ticks(pulls.reduce<number>((sum, pull) => sum + pull, 0)),
		material: sumMoney([plan.order.total]),
		problems: troublesOf(plan.problems).length,
		notes: notesOf(plan.problems).length,
		cautions: plan.cautions.length,
	};
}
