import type { BoxFigures } from '../../design';
import { bounds, type Outline, type Point } from '../../geometry';
import type { Box, Path } from '../../job';
import { snap, type Length } from '../../measure';
import { isSolved } from '../fields';
import type { Grip, Measure } from './stage-view';

/*
 * Which dimension of a box's drawing stands for which field of the job. Sizes typed inside the
 * boards are drawn from inside face to inside face.
 */

/** What the views need to know of a box besides its boards. */
export interface DrawnBox {
	readonly box: Box;
	readonly figures: BoxFigures;
	/** Where it stands in the job. */
	readonly at: Path;
}

/** A dimension of the form: from where to where, and the field it is typed in. */
interface Side {
	readonly label: string;
	readonly field: Path | null;
	readonly from: Point;
	readonly to: Point;
	readonly off: Measure['off'];
	readonly row?: number;
	/** The end that moves when it grows; none for one that has no edge of its own here. */
	readonly edge?: readonly [Point, Point];
	readonly grows?: 1 | -1;
}

const p = (x: number, y: number): Point => ({ x, y });

/** Width and height, as the front shows them. */
export function frontSides({ box, figures }: DrawnBox): Side[] {
	const { width, height } = figures.outside;
	const inner = box.sizes === 'inner';
	const dx = inner ? (width - figures.inside.width) / 2 : 0;
	const dy = inner ? (height - figures.inside.height) / 2 : 0;
	const free = box.shape.kind === 'free';
	if (box.shape.kind === 'tapered') return taperedFront(box.shape, width, height);
	return [
		{
			label: 'Width',
			field: ['width'],
			from: p(dx, 0),
			to: p(width - dx, 0),
			off: 'below',
			edge: [p(width, 0), p(width, height)],
		},
		{
			label: 'Height',
			field: free ? null : ['height'],
			from: p(0, dy),
			to: p(0, height - dy),
			off: 'left',
			edge: [p(0, height), p(width, height)],
		},
	];
}

type Tapered = Extract<Box['shape'], { kind: 'tapered' }>;

function taperedFront(shape: Tapered, width: number, height: number): Side[] {
	const left = (width - shape.front.width) / 2;
	const low = (height - shape.front.height) / 2;
	const [a, b] = [shape.rise === 0 ? 0 : Math.max(0, low), Math.max(0, left)];
	return [
		{
			label: 'Width at the front',
			field: ['front', 'width'],
			from: p(b, 0),
			to: p(b + shape.front.width, 0),
			off: 'below',
		},
		{
			label: 'Height at the front',
			field: ['front', 'height'],
			from: p(0, a),
			to: p(0, a + shape.front.height),
			off: 'left',
		},
	];
}

/** What the side shows: depths, steps, and the way it leans. */
export function sideSides({ box, figures }: DrawnBox): Side[] {
	const { height, depth } = figures.outside;
	const profile = profileOf(figures);
	const inner = box.sizes === 'inner' ? (depth - figures.inside.depth) / 2 : 0;
	const whole = (field: Path | null): Side => ({
		label: 'Depth',
		field,
		from: p(inner, 0),
		to: p(depth - inner, 0),
		off: 'below',
		edge: [p(depth, 0), p(depth, height)],
	});
	switch (box.shape.kind) {
		case 'slanted':
			return leanSides(box.shape, profile, height);
		case 'plain':
			return [whole(['depth'])];
		case 'stepped':
		case 'truncated':
			return [whole(['depth']), ...cornerSides(box.shape, depth, height)];
		case 'tapered':
			return [whole(['depth'])];
		case 'free':
			return [whole(null)];
	}
}

type Slanted = Extract<Box['shape'], { kind: 'slanted' }>;

