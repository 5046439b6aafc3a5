import { nth } from '../../measure';
import {
	type BoxBoard,
	type BoxFigures,
	add3,
	cross3,
	dot3,
	length3,
	pointOnBoard,
	scale3,
	sub3,
	unit3,
	type Point3,
} from '../../design';
import { boundsOfPoints } from '../../geometry';
import { callouts, type Named } from '../marks';
import {
	type Drawing,
	type Ink,
	type LineKind,
	type Mark,
	polygon,
	type Spot,
	boxInRing,
	boxOffRing,
	inRing,
	overlap,
	placed,
	round,
	textBox,
} from '../drawing';

/** From the right, the front and above. */
const EYE = unit3({ x: 0.5, y: -0.78, z: 0.42 });
const RIGHT = unit3(cross3({ x: -EYE.x, y: -EYE.y, z: -EYE.z }, { x: 0, y: 0, z: 1 }));
const UP = cross3(RIGHT, { x: -EYE.x, y: -EYE.y, z: -EYE.z });
const WIDE = 180;
const TALL = 100;
const MARGIN = 12;
/** Spots tried along each side of a board, for the one its name points at. */
const GRID = 15;

/**
 * The boards drawn apart, each moved straight off its place; what lies nearer is drawn over what
 * lies behind.
 */
export function exploded(name: string, figures: BoxFigures): Drawing {
	const { outside } = figures;
	const reach = Math.max(outside.width, outside.height, outside.depth) * 0.38;
	const centre = { x: outside.width / 2, y: outside.depth / 2, z: outside.height / 2 };
	const moved = figures.boards
		.filter((b) => b.role !== 'cleat')
		.map((b) => ({ b, by: movedApart(b, centre, reach) }));
	const { bodies, height } = solidView(moved, { width: WIDE, height: TALL });
	const drawn = bodies.flatMap(bodyMarks);
	const labelled = callouts(bodies.map(named), { x: 0, y: 0, width: WIDE, height, drawn });
	const marks = [...drawn, ...labelled.marks];
	const { from, to } = reachOf(marks);
	return {
		width: WIDE,
		height: to - from + 2 * EDGE,
		title: `${name}: exploded view`,
		marks: placed(marks, { x: 0, y: EDGE - from }),
	};
}

/** Paper over and under the view with its names, mm. */
const EDGE = 2;

/** From where to where down the paper some marks reach. */
function reachOf(marks: readonly Mark[]): { from: number; to: number } {
	const ys = marks.flatMap((mark) => {
		if (mark.kind === 'path')
			return mark.steps.flatMap((s) => (s[0] === 'Z' ? [] : [Number(s.at(-1))]));
		if (mark.kind !== 'text') return [];
		const { y, height } = textBox(mark);
		return [y, y + height];
	});
	return { from: Math.min(...ys), to: Math.max(...ys) };
}

/** The box as it stands, without a word: for whoever orders it. */
export function boxPicture(name: string, figures: BoxFigures): Drawing {
	const still = { x: 0, y: 0, z: 0 };
	const seen = figures.boards
		.filter((b) => SHELL.includes(b.role) && dot3(b.frame.n, EYE) > 0)
		.map((b) => ({ b, by: still }));
	const { bodies, height } = solidView(seen, PICTURE);
	return { width: PICTURE.width, height, title: name, marks: bodies.flatMap(bodyMarks) };
}

const SHELL: readonly BoxBoard['role'][] = ['wall', 'end', 'overlay', 'ring'];
const PICTURE = { width: 90, height: 75 };

/** Boards, each moved by so much, as large as the room allows, from the farthest to the nearest. */
function solidView(
	boards: readonly { readonly b: BoxBoard; readonly by: Point3 }[],
	room: { readonly width: number; readonly height: number },
) {
	const moved = [...boards].sort((p, q) => depthOf(p.b, p.by) - depthOf(q.b, q.by));
	const all = moved.flatMap(({ b, by }) => corners(b).map((p) => eye(add3(p, by))));
	const box = boundsOfPoints(all);
	const scale = Math.min(
		(room.width - 2 * MARGIN) / box.length,
		(room.height - 2 * MARGIN) / box.width,
	);
	const height = box.width * scale + 2 * MARGIN;
	const left = (room.width - box.length * scale) / 2;
	const paper = (p: Point3): Spot => {
		const e = eye(p);
		return { x: left + (e.x - box.x) * scale, y: height - MARGIN - (e.y - box.y) * scale };
	};
	return { bodies: moved.map(({ b, by }) => bodyOf(b, (p) => paper(add3(p, by)))), height };
}

/**
 * Where a board goes when they are drawn apart, ticks. Walls move outward; what stands inside moves
 * away from the middle a little, so that it shows.
 */
export function movedApart(b: BoxBoard, centre: Point3, reach: number): Point3 {
	const n = b.frame.n;
	if (b.role === 'wall' || b.role === 'end') return scale3(n, reach);
	if (b.role === 'overlay' || b.role === 'ring') return scale3(n, reach * 1.5);
	if (b.role === 'doubler') return scale3(n, reach * 0.55);
	const m = middle(b);
	const out = { x: m.x - centre.x, y: m.y - centre.y, z: m.z - centre.z };
	return scale3(out, 0.15);
}

