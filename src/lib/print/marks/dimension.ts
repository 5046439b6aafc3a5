import { lastOf, nth } from '../../measure';
import {
	type Ink,
	type Mark,
	type PathMark,
	circlePath,
	line,
	polygon,
	type Spot,
	textWidth,
} from '../drawing';

/*
 * Dimensions by ISO 129-1: narrow lines, filled arrowheads of 15 degrees, the figure above its line, read from the bottom
 * or the right. One character height on a drawing.
 */

export const FIGURE = 3; // size of figures, mm: 2.1 mm capitals
const ARROW = 2.4; // length; 15 degrees make it 0.63 wide
const HALF_ANGLE = (7.5 * Math.PI) / 180;
const GAP = 0.8; // paper between outline and extension line
const OVERRUN = 1.6;

/** A filled arrowhead with its tip at `tip`, pointing along `angle` (radians on paper, clockwise from +x as seen). */
export function arrowhead(tip: Spot, angle: number, ink: Ink = 'pencil', length = ARROW): PathMark {
	const end = (side: number) => ({
		x: tip.x - length * Math.cos(angle + side * HALF_ANGLE),
		y: tip.y - length * Math.sin(angle + side * HALF_ANGLE),
	});
	return { kind: 'path', steps: polygon([tip, end(1), end(-1)]), fill: ink };
}

export interface DimensionStyle {
	readonly ink?: Ink;
	readonly size?: number;
	/** Extension lines start this far from the measured points, for points inside a drawing. */
	readonly of?: string;
}

/**
 * The distance between two spots, its line `offset` to the right of the way from one to the other as seen on paper
 * (negative: to the left). Arrows go outside, and the figure beside them, where there is no room between.
 */
export function dimension(
	from: Spot,
	to: Spot,
	offset: number,
	text: string,
	style: DimensionStyle = {},
): Mark[] {
	const long = Math.hypot(to.x - from.x, to.y - from.y);
	if (long === 0) return [];
	const u = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
	const n = { x: -u.y, y: u.x }; // right of the way, y down
	const place = (along: number, across: number): Spot => ({
		x: from.x + u.x * along + n.x * across,
		y: from.y + u.y * along + n.y * across,
	});
	const ink = style.ink ?? 'pencil';
	const side = Math.sign(offset) || 1;
	const reach = offset + side * OVERRUN;
	const tight = long < 2 * ARROW + 1;
	const narrow = (a: Spot, b: Spot): PathMark => ({
		kind: 'path',
		steps: line(a.x, a.y, b.x, b.y),
		line: 'narrow',
		ink,
	});
	const out = tight ? ARROW * 1.8 : 0;
	const angle = Math.atan2(u.y, u.x);
	const marks: Mark[] = [
		narrow(place(-out, offset), place(long + out, offset)),
		arrowhead(place(0, offset), tight ? angle : angle + Math.PI, ink),
		arrowhead(place(long, offset), tight ? angle + Math.PI : angle, ink),
	];
	if (Math.abs(offset) > GAP)
		marks.push(
			narrow(place(0, side * GAP), place(0, reach)),
			narrow(place(long, side * GAP), place(long, reach)),
		);
	return [...marks, figure(place, long, offset, angle, text, style)];
}

function figure(
	place: (along: number, across: number) => Spot,
	long: number,
	offset: number,
	angle: number,
	text: string,
	style: DimensionStyle,
): Mark {
	const size = style.size ?? FIGURE;
	const width = textWidth(text, size);
	// Read from the bottom or from the right: letters never stand on their heads.
	const turn = 0 - Math.round(((angle * 180) / Math.PI) * 1e6) / 1e6;
	const upright = turn > 90 || turn <= -90 ? turn - Math.sign(turn) * 180 : turn;
	const flipped = upright !== turn;
	const fits = width <= long - 1;
	const along = fits ? long / 2 : flipped ? -(ARROW * 1.8 + 1) : long + ARROW * 1.8 + 1;
	const above = flipped ? size * 0.28 : -size * 0.28;
	const spot = place(along, fits ? offset + above : offset + (flipped ? -1 : 1) * size * 0.35);
	return {
		kind: 'text',
		x: spot.x,
		y: spot.y,
		text,
		size,
		anchor: fits ? 'middle' : 'start',
		turn: upright,
		ink: style.ink ?? 'pencil',
		halo: true,
		...(style.of === undefined ? {} : { of: style.of }),
	};
}

/** One figure of a running dimension: the place on paper along the axis, and what it measures. */
export interface RunningPlace {
	readonly at: number;
	readonly text: string;
	readonly of?: string;
}

