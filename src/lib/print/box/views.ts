import { nth } from '../../measure';
import { type BoxBoard, type BoxFigures, type Point3, hull, pointOnBoard } from '../../design';
import { type Outline, type Point, boundsOfPoints } from '../../geometry';
import { type Drawing, type Mark, onPaper, type Spot, type View } from '../drawing';
import { dimension, outlineMark, scaleText, standardScale, words } from '../marks';
import type { Figures } from '../wording';
import { type InsideView, insideMarks, placeDimensions, reaches } from './views-inside';

/** One of the three views: which way it looks, and what lies right and up in it. */
interface Look {
	readonly name: string;
	readonly toward: Point3;
	readonly flat: (p: Point3) => Point;
}

const FRONT: Look = {
	name: 'Front',
	toward: { x: 0, y: -1, z: 0 },
	flat: (p) => ({ x: p.x, y: p.z }),
};
const SIDE: Look = {
	name: 'Section from the right end',
	toward: { x: 1, y: 0, z: 0 },
	flat: (p) => ({ x: p.y, y: p.z }),
};
const ABOVE: Look = {
	name: 'From above',
	toward: { x: 0, y: 0, z: 1 },
	flat: (p) => ({ x: p.x, y: p.y }),
};

const WIDE = 180;
const GAP = { beside: 22, below: 17 };
/** From one dimension line to the next, further out. */
const STEP = 6;
const EDGE = { left: 16, right: 14 };
/** Over the views: their names, and a depth at the top that is not the one at the bottom. */
const OVER = { names: 9, lean: 18 };
/** Under the view from above: nothing, or the places inside. */
const UNDER = { bare: 4, places: 19 };
/** The name of a view stands so far over it. */
const NAME = 3;

/**
 * Front, side and top of a box, in first place to each other, dimensioned; the side is cut open to
 * show the joints.
 */
export function threeViews(name: string, figures: BoxFigures, print: Figures): Drawing {
	const { outside } = figures;
	const across = (outside.width + outside.depth) / 1600;
	const beside = STEP * Math.max(0, cornerHeights(figures).length - 1);
	const most = Math.min((WIDE - EDGE.left - EDGE.right - beside - GAP.beside) / across, 0.5);
	const scale = standardScale(most, print.unit);
	const mm = (l: number): number => (l / 1600) * scale;
	const over = topDepth(figures) === null ? OVER.names : OVER.lean;
	const high = over + mm(outside.height);
	const front: View = { x: EDGE.left, y: high, scale };
	const side: View = { x: EDGE.left + mm(outside.width) + GAP.beside, y: high, scale };
	const above: View = { x: EDGE.left, y: high + GAP.below + mm(outside.depth), scale };
	const below = reaches(figures, 'fromLeft').length > 0 ? UNDER.places : UNDER.bare;
	const deep = side.y + (reaches(figures, 'fromFront').length > 0 ? 10 + UNDER.places : 0);
	const height = Math.max(above.y + below, deep);
	const drawn: Mark[] = [
		...faces(figures, FRONT, front),
		...sideView(figures, side),
		...faces(figures, ABOVE, above),
		...overall(outside, front, side, above, print),
		...leanDimensions(figures, side, print),
		...names(front, side, above, figures, over - OVER.names),
		...insideDimensions(figures, side, above, print),
	];
	const marks: Mark[] = [
		...drawn,
		...insideMarks(figures, seenFrom(figures, SIDE, side), drawn),
		...insideMarks(figures, seenFrom(figures, ABOVE, above), drawn),
		words(WIDE, 3.4, scaleText({ scale }), {
			anchor: 'end',
			ink: 'pencil',
		}),
	];
	return { width: WIDE, height, title: `${name}: three views`, marks };
}

const dot = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;
const OUTER = ['wall', 'end', 'overlay', 'ring'];

/** Outside faces turned to the viewer, with what is cut into them. */
function faces(figures: BoxFigures, look: Look, view: View): Mark[] {
	const low = lowOf(figures, look);
	const flat = (p: Point3): Point => ({ x: look.flat(p).x - low.x, y: look.flat(p).y - low.y });
	const outer = figures.boards.filter((b) => OUTER.includes(b.role));
	// Ends and edges seen end on have no face of their own in this view; the outline closes over
	// them.
	const round = hull(outer.flatMap((b) => b.solid.outside.map(flat)));
	return [
		outlineMark([round], view, 'wide'),
		...outer.flatMap((b) => {
			if (dot(b.frame.n, look.toward) < 0.05) return [];
			const holes = b.holes.map((h) =>
				h.outline.map((c) => ({ ...flat(pointOnBoard(b, c)), ...bulge(c) })),
			);
			return [
				outlineMark([b.solid.outside.map(flat)], view, 'wide', { of: `part:${b.label}` }),
				...(dot(b.frame.n, look.toward) > 0.7
					? holes.map((h) => outlineMark([h], view, 'narrow'))
					: []),
			];
		}),
	];
}

const bulge = (c: { bulge?: number }): { bulge?: number } => (c.bulge ? { bulge: c.bulge } : {});

function lowOf(figures: BoxFigures, look: Look): Point {
	const points = figures.boards
		.filter((b) => OUTER.includes(b.role))
		.flatMap((b) => b.solid.outside.map(look.flat));
	return boundsOfPoints(points);
}

