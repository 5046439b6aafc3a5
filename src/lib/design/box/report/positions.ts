import { nth, snap, ticks } from '../../../measure';
import type { Part } from '../../part';
import { type Board, boundsOf, type Role } from '../board';
import type { PlaceFigures, PlaceSpans, FromTo } from '../box-plan';
import type { SweptSection } from '../shell';
import { p3, sub3, type Point3 } from '../solid';

/*
 * Where things stand inside a box, from one datum: the inside of the left end, of the front and of
 * the bottom, each where it reaches farthest out. The places that are asked count from there too.
 */

const INSIDE: readonly Role[] = ['doubler', 'divider', 'slot', 'brace', 'cleat'];

const standsInside = (board: Board): boolean => INSIDE.includes(board.role);

/** The corner of the inside all places count from; `corners` are those of a tapered box. */
export function datumOf(section: SweptSection | null, corners: readonly Point3[]): Point3 {
	if (!section) return boundsOf(corners).low;
	const { inner, x0 } = section;
	return p3(x0, Math.min(...inner.map((p) => p.x)), Math.min(...inner.map((p) => p.y)));
}

/** From where to where a body of these corners reaches. */
export function standsAt(points: readonly Point3[], datum: Point3): PlaceSpans {
	const { low, high } = boundsOf(points);
	const [from, to] = [sub3(low, datum), sub3(high, datum)];
	const span = (axis: keyof Point3): FromTo => [zero(from[axis]), zero(to[axis])];
	return { fromLeft: span('x'), fromFront: span('y'), fromBottom: span('z') };
}

/** On the grid, and never less than nothing by a rounding. */
const zero = (n: number): FromTo[0] => (Math.abs(n) < 1 ? ticks(0) : snap(n));

/** Every board that stands inside, in the order of the boards. */
export function placesOf(
	boards: readonly Board[],
	parts: readonly Part[],
	datum: Point3,
): PlaceFigures[] {
	return boards.flatMap((board, i) => {
		if (!standsInside(board)) return [];
		const { outside, inside } = board.solid;
		return [
			{
				key: board.key,
				label: nth(parts, i).label,
				name: board.name,
				...standsAt([...outside, ...inside], datum),
			},
		];
	});
}
