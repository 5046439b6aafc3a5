import {
	alongEdge,
	distance,
	distanceTo,
	type Edge,
	edgesOf,
	finder,
	minus,
	dot,
	type Outline,
	type Point,
} from '../../../geometry';
import { nth, ticks, type Length } from '../../../measure';

/** A raised layer covered with the face, and what it adds to the height of an edge it ends at. */
export interface OverFace {
	readonly piece: Outline;
	readonly step: number;
}

/**
 * What is glued on flush with each edge of a board and covered with it: the cloth climbs that as
 * well, and where a layer ends at part of an edge only, the cloth of the whole edge is as long as
 * that part needs it.
 */
export function flushHeights(board: Outline, layers: readonly OverFace[]): Length[] {
	const over = layers.map((l) => ({ ...l, at: finder(l.piece) }));
	return edgesOf(board).map((edge) => {
		const near = over.filter((l) => touches(edge, l.piece));
		const heights = stations(edge, near).map((p) =>
			near
				.filter((l) => l.at(p) !== 'outside' || distanceTo(p, l.piece) < AT_THE_EDGE)
				.reduce((sum, l) => sum + l.step, 0),
		);
		return ticks(Math.max(0, ...heights));
	});
}

/** This near (ticks) a layer ends at the edge of the board: a tenth of a millimetre. */
const AT_THE_EDGE = 160;
/** A curved edge is looked at in as many places. */
const ALONG_A_CURVE = 24;

/** Only a layer that comes near has a say: most do not, and a long outline has many edges. */
function touches(edge: Edge, piece: Outline): boolean {
	const reach = AT_THE_EDGE + (edge.bulge === 0 ? 0 : distance(edge.from, edge.to));
	const [low, high] = [
		{ x: Math.min(edge.from.x, edge.to.x) - reach, y: Math.min(edge.from.y, edge.to.y) - reach },
		{ x: Math.max(edge.from.x, edge.to.x) + reach, y: Math.max(edge.from.y, edge.to.y) + reach },
	];
	const within = (p: Point): boolean =>
		p.x >= low.x && p.x <= high.x && p.y >= low.y && p.y <= high.y;
	return piece.some(within) || edgesOf(piece).some((e) => e.bulge !== 0 || near(e, low, high));
}

/** Does the box of a straight edge meet another? */
function near({ from, to }: Edge, low: Point, high: Point): boolean {
	return (
		Math.min(from.x, to.x) <= high.x &&
		Math.max(from.x, to.x) >= low.x &&
		Math.min(from.y, to.y) <= high.y &&
		Math.max(from.y, to.y) >= low.y
	);
}

/** Points of an edge between any two at which a layer begins or ends there. */
function stations(edge: Edge, layers: readonly OverFace[]): Point[] {
	if (edge.bulge !== 0)
		return Array.from({ length: ALONG_A_CURVE }, (_, i) =>
			alongEdge(edge, (i + 0.5) / ALONG_A_CURVE),
		);
	const along = minus(edge.to, edge.from);
	const whole = dot(along, along);
	const ends = layers
		.flatMap((l) => l.piece.map((p) => dot(minus(p, edge.from), along) / whole))
		.filter((part) => part > 0 && part < 1);
	const parts = [0, ...ends, 1].sort((a, b) => a - b);
	return parts.slice(1).map((part, i) => alongEdge(edge, (part + nth(parts, i)) / 2));
}
