import { materialOf } from '../../job';
import type { Part } from '../../design';
import { mm, nth, ticks, toMm } from '../../measure';
import type { BoardLayouts } from '../../layout';
import type { Placed, SheetLayout } from '../../nest';
import type { Plan } from '../../plan';
import {
	partWithId,
	rackLabels,
	type SheetAt,
	sheetTitle,
	figuresOn,
	type Figures,
} from '../wording';
import { cutsOnSheet, FLAG_BAND } from './cuts-on-sheet';
import { arrowhead, fitLabel, roomOf, type RunningPlaces } from '../marks';
import { datumMark, dimensions, runningPlaces } from './dimensions';
import {
	type Drawing,
	type Mark,
	hatch,
	line,
	onPaper,
	rect,
	type View,
	type Bounds,
} from '../drawing';
import { partOnSheet } from './part-on-sheet';
import type { Rect } from '../../geometry';

/** Room a sheet drawing may take on paper, mm. */
interface PaperRoom {
	readonly width: number;
	readonly height: number;
}

/**
 * One laid-out sheet to scale: parts with their words, cuts in the order of the saw, running
 * dimensions from the datum corner at the lower left, offcuts hatched and named, waste crossed.
 * `figures` gathers whether anything was rounded.
 */
export function sheetDrawing(
	plan: Plan,
	boards: BoardLayouts,
	index: number,
	room: PaperRoom = { width: 180, height: 150 },
	figures: Figures = figuresOn(plan.job.shop.ruler),
): Drawing {
	const at = { plan, boards, index };
	const layout = nth(boards.answer.layouts, index);
	const places = runningPlaces(layout, figures);
	const stage = stageOf(layout, places, room);
	const { view, length, height } = stage;
	return {
		width: Math.max(view.x + length + FLAG_BAND, view.x + LEGEND_WIDTH),
		height,
		title: sheetTitle(at),
		marks: [
			...sheetMarks(at, layout, view, figures),
			...dimensions(layout, places, view),
			...datumMark(view),
			...grainMark(plan, boards, view.x + Math.max(length, GRAIN_WIDTH), stage.grainY),
			...legendMarks(layout, view.x, height - 1.2),
		],
	};
}

const LEGEND_WIDTH = 62;
const GRAIN_WIDTH = 36;

/**
 * Where the sheet lies in its room, and how high the whole drawing is; a narrow sheet's legend
 * takes two rows.
 */
function stageOf(layout: SheetLayout, places: RunningPlaces, room: PaperRoom) {
	const { left, below } = roomOf(places);
	const withLegend = (legend: number) => {
		const scale = Math.min(
			(room.width - left - FLAG_BAND) / toMm(layout.length),
			(room.height - below - legend - FLAG_BAND) / toMm(layout.width),
		);
		const length = toMm(layout.length) * scale;
		const width = toMm(layout.width) * scale;
		const height = FLAG_BAND + width + below + legend;
		const view: View = { x: left, y: FLAG_BAND + width, scale };
		return { view, length, height, grainY: height - legend + 3.5 };
	};
	const one = withLegend(5);
	return one.length < LEGEND_WIDTH + GRAIN_WIDTH + 4 ? withLegend(9.5) : one;
}

/**
 * A sheet that was printed or cut keeps what lies on it, even where the job has no such part now.
 */
function goneFromJob({ id, length, width }: Placed): Part {
	return {
		id,
		label: id,
		name: 'no part of the job now',
		owner: '',
		material: '',
		thickness: mm(0),
		count: 0,
		length: ticks(length),
		width: ticks(width),
		holes: [],
		grain: 'any',
		bevels: [],
		face: 'outside',
		show: false,
		routed: mm(0),
		mass: 0,
		notes: [],
	};
}

