import type { BoardLayouts } from '../../layout';
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
	return mixed(JSON.stringify([layout.length, layout.width, placed, cuts]));
}

/**
 * 32 bits of a text (the FNV-1a hash, offset basis and prime as published): enough for the layouts
 * of one job.
 */
function mixed(text: string): string {
	let h = 0x811c9dc5;
	for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
	return (h >>> 0).toString(36);
}
