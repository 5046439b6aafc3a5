import { nth, around } from '../../../measure';
import type { SlotVent } from '../../../job';
import { type Point, cornerAt } from '../../../geometry';
import { reachSides, type SweptAir } from './air';
import { p3, type Point3 } from './vec';

/**
 * The plane a slot is drawn in: the chamber cut so that the slot runs along one side of a polygon,
 * starting at the front. A slot along the top is drawn upside down, one along an end lies in the
 * plan view; `to3` puts it back in its place.
 */
export interface SlotPlane {
	/** Counter-clockwise; the front is followed by the side the slot runs along. */
	readonly corners: readonly Point[];
	readonly front: number;
	readonly keys: readonly string[];
	/** The two walls at the sides of the slot, in the direction of `run`. */
	readonly beside: readonly [string, string];
	readonly run: readonly [number, number];
	readonly to3: (p: Point, s: number) => Point3;
	/** Can it turn and follow the back? */
	readonly bends: boolean;
}

/** Why a slot cannot be laid out, in words, or its plane. */
export function slotPlane(
	air: SweptAir,
	along: SlotVent['along'],
): SlotPlane | { readonly no: string } {
	if (along === 'left' || along === 'right') return planView(air, along);
	const upright = along === 'bottom' ? air : upsideDown(air);
	const flip = along === 'bottom' ? 1 : -1;
	const front = upright.keys.indexOf('front');
	const n = upright.keys.length;
	if (front < 0 || upright.keys[(front + 1) % n] !== along) {
		return { no: `The front of this chamber does not meet the ${along}.` };
	}
	return {
		corners: upright.corners,
		keys: upright.keys,
		front,
		beside: [air.left, air.right],
		run: [air.x0, air.x1],
		to3: (p, s) => p3(s, p.x, flip * p.y),
		bends: true,
	};
}

function upsideDown(air: SweptAir): SweptAir {
	const n = air.corners.length;
	return {
		...air,
		corners: air.corners.map((_, j) => ({
			x: nth(air.corners, n - 1 - j).x,
			y: -nth(air.corners, n - 1 - j).y,
		})),
		keys: air.keys.map((_, j) => nth(air.keys, (2 * n - 2 - j) % n)),
	};
}

/**
 * From above: x to the back, y away from the end the slot runs along. Needs an upright front
 * between level boards.
 */
function planView(air: SweptAir, along: 'left' | 'right'): SlotPlane | { readonly no: string } {
	const f = air.keys.indexOf('front');
	if (f < 0 || air[along] !== along)
		return { no: `The front of this chamber does not meet the ${along} end.` };
	const [a, b] = [cornerAt(air.corners, f), cornerAt(air.corners, f + 1)];
	const level = [f - 1, f + 1].every(
		(i) => Math.abs(cornerAt(air.corners, i).y - cornerAt(air.corners, i + 1).y) < 1,
	);
	if (Math.abs(a.x - b.x) > 1 || !level) {
		return {
			no: 'A slot along an end needs an upright front between a level top and a level bottom.',
		};
	}
	const high = Math.abs(a.y - b.y);
	const middle = { x: a.x, y: (a.y + b.y) / 2 };
	const deep = reachSides(air.corners, middle, { x: 1, y: 0 }, high / 2 - 1);
	const wide = air.x1 - air.x0;
	const low = Math.min(a.y, b.y);
	const other = along === 'left' ? air.right : air.left;
	return {
		corners: [
			{ x: a.x, y: 0 },
			{ x: a.x + deep, y: 0 },
			{ x: a.x + deep, y: wide },
			{ x: a.x, y: wide },
		],
		keys: [along, around(air.keys, f + 2), other, 'front'],
		front: 3,
		beside: [around(air.keys, f + 1), around(air.keys, f - 1)],
		run: [low, low + high],
		to3: (p, s) => p3(along === 'left' ? air.x0 + p.y : air.x1 - p.y, p.x, s),
		bends: isRectangle(air),
	};
}

function isRectangle(air: SweptAir): boolean {
	const upright = (i: number): boolean => {
		const [a, b] = [cornerAt(air.corners, i), cornerAt(air.corners, i + 1)];
		return Math.abs(a.x - b.x) < 1 || Math.abs(a.y - b.y) < 1;
	};
	return air.corners.length === 4 && air.corners.every((_, i) => upright(i));
}