/** What of a board is seen, on paper. */
interface Body {
	readonly b: BoxBoard;
	readonly sides: readonly (readonly Spot[])[];
	readonly face: readonly Spot[];
	readonly holes: readonly (readonly Spot[])[];
	/** Seats cut in the face that is not seen, on that face. */
	readonly hidden: readonly (readonly Spot[])[];
}

function bodyOf(b: BoxBoard, paper: (p: Point3) => Spot): Body {
	const { outside, inside } = b.solid;
	const n = outside.length;
	const sides = outside.map((p, i) => [
		p,
		nth(inside, i),
		nth(inside, (i + 1) % n),
		nth(outside, (i + 1) % n),
	]);
	const front = dot3(b.frame.n, EYE) > 0;
	const behind = (h: BoxBoard['holes'][number]): boolean =>
		h.recess !== null && (h.face === 'inside') === front;
	return {
		b,
		sides: sides.filter((f) => dot3(normal(f), EYE) > 1e-9).map((f) => f.map(paper)),
		face: (front ? outside : [...inside].reverse()).map(paper),
		holes: b.holes.filter((h) => !behind(h)).map((h) => ringOf(b, h, front).map(paper)),
		hidden: b.holes.filter(behind).map((h) => ringOf(b, h, !front).map(paper)),
	};
}

function bodyMarks({ b, sides, face, holes, hidden }: Body): Mark[] {
	const of = `part:${b.label}`;
	const shape = (ring: readonly Spot[], line: LineKind, fill: Ink): Mark => ({
		kind: 'path',
		steps: polygon(ring),
		line,
		fill,
		of,
	});
	return [
		...sides.map((ring) => shape(ring, 'narrow', 'chalk-wash')),
		shape(face, 'wide', 'sheet'),
		...holes.map((ring) => shape(ring, 'narrow', 'sunk')),
		...hidden.map((ring): Mark => ({
			kind: 'path',
			steps: polygon(ring),
			line: 'dashed',
			ink: 'pencil',
			of,
		})),
	];
}

/**
 * Its name, and the spot it points at: where the board shows, clear of its holes and of what is
 * drawn over it.
 */
function named({ b, sides, face, holes }: Body, i: number, all: readonly Body[]): Named {
	const shown = [...sides, face];
	const own = round(face);
	const about = round(shown.flat());
	// Those that lie elsewhere hide nothing of it; a hair more, so that what touches counts.
	const over = all
		.slice(i + 1)
		.flatMap((o) => [...o.sides, o.face])
		.filter((ring) => overlap(round(ring), about, -0.01));
	const middle = { x: own.x + own.width / 2, y: own.y + own.height / 2 };
	const spots = shown.flatMap(spotsIn).map((p) => ({
		p,
		inHole: holes.some((ring) => inRing(p, ring)),
		far: Math.hypot(p.x - middle.x, p.y - middle.y),
	}));
	const best = spots
		.sort((a, b) => Number(a.inHole) - Number(b.inHole) || a.far - b.far)
		.find(({ p }) => !over.some((ring) => inRing(p, ring)));
	return {
		text: `${b.label} ${b.name}`,
		short: b.label,
		at: best?.p ?? middle,
		holds: (box) => boxInRing(box, face) && [...over, ...holes].every((r) => boxOffRing(box, r)),
	};
}

/** A grid of spots inside a ring. */
function spotsIn(ring: readonly Spot[]): Spot[] {
	const { x, y, width, height } = round(ring);
	const steps = [...Array(GRID).keys()].map((k) => (k + 0.5) / GRID);
	return steps
		.flatMap((s) => steps.map((t) => ({ x: x + s * width, y: y + t * height })))
		.filter((p) => inRing(p, ring));
}

/** A hole on the face that is seen, its arcs as short chords: at this size nothing finer shows. */
function ringOf(b: BoxBoard, hole: BoxBoard['holes'][number], front: boolean): Point3[] {
	const back = front ? { x: 0, y: 0, z: 0 } : scale3(b.frame.n, -b.thickness);
	const round = hole.outline.length === 2 && hole.size.length === 1;
	const points = round ? circlePoints(hole) : hole.outline;
	return points.map((p) => add3(pointOnBoard(b, p), back));
}

function circlePoints(hole: BoxBoard['holes'][number]): { x: number; y: number }[] {
	const r = nth(hole.size, 0) / 2;
	return Array.from({ length: 48 }, (_, i) => {
		const a = (i * Math.PI) / 24;
		return { x: hole.centre.x + r * Math.cos(a), y: hole.centre.y + r * Math.sin(a) };
	});
}

function corners(b: BoxBoard): Point3[] {
	return [...b.solid.outside, ...b.solid.inside];
}

function middle(b: BoxBoard): Point3 {
	const all = corners(b);
	return scale3(
		all.reduce((a, b) => add3(a, b)),
		1 / all.length,
	);
}

const depthOf = (b: BoxBoard, by: Point3): number => dot3(add3(middle(b), by), EYE);

function eye(p: Point3): { x: number; y: number } {
	return { x: dot3(p, RIGHT), y: dot3(p, UP) };
}

function normal(f: readonly Point3[]): Point3 {
	const n = cross3(sub3(nth(f, 1), nth(f, 0)), sub3(nth(f, 2), nth(f, 0)));
	return length3(n) === 0 ? n : unit3(n);
}
