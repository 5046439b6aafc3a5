import { nth, toMm } from '../../measure';
import type { BoardLayouts } from '../../layout';
import type { SheetLayout } from '../../nest';
import type { Plan } from '../../plan';
import { rackLabels, type SheetAt, sheetTitle, figuresOn, type Figures } from '../wording';
import { cutsOnSheet, FLAG_BAND } from './cuts-on-sheet';
import { roomOf, type RunningPlaces } from '../marks';
import { GRAIN_WIDTH, grainMark, legendMarks } from './legend';
import { datumMark, dimensions, runningPlaces } from './dimensions';
import type { Drawing, Mark, View } from '../drawing';
import { laidOut, rectSteps, spoiledOn, wasteRects } from './laid-out';

/** Room a sheet drawing may take on paper, mm. */
interface PaperRoom {
	readonly width: number;
	readonly height: number;
}

/** Room for a sheet where nobody says how much. */
const SCREEN: PaperRoom = { width: 180, height: 150 };

/**
 * One laid-out sheet to scale: parts with their words, cuts in the order of the saw, running
 * dimensions from the datum corner at the lower left, offcuts hatched and named, waste crossed.
 * `figures` gathers whether anything was rounded.
 */
export function sheetDrawing(
	plan: Plan,
	boards: BoardLayouts,
	index: number,
	room: PaperRoom = SCREEN,
	figures: Figures = figuresOn(plan.job.shop.ruler),
): Drawing {
	const at = { plan, boards, index };
	const layout = nth(boards.answer.layouts, index);
	const places = runningPlaces(layout, figures);
	const stage = stageOf(layout, places, room);
	const { view, length, height } = stage;
	return {
		width: view.x + Math.max(length + FLAG_BAND, isNarrow(room) ? 0 : LEGEND_WIDTH),
		height,
		title: sheetTitle(at),
		marks: [
			...sheetMarks(at, layout, view, figures),
			...dimensions(layout, places, view),
			...datumMark(view),
			...(isNarrow(room)
				? []
				: [
						...grainMark(at, view.x + Math.max(length, GRAIN_WIDTH), stage.grainY),
						...legendMarks(hatchedIn(layout), view.x, height - 1.2),
					]),
		],
	};
}

/** Where on its drawing a sheet lies, and how large. */
export function sheetView(
	plan: Plan,
	boards: BoardLayouts,
	index: number,
	room: PaperRoom = SCREEN,
): View {
	const layout = nth(boards.answer.layouts, index);
	const places = runningPlaces(layout, figuresOn(plan.job.shop.ruler));
	return stageOf(layout, places, room).view;
}

const LEGEND_WIDTH = 62;
/** As narrow as a phone: the words on the sheet have to do without a legend under it. */
const isNarrow = (room: PaperRoom): boolean => room.width < 2 * LEGEND_WIDTH;

function hatchedIn({ offcuts, cuts }: SheetLayout) {
	return { offcuts: offcuts.length > 0, waste: wasteRects(cuts).length > 0 };
}

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
	if (isNarrow(room)) return withLegend(0);
	const one = withLegend(5);
	return one.length < LEGEND_WIDTH + GRAIN_WIDTH + 4 ? withLegend(9.5) : one;
}

function sheetMarks(at: SheetAt, layout: SheetLayout, view: View, figures: Figures): Mark[] {
	const { plan, boards } = at;
	const labels = rackLabels(at);
	const kerf = boards.problem.method === 'saw' ? boards.problem.kerf : 0;
	const offcuts = layout.offcuts.map((rect, n) => ({ rect, n, rack: labels[n] ?? '' }));
	const laid = { placed: layout.placed, offcuts, waste: wasteRects(layout.cuts) };
	const { marks, words } = laidOut(plan, laid, view, figures, spoiledOn(at));
	const whole = { x: 0, y: 0, length: layout.length, width: layout.width };
	marks.push({ kind: 'path', steps: rectSteps(whole, view), line: 'wide' });
	// The running figures stand to the left of it, whatever the first cut is.
	return [...marks, ...cutsOnSheet(layout, kerf, view, words, true)];
}