function sheetMarks(at: SheetAt, layout: SheetLayout, view: View, figures: Figures): Mark[] {
	const { plan, boards } = at;
	const labels = rackLabels(at);
	const kerf = boards.problem.method === 'saw' ? boards.problem.kerf : 0;
	const words: Bounds[] = [];
	const marks: Mark[] = wasteRects(layout).map((r) => hatch('waste', [corners(r, view)]));
	layout.offcuts.forEach((offcut, i) => {
		const drawn = offcutMarks(offcut, i, labels[i] ?? '', view, figures);
		marks.push(...drawn.marks);
		words.push(...drawn.words);
	});
	for (const placed of layout.placed) {
		const part = partWithId(plan, placed.id) ?? goneFromJob(placed);
		const drawn = partOnSheet(part, placed, view, figures);
		marks.push(...drawn.marks);
		words.push(...drawn.words);
	}
	const edge = corners({ x: 0, y: 0, length: layout.length, width: layout.width }, view);
	const { x, y } = nth(edge, 3);
	const size = { width: nth(edge, 1).x - x, height: nth(edge, 1).y - y };
	marks.push({
		kind: 'path',
		steps: rect(x, y, Math.abs(size.width), Math.abs(size.height)),
		line: 'wide',
	});
	return [...marks, ...cutsOnSheet(layout, kerf, view, words)];
}

function corners(r: Rect, view: View) {
	return [
		onPaper({ x: r.x, y: r.y }, view),
		onPaper({ x: r.x + r.length, y: r.y }, view),
		onPaper({ x: r.x + r.length, y: r.y + r.width }, view),
		onPaper({ x: r.x, y: r.y + r.width }, view),
	];
}

/** What falls as waste, by the cuts; a router's leavings have no rectangles. */
function wasteRects(layout: SheetLayout): Rect[] {
	return layout.cuts
		.flatMap((cut) => cut.gives)
		.filter((g) => g.kind === 'waste' && g.rect.length > 0 && g.rect.width > 0)
		.map((g) => g.rect);
}

function offcutMarks(offcut: Rect, i: number, rack: string, view: View, figures: Figures) {
	const spots = corners(offcut, view);
	const of = `offcut:${i}`;
	const size = figures.size(offcut.length, offcut.width);
	const name = `Offcut ${rack}`.trim();
	const label = fitLabel(
		[
			{ name: `${name}: rack it`, lines: [size] },
			{ name, lines: [size] },
			{ name, lines: [] },
			// The letter and number alone are enough to find it in the table.
			...(rack === '' ? [] : [{ name: rack, lines: [] }]),
		],
		[spots],
	);
	const marks: Mark[] = [
		hatch('offcut', [spots]),
		{
			kind: 'path',
			steps: rect(
				nth(spots, 3).x,
				nth(spots, 3).y,
				nth(spots, 1).x - nth(spots, 0).x,
				nth(spots, 0).y - nth(spots, 3).y,
			),
			line: 'wide',
			of,
		},
		...label.marks.map((m) => ({ ...m, halo: true, of })),
	];
	return { marks, words: label.boxes };
}

/** A double-headed arrow along the grain, which runs along the length of every sheet. */
function grainMark(plan: Plan, boards: BoardLayouts, right: number, y: number): Mark[] {
	const material = materialOf(plan.job, boards.material);
	if (material?.grain !== true) return [];
	const x = right - GRAIN_WIDTH;
	return [
		{ kind: 'text', x: x + 18, y: y + 0.95, text: 'GRAIN', size: 2.7, anchor: 'middle' },
		{ kind: 'path', steps: line(x + 12.5, y, x, y), line: 'narrow', ink: 'pencil' },
		{ kind: 'path', steps: line(x + 23.5, y, right, y), line: 'narrow', ink: 'pencil' },
		arrowhead({ x, y }, Math.PI),
		arrowhead({ x: right, y }, 0),
	];
}

/** What the hatches mean, in words, for those that are on this sheet. */
function legendMarks(layout: SheetLayout, x: number, y: number): Mark[] {
	const kinds = [
		...(layout.offcuts.length > 0 ? [['offcut', 'offcut, back to the rack'] as const] : []),
		...(wasteRects(layout).length > 0 ? [['waste', 'waste'] as const] : []),
	];
	return kinds.flatMap(([kind, text], i): Mark[] => {
		const left = x + i * 42;
		const swatch = [
			{ x: left, y: y - 2.6 },
			{ x: left + 5, y: y - 2.6 },
			{ x: left + 5, y },
			{ x: left, y },
		];
		return [
			hatch(kind, [swatch], 0.4),
			{ kind: 'path', steps: rect(left, y - 2.6, 5, 2.6), line: 'narrow' },
			{ kind: 'text', x: left + 6.4, y: y - 0.3, text, size: 2.7, ink: 'pencil' },
		];
	});
}
