import { bounds, reversed, type Outline } from '../../geometry';
import { type LayerFigure, type PanelDetail, boardHoles } from '../../design';
import type { Material } from '../../job';
import { ticks } from '../../measure';
import { type Drawing, type Mark, hatch, type Hatch, onPaper, ringPath } from '../drawing';
import { running, boxOf, Labels, openLine, outlineMark, stageFor, type Stage } from '../marks';
import { viewOn } from './view';
import type { Figures } from '../wording';

const MARGINS = { left: 24, right: 12, top: 8, bottom: 26 };

/**
 * The board from the front with its holes, seats (dashed) and where each layer is glued, measured
 * from the lower left corner of the board's own rectangle.
 */
export function boardView(
	d: PanelDetail,
	material: Material,
	title: string,
	figures: Figures,
	mirror: boolean,
): Drawing {
	const stage = stageFor(d.fit.sizes.board, MARGINS, mirror);
	const { view } = stage;
	const holes = boardHoles(d);
	const labels = new Labels();
	const marks: Mark[] = [
		...d.leaves.flatMap((leaf) => [
			hatch(
				hatchOf(material),
				[ringPath(leaf, view), ...holes.map((h) => ringPath(reversed(h), view))],
				2.2,
			),
			outlineMark([leaf], view, 'wide'),
		]),
		...holes.map((h) => outlineMark([h], view, 'wide')),
		...glued(d, stage, labels, figures),
		...d.hinges.map((h) => openLine([h.from, h.to], view, 'chain')),
		...places(d, stage, mirror, figures),
		...labels.marks,
	];
	return viewOn(stage, title, marks);
}

function hatchOf(m: Material): Hatch {
	return m.kind;
}

function glued(d: PanelDetail, stage: Stage, labels: Labels, figures: Figures): Mark[] {
	return d.layers.flatMap((l) => {
		const outline = l.place === 'raised' ? (l.hole ?? l.piece) : l.hole;
		if (!outline) return [];
		labels.put(nameOf(d, l, figures), boxOf(bounds(outline), stage.view));
		return [outlineMark([outline], stage.view, l.hole ? 'dashed' : 'narrow')];
	});
}

/** 'Raised field', or 'Accent strip: seat 6.3 deep in Raised field'. */
function nameOf(d: PanelDetail, l: LayerFigure, figures: Figures): string {
	if (!l.hole) return l.name;
	const host = d.layers.find((h) => h.id === l.on);
	const where = host ? ` in ${host.name}` : '';
	const through = l.place === 'recessed' || l.bottom <= (host?.bottom ?? 0);
	return `${l.name}: ${through ? 'through' : `seat ${figures.length(l.depth)} deep`}${where}`;
}

/**
 * Left and lower sides of all that lies on the board, and its right and upper sides, from the
 * corner.
 */
function places(d: PanelDetail, stage: Stage, mirror: boolean, figures: Figures): Mark[] {
	const board = d.fit.sizes.board;
	const things = [
		...d.windows.map((w) => w.hole),
		...d.covers.map((c) => c.hole),
		...d.rings.map((r) => r.hole),
		...d.layers.map((l) => l.hole ?? l.piece).filter((o): o is Outline => o !== null),
	].map(bounds);
	const spans = [board, ...things.slice(0, 8)];
	const xs = unique(spans.flatMap((b) => [b.x, b.x + b.length]));
	const ys = unique(spans.flatMap((b) => [b.y, b.y + b.width]));
	const right = board.x + board.length;
	const fromLeft = (x: number): number => (mirror ? right - x : x - board.x);
	const at = (x: number, y: number) => onPaper({ x, y }, stage.view);
	const { box } = stage;
	return [
		...running({
			axis: 'x',
			datum: box.x,
			edge: box.y + box.height,
			offset: 5,
			places: xs.map((x) => ({ at: at(x, 0).x, text: figures.length(ticks(fromLeft(x))) })),
		}),
		...running({
			axis: 'y',
			datum: box.y + box.height,
			edge: box.x,
			offset: 5,
			places: ys.map((y) => ({ at: at(0, y).y, text: figures.length(ticks(y - board.y)) })),
		}),
	];
}

function unique(list: readonly number[]): number[] {
	return [...new Set(list.map(Math.round))].sort((a, b) => a - b);
}