/** The profile sawn through: each board in section; of a tapered box the outside alone. */
function sideView(figures: BoxFigures, view: View): Mark[] {
	if (!figures.profile) return faces(figures, SIDE, view);
	const low = lowOf(figures, SIDE);
	return figures.boards.flatMap((b) => {
		const round =
			b.role === 'wall' || b.role === 'doubler' || b.role === 'overlay' || b.role === 'slot';
		if (!round || Math.abs(b.frame.n.x) > 0.5) return [];
		const section = sectionOf(b).map((p) => ({ x: p.x - low.x, y: p.y - low.y }));
		return [outlineMark([section], view, 'wide', { fill: 'chalk-wash', of: `part:${b.label}` })];
	});
}

/** A board swept along the width, in section. */
function sectionOf(b: BoxBoard): Outline {
	const most = Math.max(...b.solid.outside.map((p) => p.x));
	const end = [...b.solid.outside.filter((p) => most - p.x < 2)];
	const inner = [...b.solid.inside.filter((p) => most - p.x < 2)].reverse();
	return [...end, ...inner].map(SIDE.flat);
}

function seenFrom(figures: BoxFigures, look: Look, view: View): InsideView {
	const low = lowOf(figures, look);
	const flat = (p: Point3): Point => ({ x: look.flat(p).x - low.x, y: look.flat(p).y - low.y });
	return { toward: look.toward, flat, view };
}

/** Places inside: across the width from above, up and along the depth from the side. */
function insideDimensions(figures: BoxFigures, side: View, above: View, print: Figures): Mark[] {
	const [low, top] = [lowOf(figures, SIDE), lowOf(figures, ABOVE)];
	const at = { view: side, edge: side.y, offset: 13, low: low.x };
	return [
		...placeDimensions(
			figures,
			'fromLeft',
			{ view: above, edge: above.y, offset: 3, low: top.x },
			print,
		),
		...placeDimensions(figures, 'fromFront', at, print),
		...placeDimensions(
			figures,
			'fromBottom',
			{ ...at, edge: side.x, offset: 3, low: low.y },
			print,
		),
	];
}

function overall(
	size: BoxFigures['outside'],
	front: View,
	side: View,
	above: View,
	print: Figures,
): Mark[] {
	const at = (view: View, x: number, y: number): Spot => onPaper({ x, y }, view);
	return [
		...dimension(at(front, 0, 0), at(front, size.width, 0), 7, print.bench(size.width)),
		...dimension(at(front, 0, size.height), at(front, 0, 0), 8, print.bench(size.height)),
		...dimension(at(side, 0, 0), at(side, size.depth, 0), 7, print.bench(size.depth)),
		...dimension(at(above, 0, size.depth), at(above, 0, 0), 8, print.bench(size.depth)),
	];
}

/**
 * The depth at the top where it is not the depth at the bottom, and the height of every inner
 * corner of the profile.
 */
function leanDimensions(figures: BoxFigures, view: View, print: Figures): Mark[] {
	const outer = figures.profile?.outer;
	if (!outer) return [];
	const top = topDepth(figures);
	const right = Math.max(...outer.map((p) => p.x));
	return [
		...(top === null
			? []
			: dimension(
					onPaper({ x: top.to, y: top.y }, view),
					onPaper({ x: top.from, y: top.y }, view),
					6,
					print.bench(top.to - top.from),
				)),
		...cornerHeights(figures).flatMap((y, i) =>
			dimension(
				onPaper({ x: right, y: 0 }, view),
				onPaper({ x: right, y }, view),
				7 + i * STEP,
				print.bench(y),
			),
		),
	];
}

/** Where the profile is level at the top, if that is not as deep as the box. */
function topDepth({ profile, outside }: BoxFigures) {
	const outer = profile?.outer;
	if (!outer) return null;
	const y = Math.max(...outer.map((p) => p.y));
	const level = outer.filter((p) => y - p.y < 2).map((p) => p.x);
	const [from, to] = [Math.min(...level), Math.max(...level)];
	const whole = Math.abs(to - from - outside.depth) < 2;
	return whole || to - from < 2 ? null : { from, to, y };
}

/** Heights of the corners of the profile between bottom and top, the lowest first. */
function cornerHeights({ profile }: BoxFigures): number[] {
	const all = (profile?.outer ?? []).map((p) => p.y);
	const top = Math.max(...all);
	const between = all.filter((y) => y > 2 && top - y > 2).sort((a, b) => a - b);
	return between.filter((y, i) => i === 0 || y - nth(between, i - 1) > 2);
}

/** `raised`: what stands over the side view beneath its name, mm. */
function names(
	front: View,
	side: View,
	above: View,
	{ outside, profile }: BoxFigures,
	raised: number,
): Mark[] {
	const over = (view: View, text: string, y: number, up = 0): Mark => {
		const spot = onPaper({ x: 0, y }, view);
		return words(spot.x, spot.y - NAME - up, text, { weight: 'semibold' });
	};
	const cut = profile === null ? 'From the right end' : SIDE.name;
	return [
		over(front, FRONT.name, outside.height),
		over(side, cut, outside.height, raised),
		over(above, ABOVE.name, outside.depth),
	];
}
