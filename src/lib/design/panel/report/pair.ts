import { type Outline, mirrored, mirrorOrder } from '../../../geometry';
import type { Covering } from '../../covering';
import type { FaceWork, Part } from '../../part';

/*
 * A pair made from one drawing, which is that of the left one; one of a pair by itself is made as
 * it is drawn, whichever it is.
 *
 * The right one of a pair is the mirror image of the left one. Board turns over, cloth does not:
 * its outline is mirrored, its face stays its face and its nap is mirrored with the panel, so that
 * nap pointing down points down on both.
 */

/** The same thing marked as one of a pair. */
export function leftHand<T extends { readonly id: string }>(thing: T): T {
	return { ...thing, id: `${thing.id}-L` };
}

const otherLabel = (label: string): string => label.replace(/L$/, 'R');

export function rightPart(p: Part): Part {
	const flip = (o: Outline): Outline => mirrored(o, p.length / 2);
	return {
		...p,
		id: `${p.id}-R`,
		label: otherLabel(p.label),
		...(p.outline ? { outline: flip(p.outline) } : {}),
		holes: p.holes.map(flip),
		...(p.faceWork
			? { faceWork: p.faceWork.map((w) => ({ ...w, line: mirroredLine(w, p.length / 2) })) }
			: {}),
	};
}

/** An open line keeps its beginning: mirrored as an outline it would be closed the other way. */
function mirroredLine({ line, closed }: FaceWork, axis: number): Outline {
	return closed ? mirrored(line, axis) : line.map((p) => ({ x: 2 * axis - p.x, y: p.y }));
}

export function rightCovering(c: Covering): Covering {
	return {
		...c,
		id: `${c.id}-R`,
		label: otherLabel(c.label),
		outline: mirrored(c.outline),
		edges: mirrorOrder(c.edges),
		steps: c.steps.map((s) => ({ ...s, outline: mirrored(s.outline) })),
		windows: c.windows.map((w) => ({ ...w, outline: mirrored(w.outline) })),
		nap: 180 - c.nap,
		seams: c.seams.map(([a, b]) => [
			{ x: -a.x, y: a.y },
			{ x: -b.x, y: b.y },
		]),
	};
}
