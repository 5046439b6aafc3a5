import { money as asMoney, printMoney, type Ruler } from '../../../../measure';
import type { Plan } from '../../../../plan';
import { figuresOn } from '../../../../print';

/** A figure of the sheets before and after a change. */
export interface SheetFigure {
	readonly what: string;
	readonly from: string;
	readonly to: string;
}

/** What a change of the sheets did: how many, what is bought for them, cuts, what is left over. */
export function sheetFigures(
	before: Plan,
	after: Plan,
	{ ruler, currency }: { readonly ruler: Ruler; readonly currency: string },
): SheetFigure[] {
	const [was, now] = [countedIn(before), countedIn(after)];
	const money = (minor: number): string => printMoney(asMoney(minor), currency, ruler.decimal);
	const size = ([length, width]: readonly [number, number]): string =>
		length === 0 ? 'none' : figuresOn(ruler).size(length, width);
	return [
		{ what: 'sheets', from: String(was.sheets), to: String(now.sheets) },
		{ what: 'sheets to buy', from: money(was.cost), to: money(now.cost) },
		{ what: 'cuts', from: String(was.cuts), to: String(now.cuts) },
		{ what: 'largest offcut', from: size(was.offcut), to: size(now.offcut) },
		{ what: 'parts on no sheet', from: String(was.left), to: String(now.left) },
	].filter((f, i) => i < 2 || f.from !== f.to);
}

function countedIn({ boards }: Plan) {
	const layouts = boards.flatMap((b) => b.answer.layouts);
	const [largest] = layouts
		.flatMap((l) => l.offcuts)
		.sort((a, b) => b.length * b.width - a.length * a.width);
	return {
		sheets: layouts.length,
		cost: boards.reduce((sum, b) => sum + b.answer.cost, 0),
		cuts: layouts.reduce((sum, l) => sum + l.cuts.length, 0),
		offcut: [largest?.length ?? 0, largest?.width ?? 0] as const,
		left: boards.reduce((sum, b) => sum + b.answer.unplaced.reduce((n, u) => n + u.count, 0), 0),
	};
}
