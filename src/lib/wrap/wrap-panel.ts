import type { Covering } from '../design/covering';
import type { Need } from '../design/need';
import { area, perimeter } from '../geometry/extent';
import type { Problem } from '../job/problem';
import type { Cloth } from '../job/stock';
import { ticks, TICKS_PER_MM, type Length } from '../measure/length';
import { showLength, type Ruler } from '../measure/ruler';
import { glueNeed } from './adhesive';
import { layOut } from './back-view';
import type { Blank } from './blank';
import { clothShape, type ClothShape } from './cloth-shape';
import type { Flap } from './flap';
import { girthSums } from './girth-sum';
import { panelMarks } from './panel-marks';
import { verdictsOf } from './verdicts';

/** What the shop and the rack decide about a wrap. */
export interface WrapShop {
	readonly ruler: Ruler;
	/** Width less the selvedges of the widest roll of this cloth; null when the stock lists none. */
	readonly usable: number | null;
	/** Cloth over cloth where a seam is cut through both layers. */
	readonly overlap: Length;
}

export interface Wrapped {
	readonly blanks: readonly Blank[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
}

/** The cloth of one covering: its blank with every mark on it. `path`: where in the job the covering is asked for. */
export function wrapCovering(
	covering: Covering,
	cloth: Cloth,
	shop: WrapShop,
	path: Problem['path'],
): Wrapped {
	const shape = clothShape(covering);
	const rule = { short: cloth.relief * cloth.pressed, rise: cloth.standOff };
	const { marks, reliefs, blocked } = panelMarks(shape, covering, rule);
	const blank: Blank = {
		id: covering.id,
		label: covering.label,
		name: covering.name,
		owner: covering.owner,
		covers: covering.covers,
		cloth: cloth.id,
		count: covering.count,
		...layOut(shape.outline, marks, covering.nap),
		anyWay: covering.anyWay,
		lot: covering.lot,
		bonded: bondedArea(covering, shape),
		reliefs,
		notes: [],
		verdicts: verdictsOf(covering, cloth, shop.ruler),
		girth: girthSums(covering.outline, shape.outline, shape.climb, covering.nap),
	};
	const problems = [...crowded(shape, shop.ruler, path), ...unrelieved(blocked, path)];
	return { blanks: [blank], problems, needs: [glueNeed([blank], covering.name)] };
}

/** Area the cloth is glued to, mm2: the face, the sides of the steps, the edges and the back up to where it is trimmed. */
function bondedArea(covering: Covering, shape: ClothShape): number {
	const windows = covering.windows.reduce((sum, w) => sum + area(w.outline), 0);
	const steps = covering.steps.reduce((sum, s) => sum + perimeter(s.outline) * s.height, 0);
	const flaps = [...shape.flaps, ...shape.windows.flatMap((w) => w.flaps)].filter((f) => f.folds);
	const under = flaps.reduce((sum, f) => sum + f.span.length * (f.wall + f.back), 0);
	return (area(covering.outline) - windows + steps + under) / TICKS_PER_MM ** 2;
}

/** Edges that face each other nearer than both turn-unders: their flaps come out shorter than asked. */
function crowded(shape: ClothShape, ruler: Ruler, path: Problem['path']): Problem[] {
	const inWindows = shape.windows.flatMap((w) => w.flaps);
	return [
		...crowdedFlaps(shape.flaps, 'a slot of the outline', ruler, path),
		...crowdedFlaps(inWindows, 'a window', ruler, path),
	];
}

function crowdedFlaps(
	flaps: readonly Flap[],
	where: string,
	ruler: Ruler,
	path: Problem['path'],
): Problem[] {
	const short = flaps.filter((f) => f.folds && f.total < f.wanted - 1);
	if (short.length === 0) return [];
	const worst = short.reduce((a, b) => (b.total / b.wanted < a.total / a.wanted ? b : a));
	const left = showLength(ticks(Math.round(worst.total)), ruler);
	const wanted = showLength(ticks(Math.round(worst.wanted)), ruler);
	return [
		{
			path,
			kind: 'check',
			what: `In ${where} only ${left} of cloth can be turned under; ${wanted} is asked for.`,
			fix: `Make it wider, take a smaller turn-under there, or leave its edge bare.`,
		},
	];
}

function unrelieved(blocked: number, path: Problem['path']): Problem[] {
	if (blocked === 0) return [];
	return [
		{
			path,
			kind: 'check',
			what: `At ${blocked} ${blocked === 1 ? 'place' : 'places'} on the edge there is no room for the relief cut the cloth needs.`,
			fix: 'Make the turn-under there wider than the cloth is thick, or widen the corner.',
		},
	];
}
