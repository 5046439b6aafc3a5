import { type BoardLayouts, shortMarkOf } from '../../layout';
import type { SheetLayout } from '../../nest';

/**
 * The key under which cuts of a layout are ticked: made of what is cut, so that a tick never passes
 * to another layout. Alike layouts of one material are told apart by their order.
 */
export function layoutKey(boards: BoardLayouts, index: number): string {
	const prints = boards.answer.layouts.slice(0, index + 1).map(printOf);
	const mine = prints[index] ?? '';
	const nth = prints.filter((p) => p === mine).length;
	return `${boards.material}/${mine}/${nth}`;
}

function printOf(layout: SheetLayout): string {
	const placed = layout.placed.map((p) => [p.id, p.x, p.y, p.length, p.width]);
	const cuts = layout.cuts.map((c) => [c.n, c.runs, c.at, c.region.x, c.region.y]);
	return shortMarkOf([layout.length, layout.width, placed, cuts]);
}
