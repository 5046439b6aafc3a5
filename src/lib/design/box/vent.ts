import type { Box } from '../../job/box';
import type { RoundVent, SlotVent, Vent } from '../../job/box-vent';
import { END_CORRECTION, equalRadius } from './acoustics';
import { reach, type Air, type SweptAir } from './air';
import type { Board } from './board';
import { placeOn, roomBehind, rowOf, type Place } from './place';
import { shown } from './shown';
import type { Rack } from './rack';
import { setIn } from './section';
import type { Section } from './shell';
import {
	longestSlot,
	shortestBend,
	slotAreas,
	slotBody,
	type SlotBody,
	type SlotSize,
} from './slot';
import { slotPlane, type SlotPlane } from './slot-plane';
import { planeArea } from './solid';
import type { Trouble } from './trouble';
import type { Breath } from './vent-air';
import type { Material } from '../../job/stock';

/** A vent with its place found: what the chamber breathes through. */
export type VentSetup = RoundSetup | SlotSetup;

interface Common {
	readonly index: number;
	readonly name: string;
	readonly room: number;
	readonly breath: Breath;
	/** End correction of one vent, both ends, in radii. */
	readonly radii: number;
	/** What has to stay free at the inner mouth: one diameter, or one slot height. */
	readonly clearWanted: number;
}

export interface RoundSetup extends Common {
	readonly kind: 'round';
	readonly vent: RoundVent;
	readonly places: readonly Place[];
}

export interface SlotSetup extends Common {
	readonly kind: 'slot';
	readonly vent: SlotVent;
	readonly plane: SlotPlane;
	readonly size: SlotSize;
	readonly run: readonly [number, number];
	readonly cheek: boolean;
	readonly material: Material;
}

export const radiiOf = (vent: Vent): number => vent.factor ?? END_CORRECTION[vent.mouths];

export const ventName = (vent: Vent, v: number): string =>
	vent.name ?? `${vent.kind === 'round' ? 'Vent' : 'Slot vent'} ${v + 1}`;

export interface VentRoom {
	readonly boards: readonly Board[];
	readonly rooms: readonly { readonly air: Air }[];
	readonly section: Section | null;
}

