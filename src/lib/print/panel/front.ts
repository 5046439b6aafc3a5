import { nth } from '../../measure';
import { edgesOf, alongEdge, headingAt, bounds, type Outline, type Rect } from '../../geometry';
import type { PanelDetail, EdgeFigure, PanelSection } from '../../design';
import {
	boxInRing,
	boxOffRing,
	type Drawing,
	type Ink,
	inRing,
	type Mark,
	onPaper,
	polyline,
	ringPath,
	round,
	type Spot,
} from '../drawing';
import {
	arrowhead,
	balloon,
	boxOf,
	callouts,
	LabelSlots,
	type Named,
	openLine,
	outlineMark,
	overall,
	stageFor,
	words,
	type Stage,
} from '../marks';
import { footNotes, NOTE, viewOn } from './view';
import type { Figures } from '../wording';

const WIDE = 180;
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
	{ mirror, height }: { readonly mirror: boolean; readonly height: number },
): Drawing {
	const legend = edgeLegend(d.fit.edges, figures);
	const margins = { ...MARGINS, bottom: MARGINS.bottom + legend.length * NOTE };
	const room = { width: WIDE, height };
	const stage = stageFor(d.fit.sizes.opening, margins, { mirror, room, named: figures.unit });
	const { view } = stage;
	const things = shown(d, figures);
	const drawn: Mark[] = [
		outlineMark([d.fit.opening], view, 'phantom', { ink: 'pencil' }),
		outlineMark([d.fit.board], view, 'dashed', { ink: 'pencil' }),
		outlineMark([d.fit.finished], view, 'wide'),
		...edgeNumbers(d, stage, section),
		...sectionLine(section, stage, zonesOn(d, stage)),
		...things.flatMap((thing) => thing.draw(stage)),
		...d.hinges.map((h) => openLine([h.from, h.to], view, 'chain')),
		...overall(d.fit.sizes.board, stage, 0, 'board', figures),
		...overall(d.fit.sizes.finished, stage, 1, 'finished', figures),
		...overall(d.fit.sizes.opening, stage, 2, 'opening', figures),
	];
	const notes = footNotes(legend, stage);
	const ground = { x: 0, y: 0, width: stage.width, height: stage.height };
	const names = callouts(namesOf(things, stage), { ...ground, drawn: [...drawn, ...notes] });
	const drawing = viewOn(stage, title, [...drawn, ...names.marks, ...notes]);
	return { ...drawing, height: drawing.height + names.below };
}

/** What is seen on the face, with its name. */
interface Shown {
	readonly name: string;
	readonly outline: Outline;
	readonly ink?: Ink;
	draw(stage: Stage): Mark[];
}

/** Layers, windows, covers, rings, devices and zones. */
function shown(d: PanelDetail, figures: Figures): Shown[] {
	const edged = (outline: Outline, under: Outline | null, { view }: Stage): Mark[] => [
		...(under ? [outlineMark([under], view, 'dashed', { ink: 'pencil' })] : []),
		outlineMark([outline], view, 'wide'),
	];
	const seen = (name: string, outline: Outline, under: Outline | null): Shown => ({
		...{ name, outline },
		draw: (stage) => edged(outline, under, stage),
	});
	return [
		...d.windows.map((w): Shown => ({
			...seen(w.name, w.finished, w.hole),
			draw: (stage) => [...edged(w.finished, w.hole, stage), ...crossed(bounds(w.finished), stage)],
		})),
		...d.covers.map((c) => seen(c.name, c.finished, c.hole)),
		...d.rings.map((r): Shown => ({
			...seen(r.name, r.finished.outer, null),
			draw: ({ view }) => [
				outlineMark([r.finished.outer], view, 'wide'),
				outlineMark([r.finished.inner], view, 'wide'),
			],
		})),
		...d.layers.map((l) => {
			const height = step(l.place === 'raised' ? l.step : -l.step, figures);
			return seen(`${l.name} ${height}`, l.finished, l.piece);
		}),
		...d.devices.map((v): Shown => ({
			...{ name: v.name, outline: v.body },
			draw: ({ view }) => [
				outlineMark([v.space], view, 'dashed', { ink: 'pencil' }),
				...v.reach.map((r) => outlineMark([r], view, 'phantom', { ink: 'pencil' })),
				outlineMark([v.body], view, 'narrow'),
			],
		})),
		...d.zones.map((z): Shown => ({
			...{ name: z.name, outline: z.outline, ink: 'warn' as const },
			draw: ({ view }) => [outlineMark([z.outline], view, 'phantom', { ink: 'warn' })],
		})),
	];
}

