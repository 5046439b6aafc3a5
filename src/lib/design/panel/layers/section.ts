import { mm } from '../../../measure';
import {
	grown,
	linesInside,
	linesOutside,
	union,
	without,
	type Region,
	bounds,
	edgesOf,
	nearestOnEdge,
	type Outline,
	type Point,
	rectangle,
} from '../../../geometry';
import type { EdgeChoice } from '../../../job';
import type { CoverFigure, LayerFigure, PanelDetail } from '../figures';
import { boardHoles } from './pieces';

/*
 * Section A-A: the panel cut along a level line and seen from below, x to the right as in the front
 * view, heights upwards from the back of the board. Board and cloth as they lie in the finished
 * panel.
 */

/** A stretch of board in the cut, x from..to, height low..high. */
export interface CutBoard {
	readonly name: string;
	/** What it belongs to: the panel's own board, or the layer or cover of this id. */
	readonly of: 'board' | 'layer' | 'cover' | 'ledge';
	readonly id: string | null;
	readonly material: string;
	readonly from: number;
	readonly to: number;
	readonly low: number;
	readonly high: number;
}

export interface PanelSection {
	/** Height of the cut on the front view. */
	readonly y: number;
	readonly boards: readonly CutBoard[];
	/** Cloth in the cut, x and height, with the cloth it is. */
	readonly cloths: readonly { readonly cloth: string; readonly regions: readonly Region[] }[];
}

/**
 * Through as many layers, windows and covers as one level line can meet; null for a flat panel, and
 * where a window leaves no board.
 */
export function panelSectionOf(d: PanelDetail): PanelSection | null {
	const y = bestLine(d);
	if (y === null) return null;
	const boards = [...mainBoard(d, y), ...layerBoards(d, y), ...coverBoards(d, y)];
	return boards.length === 0 ? null : { y, boards, cloths: clothsIn(d, boards, y) };
}

function bestLine(d: PanelDetail): number | null {
	const things: Outline[] = [
		...d.layers.map((l) => l.piece ?? l.hole ?? []),
		...d.windows.map((w) => w.hole),
		...d.covers.map((c) => c.board),
	].filter((o) => o.length > 0);
	const spans = things.map((o) => {
		const b = bounds(o);
		return [b.y, b.y + b.width] as const;
	});
	let best: number | null = null;
	let most = 0;
	for (const [low, high] of spans) {
		const y = Math.round((low + high) / 2);
		const met = spans.filter(([a, b]) => a < y && y < b).length;
		if (met > most) [best, most] = [y, met];
	}
	return best;
}

/** Stretches of the level line inside the outline and outside its holes. */
function stretches(outline: Outline, holes: readonly Outline[], y: number): [number, number][] {
	const b = bounds(outline);
	const line: Point[] = [
		{ x: b.x - 1600, y },
		{ x: b.x + b.length + 1600, y },
	];
	const inside = linesInside([line], [outline]);
	const solid = holes.length > 0 ? linesOutside(inside, holes) : inside;
	return solid
		.map((l) => l.map((p) => p.x))
		.map((xs): [number, number] => [Math.min(...xs), Math.max(...xs)])
		.sort((a, b) => a[0] - b[0]);
}

function mainBoard(d: PanelDetail, y: number): CutBoard[] {
	const pockets = d.layers.flatMap(({ on, place, hole, bottom }) =>
		on === null && place === 'raised' && hole && bottom > 0 ? [{ hole, bottom }] : [],
	);
	const base = { name: 'Board', of: 'board', id: null, material: d.material, low: 0 } as const;
	return d.leaves.flatMap((leaf) => [
		...stretches(leaf, [...boardHoles(d), ...pockets.map((p) => p.hole)], y).map(([from, to]) => ({
			...base,
			from,
			to,
			high: d.thickness,
		})),
		// Under a pocket the board is as high as its floor.
		...pockets.flatMap((p) =>
			stretches(p.hole, [], y).map(([from, to]) => ({
				...base,
				from,
				to,
				high: p.bottom,
			})),
		),
	]);
}

function layerBoards(d: PanelDetail, y: number): CutBoard[] {
	return d.layers.flatMap((l): CutBoard[] => {
		if (!l.piece) return [];
		const over = l.place === 'raised' ? [...d.windows, ...d.covers].map((w) => w.hole) : [];
		const cut = d.layers.flatMap((o) => (o.on === l.id && o.hole ? [o.hole] : []));
		return stretches(l.piece, [...over, ...cut], y).map(([from, to]) => ({
			name: l.name,
			of: 'layer',
			id: l.id,
			material: l.material,
			from,
			to,
			low: l.bottom,
			high: l.top,
		}));
	});
}

