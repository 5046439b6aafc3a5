import { nth } from '../../../measure';
import type { Box, Driver, Radiator } from '../../../job';
import { volumeOfAir, type Air, type SweptAir, type Taken } from '../solid';
import { type Board, type Obstacle, type Seam, wallOf } from '../board';
import { braceSwept, type SlottedWall } from './brace';
import type { Braced, Rod } from './braces';
import { cleatAll, cleatsIn } from './cleat';
import type { CleatRoom } from './cleat-section';
import { doubleInside, doubleOutside } from './doubler';
import { besideVents, DOUBLED, driverTakes, seatAll } from './driver';
import type { Framed, Seated } from '../mounted';
import { cutTerminal } from './fitting';
import { liningTakes, type Lined } from './lining';
import { type Mounted, placeDevices } from '../devices';
import { placeTieDowns, type Tied } from '../hold';
import type { BoardRack } from '../rack';
import { divide } from './rooms';
import { type Shell, type SweptSection, openFront } from '../shell';
import type { ProblemLog } from '../../problem-log';
import {
	clearOf,
	slotSetups,
	roundSetups,
	sidesAlong,
	turnsOf,
	type SlotSetup,
	type VentSetup,
	tuneRooms,
	type VentResult,
} from '../vent';

/** Everything in a box once all is in its place. */
export interface Inside {
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
	readonly rooms: readonly { readonly air: Air; readonly gross: number }[];
	readonly taken: readonly Taken[];
	/** Drivers. */
	readonly seated: readonly Seated[];
	readonly radiators: readonly Seated<Radiator>[];
	readonly rods: readonly Rod[];
	readonly vents: readonly VentResult[];
	readonly obstacles: readonly Obstacle[];
	readonly lined: Lined;
	readonly tied: readonly Tied[];
	readonly devices: readonly Mounted[];
}

/** What the walls enclose, before anything is put in. */
export function bareAir(section: SweptSection): SweptAir {
	const { inner, keys, x0, x1 } = section;
	return { kind: 'swept', corners: inner, keys, x0, x1, left: 'left', right: 'right' };
}

/** All that sits in a cut-out by its frame, drivers first. */
export const framedOf = ({
	seated,
	radiators,
}: Pick<Inside, 'seated' | 'radiators'>): readonly Seated<Framed>[] => [...seated, ...radiators];

/**
 * Fills a swept box: layers, dividers, slots, braces, cleats, then what is mounted on its walls.
 */
export function fillSwept(box: Box, shell: Shell, rack: BoardRack, log: ProblemLog): Inside {
	const { section } = shell;
	const bare = bareAir(section);
	const doubled = doubleInside(section, box, bare, rack, log);
	const overlays = doubleOutside(section, box, rack, log);
	const divided = divide(box, bare, doubled.air, rack, log);
	const walls = [...shell.boards, ...doubled.boards, ...overlays.boards];
	const slots = slotSetups(box, { boards: walls, rooms: divided.rooms, section }, rack, log);
	const opened = slots.reduce(
		(boards, s) => openFront(boards, section, s.plane, s.vent, s.run),
		walls,
	);
	const clear = divided.rooms.map((r, i) => clearOf(r.air, i, slots));
	const open = clear.map((air, r) => ({
		air,
		slotted: slottedWalls(slots.filter((s) => s.room === r)),
	}));
	const braced = braceSwept(box, open, bare, rack, log);
	const cleated = cleatAll(
		box,
		clear.length,
		(r, wish, material, first) => {
			const air = clear[r];
			if (!air) return null;
			const room = cleatRoom(air, nth(divided.rooms, r).air, r, braced.boards, slots);
			return cleatsIn(room, wish, material, first);
		},
		rack,
		log,
	);
	const made = { shell, doubled, overlays, divided, braced, cleated };
	return mount(box, stageOf(opened, made), { slots, section }, rack, log);
}

type Glued = Pick<Inside, 'boards' | 'seams'>;

/**
 * What stands in a box before anything is mounted; `walls` with what was cut out of them for slots.
 */
export function stageOf(
	walls: readonly Board[],
	made: {
		readonly shell: Glued;
		readonly doubled: Glued;
		readonly overlays: Glued;
		readonly divided: Glued & Pick<Inside, 'rooms'>;
		readonly braced: Braced;
		readonly cleated: Glued & { readonly taken: readonly number[] };
	},
): InsideStage {
	const { divided, braced, cleated } = made;
	const { rooms } = divided;
	const doubled = rooms.map((r) => r.gross - volumeOfAir(r.air));
	const taken = { [DOUBLED]: doubled, Braces: braced.taken, Cleats: cleated.taken };
	return {
		boards: [...walls, ...divided.boards, ...braced.boards, ...cleated.boards],
		seams: Object.values<Glued>(made).flatMap((m) => m.seams),
		rooms,
		taken: Object.entries(taken).flatMap(([what, volumes]) =>
			volumes.map((volume, room) => ({ room, what, volume })),
		),
		rods: braced.rods,
		obstacles: braced.obstacles,
	};
}

export type InsideStage = Pick<
	Inside,
	'boards' | 'seams' | 'rooms' | 'taken' | 'rods' | 'obstacles'
>;

/** What only a swept box has. */
interface Swept {
	readonly slots: readonly SlotSetup[];
	readonly section: SweptSection | null;
}

