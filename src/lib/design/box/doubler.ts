import type { Box } from '../../job/box';
import { boardName, boardOf, type Board } from './board';
import type { SweptAir } from './air';
import type { Point } from '../../geometry/outline';
import { plate, endFrame } from './end';
import type { Rack } from './rack';
import type { Seam } from './seam';
import { at, setIn, sideLine, crossed } from './section';
import type { Section } from './shell';
import { faceArea, flat, slab, type Frame, type Solid } from './solid';
import type { Trouble } from './trouble';
import { add3, p3, scale3 } from './vec';
import { sideFrame, sweptSolid } from './wall';

/** Layers on walls, and what glues them there. */
export interface Layers {
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
}

export interface Doubled extends Layers {
	readonly air: SweptAir;
}

/** Layers glued inside the walls, one after the other, each cut to fit between what is already there. */
export function doubleInside(
	section: Section,
	box: Box,
	start: SweptAir,
	rack: Rack,
	trouble: Trouble,
): Doubled {
	let air = start;
	const boards: Board[] = [];
	const seams: Seam[] = [];
	box.doublers.forEach((wish, w) => {
		if (wish.side !== 'inside') return;
		const material = rack.of(wish.material, ['doublers', w, 'material']);
		for (let layer = 0; material && layer < wish.layers; layer++) {
			const made = layerOn(air, wish.board, material.measured);
			if (!made) {
				trouble.stop(
					['doublers', w, 'board'],
					`There is no wall '${wish.board}' in this form, or no room for one more layer on it.`,
					`Name one of ${[...section.keys, 'left', 'right'].join(', ')}, or fewer layers.`,
				);
				return;
			}
			const key = `doubler-${boards.length + 1}`;
			const board = boardOf({
				...made,
				key,
				wall: wish.board,
				name: `${boardName(wish.board)} doubler`,
				role: 'doubler',
				material,
				grain: box.boards[wish.board]?.grain ?? 'along',
				notes: ['Glue over the whole face before the box is closed.'],
			});
			boards.push(board);
			seams.push(faceSeam(wish.board, board));
			air = made.air;
		}
	});
	return { air, boards, seams };
}

/** Layers glued on the outside of a wall, over its neighbours' edges; their own edges are square. */
export function doubleOutside(section: Section, box: Box, rack: Rack, trouble: Trouble): Layers {
	const boards: Board[] = [];
	const seams: Seam[] = [];
	box.doublers.forEach((wish, w) => {
		if (wish.side !== 'outside') return;
		const material = rack.of(wish.material, ['doublers', w, 'material']);
		const frame = outsideFrame(section, wish.board);
		if (!frame) {
			trouble.stop(
				['doublers', w, 'board'],
				`There is no wall '${wish.board}' in this form.`,
				`Name one of ${[...section.keys, 'left', 'right'].join(', ')}.`,
			);
			return;
		}
		for (let layer = 1; material && layer <= wish.layers; layer++) {
			const t = material.measured;
			const lifted = { ...frame, at: add3(frame.at, scale3(frame.n, t * layer)) };
			const board = boardOf({
				key: `overlay-${boards.length + 1}`,
				wall: wish.board,
				name: `${boardName(wish.board)} outer layer`,
				role: 'overlay',
				material,
				frame: lifted,
				solid: slab(outsideFace(section, wish.board, frame), lifted, t),
				grain: box.boards[wish.board]?.grain ?? 'along',
			});
			boards.push(board);
			seams.push(faceSeam(wish.board, board));
		}
	});
	return { boards, seams };
}

function outsideFrame(section: Section, key: string): Frame | null {
	if (key === 'left') return endFrame(0, p3(-1, 0, 0));
	if (key === 'right') return endFrame(section.width, p3(1, 0, 0));
	const i = section.keys.indexOf(key);
	return i < 0 ? null : sideFrame(section.outer, i);
}

function outsideFace(section: Section, key: string, frame: Frame): Point[] {
	if (key === 'left' || key === 'right') {
		return section.outer.map((p) => flat(p3(frame.at.x, p.x, p.y), frame));
	}
	const i = section.keys.indexOf(key);
	const [a, b] = [at(section.outer, i), at(section.outer, i + 1)];
	const ends = [0, section.width];
	return [a, b].flatMap((p, k) =>
		(k === 0 ? ends : [...ends].reverse()).map((x) => flat(p3(x, p.x, p.y), frame)),
	);
}

export function faceSeam(wall: string, board: Board): Seam {
	const { outside } = board.solid;
	const area = Math.abs(faceArea(outside, board.frame));
	const between = [wall, board.key] as const;
	return { letter: '', between, kind: 'face', length: 0, area, at: outside[0]!, seals: false };
}

function layerOn(
	air: SweptAir,
	key: string,
	t: number,
): { air: SweptAir; solid: Solid; frame: Board['frame'] } | null {
	if (key === 'left' || key === 'right') return onEnd(air, key, t);
	const i = air.keys.indexOf(key);
	if (i < 0) return null;
	const corners = setIn(
		air.corners,
		air.corners.map((_, k) => (k === i ? t : 0)),
	);
	if (!corners) return null;
	const before = sideLine(air.corners, i - 1);
	const after = sideLine(air.corners, i + 1);
	const line = sideLine(air.corners, i, t);
	const outside: [Point, Point] = [at(air.corners, i), at(air.corners, i + 1)];
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
