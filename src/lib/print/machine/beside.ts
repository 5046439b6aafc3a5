import type { Point } from '../../geometry';
import { mm } from '../../measure';
import type { MachineDrawing, MachineText } from './machine-drawing';

/* What stands under every drawing: its notes, and a bar to measure. */

/** 100 mm. */
export const CHECK_LINE = mm(100);
const SIZE = mm(4);
const ROW = mm(7);

/** Where the bar begins. */
export const barAt = (drawing: MachineDrawing): Point => ({
	x: 0,
	y: -ROW * (drawing.notes.length + 2),
});

/** The notes from the top down, what holds for every file, and what the bar is. */
export function saidUnder(drawing: MachineDrawing): MachineText[] {
	const all = [
		...drawing.notes,
		'Millimetres, 1:1, true edges: no kerf or bit allowed for. The bar below is 100 mm',
	];
	return all.map((text, i) => ({ at: { x: 0, y: -ROW * (i + 1) }, size: SIZE, text }));
}

/** How far below the drawing these reach. */
export const depthBelow = (drawing: MachineDrawing): number => -barAt(drawing).y + ROW;
