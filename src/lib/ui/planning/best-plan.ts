import { nth } from '../../measure';
import { settingsFor } from '../../nest';
import type { Plan } from '../../plan';

/** What is read of a plan to rank it. */
export type Ranked = Pick<Plan, 'boards' | 'cloths' | 'order'>;

/** Is the first plan the better one? Plans that are worth the same are not. */
export function isBetter(a: Ranked, b: Ranked): boolean {
	const [mine, other] = [standing(a), standing(b)];
	const at = mine.findIndex((n, i) => n !== other[i]);
	return at >= 0 && nth(mine, at) < nth(other, at);
}

/**
 * The aims of a layout in their order, less being better: nothing left over, money, owned sheets
 * and then offcuts used up, cloth pulled, the largest offcuts left, fence settings, cuts.
 */
function standing(plan: Ranked): number[] {
	const layouts = plan.boards.flatMap((b) => b.answer.layouts);
	return [
		leftOver(plan),
		plan.order.total,
		areaFrom(plan, 'owned'),
		areaFrom(plan, 'offcut'),
		sum(plan.cloths.flatMap((c) => c.rolls.map((r) => r.pull))),
		-sum(plan.boards.map((b) => largestOffcut(b.answer.layouts))),
		sum(layouts.map((l) => settingsFor(l.cuts))),
		sum(layouts.map((l) => l.cuts.length)),
	];
}

function leftOver({ boards, cloths }: Ranked): number {
	const left = [...boards.map((b) => b.answer.unplaced), ...cloths.map((c) => c.unplaced)];
	return sum(left.flat().map((u) => u.count));
}

function areaFrom({ boards }: Ranked, kind: 'owned' | 'offcut'): number {
	const used = boards.flatMap((b) =>
		b.answer.layouts.filter((_, i) => b.sources[i]?.kind === kind),
	);
	return sum(used.map((l) => l.length * l.width));
}

function largestOffcut(layouts: Ranked['boards'][number]['answer']['layouts']): number {
	return Math.max(0, ...layouts.flatMap((l) => l.offcuts).map((o) => o.length * o.width));
}

function sum(numbers: readonly number[]): number {
	return numbers.reduce((total, n) => total + n, 0);
}
