import type { ResponseFigures, ResponsePoint } from '../../../design';
import { nth, type Ruler } from '../../../measure';
import { type Drawing, line, type Mark } from '../../drawing';
import { words } from '../../marks';
import {
	acrossAt,
	curve,
	emptyGraph,
	frequencyAxis,
	type Graph,
	type Limit,
	limitMarks,
	scaleFor,
} from './graph';

const WIDE = 180;
const LEFT = 16;
const RIGHT = 16;
const TOP = 7;
const HIGH = 31;
/** From one graph to the next, for its title. */
const GAP = 9;
const BELOW = 10;

/** What one graph shows. */
interface Shown {
	readonly title: string;
	readonly scale: Graph['scale'];
	readonly step: number;
	readonly of: (p: ResponsePoint) => number;
	readonly limits: readonly Limit[];
}

/** Level, excursion and air speed of a chamber, one over the other on one frequency axis. */
export function responseDrawing(name: string, response: ResponseFigures, ruler: Ruler): Drawing {
	const shown = graphsOf(response, ruler.decimal);
	const { points } = response;
	const band = [nth(points, 0).hertz, nth(points, points.length - 1).hertz] as const;
	const graphs = shown.map(({ title, scale, step }, i): Graph => ({
		left: LEFT,
		top: TOP + i * (HIGH + GAP),
		width: WIDE - LEFT - RIGHT,
		height: HIGH,
		band,
		scale,
		step,
		title,
	}));
	const height = TOP + shown.length * (HIGH + GAP) - GAP + BELOW;
	const marks = shown.flatMap(({ of, limits }, i): Mark[] => {
		const graph = nth(graphs, i);
		return [
			...emptyGraph(graph, ruler.decimal),
			...halfPower(graph, response, i === 0 ? ruler.decimal : null),
			...curve(
				graph,
				points.map((p) => [p.hertz, of(p)] as const),
			),
			...limits.flatMap((limit) => limitMarks(graph, limit)),
		];
	});
	return {
		width: WIDE,
		height,
		title: `${name}: response`,
		marks: [
			...marks,
			...soundAxis(nth(graphs, 0), response),
			...frequencyAxis(nth(graphs, -1 + graphs.length)),
		],
	};
}

function graphsOf(response: ResponseFigures, decimal: string): Shown[] {
	const power = `${response.power} W`.replace('.', decimal);
	return [
		levelGraph(response, power),
		...travel(response, 'cone', `Cone, one way, mm, at ${power}`),
		...travel(response, 'passive', `Passive radiators, one way, mm, at ${power}`),
		...airGraph(response, power),
	];
}

/** Decibels under the pass band that are drawn, and steps between their figures. */
const DEEP = 24;
const STEP = 6;

function levelGraph({ points, passband }: ResponseFigures, power: string): Shown {
	const peak = Math.max(0, ...points.map((p) => p.level));
	return {
		title: `Level, dB over the pass band${passband === null ? '' : `; right: dB at 1 m in half space at ${power}`}`,
		scale: [-DEEP, Math.max(1, Math.ceil(peak / STEP)) * STEP],
		step: STEP,
		of: (p) => p.level,
		limits: [],
	};
}

function travel(response: ResponseFigures, of: 'cone' | 'passive', title: string): Shown[] {
	const far = response.points.flatMap((p) => p[of] ?? []);
	if (far.length === 0) return [];
	const xmax = of === 'cone' ? response.xmax : response.passiveXmax;
	const limits = xmax !== null ? [{ value: xmax, name: `Xmax ${xmax} mm` }] : [];
	const most = Math.max(...far, ...limits.map((l) => l.value * 1.15));
	return [{ title, ...scaleFor(most), of: (p) => p[of] ?? 0, limits }];
}

/** The speeds that are quiet and the ceiling stand with the vents; here they are lines. */
const SPEEDS = [17, 34];

function airGraph({ points }: ResponseFigures, power: string): Shown[] {
	const fast = points.flatMap((p) => p.air ?? []);
	if (fast.length === 0) return [];
	const limits = SPEEDS.map((value) => ({ value, name: `${value} m/s` }));
	const title = `Air in the vent, peak, m/s, at ${power}`;
	return [{ title, ...scaleFor(Math.max(20, ...fast)), of: (p) => p.air ?? 0, limits }];
}

/** A dashed line down every graph; `decimal` where it is named too. */
function halfPower(graph: Graph, { f3 }: ResponseFigures, decimal: string | null): Mark[] {
	if (f3 <= graph.band[0] || f3 >= graph.band[1]) return [];
	const x = acrossAt(graph, f3);
	const text = `−3 dB at ${f3.toFixed(1).replace('.', decimal ?? '.')} Hz`;
	return [
		{ kind: 'path', steps: line(x, graph.top, x, graph.top + graph.height), line: 'dashed' },
		...(decimal === null
			? []
			: [words(x + 1, graph.top + graph.height - 1.5, text, { halo: true })]),
	];
}

/** Sound pressure level at the right end of the grid's lines. */
function soundAxis(graph: Graph, { passband }: ResponseFigures): Mark[] {
	if (passband === null) return [];
	const { left, width, top, height, scale, step } = graph;
	const count = Math.round((scale[1] - scale[0]) / step);
	return Array.from({ length: count + 1 }, (_, i) => {
		const value = scale[0] + i * step;
		const y = top + height - (height * i) / count;
		return words(left + width + 1.5, y + 0.9, (passband + value).toFixed(0), { size: 2.6 });
	});
}
