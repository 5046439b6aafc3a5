import { edgesOf, alongEdge, headingAt, bounds, type Outline, type Rect } from '../../geometry';
import type { PanelDetail, EdgeFigure, PanelSection } from '../../design';
import { type Drawing, type Mark, onPaper, polyline } from '../drawing';
import {
	arrowhead,
	balloon,
	boxOf,
	Labels,
	openLine,
	outlineMark,
	overall,
	stageFor,
	words,
	type Stage,
} from '../marks';
import { footNotes, NOTE, viewOn } from './view';
import type { Figures } from '../wording';

const MARGINS = { left: 14, right: 31, top: 8, bottom: 29 };

/**
 * The finished panel from the front: its opening (double-dotted, what is there already), the board
 * under the cloth (dashed) and what will be seen (wide). `mirror` draws the other one of a pair.
 */
export function frontView(
	d: PanelDetail,
	section: PanelSection | null,
	title: string,
	figures: Figures,
	mirror: boolean,
): Drawing {
	const legend = edgeLegend(d.fit.edges, figures);
	const margins = { ...MARGINS, bottom: MARGINS.bottom + legend.length * NOTE };
	const stage = stageFor(d.fit.sizes.opening, margins, { mirror, named: figures.unit });
	const { view } = stage;
	const labels = new Labels();
	const marks: Mark[] = [
		outlineMark([d.fit.opening], view, 'phantom', { ink: 'pencil' }),
		outlineMark([d.fit.board], view, 'dashed', { ink: 'pencil' }),
		outlineMark([d.fit.finished], view, 'wide'),
		...edgeNumbers(d, stage, labels, section),
		...sectionLine(section, stage, labels),
		...shown(d, stage, labels, figures),
		...overall(d.fit.sizes.board, stage, 0, 'board', figures),
		...overall(d.fit.sizes.finished, stage, 1, 'finished', figures),
		...overall(d.fit.sizes.opening, stage, 2, 'opening', figures),
		...labels.marks,
		...footNotes(legend, stage),
	];
	return viewOn(stage, title, marks);
}

/**
 * What is seen on the face: layers, windows, covers, rings, folds, devices and zones, each with its
 * name.
 */
function shown(d: PanelDetail, stage: Stage, labels: Labels, figures: Figures): Mark[] {
	const { view } = stage;
	const marks: Mark[] = [];
	const draw = (o: Outline, name: string, dashed: Outline | null = null): void => {
		if (dashed) marks.push(outlineMark([dashed], view, 'dashed', { ink: 'pencil' }));
		marks.push(outlineMark([o], view, 'wide'));
		const box = boxOf(bounds(o), view);
		// A large piece carries others: its name goes into a corner.
		labels.put(name, box, {}, box.width > 50 && box.height > 16);
	};
	for (const w of d.windows) {
		draw(w.finished, w.name, w.hole);
		marks.push(...crossed(bounds(w.finished), stage));
	}
	for (const c of d.covers) draw(c.finished, c.name, c.hole);
	for (const r of d.rings) {
		draw(r.finished.outer, r.name);
		marks.push(outlineMark([r.finished.inner], view, 'wide'));
	}
	for (const l of d.layers)
		draw(
			l.finished,
			`${l.name} ${step(l.place === 'raised' ? l.step : -l.step, figures)}`,
			l.piece,
		);
	for (const v of d.devices) {
		marks.push(
			outlineMark([v.space], view, 'dashed', { ink: 'pencil' }),
			...v.reach.map((r) => outlineMark([r], view, 'phantom', { ink: 'pencil' })),
			outlineMark([v.body], view, 'narrow'),
		);
		labels.put(v.name, boxOf(bounds(v.body), view));
	}
	for (const z of d.zones) {
		marks.push(outlineMark([z.outline], view, 'phantom', { ink: 'warn' }));
		labels.put(z.name, boxOf(bounds(z.outline), view), { ink: 'warn' });
	}
	for (const h of d.hinges) marks.push(openLine([h.from, h.to], view, 'chain'));
	return marks;
}

function step(height: number, figures: Figures): string {
	if (height === 0) return 'flush';
	return height > 0 ? `+${figures.length(height)}` : `−${figures.length(-height)}`;
}

