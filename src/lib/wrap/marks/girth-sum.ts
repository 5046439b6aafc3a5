import { bounds, type Outline, direction, dot } from '../../geometry';
import { snap } from '../../measure';
import { onTheBack } from './back-view';
import type { Girth } from '../blank';
import type { Climb } from '../girth';

/** The tape laid over a panel along the roll and across it, as sums that can be checked by hand. */
export function girthSums(
	board: Outline,
	cloth: Outline,
	climb: Climb,
	nap: number,
): { along: Girth; across: Girth } {
	const face = bounds(board.map((p) => backCorner(p, nap)));
	const all = bounds(cloth.map((p) => backCorner(p, nap)));
	const d = direction(nap);
	const out = { x: d.y, y: -d.x };
	return {
		along: sum([face.x, face.length], [all.x, all.length], reach(climb, d), reach(climb, minus(d))),
		across: sum(
			[face.y, face.width],
			[all.y, all.width],
			reach(climb, out),
			reach(climb, minus(out)),
		),
	};
}

/** Arcs stay arcs; seen from behind they bend the other way. */
function backCorner(p: Outline[number], nap: number): Outline[number] {
	const { x, y } = onTheBack(p, nap);
	return { x, y, bulge: -(p.bulge ?? 0) };
}

const minus = (d: { x: number; y: number }) => ({ x: -d.x, y: -d.y });

/** What the cloth climbs towards one side. */
function reach(climb: Climb, to: { x: number; y: number }): number {
	const by = { x: to.x > 0 ? climb.right : climb.left, y: to.y > 0 ? climb.up : climb.down };
	return dot({ x: Math.abs(to.x), y: Math.abs(to.y) }, by);
}

/** Where something starts and how long it is. */
type From = readonly [start: number, long: number];

function sum([face, size]: From, [cloth, total]: From, far: number, near: number): Girth {
	const start = face - near - cloth;
	const end = cloth + total - (face + size + far);
	return {
		face: snap(size),
		climbs: snap(near + far),
		ends: [snap(start), snap(end)],
		total: snap(total),
	};
}
