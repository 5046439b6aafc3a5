import type { Box } from '../../job/box';
import type { BoardKey } from '../../job/box-fields';
import { boardOf, type Board } from './board';
import { faceSeam, type Layers } from './doubler';
import type { Rack } from './rack';
import type { Seam } from './seam';
import { around, faceWithin, SIX, type Planes, type Six } from './six';
import { flat, slab } from './solid';
import { faceFrame, sideName, type TaperedShell } from './tapered';
import { airWithin } from './tapered-form';
import type { TaperedAir } from './air';
import type { Trouble } from './trouble';
import { add3, scale3 } from './vec';

/** Layers inside the walls of a double-tapered box, one after the other, each cut to the four sides round it. */
export function layersInside(
	box: Box,
	start: TaperedAir,
	rack: Rack,
	trouble: Trouble,
): Layers & { readonly air: TaperedAir } {
	let air = start;
	const boards: Board[] = [];
	const seams: Seam[] = [];
	box.doublers.forEach((wish, w) => {
		if (wish.side !== 'inside') return;
		const path = ['doublers', w, 'board'] as const;
		const material = rack.of(wish.material, ['doublers', w, 'material']);
		const key = sideOf(wish.board, path, trouble);
		for (let layer = 0; material && key && layer < wish.layers; layer++) {
			const plane = air.sides[key];
			const moved = { ...plane, d: plane.d - material.measured };
			const next = airWithin({ ...air.sides, [key]: moved });
			if (!next) {
				trouble.stop(
					path,
					`There is no room for one more layer on '${wish.board}': nothing would be left inside.`,
					'Take fewer layers, or a larger box.',
				);
				return;
			}
			const ring = around(key).map((side) => air.sides[side]);
			const solid = { outside: faceWithin(plane, ring), inside: faceWithin(moved, ring) };
			const board = boardOf({
				...layerOf(box, wish.board, `doubler-${boards.length + 1}`),
				name: `${sideName(key)} doubler`,
				role: 'doubler',
				material,
				solid,
				frame: faceFrame(plane, solid),
				notes: ['Glue over the whole face before the box is closed.'],
			});
			boards.push(board);
			seams.push(faceSeam(wish.board, board));
			air = next;
		}
	});
	return { air, boards, seams };
}

/** Layers outside, over the edges of the neighbours; their own edges are square. */
export function layersOutside(box: Box, shell: TaperedShell, rack: Rack, trouble: Trouble): Layers {
	const boards: Board[] = [];
	const seams: Seam[] = [];
	box.doublers.forEach((wish, w) => {
		if (wish.side !== 'outside') return;
		const material = rack.of(wish.material, ['doublers', w, 'material']);
		const key = sideOf(wish.board, ['doublers', w, 'board'], trouble);
		for (let layer = 1; material && key && layer <= wish.layers; layer++) {
			const face = outsideFace(shell.outer, key);
			const flatFrame = faceFrame(shell.outer[key], { outside: face, inside: face });
			const at = add3(flatFrame.at, scale3(flatFrame.n, material.measured * layer));
			const frame = { ...flatFrame, at };
			const outline = face.map((p) => flat(p, frame));
			const board = boardOf({
				...layerOf(box, wish.board, `overlay-${boards.length + 1}`),
				name: `${sideName(key)} outer layer`,
				role: 'overlay',
				material,
				frame,
				solid: slab(outline, frame, material.measured),
			});
			boards.push(board);
			seams.push(faceSeam(wish.board, board));
		}
	});
	return { boards, seams };
}

function outsideFace(outer: Planes, key: Six) {
	return faceWithin(
		outer[key],
		around(key).map((side) => outer[side]),
	);
}

function layerOf(box: Box, wall: BoardKey, key: string) {
	return { key, wall, grain: box.boards[wall]?.grain ?? ('along' as const) };
}

function sideOf(board: string, path: readonly (string | number)[], trouble: Trouble): Six | null {
	const key = SIX.find((side) => side === board) ?? null;
	if (!key)
		trouble.stop(
			path,
			`There is no wall '${board}' in this form.`,
			`Name one of ${SIX.join(', ')}.`,
		);
	return key;
}
