import { around, nth } from '../../../measure';
import {
	arcOf,
	between,
	bulgeThrough,
	type Corner,
	cross,
	distance,
	dot,
	minus,
	type Point,
	plus,
	times,
} from '../../../geometry';
import { circleThrough, valleyOf, leftOfLine, type FittedLine, lineThrough } from './fit';

/* Marks clicked along an outline, made into its corners and sides. */

/** A mark, in millimetres, y up. */
export interface OutlineMark extends Point {
	/** A corner, or somewhere on the straight or curved side between two corners. */
	readonly lies: 'corner' | 'side' | 'curve';
}

export interface FittedSides {
	/** In the order marked; each with the bulge of the side that leaves it. */
	readonly corners: readonly Corner[];
	/** How far each mark lies off the side it is on, or off its corner as it was clicked. */
	readonly off: readonly number[];
}

/** Two sides that run on within this of each other have no corner worth the name: degrees. */
const FLAT = 10;

interface Side {
	readonly from: number; // the corner, by its place in the marks
	readonly to: number;
	readonly between: readonly number[];
	readonly curved: boolean;
	readonly line: FittedLine;
}

/**
 * A straight side is the line closest to its corners and marks, and a corner lies where its sides
 * meet; a curved side is the arc from corner to corner that comes closest to its marks. Without
 * corners all marks lie on one circle.
 *
 * @returns null when that cannot be: a single corner, or a circle through marks on a line
 */
export function fitSides(marks: readonly OutlineMark[]): FittedSides | null {
	const at = marks.flatMap((mark, i) => (mark.lies === 'corner' ? [i] : []));
	if (at.length === 0) return wholeCircle(marks);
	if (at.length === 1) return null;
	const sides = at.map((from, k) => sideOf(marks, from, around(at, k + 1)));
	if (at.length === 2 && sides.every((side) => !side.curved)) return null;
	const places = sides.map((side, k) => cornerOf(marks, around(sides, k - 1), side));
	const corners = sides.map((side, k): Corner => {
		const [a, b] = [nth(places, k), around(places, k + 1)];
		return side.curved ? { ...a, bulge: closestBulge(a, b, side, marks) } : a;
	});
	return { corners, off: offsOf(marks, sides, corners) };
}

function sideOf(marks: readonly OutlineMark[], from: number, to: number): Side {
	const count = (to - from + marks.length) % marks.length || marks.length;
	const own = Array.from({ length: count - 1 }, (_, i) => (from + 1 + i) % marks.length);
	const line = lineThrough([from, ...own, to].map((i) => nth(marks, i)));
	return { from, to, between: own, curved: own.some((i) => nth(marks, i).lies === 'curve'), line };
}

const isFitted = (side: Side): boolean => !side.curved && side.between.length > 0;

/** Where the corner between two sides belongs. */
function cornerOf(marks: readonly OutlineMark[], before: Side, after: Side): Point {
	const { x, y } = nth(marks, after.from);
	const fitted = [before, after].filter(isFitted);
	if (fitted.length === 0) return { x, y };
	const turn = cross(before.line.along, after.line.along);
	const meet = !before.curved && !after.curved && Math.abs(turn) > Math.sin((FLAT * Math.PI) / 180);
	if (meet) return crossing(before.line, after.line, turn);
	const feet = fitted.map(({ line }) => foot(line, { x, y }));
	return feet.length === 2 ? between(nth(feet, 0), nth(feet, 1), 0.5) : nth(feet, 0);
}

const crossing = (a: FittedLine, b: FittedLine, turn: number): Point =>
	plus(a.at, times(a.along, cross(minus(b.at, a.at), b.along) / turn));

const foot = ({ at, along }: FittedLine, p: Point): Point =>
	plus(at, times(along, dot(minus(p, at), along)));

/** Of all arcs from one corner to the other. */
function closestBulge(a: Point, b: Point, side: Side, marks: readonly OutlineMark[]): number {
	const own = side.between.map((i) => nth(marks, i));
	const middle = nth(own, Math.floor(own.length / 2));
	const first = bulgeThrough(a, middle, b);
	const width = 0.5 + Math.abs(first);
	return valleyOf(
		(bulge) => own.reduce((sum, p) => sum + offSide(a, b, bulge, p) ** 2, 0),
		first - width,
		first + width,
	);
}

function offSide(a: Point, b: Point, bulge: number, p: Point): number {
	if (Math.abs(bulge) < 1e-9) return Math.abs(leftOfLine(lineThrough([a, b]), p));
	const { centre, radius } = arcOf(a, b, bulge);
	return Math.abs(distance(p, centre) - radius);
}

function offsOf(
	marks: readonly OutlineMark[],
	sides: readonly Side[],
	corners: readonly Corner[],
): number[] {
	const off = marks.map(() => 0);
	for (const [k, side] of sides.entries()) {
		const [a, b] = [nth(corners, k), around(corners, k + 1)];
		off[side.from] = distance(nth(marks, side.from), a);
		for (const i of side.between) off[i] = offSide(a, b, a.bulge ?? 0, nth(marks, i));
	}
	return off;
}

function wholeCircle(marks: readonly OutlineMark[]): FittedSides | null {
	const circle = circleThrough(marks);
	if (!circle) return null;
	const { centre, radius } = circle;
	const corners = [1, -1].map((side) => ({ x: centre.x + side * radius, y: centre.y, bulge: 1 }));
	return { corners, off: marks.map((p) => Math.abs(distance(p, centre) - radius)) };
}
