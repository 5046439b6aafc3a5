import type { Box, SlotVent, Material } from '../../../job';
import { equalRadius } from './acoustics';
import { type SweptAir, sidesSetIn, slotPlane, type SlotPlane, planeArea } from '../solid';
import type { Board } from '../board';
import type { BoardRack } from '../rack';
import { slotAreas, slotBody, type SlotBody } from './slot';
import {
	longestSlot,
	shortestSlot,
	sidesAlong,
	type SlotSize,
	type SlotWay,
	turnsAt,
	turnsOf,
} from './slot-legs';
import { misfit } from './slot-misfit';
import type { ProblemLog } from '../../problem-log';
import { radiiOf, ventName, type SlotSetup, type VentRoom } from './vent';
import type { Breath } from './vent-air';

/** Finds where every slot runs, before anything else takes its place. */
export function slotSetups(
	box: Box,
	inside: VentRoom,
	rack: BoardRack,
	log: ProblemLog,
): SlotSetup[] {
	return box.vents.flatMap((vent, v) => {
		if (vent.kind !== 'slot') return [];
		const material = rack.of(vent.material, ['vents', v, 'material']);
		if (!material) return [];
		const found = planeFor(vent, inside);
		if ('no' in found) {
			log.stop(['vents', v, 'along'], found.no, found.fix);
			return [];
		}
		return slotSetup({ vent, index: v, material }, found, inside, log) ?? [];
	});
}

function planeFor(
	vent: SlotVent,
	inside: VentRoom,
): { plane: SlotPlane; room: number } | { no: string; fix: string } {
	let no =
		'Between four leaning walls the boards of a slot would have to twist: it is not laid out.';
	let fix = 'Take a round vent, which is, or make the box slanted: only one of its walls leans.';
	for (const [room, { air }] of inside.rooms.entries()) {
		if (air.kind !== 'swept') continue;
		const plane = slotPlane(air, vent.along);
		if (!('no' in plane)) return { plane, room };
		no = plane.no;
		fix = 'Run it along a board that meets the front of its chamber.';
	}
	return { no, fix };
}

function slotSetup(
	{ vent, index, material }: { vent: SlotVent; index: number; material: Material },
	{ plane, room }: { plane: SlotPlane; room: number },
	inside: VentRoom,
	log: ProblemLog,
): SlotSetup | null {
	const t = material.measured;
	const size: SlotSize = { gap: vent.gap, board: t, stack: stackOf(inside.boards, 'front') };
	const wrong = misfit(vent, plane, size, log);
	if (wrong) {
		log.stop(['vents', index, wrong.of], wrong.what, wrong.fix);
		return null;
	}
	const [from, wall] = plane.run;
	const to = vent.run === null || vent.run === wall - from ? wall : from + vent.run;
	const cheek = vent.run !== null && vent.run !== wall - from;
	const run = [from, to] as const;
	const name = ventName(vent, index);
	const radii = radiiOf(vent);
	const breath = slotBreath({ vent, plane, size, run, cheek, radii });
	return {
		kind: 'slot',
		index,
		name,
		vent,
		room,
		plane,
		size,
		run,
		cheek,
		material,
		radii,
		breath,
		clearWanted: vent.gap,
	};
}

/** Thickness of all boards in front of the mouth, ticks. */
function stackOf(boards: readonly Board[], wall: string): number {
	return boards
		.filter(
			(b) => b.wall === wall && (b.role === 'wall' || b.role === 'end' || b.role === 'doubler'),
		)
		.reduce((sum, b) => sum + b.material.measured, 0);
}

type Mouth = Pick<SlotSetup, 'vent' | 'plane' | 'size' | 'run' | 'cheek' | 'radii'>;

function slotBreath({ vent, plane, size, run, cheek, radii }: Mouth): Breath {
	const wide = run[1] - run[0];
	const area = vent.gap * wide;
	const least = shortestSlot(plane, size, 0);
	return {
		area,
		ends: radii * equalRadius(area),
		fixed: vent.goal.by === 'length' ? Math.max(vent.goal.length, least) : null,
		least,
		longest: longestSlot(plane, size, turnsOf(vent)),
		fit: (length) =>
			Math.min(length, longestSlot(plane, size, turnsAt({ vent, plane, size }, length))),
		takes(length) {
			const body = bodyAt({ vent, plane, size }, length);
			const { air, boards } = slotAreas(body);
			return (air + boards) * wide + (cheek ? Math.abs(planeArea(body.cheek)) * size.board : 0);
		},
	};
}

export function bodyAt(way: SlotWay, length: number): SlotBody {
	return slotBody(way.plane, way.size, length, turnsAt(way, length));
}

/**
 * The air braces and cleats may stand in: what the slots leave. Null where that is too little to
 * set anything in.
 */
export function clearOf(air: SweptAir, room: number, slots: readonly SlotSetup[]): SweptAir | null {
	return slots.reduce<SweptAir | null>((left, slot) => {
		if (!left || slot.room !== room || slot.cheek) return left;
		const deep = slot.vent.gap + slot.size.board;
		const sides = sidesAlong(slot.plane, turnsOf(slot.vent));
		const off = (key: string): number => (sides.includes(key) ? deep : 0);
		const corners = sidesSetIn(left.corners, left.keys.map(off));
		const x0 = left.x0 + off(left.left);
		const x1 = left.x1 - off(left.right);
		return corners && x1 > x0 ? { ...left, corners, x0, x1 } : null;
	}, air);
}
