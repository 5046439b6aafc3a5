import { nth, ticks, type Length } from '../../../measure';
import type { Box, BoardKey } from '../../../job';
import { boardName, boardOf, type Board, type Seam } from '../board';
import {
	type SweptAir,
	sidesSetIn,
	sideLine,
	crossed,
	faceArea,
	flat,
	slab,
	type Frame,
	type Solid,
	add3,
	p3,
	scale3,
} from '../solid';
import { cornerAt, type Point } from '../../../geometry';
import { plate, endFrame, type SweptSection, sideFrame, sweptSolid } from '../shell';
import type { BoardRack } from '../rack';
import type { ProblemLog } from '../../problem-log';

/** Layers on walls, and what glues them there. */
export interface Layers {
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
}

export interface Doubled extends Layers {
	readonly air: SweptAir;
}

/**
 * What is asked of one layer: which wall, for which wish of the box, how thick, and the how-manyth
 * it is, from 1.
 */
export interface LayerAsk {
	readonly wall: BoardKey;
	readonly wish: number;
	readonly t: Length;
	readonly nth: number;
}

const LAYERS = {
	inside: {
		key: 'doubler',
		role: 'doubler',
		name: 'doubler',
		notes: ['Glue over the whole face before the box is closed.'],
	},
	outside: { key: 'overlay', role: 'overlay', name: 'outer layer', notes: [] },
} as const;

/**
 * All layers on one side of the walls. `lay` shapes the next one; where there is none it says why,
 * and the wish ends.
 */
export function layUp(
	box: Box,
	side: keyof typeof LAYERS,
	nameOf: (wall: BoardKey) => string,
	lay: (ask: LayerAsk) => { readonly solid: Solid; readonly frame: Frame } | null,
	rack: BoardRack,
): Layers {
	const { key, role, name, notes } = LAYERS[side];
	const boards: Board[] = [];
	const seams: Seam[] = [];
	box.doublers.forEach(({ board: wall, ...wish }, w) => {
		if (wish.side !== side) return;
		const material = rack.of(wish.material, ['doublers', w, 'material']);
		for (let nth = 1; nth <= wish.layers; nth++) {
			// Even without a board to make it of, what is wrong with its place is said in the same
			// round.
			const shape = lay({ wall, wish: w, t: material?.measured ?? ticks(0), nth });
			if (!shape || !material) return;
			const board = boardOf({
				solid: shape.solid,
				frame: shape.frame,
				key: `${key}-${boards.length + 1}`,
				wall,
				name: `${nameOf(wall)} ${name}`,
				role,
				material,
				grain: box.boards[wall]?.grain ?? 'along',
				notes: [...notes],
			});
			boards.push(board);
			seams.push(faceSeam(wall, board));
		}
	});
	return { boards, seams };
}

/**
 * Layers glued inside the walls, one after the other, each cut to fit between what is already
 * there.
 */
export function doubleInside(
	section: SweptSection,
	box: Box,
	start: SweptAir,
	rack: BoardRack,
	log: ProblemLog,
): Doubled {
	let air = start;
	const lay = ({ wall, wish, t }: LayerAsk) => {
		const made = layerOn(air, wall, t);
		if (!made)
			log.stop(
				['doublers', wish, 'board'],
				`There is no wall '${wall}' in this form, or no room for one more layer on it.`,
				`Name one of ${[...section.keys, 'left', 'right'].join(', ')}, or fewer layers.`,
			);
		air = made?.air ?? air;
		return made;
	};
	const layers = layUp(box, 'inside', boardName, lay, rack);
	return { air, ...layers };
}

/**
 * Layers glued on the outside of a wall, over its neighbours' edges; their own edges are square.
 */
export function doubleOutside(
	section: SweptSection,
	box: Box,
	rack: BoardRack,
	log: ProblemLog,
): Layers {
	const lay = ({ wall, wish, t, nth }: LayerAsk) => {
		const frame = outsideFrame(section, wall);
		if (!frame) {
			log.stop(
				['doublers', wish, 'board'],
				`There is no wall '${wall}' in this form.`,
				`Name one of ${[...section.keys, 'left', 'right'].join(', ')}.`,
			);
			return null;
		}
		const lifted = { ...frame, at: add3(frame.at, scale3(frame.n, t * nth)) };
		return { frame: lifted, solid: slab(outsideFace(section, wall, frame), lifted, t) };
	};
	return layUp(box, 'outside', boardName, lay, rack);
}

function outsideFrame(section: SweptSection, key: string): Frame | null {
	if (key === 'left') return endFrame(0, p3(-1, 0, 0));
	if (key === 'right') return endFrame(section.width, p3(1, 0, 0));
	const i = section.keys.indexOf(key);
	return i < 0 ? null : sideFrame(section.outer, i);
}

function outsideFace(section: SweptSection, key: string, frame: Frame): Point[] {
	if (key === 'left' || key === 'right') {
		return section.outer.map((p) => flat(p3(frame.at.x, p.x, p.y), frame));
	}
	const i = section.keys.indexOf(key);
	const [a, b] = [cornerAt(section.outer, i), cornerAt(section.outer, i + 1)];
	const ends = [0, section.width];
	return [a, b].flatMap((p, k) =>
		(k === 0 ? ends : [...ends].reverse()).map((x) => flat(p3(x, p.x, p.y), frame)),
	);
}

function faceSeam(wall: string, board: Board): Seam {
	const { outside } = board.solid;
	const area = Math.abs(faceArea(outside, board.frame));
	const between = [wall, board.key] as const;
	return { letter: '', between, kind: 'face', length: 0, area, at: nth(outside, 0), seals: false };
}

function layerOn(
	air: SweptAir,
	key: string,
	t: number,
): { air: SweptAir; solid: Solid; frame: Board['frame'] } | null {
	if (key === 'left' || key === 'right') return onEnd(air, key, t);
	const i = air.keys.indexOf(key);
	if (i < 0) return null;
	const corners = sidesSetIn(
		air.corners,
		air.corners.map((_, k) => (k === i ? t : 0)),
	);
	if (!corners) return null;
	const before = sideLine(air.corners, i - 1);
	const after = sideLine(air.corners, i + 1);
	const line = sideLine(air.corners, i, t);
	const outside: [Point, Point] = [cornerAt(air.corners, i), cornerAt(air.corners, i + 1)];
	const quad = { outside, inside: [crossed(line, before), crossed(line, after)] as [Point, Point] };
	return {
		air: { ...air, corners },
		solid: sweptSolid(quad, air.x0, air.x1),
		frame: sideFrame(air.corners, i),
	};
}

function onEnd(
	air: SweptAir,
	key: 'left' | 'right',
	t: number,
): { air: SweptAir; solid: Solid; frame: Board['frame'] } | null {
	if (air.x1 - air.x0 <= t) return null;
	const left = key === 'left';
	const x = left ? air.x0 : air.x1;
	const n = p3(left ? -1 : 1, 0, 0);
	return {
		air: left ? { ...air, x0: air.x0 + t } : { ...air, x1: air.x1 - t },
		solid: plate(air.corners, x, n, t),
		frame: endFrame(x, n),
	};
}
