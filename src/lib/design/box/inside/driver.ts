import { mm } from '../../../measure';
import type { Radiator } from '../../../job';
import { type Point, area, bounds } from '../../../geometry';
import {
	cubicTicks,
	reach,
	type Air,
	type Taken,
	frameOf,
	raised,
	slab,
	add3,
	scale3,
} from '../solid';
import {
	type Board,
	faceOf,
	liesOnBoard,
	noSuchBoard,
	onDivider,
	outermost,
	placeOn,
	roomBefore,
	roomBehind,
	sayNoSide,
	rowOf,
	through,
	wayOf,
	boardName,
	boardOf,
	dividerNumber,
} from '../board';
import type { BoardRack } from '../rack';
import { roundHole } from '../shell';
import type { ProblemLog } from '../../problem-log';
import {
	cutFor,
	cutHole,
	cutRadius,
	drillBolts,
	type Framed,
	framedName,
	type Seated,
} from '../mounted';
import { saySeat, sayDriver } from './driver-sheet';

/** A list of a box that is to be seated. */
interface Row<D extends Framed> {
	readonly list: Seated['list'];
	readonly framed: readonly D[];
	/** Rings that are made already. */
	readonly rings: number;
	/** Why nothing of this list may open into a chamber; null where it may. */
	readonly bars: (room: number) => { readonly what: string; readonly fix: string } | null;
}

/** Where a radiator would be one breather too many. */
export const besideVents =
	(vented: ReadonlySet<number>): Row<Radiator>['bars'] =>
	(room) =>
		vented.has(room)
			? {
					what: `Chamber ${room + 1} has a vent: passive radiators beside it are not worked out and left out.`,
					fix: 'Take the vent or the radiators, or a divider between them.',
				}
			: null;

/** Where things are seated, and what is made for them. */
interface Stage {
	readonly boards: readonly Board[];
	/** How many dividers are asked for. */
	readonly dividers: number;
	readonly rooms: readonly { readonly air: Air }[];
	readonly rack: BoardRack;
}

/**
 * All of a list put in their places, their holes cut; those without a wall to stand on are told.
 */
export function seatAll<D extends Framed>(
	row: Row<D>,
	stage: Stage,
	log: ProblemLog,
): { seated: Seated<D>[]; rings: Board[] } {
	const seated: Seated<D>[] = [];
	const rings: Board[] = [];
	row.framed.forEach((driver, d) => {
		sayDriver({ list: row.list, driver, d }, cutHole(driver, { x: 0, y: 0 }).size, log);
		sayPitch(row.list, driver, d, log);
		sayNoSide(driver, [row.list, d, 'into'], log);
		let refused = sayRingInside(row.list, driver, d, log);
		if (refused) return;
		const ring =
			driver.seat.kind === 'ring'
				? stage.rack.of(driver.seat.material, [row.list, d, 'seat', 'material'])
				: null;
		const own = ownPlaces({ list: row.list, driver, index: d }, ring, stage, log);
		own.forEach((one, i) => {
			const barred = row.bars(one.room);
			if (barred && !refused) log.stop([row.list, d, 'board'], barred.what, barred.fix);
			if (barred || !holesFor(one, log, !refused)) {
				refused = true;
				return;
			}
			seated.push(one);
			if (i === 0) saySeat(one, log);
			if (ring && driver.seat.kind === 'ring')
				rings.push(ringBoard(one, ring, driver.seat.width, row.rings + rings.length + 1));
		});
	});
	return { seated, rings };
}

/** A ring would stand in the air of the other chamber, where nothing takes account of it. */
function sayRingInside(list: Seated['list'], driver: Framed, d: number, log: ProblemLog): boolean {
	if (driver.seat.kind !== 'ring' || dividerNumber(driver.board) === null) return false;
	log.stop(
		[list, d, 'seat'],
		`${framedName(list, driver.name, d)} sits on a divider: a ring is made for the outside of a box.`,
		'Set its frame on the face, or in a routed seat.',
	);
	return true;
}

const pitchOf = (driver: Framed): number => driver.pitch ?? driver.frame + mm(20);

function sayPitch(list: Seated['list'], driver: Framed, d: number, log: ProblemLog): void {
	const pitch = pitchOf(driver);
	if (driver.count === 1 || pitch >= driver.frame) return;
	log.check(
		[list, d, 'pitch'],
		`The frames of ${driver.count} ${list === 'drivers' ? 'drivers' : 'radiators'} ${log.say(pitch)} apart run over each other: each is ${log.say(driver.frame)}.`,
		`Give at least ${log.least(driver.frame)}.`,
	);
}

/** Every one of a row in its place; none where its board is not there. */
function ownPlaces<D extends Framed>(
	{ list, driver, index }: Pick<Seated<D>, 'list' | 'driver' | 'index'>,
	ring: Board['material'] | null,
	{ boards, rooms, dividers }: Stage,
	log: ProblemLog,
): Seated<D>[] {
	const places = rowOf(driver.count, pitchOf(driver)).flatMap(
		(shift) => placeOn(boards, driver.board, driver.at, shift, driver.into) ?? [],
	);
	if (places.length === 0)
		log.stop([list, index, 'board'], ...noSuchBoard(boards, driver.board, dividers));
	const seat = driver.seat.kind === 'routed' ? -driver.seat.depth : (ring?.measured ?? 0);
	const name = framedName(list, driver.name, index);
	return places.map((place, i) => ({
		list,
		driver,
		index,
		name: `${name}${driver.count > 1 ? ` ${String.fromCharCode(97 + i)}` : ''}`,
		place,
		room: roomBehind(rooms, place),
		front: onDivider(place) ? roomBefore(rooms, place) : null,
		proud: place.proud + seat,
		cutRadius: cutRadius(driver),
	}));
}

