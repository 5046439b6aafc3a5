import { nth } from '../../../measure';
import { line, type Mark, polyline, rect, type Spot } from '../../drawing';
import { words } from '../../marks';

/** One graph over a frequency axis: where it lies on paper, and what its axis counts. */
export interface Graph {
	readonly left: number;
	readonly top: number;
	readonly width: number;
	readonly height: number;
	readonly band: readonly [low: number, high: number];
	readonly scale: readonly [low: number, high: number];
	readonly step: number;
	readonly title: string;
}

/** A value that something is held against, as a dashed line with its name. */
export interface Limit {
	readonly value: number;
	readonly name: string;
}

export const acrossAt = ({ left, width, band: [low, high] }: Graph, hertz: number): number =>
	left + (width * Math.log(hertz / low)) / Math.log(high / low);

const upAt = ({ top, height, scale: [low, high] }: Graph, value: number): number =>
	top + height - (height * (value - low)) / (high - low);

const SMALL = 2.6;

/** Frame, title, grid and the figures of the value axis; of the frequency axis the lines alone. */
export function emptyGraph(graph: Graph, decimal: string): Mark[] {
	const { left, top, width, height, scale, step } = graph;
	const count = Math.round((scale[1] - scale[0]) / step);
	const values = Array.from({ length: count + 1 }, (_, i) => scale[0] + i * step);
	return [
		...ticks(graph.band).map((hz): Mark => {
			const x = acrossAt(graph, hz);
			return { kind: 'path', steps: line(x, top, x, top + height), line: 'hair', ink: 'rule' };
		}),
		...values.flatMap((value): Mark[] => {
			const y = upAt(graph, value);
			const text = signed(value, step, decimal);
			return [
				{ kind: 'path', steps: line(left, y, left + width, y), line: 'hair', ink: 'rule' },
				words(left - 1.5, y + SMALL * 0.35, text, { anchor: 'end', size: SMALL }),
			];
		}),
		{ kind: 'path', steps: rect(left, top, width, height), line: 'narrow' },
		words(left, top - 1.8, graph.title, { weight: 'semibold' }),
	];
}

function signed(value: number, step: number, decimal: string): string {
	const text = Math.abs(value).toFixed(step < 1 ? 1 : 0);
	return `${value < 0 ? '−' : ''}${text}`.replace('.', decimal);
}

/** The figures under the lowest graph: 10, 20, 50 and so on. */
export function frequencyAxis(graph: Graph): Mark[] {
	const y = graph.top + graph.height + 4;
	const figures = ticks(graph.band).filter((hz) => /^[125]0*$/.test(String(hz)));
	return [
		...figures.map((hz) =>
			words(acrossAt(graph, hz), y, String(hz), { anchor: 'middle', size: SMALL }),
		),
		words(graph.left + graph.width / 2, y + 4, 'Frequency, Hz', { anchor: 'middle' }),
	];
}

/** 10, 20, 30 ... 100, 200 ... */
function ticks([low, high]: Graph['band']): number[] {
	return [10, 100, 1000]
		.flatMap((decade) => Array.from({ length: 9 }, (_, i) => decade * (i + 1)))
		.filter((hz) => hz >= low - 1e-9 && hz <= high + 1e-9);
}

/** A curve, cut off where it leaves the graph. */
export function curve(graph: Graph, points: readonly (readonly [number, number])[]): Mark[] {
	const [low, high] = graph.scale;
	const runs: Spot[][] = [];
	points.slice(1).forEach((to, i) => {
		const piece = within(nth(points, i), to, low, high);
		if (!piece) return;
		const [a, b] = piece.map(([hz, v]) => ({ x: acrossAt(graph, hz), y: upAt(graph, v) }));
		if (!a || !b) return;
		const run = runs.at(-1);
		const end = run?.at(-1);
		if (run && end && Math.hypot(end.x - a.x, end.y - a.y) < 1e-6) run.push(b);
		else runs.push([a, b]);
	});
	return runs.map((run): Mark => ({ kind: 'path', steps: polyline(run), line: 'wide' }));
}

type Reading = readonly [hertz: number, value: number];

/** The piece of a curve between two values; null where it lies outside. */
function within(a: Reading, b: Reading, low: number, high: number): readonly Reading[] | null {
	if (Math.max(a[1], b[1]) <= low || Math.min(a[1], b[1]) >= high) return null;
	const cut = (p: Reading): Reading => {
		const value = Math.min(high, Math.max(low, p[1]));
		const share = b[1] === a[1] ? 0 : (value - a[1]) / (b[1] - a[1]);
		return value === p[1] ? p : [a[0] * (b[0] / a[0]) ** share, value];
	};
	return [cut(a), cut(b)];
}

/** Dashed across the graph, its name over it at the right end; none where it lies outside. */
export function limitMarks(graph: Graph, { value, name }: Limit): Mark[] {
	if (value <= graph.scale[0] || value >= graph.scale[1]) return [];
	const y = upAt(graph, value);
	const right = graph.left + graph.width;
	return [
		{ kind: 'path', steps: line(graph.left, y, right, y), line: 'dashed' },
		words(right - 1, y - 0.8, name, { anchor: 'end', size: SMALL, halo: true }),
	];
}

/** A scale from nothing that holds a value: at most five steps of 1, 2 or 5. */
export function scaleFor(most: number): { scale: readonly [number, number]; step: number } {
	const decade = 10 ** Math.floor(Math.log10(Math.max(most, 0.5) / 5));
	const step =
		nth(
			[1, 2, 5, 10].filter((n) => n * decade * 5 >= most),
			0,
		) * decade;
	return { scale: [0, Math.ceil(most / step - 1e-9) * step], step };
}
