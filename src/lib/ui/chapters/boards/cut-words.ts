import { sameSetting, type Cut } from '../../../nest';
import { cutKind, givesText, partLabel, type SheetAt, type Figures } from '../../../print';

/** What one cut is set to and gives, in the words of the printed cutting list. */
export interface CutWords {
	readonly n: number;
	readonly kind: string;
	readonly fence: string;
	/** The edge the fence is set from. */
	readonly from: string;
	/** True when the fence stands there already. */
	readonly same: boolean;
	readonly gives: string;
	/** Labels of the parts that come off with this cut. */
	readonly parts: readonly string[];
}

export function cutWords(
	at: SheetAt,
	cut: Cut,
	before: Cut | undefined,
	figures: Figures,
): CutWords {
	const slant = cut.kind === 'slant';
	const same = before !== undefined && sameSetting(before, cut);
	return {
		n: cut.n,
		kind: cutKind(cut),
		fence: slant ? '' : figures.bench(cut.fence),
		from: slant ? slantLine(cut, figures) : `${cut.fenceEdge} edge`,
		same,
		gives: givesText(at, cut, figures),
		parts: cut.gives.flatMap((g) => (g.kind === 'piece' ? [partLabel(at.plan, g.id ?? '')] : [])),
	};
}

function slantLine(cut: Cut, figures: Figures): string {
	const spot = (p: Cut['from']): string =>
		p === undefined ? '' : `${figures.bench(p.x)}, ${figures.bench(p.y)}`;
	return `line from ${spot(cut.from)} to ${spot(cut.to)}, from the datum`;
}