/** Spots tried along each side of a thing, for the one its name points at. */
const GRID = 9;

/** Each name with the spot that shows its thing and no other, as near its middle as may be. */
function namesOf(things: readonly Shown[], { view }: Stage): Named[] {
	const rings = things.map(({ outline }) => ringPath(outline, view));
	const areas = rings.map((ring) => round(ring).width * round(ring).height);
	return things.map(({ name, ink }, i): Named => {
		const own = rings[i] ?? [];
		const on = rings.filter((_, k) => k !== i && (areas[k] ?? 0) < (areas[i] ?? 0));
		const { x, y, width, height } = round(own);
		const middle = { x: x + width / 2, y: y + height / 2 };
		const far = (p: Spot): number => Math.hypot(p.x - middle.x, p.y - middle.y);
		const steps = [...Array(GRID).keys()].map((k) => (k + 0.5) / GRID);
		const spots = steps
			.flatMap((s) => steps.map((t) => ({ x: x + s * width, y: y + t * height })))
			.filter((p) => inRing(p, own) && !on.some((ring) => inRing(p, ring)))
			.sort((a, b) => far(a) - far(b));
		return {
			...{ text: name, short: name, at: spots[0] ?? middle },
			...(ink === undefined ? {} : { ink }),
			holds: (box) => boxInRing(box, own) && on.every((ring) => boxOffRing(box, ring)),
		};
	});
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

/** Where along its edge a number is tried. */
const PLACES = [0.5, 0.28, 0.72, 0.15, 0.85];

/** Of a balloon, and the paper round it, mm. */
const REACH = 3.4;

function isOffZones({ x, y }: Spot, { zones }: PanelDetail, { view }: Stage): boolean {
	const box = { x: x - REACH, y: y - REACH, width: 2 * REACH, height: 2 * REACH };
	return zones.every((z) => boxOffRing(box, ringPath(z.outline, view)));
}

function edgeNumbers(d: PanelDetail, stage: Stage, section: PanelSection | null): Mark[] {
	if (d.fit.edges.length > NUMBERED) return [];
	const edges = edgesOf(d.fit.opening);
	return d.fit.edges.flatMap((f) => {
		const e = edges[d.fit.openingEdges.indexOf(f.edge)];
		if (!e) return [];
		// Clear of the letters of the section; where the edge is too short, as far off as may be.
		const off = (u: number): number =>
			section ? (Math.abs(alongEdge(e, u).y - section.y) / 1600) * stage.scale : Infinity;
		// Outside lies to the right of a counter-clockwise edge; on paper y runs down, and a
		// mirrored view changes sides.
		const side = stage.view.mirror === true ? -1 : 1;
		const beside = (u: number): Spot => {
			const at = onPaper(alongEdge(e, u), stage.view);
			const heading = headingAt(e, u);
			return { x: at.x + side * heading.y * 4.4, y: at.y + heading.x * 4.4 };
		};
		const far = [...PLACES].sort((a, b) => off(b) - off(a));
		const t =
			PLACES.find((u) => off(u) > 10 && isOffZones(beside(u), d, stage)) ??
			PLACES.find((u) => off(u) > 10) ??
			nth(far, 0);
		const spot = beside(t);
		return balloon(spot.x, spot.y, `${f.edge}`);
	});
}

/** What must stay free, also beside the panel: no number and no letter stands on its line. */
const zonesOn = (d: PanelDetail, { view }: Stage): Mark[] =>
	d.zones.map((z) => outlineMark([z.outline], view, 'phantom'));

function sectionLine(section: PanelSection | null, stage: Stage, zones: readonly Mark[]): Mark[] {
	if (!section) return [];
	const y = onPaper({ x: 0, y: section.y }, stage.view).y;
	const [l, r] = [stage.box.x - 6, stage.box.x + stage.box.width + 5];
	const slots = new LabelSlots({ x: 0, y: 0, width: stage.width, height: stage.height });
	slots.keepOffLines(zones);
	const end = (x: number): Mark[] => {
		// Under its arrow, else beside it.
		const letters = [
			{ right: 0, down: 6 },
			{ right: 2.4, down: 4 },
			{ right: -2.4, down: 4 },
		].map(({ right, down }) =>
			words(x + right, y + down, 'A', {
				...{ anchor: 'middle', size: 3.4, weight: 'semibold', halo: true },
			}),
		);
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
			slots.put(letters) ?? nth(letters, 0),
		];
	};
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