function leanSides({ lean, face }: Slanted, profile: Outline, height: number): Side[] {
	const span = (y: number, off: 'above' | 'below', label: string, field: Path | null): Side => {
		const level = profile.filter((c) => Math.abs(c.y - y) < 2).map((c) => c.x);
		const [a, b] = [Math.min(...level), Math.max(...level)];
		const back = face === 'back' || lean.by !== 'depths';
		const end = back ? b : a;
		const on = { label, field, from: p(a, y), to: p(b, y), off, grows: back ? 1 : -1 } as const;
		return field ? { ...on, edge: [p(end, y), p(end, y)] } : on;
	};
	const by = lean.by === 'depths';
	const at = (end: 'bottom' | 'top'): Path | null =>
		by ? ['lean', end] : lean.at === end ? ['lean', 'depth'] : null;
	return [
		span(0, 'below', 'Depth at the bottom', at('bottom')),
		span(height, 'above', 'Depth at the top', at('top')),
	];
}

type Cornered = Extract<Box['shape'], { kind: 'stepped' | 'truncated' }>;

/** The two sizes of a step or of a cut corner, wherever it is. */
function cornerSides(shape: Cornered, depth: number, height: number): Side[] {
	const step = shape.kind === 'stepped';
	const [up, along] = step
		? [shape.stepHeight, shape.stepDepth]
		: [shape.cutHeight, shape.cutDepth];
	const words = step ? 'Step' : 'Cut';
	const key = step ? 'step' : 'cut';
	const back = shape.corner.endsWith('back');
	const top = shape.corner.startsWith('top');
	const [x0, x1] = back ? [depth - along, depth] : [0, along];
	const [y0, y1] = top ? [height - up, height] : [0, up];
	const inY = top ? y0 : y1;
	const inX = back ? x0 : x1;
	return [
		{
			label: `${words} depth`,
			field: [`${key}Depth`],
			from: p(x0, top ? height : 0),
			to: p(x1, top ? height : 0),
			off: top ? 'above' : 'below',
			row: top ? 0 : 1,
			edge: [p(inX, y0), p(inX, y1)],
			grows: back ? -1 : 1,
		},
		{
			label: `${words} height`,
			field: [`${key}Height`],
			from: p(back ? depth : 0, y0),
			to: p(back ? depth : 0, y1),
			off: back ? 'right' : 'left',
			edge: [p(x0, inY), p(x1, inY)],
			grows: top ? -1 : 1,
		},
	];
}

/** From above: the mouth at the back of a box that tapers. */
export function aboveSides({ box, figures }: DrawnBox): Side[] {
	if (box.shape.kind !== 'tapered') return [];
	const { depth } = figures.outside;
	const { back, front } = box.shape;
	const left = Math.max(0, (front.width - back.width) / 2);
	return [
		{
			label: 'Width at the back',
			field: ['back', 'width'],
			from: p(left, depth),
			to: p(left + back.width, depth),
			off: 'above',
		},
	];
}

/** The outer profile with its lower left corner at 0. */
function profileOf(figures: BoxFigures): Outline {
	const { profile } = figures;
	if (!profile) return [];
	const low = bounds(profile.outer);
	return profile.outer.map((c) => ({ ...c, x: c.x - low.x, y: c.y - low.y }));
}

export function measureOf(side: Side, { at }: DrawnBox): Measure {
	const { label, from, to, off } = side;
	const value: Length = snap(Math.hypot(to.x - from.x, to.y - from.y));
	const path = side.field && [...at, 'shape', ...side.field];
	return { label, from, to, off, row: side.row ?? 0, value, path };
}

/**
 * The edge that a dimension moves, as something to take hold of; none where it follows from others.
 */
export function gripOf(side: Side, drawn: DrawnBox): Grip[] {
	const { field, edge, from, to } = side;
	if (!field || !edge || isSolved(drawn.box, field)) return [];
	const level = side.off === 'below' || side.off === 'above';
	return [
		{
			label: side.label,
			at: p((edge[0].x + edge[1].x) / 2, (edge[0].y + edge[1].y) / 2),
			edge,
			moves: [
				{
					path: [...drawn.at, 'shape', ...field],
					along: level ? 'x' : 'y',
					grows: side.grows ?? 1,
					value: level ? Math.abs(to.x - from.x) : Math.abs(to.y - from.y),
					least: 1600,
				},
			],
		},
	];
}