/**
 * What is mounted on the walls of any box: drivers, passive radiators, the terminal, lining, tubes;
 * then the vents are tuned.
 */
export function mount(
	box: Box,
	stage: InsideStage,
	{ slots, section }: Swept,
	rack: BoardRack,
	log: ProblemLog,
): Inside {
	const { rooms, boards } = stage;
	const tubes = roundSetups(box, { boards, rooms, section }, log);
	const setups: VentSetup[] = [...slots, ...tubes];
	const vented = new Set(setups.flatMap(roomsOf));
	const dividers = box.dividers.length;
	const { seated, radiators, rings } = seatBoth(
		box,
		{ boards, dividers, rooms, rack },
		vented,
		log,
	);
	const taken = [...stage.taken];
	taken.push(...framedOf({ seated, radiators }).flatMap(driverTakes));
	const terminal = cutTerminal(box, boards, rooms, log);
	if (terminal) taken.push(terminal);
	const tied = placeTieDowns(box, boards, log);
	const devices = placeDevices(box, boards, rooms, log);
	for (const { room, name, device: d } of devices)
		if (room !== null) taken.push({ room, what: name, volume: d.length * d.width * d.height });
	const lined = liningTakes(box, boards, rooms, log.ruler);
	taken.push(...lined.taken);
	const tuned = tuneRooms(rooms, taken, setups, log);
	return {
		...stage,
		boards: [...boards, ...rings, ...tuned.boards],
		seams: [...stage.seams, ...tuned.seams, ...ringSeams(rings)],
		taken: [...taken, ...tuned.taken],
		seated,
		radiators,
		lined,
		tied,
		devices,
		vents: tuned.vents,
		obstacles: [
			...stage.obstacles,
			...tuned.obstacles,
			...devices.flatMap((d) => d.obstacle ?? []),
		],
	};
}

/** The chambers a vent opens into, less one: two of a tube through a divider. */
const roomsOf = (setup: VentSetup): number[] =>
	setup.kind === 'round' && setup.other !== null ? [setup.room, setup.other] : [setup.room];

function seatBoth(
	box: Box,
	stage: Parameters<typeof seatAll>[1],
	vented: ReadonlySet<number>,
	log: ProblemLog,
): Pick<Inside, 'seated' | 'radiators'> & { rings: Board[] } {
	const drivers = seatAll<Driver>(
		{ list: 'drivers', framed: box.drivers, rings: 0, bars: () => null },
		stage,
		log,
	);
	const passive = seatAll<Radiator>(
		{
			list: 'radiators',
			framed: box.radiators,
			rings: drivers.rings.length,
			bars: besideVents(vented),
		},
		stage,
		log,
	);
	const rings = [...drivers.rings, ...passive.rings];
	return { seated: drivers.seated, radiators: passive.seated, rings };
}

function ringSeams(rings: readonly Board[]): Seam[] {
	return rings.map((ring): Seam => {
		const hole = nth(nth(ring.holes, 0).size, 0);
		const a = ring.solid.outside;
		const side = Math.hypot(
			nth(a, 1).x - nth(a, 0).x,
			nth(a, 1).y - nth(a, 0).y,
			nth(a, 1).z - nth(a, 0).z,
		);
		const area = side * side - (Math.PI / 4) * hole * hole;
		return {
			letter: '',
			between: [wallOf(ring), ring.key],
			kind: 'face',
			length: 0,
			area,
			at: nth(a, 0),
			seals: false,
		};
	});
}

function cleatRoom(
	air: SweptAir,
	whole: SweptAir,
	r: number,
	braces: readonly Board[],
	slots: readonly SlotSetup[],
): CleatRoom {
	const own = slots.filter((s) => s.room === r && !s.cheek);
	const taken = new Set(own.flatMap((s) => slotSides(s)));
	const plates = braces
		.filter((b) => Math.abs(b.frame.n.x) > 0.99)
		.map((b): [number, number] => {
			const [x, y] = [nth(b.solid.outside, 0).x, nth(b.solid.inside, 0).x];
			return [Math.min(x, y), Math.max(x, y)];
		})
		.filter(([from, to]) => from > air.x0 && to < air.x1)
		.sort((a, b) => a[0] - b[0]);
	const edges = [air.x0, ...plates.flat(), air.x1];
	const free = Array.from(
		{ length: edges.length / 2 },
		(_, i) => [nth(edges, 2 * i), nth(edges, 2 * i + 1)] as const,
	);
	return {
		air,
		walls: whole.corners,
		sides: air.keys.map((key) => !taken.has(key)),
		ends: {
			left: whole.left === 'left' && !taken.has('left'),
			right: whole.right === 'right' && !taken.has('right'),
		},
		free: free.filter(([from, to]) => to > from),
	};
}

function slottedWalls(slots: readonly SlotSetup[]): SlottedWall[] {
	return slots
		.filter((s) => !s.cheek)
		.flatMap((s) =>
			slotSides(s).map((wall) => ({ wall, deep: s.vent.gap + s.size.board, slot: s.name })),
		);
}

/** The walls a slot runs along: its board is there instead. */
const slotSides = (s: SlotSetup): string[] => sidesAlong(s.plane, turnsOf(s.vent));
