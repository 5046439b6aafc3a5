import { nth } from '../../measure';
import { type Mark, type PathMark, circlePath, type Spot, textWidth } from '../drawing';
import { ARROW, arrowhead } from './arrowhead';
import { FIGURE, GAP } from './dimension';
import { spread } from './spread';

/** One figure of a running dimension: the place on paper along the axis, and what it measures. */
interface RunningPlace {
	readonly at: number;
	readonly text: string;
}

export interface Running {
	/**
	 * x: measured to the right, figures below turned to read from the right. y: measured up,
	 * figures to the left.
	 */
	readonly axis: 'x' | 'y';
	/** The datum's place along the axis. */
	readonly datum: number;
	/** Where the extension lines start: the outline's edge, across the axis. */
	readonly edge: number;
	/** How far from the edge the running line lies. */
	readonly offset: number;
	readonly places: readonly RunningPlace[];
	/** The stretch of the axis that figures may spread over. */
	readonly room?: readonly [number, number];
}

/**
 * Superimposed running dimensions (ISO 129-1): all from one datum on one line, each figure at the
 * end of its own extension line. For saw work that is how a fence and a tape are set, and no
 * tolerances add up. Figures that would touch are spread apart and joined by a kink.
 */
export function running(spec: Running): Mark[] {
	const sorted = [...spec.places].sort((a, b) => a.at - b.at);
	const slots = spread(
		sorted.map((p) => p.at),
		FIGURE * 1.08,
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
		const slot = nth(slots, i);
		stroke(spot(place.at, GAP), spot(place.at, kink), spot(slot, end));
		marks.push(runningArrow(spec, place.at, spot));
		marks.push(runningFigure(spec, place, spot(slot + FIGURE * 0.35, end + 0.6)));
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

function runningFigure(spec: Running, place: RunningPlace, foot: Spot): Mark {
	return {
		kind: 'text',
		...foot,
		text: place.text,
		size: FIGURE,
		anchor: 'end',
		turn: spec.axis === 'x' ? 90 : 0,
		ink: 'pencil',
	};
}

function runningArrow(spec: Running, at: number, spot: (a: number, o: number) => Spot): PathMark {
	const forward = at >= spec.datum;
	const angle = spec.axis === 'x' ? (forward ? 0 : Math.PI) : forward ? Math.PI / 2 : -Math.PI / 2;
	const room = Math.abs(at - spec.datum);
	return arrowhead(spot(at, spec.offset), angle, 'pencil', Math.min(ARROW, Math.max(0.8, room)));
}

/** Depth that {@link running} takes beyond the edge, for the widest of its figures. */
export function runningDepth(offset: number, texts: readonly string[]): number {
	return offset + 4 + Math.max(0, ...texts.map((t) => textWidth(t, FIGURE)));
}
