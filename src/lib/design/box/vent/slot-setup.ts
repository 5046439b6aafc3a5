import { around } from '../../../measure';
import type { Box, SlotVent, Material } from '../../../job';
import { equalRadius } from './acoustics';
import { type SweptAir, sidesSetIn, slotPlane, type SlotPlane, planeArea } from '../solid';
import type { Board } from '../board';
import type { BoardRack } from '../rack';
import { shown } from '../shown';
import {
	longestSlot,
	shortestBend,
	shortestSlot,
	slotAreas,
	slotBody,
	type SlotBody,
	type SlotSize,
} from './slot';
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
	const wrong = misfit(vent, plane, t);
	if (wrong) {
		log.stop(['vents', index, wrong.of], wrong.what, wrong.fix);
		return null;
	}
	const [from, wall] = plane.run;
	const to = vent.run === null || vent.run === wall - from ? wall : from + vent.run;
	const cheek = vent.run !== null && vent.run !== wall - from;
	const run = [from, to] as const;
	const size: SlotSize = { gap: vent.gap, board: t, stack: stackOf(inside.boards, 'front') };
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

/** Why a slot of these figures cannot be built along a board, if it cannot. */
function misfit(
	vent: SlotVent,
	plane: SlotPlane,
	t: number,
): { of: 'gap' | 'bend' | 'run'; what: string; fix: string } | null {
	const foot = around(plane.corners, plane.front + 1);
	const high = Math.max(0, ...plane.corners.map((p) => Math.abs(p.y - foot.y)));
	if (vent.gap + t >= high)
		return {
			of: 'gap',
			what: `A slot of ${shown(vent.gap)} mm with its board fills the chamber, which is ${shown(high)} mm there.`,
			fix: `Give less than ${shown(high - t)} mm.`,
		};
	if (vent.bend === 'L' && !plane.bends)
		return {
			of: 'bend',
			what: `An L along the ${vent.along} end needs a back that stands square to it.`,
			fix: 'Make it straight, or run it along the bottom or the top.',
		};
	const width = plane.run[1] - plane.run[0];
	if (vent.run !== null && vent.run + t > width && vent.run !== width)
		return {
			of: 'run',
			what: `A slot ${shown(vent.run)} mm wide with its cheek does not fit in ${shown(width)} mm.`,
			fix: `Give at most ${shown(width - t)} mm, or leave it empty for wall to wall.`,
		};
	return null;
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
	const least = shortestSlot(plane, size);
	return {
		area,
		ends: radii * equalRadius(area),
		fixed: vent.goal.by === 'length' ? Math.max(vent.goal.length, least) : null,
		least,
		longest: longestSlot(plane, size, vent.bend === 'L'),
		fit: (length) => buildable(vent, plane, size, length),
		takes(length) {
			const body = bodyOf(vent, plane, size, length);
			const { air, boards } = slotAreas(body);
			return (air + boards) * wide + (cheek ? Math.abs(planeArea(body.cheek)) * size.board : 0);
		},
	};
}

/** An L that would end before its corner is built straight. */
function isBent(vent: SlotVent, plane: SlotPlane, size: SlotSize, length: number): boolean {
	const shortest = shortestBend(plane, size);
	return vent.bend === 'L' && length >= shortest && longestSlot(plane, size, true) >= shortest;
}

function buildable(vent: SlotVent, plane: SlotPlane, size: SlotSize, length: number): number {
	const bent = isBent(vent, plane, size, length);
	return Math.min(length, longestSlot(plane, size, bent));
}

function bodyOf(vent: SlotVent, plane: SlotPlane, size: SlotSize, length: number): SlotBody {
	return slotBody(plane, size, length, isBent(vent, plane, size, length));
}

export function bodyAt({ vent, plane, size }: SlotSetup, length: number): SlotBody {
	return bodyOf(vent, plane, size, length);
}

/**
 * The air braces and cleats may stand in: what the slots leave. Null where that is too little to
 * set anything in.
 */
export function clearOf(air: SweptAir, room: number, slots: readonly SlotSetup[]): SweptAir | null {
	return slots.reduce<SweptAir | null>((left, slot) => {
		if (!left || slot.room !== room || slot.cheek) return left;
		const deep = slot.vent.gap + slot.size.board;
		const { along, bend } = slot.vent;
		const { keys, front } = slot.plane;
		const behind = bend === 'L' ? keys[(front + 2) % keys.length] : null;
		const corners = sidesSetIn(
			left.corners,
			left.keys.map((key) => (key === along || key === behind ? deep : 0)),
		);
		const x0 = along === 'left' ? left.x0 + deep : left.x0;
		const x1 = along === 'right' ? left.x1 - deep : left.x1;
		return corners && x1 > x0 ? { ...left, corners, x0, x1 } : null;
	}, air);
}
