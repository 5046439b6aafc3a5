import { nth, around, sayLength, TICKS_PER_INCH, type Ruler } from '../../../measure';
import type { Box } from '../../../job';
import { area as areaOf, cornerAt } from '../../../geometry';
import {
	type Air,
	sidesAround,
	faceWithin,
	SIX,
	planeArea,
	cross3,
	dot3,
	sub3,
	type Point3,
	type Taken,
} from '../solid';
import { type Board, squareMetres } from '../board';

export interface Lined {
	readonly taken: readonly Taken[];
	/** Square metres of lining. */
	readonly area: number;
}

/** What the lining takes of each chamber: the walls it has there, less what is cut into them. */
export function liningTakes(
	box: Box,
	boards: readonly Board[],
	rooms: readonly { air: Air }[],
	ruler: Ruler,
): Lined {
	const { lining } = box;
	if (!lining) return { taken: [], area: 0 };
	const front = new Set(box.drivers.map((d) => d.board));
	const isLined = (key: string): boolean =>
		lining.boards.length > 0 ? lining.boards.includes(key) : !front.has(key);
	const walls = boards.filter((b) => (b.role === 'wall' || b.role === 'end') && isLined(b.key));
	const shown = rooms.map(({ air }) => wallAreas(air));
	const areas = shown.map((own) =>
		walls.reduce((sum, wall) => sum + (own.get(wall.key) ?? 0) * openShare(wall, shown), 0),
	);
	const taken = areas.map((area, room) => ({
		room,
		what: `Lining: ${areaText(area, ruler)}, ${sayLength(lining.thickness, ruler)} thick, ${lining.solid} % of it solid`,
		volume: (area * lining.thickness * lining.solid) / 100,
	}));
	return { taken, area: squareMetres(areas.reduce((sum, a) => sum + a, 0)) };
}

function areaText(area: number, { unit, decimal }: Ruler): string {
	const text =
		unit === 'in'
			? `${(area / (12 * TICKS_PER_INCH) ** 2).toFixed(2)} ft²`
			: `${squareMetres(area).toFixed(2)} m²`;
	return text.replace('.', decimal);
}

/** The share of a wall's inside that is left once its holes are cut. */
function openShare(wall: Board, rooms: readonly ReadonlyMap<string, number>[]): number {
	const whole = rooms.reduce((sum, own) => sum + (own.get(wall.key) ?? 0), 0);
	const holes = wall.holes
		.filter((h) => h.recess === null)
		.reduce((sum, h) => sum + Math.abs(areaOf(h.outline)), 0);
	return whole === 0 ? 0 : Math.max(0, 1 - holes / whole);
}

/** Square ticks of every wall that is seen from inside a chamber, whatever covers its edges. */
function wallAreas(air: Air): ReadonlyMap<string, number> {
	const areas = new Map<string, number>();
	const add = (key: string, area: number): void =>
		void areas.set(key, (areas.get(key) ?? 0) + area);
	if (air.kind === 'tapered') {
		for (const side of SIX) {
			const ring = sidesAround(side).map((key) => air.sides[key]);
			add(air.sides[side].key, flatArea(faceWithin(air.sides[side], ring), air.sides[side].n));
		}
		return areas;
	}
	air.corners.forEach((a, i) => {
		const b = cornerAt(air.corners, i + 1);
		add(nth(air.keys, i), Math.hypot(b.x - a.x, b.y - a.y) * (air.x1 - air.x0));
	});
	for (const key of [air.left, air.right]) add(key, planeArea(air.corners));
	return areas;
}

/** Area of a plane polygon whose normal is known. */
function flatArea(face: readonly Point3[], n: Point3): number {
	const o = nth(face, 0);
	const twice = face.reduce((sum, p, i) => {
		const q = around(face, i + 1);
		return sum + dot3(cross3(sub3(p, o), sub3(q, o)), n);
	}, 0);
	return Math.abs(twice) / 2;
}