/** Narrow diagonals: there is nothing there. */
function crossed(r: Rect, stage: Stage): Mark[] {
	const b = boxOf(r, stage.view);
	const inset = 0.15;
	const spot = (u: number, v: number) => ({ x: b.x + b.width * u, y: b.y + b.height * v });
	return [
		[spot(inset, inset), spot(1 - inset, 1 - inset)],
		[spot(inset, 1 - inset), spot(1 - inset, inset)],
	].map((l): Mark => ({ kind: 'path', steps: polyline(l), line: 'hair' }));
}

/** Past this many edges numbers would only crowd the drawing. */
const NUMBERED = 24;

function edgeNumbers(
	d: PanelDetail,
	stage: Stage,
	labels: Labels,
	section: PanelSection | null,
): Mark[] {
	if (d.fit.edges.length > NUMBERED) return [];
	const edges = edgesOf(d.fit.opening);
	return d.fit.edges.flatMap((f) => {
		const e = edges[d.fit.openingEdges.indexOf(f.edge)];
		if (!e) return [];
		// Clear of the letters of the section.
		const t = [0.5, 0.28, 0.72].find((u) => {
			const off = section ? (alongEdge(e, u).y - section.y) / 1600 : Infinity;
			return Math.abs(off) * stage.scale > 10;
		});
		const middle = alongEdge(e, t ?? 0.5);
		const heading = headingAt(e, t ?? 0.5);
		const at = onPaper(middle, stage.view);
		// Outside lies to the right of a counter-clockwise edge; on paper y runs down, and a
		// mirrored view changes sides.
		const side = stage.view.mirror === true ? -1 : 1;
		const spot = { x: at.x + side * heading.y * 4.4, y: at.y + heading.x * 4.4 };
		labels.keepOff({ x: spot.x - 2.2, y: spot.y - 2.2, width: 4.4, height: 4.4 });
		return balloon(spot.x, spot.y, `${f.edge}`);
	});
}

function sectionLine(section: PanelSection | null, stage: Stage, labels: Labels): Mark[] {
	if (!section) return [];
	const y = onPaper({ x: 0, y: section.y }, stage.view).y;
	const [l, r] = [stage.box.x - 6, stage.box.x + stage.box.width + 5];
	const end = (x: number): Mark[] => {
		labels.keepOff({ x: x - 2, y: y - 1, width: 4, height: 8 });
		return [
			{
				kind: 'path',
				steps: polyline([
					{ x: x - 2, y },
					{ x: x + 2, y },
				]),
				line: 'wide',
			},
			{
				kind: 'path',
				steps: polyline([
					{ x, y },
					{ x, y: y + 3 },
				]),
				line: 'narrow',
			},
			arrowhead({ x, y }, -Math.PI / 2, 'ink'),
			words(x, y + 6, 'A', { anchor: 'middle', size: 3.4, weight: 'semibold', halo: true }),
		];
	};
	labels.keepOff({ x: l, y: y - 0.6, width: r - l, height: 1.2 });
	const line: Mark = {
		kind: 'path',
		steps: polyline([
			{ x: l, y },
			{ x: r, y },
		]),
		line: 'chain',
		ink: 'pencil',
	};
	return [line, ...end(l), ...end(r)];
}

/**
 * Edges that come out alike share a line: 'Edges 2, 3: wrapped, gap 0.5, board 3.5 inside the
 * opening'.
 */
function edgeLegend(edges: readonly EdgeFigure[], figures: Figures): string[] {
	const groups = new Map<string, number[]>();
	for (const e of edges) {
		const text = edgeText(e, figures);
		groups.set(text, [...(groups.get(text) ?? []), e.edge]);
	}
	return [...groups].map(([text, list]) => {
		const sorted = [...list].sort((a, b) => a - b);
		const names = sorted.length > 12 ? `${sorted.slice(0, 12).join(', ')} …` : sorted.join(', ');
		return `${list.length === 1 ? 'Edge' : 'Edges'} ${names}: ${text}`;
	});
}

function edgeText(e: EdgeFigure, figures: Figures): string {
	if (e.end === 'tucked') return `tucked, board ${figures.length(-e.setIn)} beyond the opening`;
	const between = e.boardGap === null ? '' : `, board to board ${figures.length(e.boardGap)}`;
	return `${e.end}, gap ${figures.length(e.gap)}, board ${figures.length(e.setIn)} inside the opening${between}`;
}
