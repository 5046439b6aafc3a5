import { circle, liesIn, linesInside, moved, type Outline, setInAll } from '../../../geometry';
import type { Length } from '../../../measure';
import type { FaceWork } from '../../part';
import type { CoverFigure, PanelDetail } from '../figures';

/*
 * What is cut into the faces of a panel's pieces, in the panel's frame. The drawing of a piece
 * looks at its front.
 */

type Figures = Omit<PanelDetail, 'assembly'>;

/** Groove and clips behind, seats, rebates and screws in front, on one leaf of the board. */
export function boardWork(f: Figures, leaf: Outline): FaceWork[] {
	return [
		...grooveWork(f, leaf),
		...fixingWork(f, leaf),
		...drillWork(f, leaf),
		...seatWork(f, null, leaf),
		...rebateWork(f, leaf),
	];
}

function grooveWork({ groove, leaves }: Figures, leaf: Outline): FaceWork[] {
	if (!groove) return [];
	const runs = leaves.length > 1 ? linesInside(groove.runs, [leaf]) : groove.runs;
	return runs.map((line) => knifeGroove(groove, line, false));
}

function knifeGroove(
	{ width, depth }: NonNullable<Figures['groove']>,
	line: Outline,
	closed: boolean,
): FaceWork {
	return { kind: 'groove', name: 'knife groove', from: 'far', line, closed, width, depth };
}

function fixingWork({ fixings }: Figures, leaf: Outline): FaceWork[] {
	if (!fixings) return [];
	const from = fixings.kind === 'clips' ? 'far' : 'near';
	const name = fixings.kind === 'clips' ? 'clip' : 'screw';
	return drilled(fixings.at, fixings.hole, name, from).filter((w) => liesIn(w.line, leaf));
}

/** Places of the drilling template, which counts from the lower left of the whole board. */
function drillWork({ drills, fit }: Figures, leaf: Outline): FaceWork[] {
	const { x, y } = fit.sizes.board;
	return drills
		.flatMap((d) => drilled([{ x: x + d.x, y: y + d.y }], d.diameter, d.of, 'near'))
		.filter((w) => liesIn(w.line, leaf));
}

function drilled(
	at: readonly { readonly x: number; readonly y: number }[],
	diameter: Length,
	name: string,
	from: FaceWork['from'],
): FaceWork[] {
	const round = circle(0, 0, Math.round(diameter / 2));
	return at.map(({ x, y }) => {
		const line = moved(round, Math.round(x), Math.round(y));
		return { kind: 'drill', name, from, line, closed: true };
	});
}

/** Pockets for the pieces that are set into a layer, or into the board where none is named. */
export function seatWork(f: Figures, host: string | null, piece: Outline): FaceWork[] {
	const under = host === null ? 0 : (f.layers.find((l) => l.id === host)?.bottom ?? 0);
	return f.layers.flatMap(({ on, place, hole, bottom, depth, name }): FaceWork[] => {
		if (on !== host || place !== 'raised' || hole === null || bottom <= under) return [];
		if (!liesIn(hole, piece)) return [];
		return [
			{ kind: 'pocket', name: `seat for ${name}`, from: 'near', line: hole, closed: true, depth },
		];
	});
}

/** What a ring is let into, where the wall it trims is this board. */
function rebateWork(f: Figures, leaf: Outline): FaceWork[] {
	return f.rings.flatMap(({ rebate, name }): FaceWork[] => {
		if (!rebate || !liesIn(rebate.outline, leaf)) return [];
		const { outline: line, depth } = rebate;
		return [
			{ kind: 'pocket', name: `rebate for ${name}`, from: 'near', line, closed: true, depth },
		];
	});
}

/** The groove round a wrapped cover, and the magnets that hold it. */
export function coverWork({ groove }: Figures, cover: CoverFigure): FaceWork[] {
	const magnets = magnetWork(cover, 'far');
	if (!groove || cover.cloth === null) return magnets;
	const { outline } = setInAll(cover.board, groove.offset + groove.width / 2);
	return outline ? [knifeGroove(groove, outline, true), ...magnets] : magnets;
}

/** In the cover from behind, in its ledge from the front. */
export function magnetWork({ magnets, magnet }: CoverFigure, from: FaceWork['from']): FaceWork[] {
	return magnet === null ? [] : drilled(magnets, magnet, 'magnet', from);
}