export interface Running {
	/** x: measured to the right, figures below turned to read from the right. y: measured up, figures to the left. */
	readonly axis: 'x' | 'y';
	/** The datum's place along the axis. */
	readonly datum: number;
	/** Where the extension lines start: the outline's edge, across the axis. */
	readonly edge: number;
	/** How far from the edge the running line lies. */
	readonly offset: number;
	readonly places: readonly RunningPlace[];
	readonly size?: number;
	/** The stretch of the axis that figures may spread over. */
	readonly room?: readonly [number, number];
}

/**
 * Superimposed running dimensions (ISO 129-1): all from one datum on one line, each figure at the end of its own
 * extension line. For saw work that is how a fence and a tape are set, and no tolerances add up. Figures that would touch
 * are spread apart and joined by a kink.
 */
export function running(spec: Running): Mark[] {
	const size = spec.size ?? FIGURE;
	const sorted = [...spec.places].sort((a, b) => a.at - b.at);
	const seats = spread(
		sorted.map((p) => p.at),
		size * 1.08,
		spec.room ?? [-Infinity, Infinity],
	);
	// Away from the outline: down for x, to the left for y.
	const spot = (along: number, out: number): Spot =>
		spec.axis === 'x' ? { x: along, y: spec.edge + out } : { x: spec.edge - out, y: along };
	const marks: Mark[] = [];
	const stroke = (...spots: Spot[]) =>
		marks.push({
			kind: 'path',
			steps: spots.map((s, i) => [i === 0 ? 'M' : 'L', s.x, s.y]),
			line: 'narrow',
			ink: 'pencil',
		});
	const kink = spec.offset + 1.4;
	const end = kink + 2;
	sorted.forEach((place, i) => {
		const seat = nth(seats, i);
		stroke(spot(place.at, GAP), spot(place.at, kink), spot(seat, end));
		marks.push(runningArrow(spec, place.at, spot));
		marks.push(runningFigure(spec, place, spot(seat + size * 0.35, end + 0.6), size));
	});
	if (sorted.length > 0) {
		const far = [spec.datum, ...sorted.map((p) => p.at)];
		const most = spec.axis === 'x' ? Math.max(...far) : Math.min(...far);
		stroke(spot(spec.datum, spec.offset), spot(most, spec.offset));
		const { x, y } = spot(spec.datum, spec.offset);
		marks.push({ kind: 'path', steps: circlePath(x, y, 0.9), line: 'narrow', fill: 'sheet' });
	}
	return marks;
}

function runningFigure(spec: Running, place: RunningPlace, foot: Spot, size: number): Mark {
	return {
		kind: 'text',
		...foot,
		text: place.text,
		size,
		anchor: 'end',
		turn: spec.axis === 'x' ? 90 : 0,
		ink: 'pencil',
		...(place.of === undefined ? {} : { of: place.of }),
	};
}

function runningArrow(spec: Running, at: number, spot: (a: number, o: number) => Spot): PathMark {
	const forward = at >= spec.datum;
	const angle = spec.axis === 'x' ? (forward ? 0 : Math.PI) : forward ? Math.PI / 2 : -Math.PI / 2;
	const room = Math.abs(at - spec.datum);
	return arrowhead(spot(at, spec.offset), angle, 'pencil', Math.min(ARROW, Math.max(0.8, room)));
}

/** Depth that {@link running} takes beyond the edge, for the widest of its figures. */
export function runningDepth(offset: number, texts: readonly string[], size = FIGURE): number {
	return offset + 4 + Math.max(0, ...texts.map((t) => textWidth(t, size)));
}

/** Seats at least `gap` apart, in order, as near to the wanted places as that allows, inside the room. */
export function spread(
	wanted: readonly number[],
	gap: number,
	room: readonly [number, number],
): number[] {
	// Neighbours that would touch join into a group, which lies centred on its members' wishes.
	const groups: { sum: number; size: number }[] = [];
	const start = (g: { sum: number; size: number }) => g.sum / g.size - ((g.size - 1) * gap) / 2;
	const clamped = (g: { sum: number; size: number }) =>
		Math.max(room[0], Math.min(start(g), room[1] - (g.size - 1) * gap));
	for (const place of wanted) {
		groups.push({ sum: place, size: 1 });
		for (let last = lastOf(groups), before = groups.at(-2); before !== undefined;) {
			if (clamped(before) + before.size * gap <= clamped(last)) break;
			groups.splice(-2, 2, { sum: before.sum + last.sum, size: before.size + last.size });
			last = lastOf(groups);
			before = groups.at(-2);
		}
	}
	return groups.flatMap((g) => [...Array(g.size).keys()].map((i) => clamped(g) + i * gap));
}
