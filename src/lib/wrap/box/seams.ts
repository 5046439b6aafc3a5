import type { ClothEdge } from '../../design';
import { ticks, type Length } from '../../measure';
import type { BoxFace } from './faces';

/*
 * Where two covered faces meet, one cloth goes round the edge and lies under the other's rim, and
 * both are cut through in one stroke: the seam lies on the face that is looked at less.
 */

/** How the cloth of a face ends at one of its edges. */
export interface EdgeEnd {
	readonly kind: 'turn' | 'under' | 'butt' | 'on';
	/** Past the edge of the face; negative when the cloth starts inside it. */
	readonly reach: number;
}

export interface SeamSizes {
	/** Cloth that goes round on to a bare face. */
	readonly margin: Length;
	readonly overlap: Length;
}

/**
 * `first`: does this face lie over the edge where neither or both faces are looked at? A seam
 * between two show faces runs along the edge itself.
 */
export function edgeEnd(
	face: BoxFace,
	beyond: BoxFace | undefined,
	first: boolean,
	sizes: SeamSizes,
): EdgeEnd {
	if (!beyond?.cloth) return { kind: 'turn', reach: sizes.margin };
	if (face.show && beyond.show) return { kind: 'butt', reach: sizes.overlap / 2 };
	const over = face.show === beyond.show ? first : face.show;
	const turn = Math.max(sizes.margin, sizes.overlap);
	return over ? { kind: 'turn', reach: turn } : { kind: 'under', reach: sizes.overlap - turn };
}

/**
 * The same as the panel rooms say it: cloth that goes round an edge stays on the next face, so all
 * of it is 'edge'.
 */
export function clothEdgeOf(end: EdgeEnd): ClothEdge {
	const none = ticks(0);
	const reach = ticks(Math.max(0, Math.round(end.reach)));
	return end.kind === 'turn'
		? { kind: 'wrapped', build: reach, groove: null, margin: none, grip: none }
		: { kind: 'bare', build: none, groove: null, margin: none, grip: reach };
}

/** Does a seam run along this edge? */
export const seamed = (end: EdgeEnd, beyond: BoxFace | undefined): boolean =>
	end.kind !== 'on' && Boolean(beyond?.cloth);

/** A seam, and whether it could not be kept off the faces that are looked at. */
export interface ClothSeam {
	readonly length: number;
	readonly between: readonly [string, string];
	readonly shown: boolean;
}
