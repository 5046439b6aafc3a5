import { clothName, materialName, notesOf, troublesOf } from '../../lib/job';
import { ticks, printMoney, showLength } from '../../lib/measure';
import { proofText } from '../../lib/layout';
import type { Plan } from '../../lib/plan';
import { savingText } from '../../lib/print';

/** What came of it, for a person at the terminal. */
export function summary(plan: Plan, folder: string, files: readonly string[]): string {
	const { job } = plan;
	const price = (amount: Parameters<typeof printMoney>[0]) =>
		printMoney(amount, job.shop.currency, job.shop.ruler.decimal);
	return [
		`${job.name}`,
		`  parts     ${sum(plan.parts)} to cut, ${sum(plan.blanks)} blanks of cloth`,
		...plan.boards.map((boards) => `  sheets    ${boardLine(plan, boards)}`),
		...plan.cloths.map((cloth) => `  cloth     ${clothLine(plan, cloth)}`),
		`  to buy    ${price(plan.order.total)}`,
		...(plan.together
			? [`  together  ${savingText(plan)}`]
			: [`  quote     ${price(plan.quote.total)}`]),
		`  problems  ${troublesOf(plan.problems).length || 'none'}`,
		`  notes     ${notesOf(plan.problems).length || 'none'}`,
		`  cautions  ${plan.cautions.length}: read them in the print pack before the first cut`,
		`  files     in ${folder}: ${files.join(', ')}`,
		'',
	].join('\n');
}

function boardLine(plan: Plan, boards: Plan['boards'][number]): string {
	const { material, answer, sources } = boards;
	const name = materialName(plan.job, material);
	const of = (kind: 'buy' | 'owned' | 'offcut') => sources.filter((s) => s.kind === kind).length;
	const counts = [
		[of('buy'), 'to buy'],
		[of('owned'), 'from the rack'],
		[of('offcut'), of('offcut') === 1 ? 'offcut' : 'offcuts'],
	] as const;
	const words = counts.filter(([n]) => n > 0).map(([n, word]) => `${n} ${word}`);
	const proven = answer.proven ? `; ${proofText(boards)}` : '';
	const left = sum(answer.unplaced);
	return `${name}: ${words.join(', ') || 'none'}${proven}${left > 0 ? `; ${left} PARTS LEFT OVER` : ''}`;
}

function clothLine(plan: Plan, { cloth, rolls, unplaced }: Plan['cloths'][number]): string {
	const { ruler } = plan.job.shop;
	const name = clothName(plan.job, cloth);
	const pulls = rolls.map(
		(r) => `${showLength(ticks(r.pull), ruler)} off ${r.roll}${r.owned ? ' (owned)' : ''}`,
	);
	const left = sum(unplaced);
	return `${name}: ${pulls.join(', ') || 'none'}${left > 0 ? `; ${left} BLANKS LEFT OVER` : ''}`;
}

function sum(things: readonly { readonly count: number }[]): number {
	return things.reduce((total, { count }) => total + count, 0);
}
