import type { JobFile } from '../../../src/lib/job/job';
import type { Spot } from '../section';
import { CLOTHS, STOCK, type LayerWish, type PanelWish, type SideWish } from './random-panel';

/* The job that asks for a random panel, and where its board and what lies on it must be. mm. */

type PanelFile = NonNullable<JobFile['panels']>[number];

/** How far the board stands back from the line of the opening at a side: gap, cloth, neighbour. */
export function setBackOf(s: SideWish, pressed: number): number {
	if (s.end === 'tucked') return -s.tuck;
	const own = s.end === 'wrapped' ? pressed : 0;
	if (s.beside === 'panel') return s.clearance / 2 + own;
	if (s.beside === 'unwrapped') return s.clearance + own + (s.neighbour ? CLOTHS[s.neighbour] : 0);
	return s.clearance + own;
}

/** A rectangle: its lower left and upper right corner. */
export interface Field {
	readonly low: Spot;
	readonly high: Spot;
}

export interface Places {
	readonly board: Field;
	readonly left: Field;
	readonly right: Field;
	readonly window: Field;
	readonly cover: Field;
}

/** Sides in the order bottom, right, top, left. Layers at a third each, window or cover between. */
export function placesOf(w: PanelWish): Places {
	const { length, width } = w.opening;
	const [bottom, right, top, left] = w.sides.map((s) => setBackOf(s, CLOTHS[w.cloth]));
	const board = {
		low: { x: left!, y: bottom! },
		high: { x: length - right!, y: width - top! },
	};
	const field = (x: number, wide: number, y: number, high: number): Field => ({
		low: { x, y },
		high: { x: x + wide, y: y + high },
	});
	const middle = width / 2;
	const upright = (of: LayerWish | null): [number, number] => [
		Math.round(width * (of?.at ?? 0)) - (of?.low ?? 0),
		(of?.low ?? 0) + (of?.high ?? 0),
	];
	const flush = w.left?.flush === true && w.left.place === 'raised';
	const from = flush ? board.low.x : 70;
	return {
		board,
		left: field(from, 170 - from, ...upright(w.left)),
		right: field(length - 170, 100, ...upright(w.right)),
		window: field(
			Math.round(length / 2 - (w.window?.length ?? 0) / 2),
			w.window?.length ?? 0,
			Math.round(middle - (w.window?.width ?? 0) / 2),
			w.window?.width ?? 0,
		),
		cover: field(Math.round(length / 2) - 90, 180, Math.round(middle) - 80, 160),
	};
}

const placed = ({ low, high }: Field) => ({
	shape: { kind: 'rectangle' as const, length: high.x - low.x, width: high.y - low.y },
	x: low.x,
	y: low.y,
});

function openingOf({ opening: o }: PanelWish): PanelFile['opening'] {
	const { length, width } = o;
	if (o.form === 'plain') return { kind: 'rectangle', length, width };
	if (o.form === 'rounded')
		return { kind: 'rectangle', length, width, corners: { radius: o.radius } };
	if (o.form === 'trapezoid')
		return { kind: 'trapezoid', bottom: length, top: length - 150, height: width, shift: o.shift };
	const points = cornersOfL(o).map((p, i) => (i === 3 ? { ...p, cut: innerCut(o.radius) } : p));
	return { kind: 'polyline', points };
}

/** The inside corner is sharp, or rounded less than any edge is high. */
export const innerRadius = (radius: number): number => (radius < 40 ? 0 : (radius - 36) / 4);
const innerCut = (radius: number) =>
	innerRadius(radius) === 0 ? null : { radius: innerRadius(radius) };

export const cornersOfL = ({ length, width, notch }: PanelWish['opening']): Spot[] => [
	{ x: 0, y: 0 },
	{ x: length, y: 0 },
	{ x: length, y: width - notch.y },
	{ x: length - notch.x, y: width - notch.y },
	{ x: length - notch.x, y: width },
	{ x: 0, y: width },
];

function layerOf(id: 'left' | 'right', wish: LayerWish, field: Field) {
	return {
		id,
		name: id,
		place: wish.place,
		covering: wish.covering,
		outline: placed(field),
		material: wish.board,
		cloth: wish.covering === 'own' ? wish.cloth : null,
		foam: wish.foam === null ? null : { thickness: wish.foam },
		sink: wish.covering === 'own' && wish.place === 'raised' ? wish.sink : 0,
		clearance: wish.clearance,
	};
}

const sideOf = ({ neighbour, ...s }: SideWish) =>
	({ ...s, neighbourCloth: neighbour }) as NonNullable<NonNullable<PanelFile['edges']>['all']>;

export function jobOf(w: PanelWish): JobFile {
	const at = placesOf(w);
	const panel: PanelFile = {
		id: 'panel',
		name: 'Panel',
		opening: openingOf(w),
		material: w.board,
		cloth: w.cloth,
		foam: w.foam === null ? null : { thickness: w.foam },
		groove: w.groove ? { width: 4, ...w.groove } : 'none',
		margin: w.margin,
		grip: w.grip,
		nap: w.nap,
		cornerPatches: w.patches,
		edges: {
			all: sideOf(w.sides[0]!),
			own: w.sides
				.slice(1)
				.flatMap((s, i) => (s === w.sides[0] ? [] : [{ edge: i + 2, ...sideOf(s) }])),
		},
		layers: [
			...(w.left ? [layerOf('left', w.left, at.left)] : []),
			...(w.right ? [layerOf('right', w.right, at.right)] : []),
		],
		windows: w.window
			? [
					{
						id: 'window',
						outline: placed(at.window),
						end: w.window.wrapped ? 'wrapped' : 'bare',
						clearance: w.window.clearance,
						thingCloth: w.window.thing,
					},
				]
			: [],
		rings: w.ring
			? [
					{
						id: 'ring',
						outline: placed(at.cover),
						material: w.ring.board,
						cloth: w.ring.cloth,
						lap: w.ring.lap,
						lip: w.ring.lip,
					},
				]
			: [],
		covers: w.cover
			? [
					{
						id: 'cover',
						outline: placed(at.cover),
						gap: w.cover.gap,
						cloth: w.cover.cloth,
						ledge: { material: 'board' },
					},
				]
			: [],
	};
	const count = { count: w.count };
	return { name: 'Cloth', stock: STOCK, panels: [{ ...panel, ...count }] };
}