/** Finds where every slot runs, before anything else takes its place. */
export function slotSetups(box: Box, inside: VentRoom, rack: Rack, trouble: Trouble): SlotSetup[] {
	return box.vents.flatMap((vent, v) => {
		if (vent.kind !== 'slot') return [];
		const material = rack.of(vent.material, ['vents', v, 'material']);
		if (!material) return [];
		const found = planeFor(vent, inside);
		if ('no' in found) {
			trouble.stop(['vents', v, 'along'], found.no, found.fix);
			return [];
		}
		return slotSetup(vent, v, found, material, inside, trouble) ?? [];
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
	vent: SlotVent,
	index: number,
	{ plane, room }: { plane: SlotPlane; room: number },
	material: Material,
	inside: VentRoom,
	trouble: Trouble,
): SlotSetup | null {
	const path = ['vents', index];
	const high = plane.corners.reduce(
		(most, p) =>
			Math.max(most, Math.abs(p.y - plane.corners[(plane.front + 1) % plane.corners.length]!.y)),
		0,
	);
	if (vent.gap + material.measured >= high) {
		trouble.stop(
			[...path, 'gap'],
			`A slot of ${shown(vent.gap)} mm with its board fills the chamber, which is ${shown(high)} mm there.`,
			`Give less than ${shown(high - material.measured)} mm.`,
		);
		return null;
	}
	if (vent.bend === 'L' && !plane.bends) {
		trouble.stop(
			[...path, 'bend'],
			`An L along the ${vent.along} end needs a back that stands square to it.`,
			'Make it straight, or run it along the bottom or the top.',
		);
		return null;
	}
	const width = plane.run[1] - plane.run[0];
	const t = material.measured;
	if (vent.run !== null && vent.run + t > width && vent.run !== width) {
		trouble.stop(
			[...path, 'run'],
			`A slot ${shown(vent.run)} mm wide with its cheek does not fit in ${shown(width)} mm.`,
			`Give at most ${shown(width - t)} mm, or leave it empty for wall to wall.`,
		);
		return null;
	}
	const cheek = vent.run !== null && vent.run !== width;
	const run = [plane.run[0], cheek ? plane.run[0] + vent.run! : plane.run[1]] as const;
	const size: SlotSize = { gap: vent.gap, board: t, stack: stackOf(inside.boards, 'front') };
	const name = ventName(vent, index);
	const radii = radiiOf(vent);
	const breath = slotBreath(vent, plane, size, run, cheek, radii);
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

export function stackOf(boards: readonly Board[], wall: string): number {
	return boards
		.filter(
			(b) => b.wall === wall && (b.role === 'wall' || b.role === 'end' || b.role === 'doubler'),
		)
		.reduce((sum, b) => sum + b.material.measured, 0);
}

function slotBreath(
	vent: SlotVent,
	plane: SlotPlane,
	size: SlotSize,
	run: readonly [number, number],
	cheek: boolean,
	radii: number,
): Breath {
	const wide = run[1] - run[0];
	const area = vent.gap * wide;
	return {
		area,
		ends: radii * equalRadius(area),
		fixed: vent.goal.by === 'length' ? vent.goal.length : null,
		longest: longestSlot(plane, size, vent.bend === 'L'),
		fit: (length) => buildable(vent, plane, size, length),
		takes(length) {
			const body = slotBody(plane, size, length, isBent(vent, plane, size, length));
			const { air, boards } = slotAreas(body);
			return (air + boards) * wide + (cheek ? Math.abs(planeArea(body.cheek)) * size.board : 0);
		},
	};
}

/** An L that would end before its corner is built straight. */
export function isBent(vent: SlotVent, plane: SlotPlane, size: SlotSize, length: number): boolean {
	const shortest = shortestBend(plane, size);
	return vent.bend === 'L' && length >= shortest && longestSlot(plane, size, true) >= shortest;
}

function buildable(vent: SlotVent, plane: SlotPlane, size: SlotSize, length: number): number {
	const bent = isBent(vent, plane, size, length);
	return Math.min(length, longestSlot(plane, size, bent));
}

export function bodyAt(setup: SlotSetup, length: number): SlotBody {
	return slotBody(
		setup.plane,
		setup.size,
		length,
		isBent(setup.vent, setup.plane, setup.size, length),
	);
}

/** Tubes, once the front has its final size. */
export function roundSetups(box: Box, inside: VentRoom, trouble: Trouble): RoundSetup[] {
	return box.vents.flatMap((vent, index) => {
		if (vent.kind !== 'round') return [];
		const path = ['vents', index];
		const pitch = vent.pitch ?? vent.diameter + 4 * vent.wall;
		const places = rowOf(vent.count, pitch).map((x) =>
			placeOn(inside.boards, vent.board, vent.at, x),
		);
		const found = places.filter((p) => p !== null);
		if (found.length < places.length) {
			trouble.stop(
				[...path, 'board'],
				`This form has no board '${vent.board}'.`,
				'Choose one of its own walls.',
			);
			return [];
		}
		const room = roomBehind(inside.rooms, found[0]!);
		if (room < 0) {
			trouble.stop(
				[...path, 'at'],
				`Behind ${ventName(vent, index)} there is no air but a board.`,
				'Move it off the edge, the divider or the slot.',
			);
			return [];
		}
		return roundSetup(vent, index, room, found, inside.rooms[room]!.air);
	});
}

function roundSetup(
	vent: RoundVent,
	index: number,
	room: number,
	places: readonly Place[],
	air: Air,
): RoundSetup {
	const outer = vent.diameter / 2 + vent.wall;
	const { stack, proud } = places[0]!;
	const radii = radiiOf(vent);
	const deep = Math.min(...places.map((p) => reach(air, p.point, p.inward, outer)));
	const breath: Breath = {
		area: (Math.PI / 4) * vent.diameter ** 2 * vent.count,
		ends: (radii * vent.diameter) / 2,
		fixed: vent.goal.by === 'length' ? vent.goal.length : null,
		longest: proud + deep - vent.diameter,
		fit: (length) => Math.min(length, proud + deep - vent.diameter),
		takes: (length) => Math.max(0, length - stack - proud) * Math.PI * outer ** 2 * vent.count,
	};
	return {
		kind: 'round',
		index,
		name: ventName(vent, index),
		vent,
		room,
		places,
		radii,
		breath,
		clearWanted: vent.diameter,
	};
}

/** The air braces and cleats may stand in: what the slots leave. Null where that is too little to set anything in. */
export function clearOf(air: SweptAir, room: number, slots: readonly SlotSetup[]): SweptAir | null {
	return slots.reduce<SweptAir | null>((left, slot) => {
		if (!left || slot.room !== room || slot.cheek) return left;
		const deep = slot.vent.gap + slot.size.board;
		const { along, bend } = slot.vent;
		const { keys, front } = slot.plane;
		const behind = bend === 'L' ? keys[(front + 2) % keys.length] : null;
		const corners = setIn(
			left.corners,
			left.keys.map((key) => (key === along || key === behind ? deep : 0)),
		);
		const x0 = along === 'left' ? left.x0 + deep : left.x0;
		const x1 = along === 'right' ? left.x1 - deep : left.x1;
		return corners && x1 > x0 ? { ...left, corners, x0, x1 } : null;
	}, air);
}

/** Tells of a vent that cannot be as long as it would have to be; it is drawn at the nearest length that can be built. */
export function tooLong(
	setup: VentSetup,
	wanted: number,
	length: number,
	hertz: number,
	trouble: Trouble,
): void {
	if (wanted <= length + 1) return;
	const drawn = `It is drawn ${shown(length)} mm long, tuned to ${Math.round(hertz * 10) / 10} Hz.`;
	const free = `with ${shown(setup.clearWanted)} mm free at its inner mouth`;
	const what = !Number.isFinite(wanted)
		? `${setup.name} cannot bring the chamber down to the tuning wanted.`
		: length <= 0
			? `${setup.name} has no room in this box.`
			: wanted <= setup.breath.longest
				? `${setup.name} would have to be ${shown(wanted)} mm long: too long to be straight (${shown(length)} mm) and too short for an L, whose second board would be lost in the elbow. ${drawn}`
				: `${setup.name} would have to be ${shown(wanted)} mm long; the box takes ${shown(length)} mm ${free}. ${drawn}`;
	const bend =
		setup.kind === 'slot' && setup.vent.bend === 'straight' ? 'Bend it into an L, take' : 'Take';
	trouble.check(
		['vents', setup.index, 'goal'],
		what,
		`${bend} a smaller opening, a higher tuning or a deeper box.`,
	);
}
