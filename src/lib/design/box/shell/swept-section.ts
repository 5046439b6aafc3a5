import type { Point } from '../../../geometry';
import type { Box, BoardKey, Material } from '../../../job';
import type { Past, Quad } from '../solid';

/** The profile with its boards' thickness worked in, and how it is closed at its ends. Ticks. */
export interface SweptSection {
	readonly outer: readonly Point[];
	readonly inner: readonly Point[];
	readonly keys: readonly BoardKey[];
	readonly materials: readonly Material[];
	readonly joints: readonly Past[];
	readonly quads: readonly Quad[];
	/** Outside of the box along the width: from 0 to `width`. */
	readonly width: number;
	readonly ends: { readonly left: Material; readonly right: Material };
	/** Inside faces of the end boards. */
	readonly x0: number;
	readonly x1: number;
	readonly fit: Box['ends']['fit'];
	readonly rabbet: number;
}