/**
 * What a driver takes of its chamber, and gives back: the doublers behind its wall were counted
 * whole, but its cut-out goes through them. A divider is in no chamber: what its cut-out opens
 * behind the frame is air of the chamber the magnet lies in.
 */
export function driverTakes({ driver, name, room, place, proud }: Seated<Framed>): Taken[] {
	if (room < 0) return [];
	const open = Math.abs(area(cutHole(driver, place.at).outline));
	const cut = place.layers
		.filter((b) => b.role === 'doubler')
		.map((b) => ({ room, what: DOUBLED, volume: -open * b.material.measured }));
	if (onDivider(place)) {
		const deep = Math.max(0, place.stack + proud);
		cut.push({ room, what: `Cut-out of ${name} in the divider`, volume: -open * deep });
	}
	const own = { room, what: name, volume: cubicTicks(driver.displacement ?? 0) };
	return own.volume > 0 ? [own, ...cut] : cut;
}

/** The line of the doublers in the list of what is taken off the volume. */
export const DOUBLED = 'Doubled boards';

/**
 * Cuts the hole in the wall and in every layer behind it, and the seat if one is routed. False when
 * it leaves the board.
 */
function holesFor(one: Seated<Framed>, log: ProblemLog, tell: boolean): boolean {
	const { driver, place, name } = one;
	const hole = { ...cutHole(driver, place.at), of: cutFor(one), name };
	if (!liesOnBoard(hole, place.wall)) {
		const b = bounds(faceOf(place.wall).map(round));
		if (tell)
			log.stop(
				[one.list, one.index, 'cutout'],
				`The cut-out of ${name} (${log.say(hole.size)}) does not lie within its board, ${log.say([b.length, b.width])}.`,
				`Move it, take a smaller ${cutFor(one)} or a larger board.`,
			);
		return false;
	}
	place.wall.holes.push(hole);
	if (onDivider(place)) place.wall.notes.push(howItSits(one));
	drillBolts(one, hole, log);
	if (driver.seat.kind === 'routed') {
		// The frame lies on the outermost layer: that is where its seat is routed.
		const face = outermost(place);
		const at = through(place.at, place.wall.frame, face.frame);
		face.holes.push({
			...roundHole(at, driver.frame + mm(1), driver.seat.depth),
			of: 'seat',
			name: `seat of ${name}`,
			...(place.reversed ? { face: 'inside' as const } : {}),
		});
	}
	for (const layer of place.layers)
		layer.holes.push({
			...cutHole(driver, through(place.at, place.wall.frame, layer.frame)),
			of: cutFor(one),
			name,
		});
	return true;
}

/** Told on the drawing of a divider: which face the frame lies on, and when it goes in. */
function howItSits({ name, place: { reversed, inward } }: Seated<Framed>): string {
	const face = reversed ? 'inside' : 'outside';
	return `${name}: its frame lies on the ${face} face, its magnet points ${wayOf(inward)}. Seal it to the board; it goes in before the box is shut, or through a board that can be unscrewed.`;
}

const round = (p: Point): Point => ({ x: Math.round(p.x), y: Math.round(p.y) });

/** A square of board with the hole for the frame, glued on the face round the driver. */
function ringBoard(
	one: Seated<Framed>,
	material: NonNullable<Board['material']>,
	width: number,
	n: number,
): Board {
	const { wall, at } = one.place;
	const half = one.driver.frame / 2 + width;
	const t = material.measured;
	const frame = frameOf(raised({ x: 0, y: 0 }, wall.frame, t), wall.frame.n, wall.frame.v);
	const corners = [
		{ x: at.x - half, y: at.y - half },
		{ x: at.x + half, y: at.y - half },
		{ x: at.x + half, y: at.y + half },
		{ x: at.x - half, y: at.y + half },
	];
	const board = boardOf({
		key: `ring-${n}`,
		wall: wall.wall,
		name: `Ring on ${boardName(wall.key)}`,
		role: 'ring',
		material,
		frame,
		solid: slab(corners, frame, t),
		grain: wall.grain,
	});
	board.holes.push({
		...roundHole({ x: half, y: half }, one.driver.frame + mm(2)),
		of: cutFor(one),
		name: one.name,
	});
	board.notes.push('Glue on the outside; round its edge over when the cloth is to follow it.');
	return board;
}

/** Room from the seat of the flange inward: along the axis, and at the rim of the magnet. */
export function roomFor(one: Seated<Framed>, air: Air): { axis: number; rim: number } {
	const { place, driver } = one;
	const magnet = (driver.magnet ?? one.cutRadius * 2) / 2;
	const from = place.point;
	return {
		axis: reach(air, from, place.inward, 0) + one.proud,
		rim: reach(air, from, place.inward, magnet) + one.proud,
	};
}

/** A point on the driver's body: `deep` below its flange, `out` from its axis at `turn` radians. */
export function onDriver(
	one: Seated<Framed>,
	deep: number,
	out: number,
	turn: number,
): { x: number; y: number; z: number } {
	const { place } = one;
	const { u, v } = place.wall.frame;
	const base = add3(place.point, scale3(place.inward, deep - one.proud));
	return add3(base, add3(scale3(u, out * Math.cos(turn)), scale3(v, out * Math.sin(turn))));
}
