import type { Path, Box } from '../../../job';
import { layUp, type LayerAsk, type Layers } from '../inside';
import type { BoardRack } from '../rack';
import {
	sidesAround,
	faceWithin,
	SIX,
	type Planes,
	type Six,
	flat,
	slab,
	type TaperedAir,
	add3,
	scale3,
} from '../solid';
import { faceFrame, sideName, type TaperedShell } from './tapered';
import { airWithin } from './form';
import type { ProblemLog } from '../../problem-log';

/**
 * Layers inside the walls of a double-tapered box, one after the other, each cut to the four sides
 * round it.
 */
export function layersInside(
	box: Box,
	start: TaperedAir,
	rack: BoardRack,
	log: ProblemLog,
): Layers & { readonly air: TaperedAir } {
	let air = start;
	const lay = ({ wall, wish, t }: LayerAsk) => {
		const path = ['doublers', wish, 'board'] as const;
		const key = sideOf(wall, path, log);
		if (!key) return null;
		const plane = air.sides[key];
		const moved = { ...plane, d: plane.d - t };
		const next = airWithin({ ...air.sides, [key]: moved });
		if (!next) {
			log.stop(
				path,
				`There is no room for one more layer on '${wall}': nothing would be left inside.`,
				'Take fewer layers, or a larger box.',
			);
			return null;
		}
		const ring = sidesAround(key).map((side) => air.sides[side]);
		const solid = { outside: faceWithin(plane, ring), inside: faceWithin(moved, ring) };
		air = next;
		return { solid, frame: faceFrame(plane, solid) };
	};
	const layers = layUp(box, 'inside', sideName, lay, rack);
	return { air, ...layers };
}

/** Layers outside, over the edges of the neighbours; their own edges are square. */
export function layersOutside(
	box: Box,
	shell: TaperedShell,
	rack: BoardRack,
	log: ProblemLog,
): Layers {
	const lay = ({ wall, wish, t, nth }: LayerAsk) => {
		const key = sideOf(wall, ['doublers', wish, 'board'], log);
		if (!key) return null;
		const face = outsideFace(shell.outer, key);
		const flatFrame = faceFrame(shell.outer[key], { outside: face, inside: face });
		const at = add3(flatFrame.at, scale3(flatFrame.n, t * nth));
		const frame = { ...flatFrame, at };
		const outline = face.map((p) => flat(p, frame));
		return { frame, solid: slab(outline, frame, t) };
	};
	return layUp(box, 'outside', sideName, lay, rack);
}

function outsideFace(outer: Planes, key: Six) {
	return faceWithin(
		outer[key],
		sidesAround(key).map((side) => outer[side]),
	);
}

function sideOf(board: string, path: Path, log: ProblemLog): Six | null {
	const key = SIX.find((side) => side === board) ?? null;
	if (!key)
		log.stop(path, `There is no wall '${board}' in this form.`, `Name one of ${SIX.join(', ')}.`);
	return key;
}