function coverBoards(d: PanelDetail, y: number): CutBoard[] {
	return d.covers.flatMap((c): CutBoard[] => {
		const holes = c.finger ? [c.finger] : [];
		const ledge = stretches(c.ledge.outer, [c.ledge.inner], y).map(([from, to]): CutBoard => ({
			name: `Ledge of ${c.name}`,
			of: 'ledge',
			id: c.id,
			material: c.ledge.material,
			from,
			to,
			low: -c.ledge.thickness,
			high: 0,
		}));
		return [
			...stretches(c.board, holes, y).flatMap(([from, to]) => coverStack(d, c, from, to)),
			...ledge,
		];
	});
}

function coverStack(d: PanelDetail, c: CoverFigure, from: number, to: number): CutBoard[] {
	const base = { name: c.name, of: 'cover', id: c.id, from, to } as const;
	let low = d.thickness as number;
	const stack: CutBoard[] = [{ ...base, material: d.material, low: 0, high: low }];
	for (const l of c.layers) {
		stack.push({ ...base, material: l.material, low, high: low + l.thickness });
		low += l.thickness;
	}
	return stack;
}

type Cloths = PanelSection['cloths'];

function clothsIn(d: PanelDetail, boards: readonly CutBoard[], y: number): Cloths {
	const solids = boards.map(slab);
	const withFace = d.layers.filter(
		(l) => l.covering === 'with' && l.surface === null && l.place === 'raised',
	);
	const face = boards.filter(
		(b) => b.of === 'board' || (b.of === 'layer' && withFace.some((l) => l.id === b.id)),
	);
	const skins: { cloth: string; regions: Region[] }[] = [];
	if (d.cloth)
		skins.push({ cloth: d.cloth.id, regions: skin(d, face, d.cloth.pressed, solids, y) });
	for (const l of d.layers)
		if (l.covering === 'own' && l.cloth !== null && l.place === 'raised')
			skins.push({ cloth: l.cloth, regions: ownSkin(boards, l, solids) });
	for (const c of d.covers)
		if (c.cloth !== null) skins.push({ cloth: c.cloth, regions: coverSkin(boards, c, solids) });
	return skins;
}

const slab = (b: CutBoard): Outline => rectangle(b.from, b.low, b.to - b.from, b.high - b.low);

/**
 * Cloth of a thickness all round the boards it covers, above the back of the panel and turned under
 * at wrapped ends.
 */
function skin(
	d: PanelDetail,
	face: readonly CutBoard[],
	thick: number,
	solids: readonly Outline[],
	y: number,
): Region[] {
	const wide = grown(face.map(slab), thick, 'sharp').map((r) => r.outline);
	const left = Math.min(...face.map((b) => b.from));
	const right = Math.max(...face.map((b) => b.to));
	const turn = d.groove ? d.groove.offset + d.groove.width : mm(20);
	const back = [left, right].map((x) => endAt(d, x, y) === 'wrapped');
	const cuts = [
		rectangle(
			left + (back[0] ? turn : -thick),
			-thick,
			right - left - (back[0] ? turn : -thick) + (back[1] ? -turn : thick),
			thick,
		),
		...(back[0] ? [] : [rectangle(left - thick, -thick, thick, 1e6)]),
		...(back[1] ? [] : [rectangle(right, -thick, thick, 1e6)]),
	];
	return without(wide, [...solids, ...cuts]);
}

/** How the edge of the board nearest to that point ends. */
function endAt(d: PanelDetail, x: number, y: number): EdgeChoice['end'] {
	const off = edgesOf(d.fit.board).map((e) => nearestOnEdge({ x, y }, e).distance);
	return d.fit.boardEdges[off.indexOf(Math.min(...off))] ?? 'bare';
}

function ownSkin(
	boards: readonly CutBoard[],
	l: LayerFigure,
	solids: readonly Outline[],
): Region[] {
	const own = boards.filter((b) => b.of === 'layer' && b.id === l.id).map(slab);
	return aboveFloor(own, l.pressed, l.bottom, solids);
}

function coverSkin(
	boards: readonly CutBoard[],
	c: CoverFigure,
	solids: readonly Outline[],
): Region[] {
	const own = boards.filter((b) => b.of === 'cover' && b.id === c.id).map(slab);
	return own.length === 0 ? [] : aboveFloor(own, c.pressed, 0, solids);
}

function aboveFloor(
	own: readonly Outline[],
	thick: number,
	floor: number,
	solids: readonly Outline[],
): Region[] {
	if (own.length === 0 || thick === 0) return [];
	const wide = grown(own, thick, 'sharp').map((r) => r.outline);
	const box = bounds(union(wide).flatMap((r) => r.outline));
	return without(wide, [...solids, rectangle(box.x - 1, floor - thick, box.length + 2, thick)]);
}
