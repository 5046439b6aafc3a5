import { bounds } from '../../geometry';
import type { PanelDetail } from '../../design';
import { ticks, toMm } from '../../measure';
import { type Drawing, type Mark, circlePath, onPaper } from '../drawing';
import {
	running,
	boxOf,
	centreMark,
	Labels,
	outlineMark,
	stageFor,
	words,
	type Stage,
} from '../marks';
import { viewOn } from './view';
import type { Figures } from '../wording';

const MARGINS = { left: 22, right: 12, top: 8, bottom: 26 };
const ROW = 4.2;
/** Of the list of holes under the drawing. */
const COLUMNS = 3;

/**
 * The drilling template of an equipment board: devices, their free space, and every hole with
 * running dimensions.
 */
export function drillView(
	d: PanelDetail,
	title: string,
	figures: Figures,
	mirror: boolean,
): Drawing {
	const rows = Math.ceil(d.drills.length / COLUMNS);
	const margins = { ...MARGINS, bottom: MARGINS.bottom + (rows + 1) * ROW };
	const stage = stageFor(d.fit.sizes.board, margins, mirror);
	const labels = new Labels();
	const marks: Mark[] = [
		outlineMark([d.fit.board], stage.view, 'wide'),
		...deviceMarks(d, stage, labels),
		...drillMarks(d, stage, labels),
		...holePlaces(d, stage, mirror, figures),
		...labels.marks,
		...holeTable(d, stage, mirror, figures),
	];
	return viewOn(stage, title, marks);
}

function deviceMarks(d: PanelDetail, stage: Stage, labels: Labels): Mark[] {
	return d.devices.flatMap((v) => {
		labels.put(v.name, boxOf(bounds(v.body), stage.view));
		return [
			outlineMark([v.space], stage.view, 'dashed', { ink: 'pencil' }),
			outlineMark([v.body], stage.view, 'narrow'),
			...v.reach.map((r) => {
				labels.put('reach', boxOf(bounds(r), stage.view), { ink: 'pencil' });
				return outlineMark([r], stage.view, 'phantom', { ink: 'pencil' });
			}),
		];
	});
}

function drillMarks(d: PanelDetail, stage: Stage, labels: Labels): Mark[] {
	const from = d.fit.sizes.board;
	return d.drills.flatMap((h): Mark[] => {
		const p = { x: from.x + h.x, y: from.y + h.y };
		const { x, y } = onPaper(p, stage.view);
		const r = Math.max(0.6, (toMm(h.diameter) / 2) * stage.scale);
		labels.put(`${h.n}`, { x: x + 0.6, y: y - 4.6, width: 4, height: 4 });
		return [
			{ kind: 'path', steps: circlePath(x, y, r), line: 'narrow' },
			centreMark(p, stage.view, r + 1),
		];
	});
}

function holePlaces(d: PanelDetail, stage: Stage, mirror: boolean, figures: Figures): Mark[] {
	const board = d.fit.sizes.board;
	const { box } = stage;
	const xs = [...new Set([0, board.length, ...d.drills.map((h) => h.x)])];
	const ys = [...new Set([0, board.width, ...d.drills.map((h) => h.y)])];
	const text = (x: number): string => figures.length(ticks(mirror ? board.length - x : x));
	return [
		...running({
			axis: 'x',
			datum: box.x,
			edge: box.y + box.height,
			offset: 5,
			places: xs.map((x) => ({
				at: onPaper({ x: board.x + x, y: 0 }, stage.view).x,
				text: text(x),
			})),
		}),
		...running({
			axis: 'y',
			datum: box.y + box.height,
			edge: box.x,
			offset: 5,
			places: ys.map((y) => ({
				at: onPaper({ x: 0, y: board.y + y }, stage.view).y,
				text: figures.length(ticks(y)),
			})),
		}),
	];
}

function holeTable(d: PanelDetail, stage: Stage, mirror: boolean, figures: Figures): Mark[] {
	const rows = Math.ceil(d.drills.length / COLUMNS);
	const top = stage.height - rows * ROW;
	const wide = stage.width / COLUMNS;
	const board = d.fit.sizes.board;
	return d.drills.map((h, i) => {
		const x = mirror ? ticks(board.length - h.x) : h.x;
		const text = `${h.n}: ${figures.length(x)}, ${figures.length(h.y)}  ⌀ ${figures.length(h.diameter)}  ${h.of}`;
		return words(2 + Math.floor(i / rows) * wide, top + (i % rows) * ROW + 2, text, { size: 2.6 });
	});
}
