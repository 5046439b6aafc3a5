import type { PanelDetail, Point3 } from '../../../design';
import type { Outline } from '../../../geometry';
import { toMm } from '../../../measure';
import { type Body, chorded, type Prism, prism, type Tone, UPRIGHT } from './body';

type Layer = PanelDetail['layers'][number];
type Cover = PanelDetail['covers'][number];

/** One piece of a panel before it is a body. */
interface Piece {
	readonly key: string;
	readonly name: string;
	/** The end of its part's id: the same key. */
	readonly shape: Prism;
	/** Towards the viewer when all is drawn apart, of the reach; negative: away. */
	readonly forward: number;
	readonly bought?: boolean;
}

/** Everything of a panel that is seen: board, layers, covers and their ledges, rings, devices. */
export function panelBodies(d: PanelDetail, marks: ReadonlyMap<string, string>): Body[] {
	const size = d.fit.sizes.board;
	const reach = toMm(size.length > size.width ? size.length : size.width) * REACH;
	const pieces = [
		...boards(d),
		...d.layers.flatMap((l) => layer(d, l)),
		...d.covers.flatMap((c) => cover(d, c)),
		...d.rings.map((r): Piece => ({
			key: `ring-${r.id}`,
			name: r.name,
			shape: {
				outline: r.board.outer,
				holes: [r.board.inner],
				low: d.thickness - (r.rebate?.depth ?? 0),
				high: d.thickness - (r.rebate?.depth ?? 0) + r.thickness,
			},
			forward: 0.8,
		})),
		...d.devices.map((v): Piece => ({
			key: `device-${v.id}`,
			name: v.name,
			shape: {
				outline: v.body,
				holes: [],
				low: d.thickness,
				high: d.thickness + v.height,
				tone: 'metal',
				side: 'metal',
			},
			forward: 0.6,
			bought: true,
		})),
	];
	return pieces.map((p): Body => ({
		key: p.key,
		mark: p.bought ? null : (marks.get(p.key) ?? null),
		name: p.name,
		...prism(
			{ ...p.shape, outline: chorded(p.shape.outline), holes: p.shape.holes.map(chorded) },
			UPRIGHT,
		),
		away: forward(p.forward * reach),
	}));
}

/** How far the foremost goes forward, of the longer side of the board. */
const REACH = 0.4;

const forward = (by: number): Point3 => ({ x: 0, y: -by, z: 0 });

const toneOf = (cloth: boolean): Tone => (cloth ? 'cloth' : 'face');

function boards(d: PanelDetail): Piece[] {
	const holes = [
		...d.windows.map((w) => w.hole),
		...d.covers.map((c) => c.hole),
		...d.layers.flatMap((l) =>
			l.on === null && l.hole && (l.place === 'recessed' || l.bottom <= 0) ? [l.hole] : [],
		),
		...d.rings.map((r) => r.hole),
	];
	const several = d.leaves.length > 1;
	return d.leaves.map((outline, i) => ({
		key: several ? `board-${i + 1}` : 'board',
		name: several ? `Leaf ${i + 1}` : 'Board',
		shape: { outline, holes, low: 0, high: d.thickness, tone: toneOf(d.cloth !== null) },
		forward: 0,
	}));
}

function layer(d: PanelDetail, l: Layer): Piece[] {
	if (!l.piece) return [];
	const recess = l.place === 'recessed';
	const through = recess ? [] : [...d.windows.map((w) => w.hole), ...d.covers.map((c) => c.hole)];
	const letIn = d.layers.flatMap((o) =>
		o.on === l.id && o.hole && (o.place === 'recessed' || o.bottom <= l.bottom) ? [o.hole] : [],
	);
	const shape = {
		outline: l.piece,
		holes: [...through, ...letIn],
		low: l.bottom,
		high: l.top,
		tone: toneOf(l.cloth !== null && l.covering !== 'bare'),
	};
	return [{ key: l.id, name: l.name, shape, forward: recess ? -0.5 : 0.5 + depthOf(d, l) * 0.3 }];
}

/** How many layers lie between this one and the board. */
function depthOf(d: PanelDetail, l: Layer): number {
	const under = d.layers.find((o) => o.id === l.on);
	return under && under.id !== l.id
		? 1 + depthOf({ ...d, layers: d.layers.filter((o) => o !== l) }, under)
		: 0;
}

function cover(d: PanelDetail, c: Cover): Piece[] {
	const holes: Outline[] = c.finger ? [c.finger] : [];
	const tone = toneOf(c.cloth !== null);
	return [
		{
			key: `cover-${c.id}`,
			name: c.name,
			shape: { outline: c.board, holes, low: 0, high: d.thickness, tone },
			forward: 1,
		},
		...c.layers.map((l): Piece => ({
			key: `cover-${c.id}-${l.id}`,
			name: `${c.name}: ${l.name}`,
			shape: { outline: c.board, holes, low: l.bottom, high: l.top, tone },
			forward: 1.2,
		})),
		{
			key: `ledge-${c.id}`,
			name: `${c.name}: ledge`,
			shape: { outline: c.ledge.outer, holes: [c.ledge.inner], low: -c.ledge.thickness, high: 0 },
			forward: -0.5,
		},
	];
}

/** The opening as it was measured, at the back of the board. */
export function openingLines(d: PanelDetail): Point3[][] {
	const ring = chorded(d.fit.opening);
	const at = (height: number): Point3[] =>
		[...ring, ...ring.slice(0, 1)].map((p) => UPRIGHT(p, height));
	return [at(0), at(d.thickness)];
}
