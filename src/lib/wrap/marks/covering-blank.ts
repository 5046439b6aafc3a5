import type { Covering } from '../../design';
import { area, perimeter, type Outline, type Point, between, plus } from '../../geometry';
import type { Cloth } from '../../job';
import { TICKS_PER_MM, type Ruler } from '../../measure';
import { layOut } from './back-view';
import type { Blank, BlankMark } from '../blank';
import { clothShape, type ClothShape } from './cloth-shape';
import type { SeamLine } from './cut-along';
import type { LaidCloth } from '../girth';
import type { ReliefRule } from '../reliefs';
import { cornerVerdicts } from './edge-corners';
import { girthSums } from './girth-sum';
import { panelMarks } from './panel-marks';
import { givesOf, verdictsOf } from './verdicts';

/**
 * Marks and cuts a blank has besides those that follow from its outline: the folds of a band, holes
 * for drivers.
 */
export interface Extra {
	readonly marks: readonly BlankMark[];
	readonly reliefs: Blank['reliefs'];
	readonly holes: readonly Outline[];
}

export const NO_EXTRA: Extra = {
	marks: [],
	reliefs: { notches: 0, slits: 0, corners: 0 },
	holes: [],
};

export interface Developed {
	readonly blank: Blank;
	readonly shape: ClothShape;
	/** Places on the edge without room for the relief they need. */
	readonly blocked: number;
	/** Seams the person placed, on the blank. */
	readonly seams: readonly SeamLine[];
}

/** One covering as one piece of cloth, however wide. */
export function coveringBlank(
	covering: Covering,
	cloth: Cloth,
	ruler: Ruler,
	extra = NO_EXTRA,
): Developed {
	const shape = clothShape(covering);
	const rule = reliefRule(cloth);
	const { marks, reliefs, blocked } = panelMarks(shape, covering, rule);
	const { laid, place } = layOut(shape.outline, [...marks, ...extra.marks], covering.nap);
	const blank: Blank = {
		id: covering.id,
		label: covering.label,
		name: covering.name,
		owner: covering.owner,
		covers: covering.covers,
		cloth: cloth.id,
		count: covering.count,
		...laid,
		anyWay: covering.anyWay,
		lot: covering.lot,
		bonded: bondedArea(covering, shape) - holeArea(extra.holes),
		...(covering.foam ? { foam: covering.foam } : {}),
		reliefs: {
			notches: reliefs.notches + extra.reliefs.notches,
			slits: reliefs.slits + extra.reliefs.slits,
			corners: reliefs.corners + extra.reliefs.corners,
		},
		notes: [],
		verdicts: [
			...verdictsOf(covering, cloth, ruler),
			...(covering.insideCorners ? cornerVerdicts(covering, shape, cloth, ruler) : []),
		],
		girth: girthSums(covering.outline, shape.outline, shape.laid.climb, covering.nap),
	};
	return { blank, shape, blocked, seams: seamsOf(covering, shape.laid, place) };
}

/** A seam lies on the flat cloth where its middle comes to lie once the steps are climbed. */
function seamsOf(covering: Covering, laid: LaidCloth, place: (p: Point) => Point): SeamLine[] {
	return covering.seams.map(([from, to]) => {
		const by = laid.moved(between(from, to, 0.5));
		return { from: place(plus(from, by)), to: place(plus(to, by)) };
	});
}

function reliefRule(cloth: Cloth): ReliefRule {
	return { short: cloth.relief * cloth.pressed, rise: cloth.standOff, give: givesOf(cloth) };
}

const holeArea = (holes: readonly Outline[]): number =>
	holes.reduce((sum, h) => sum + Math.abs(area(h)), 0) / TICKS_PER_MM ** 2;

/**
 * Area the cloth is glued to, mm2: the face, the sides of the steps, the edges and the back up to
 * where it is trimmed.
 */
function bondedArea(covering: Covering, shape: ClothShape): number {
	const windows = covering.windows.reduce((sum, w) => sum + area(w.outline), 0);
	const steps = covering.steps.reduce((sum, s) => sum + perimeter(s.outline) * s.height, 0);
	const flaps = [...shape.flaps, ...shape.windows.flatMap((w) => w.flaps)].filter((f) => f.folds);
	const under = flaps.reduce((sum, f) => sum + f.span.length * (f.wall + f.back), 0);
	return (area(covering.outline) - windows + steps + under) / TICKS_PER_MM ** 2;
}
