import type { BoxFigures } from '../../design';
import type { Ruler } from '../../measure';
import { type Block, space, subheading, table, sentence } from '../page';
import { type Figures, gravityText, HELD_BY, TIE_DOWN_HEADS, tieDownRows } from '../wording';

/** Where the box weighs and where it is held. */
export function holdBlocks(box: BoxFigures, width: number, f: Figures, ruler: Ruler): Block[] {
	if (!box.gravity) return [];
	const rows = tieDownRows(box, f);
	return [
		space(4),
		subheading('Weight and hold', width),
		...(rows.length === 0
			? []
			: table(
					{
						columns: TIE_DOWN_HEADS.map((head, i) =>
							i === 0
								? { head, width: { share: 1 } }
								: { head, width: 26, align: i > 1 ? ('end' as const) : ('start' as const) },
						),
						rows: rows.map((cells) => ({ cells })),
					},
					width,
				)),
		...sentence([gravityText(box, f, ruler), rows.length === 0 ? '' : HELD_BY], width),
	];
}
