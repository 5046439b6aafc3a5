import { mm, nth, snap, type Length } from '../../../measure';
import type { Point } from '../../../geometry';

/*
 * Two bevels that lean the same way make no longer face: the faces are alike, one beside the other,
 * and what is cut from the sheet has to hold both. Plane geometry: it is longer than a face by the
 * thickness times the tangent of the tilt.
 */

/** Faces this little apart are cut as one above the other: nothing can be set so fine. */
const NOTHING = mm(0.05);

interface Across {
	readonly x: Length;
	readonly y: Length;
}

/** Both faces, and how much longer than the longer of them the rectangle round both is. */
interface Shift {
	readonly outside: Across;
	readonly inside: Across;
	readonly offset: Across;
}

/** Null where in both directions one face reaches over the other, as it does with most bevels. */
export function shiftOf(outside: readonly Point[], inside: readonly Point[]): Shift | null {
	const sizes = [outside, inside, [...outside, ...inside]].map(sizeOf);
	const [out, into, blank] = [nth(sizes, 0), nth(sizes, 1), nth(sizes, 2)];
	const apart = (axis: 'x' | 'y'): number => {
		const by = blank[axis] - Math.max(out[axis], into[axis]);
		return by < NOTHING ? 0 : by;
	};
	const offset = onGrid({ x: apart('x'), y: apart('y') });
	if (offset.x === 0 && offset.y === 0) return null;
	return { outside: onGrid(out), inside: onGrid(into), offset };
}

function sizeOf(face: readonly Point[]): Point {
	const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
	return { x: spread(face.map((p) => p.x)), y: spread(face.map((p) => p.y)) };
}

const onGrid = ({ x, y }: Point): Across => ({ x: snap(x), y: snap(y) });
