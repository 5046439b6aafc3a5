import type { Outline, Point } from '../../geometry';
import type { LayerName } from './layers';

/*
 * A drawing for a machine: lines at their true size on named layers, x right and y up, in ticks.
 * Nothing is drawn for the eye alone.
 */

export interface MachineLine {
	readonly layer: LayerName;
	readonly line: Outline;
	readonly closed: boolean;
}

/** A word beside or in a part, from its lower left. */
export interface MachineText {
	readonly at: Point;
	/** Height of a capital letter. */
	readonly size: number;
	readonly text: string;
}

export interface MachineDrawing {
	/** Name of its file without its ending. */
	readonly name: string;
	readonly title: string;
	readonly length: number;
	readonly width: number;
	readonly lines: readonly MachineLine[];
	/** Said under it, line by line. */
	readonly notes: readonly string[];
	/** Said within it. */
	readonly texts: readonly MachineText[];
}

/** A circle as the geometry makes it: two half turns. */
export function roundOf(line: Outline): { readonly centre: Point; readonly radius: number } | null {
	const [a, b] = line;
	if (line.length !== 2 || !a || !b || Math.abs(a.bulge ?? 0) !== 1 || a.bulge !== b.bulge)
		return null;
	return {
		centre: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 },
		radius: Math.hypot(a.x - b.x, a.y - b.y) / 2,
	};
}
