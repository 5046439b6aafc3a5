import { mm } from '../../../measure';
import type { Box, Driver } from '../../../job';
import { type Outline, type Point, area, bounds } from '../../../geometry';
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
	type Hole,
	faceOf,
	liesOn,
	outermost,
	placeOn,
	roomBehind,
	rowOf,
	through,
	type Place,
	boardName,
	boardOf,
} from '../board';
import { shown } from '../shown';
import type { BoardRack } from '../rack';
import { roundHole } from '../shell';
import type { ProblemLog } from '../../problem-log';
import { drillBolts } from '../mounted';
import { saySeat, sayDriver } from './driver-sheet';

/** One driver of a row, in its place. */
export interface Seated {
	readonly driver: Driver;
	readonly index: number;
	readonly name: string;
	readonly place: Place;
	/** Chamber number less one; -1 where a board stands behind it. */
	readonly room: number;
	/**
	 * How far the flange sits outside the face of the wall (a ring) or inside it (a routed seat,
	 * negative).
	 */
	readonly proud: number;
	readonly cutRadius: number;
}

/** All drivers put in their places, their holes cut; those without a wall to stand on are told. */
export function seatDrivers(
	box: Box,
	boards: readonly Board[],
	rooms: readonly { air: Air }[],
	rack: BoardRack,
	log: ProblemLog,
): { seated: Seated[]; rings: Board[] } {
	const seated: Seated[] = [];
	const rings: Board[] = [];
	box.drivers.forEach((driver, d) => {
		sayDriver(driver, d, cutHole(driver, { x: 0, y: 0 }).size, log);
		const pitch = driver.pitch ?? driver.frame + mm(20);
		const shifts = rowOf(driver.count, pitch);
		if (driver.count > 1 && pitch < driver.frame) {
			log.check(
				['drivers', d, 'pitch'],
				`The frames of ${driver.count} drivers ${shown(pitch)} mm apart run over each other: each is ${shown(driver.frame)} mm.`,
				`Give at least ${shown(driver.frame)} mm.`,
			);
		}
		let refused = false;
		shifts.forEach((shift, i) => {
			const place = placeOn(boards, driver.board, driver.at, shift);
			if (!place) {
				if (i === 0)
					log.stop(
						['drivers', d, 'board'],
						`This form has no board '${driver.board}'.`,
						'Choose one of its own walls.',
					);
				return;
			}
			const name = `${driver.name ?? `Driver ${d + 1}`}${driver.count > 1 ? ` ${String.fromCharCode(97 + i)}` : ''}`;
			const ring =
				driver.seat.kind === 'ring'
					? rack.of(driver.seat.material, ['drivers', d, 'seat', 'material'])
					: null;
			const seat = driver.seat.kind === 'routed' ? -driver.seat.depth : (ring?.measured ?? 0);
			const proud = place.proud + seat;
			const one: Seated = {
				driver,
				index: d,
				name,
				place,
				room: roomBehind(rooms, place),
				proud,
				cutRadius: cutRadius(driver),
			};
			if (!holesFor(one, log, !refused)) {
				refused = true;
				return;
			}
			seated.push(one);
			if (i === 0) saySeat(one, log);
			if (ring && driver.seat.kind === 'ring')
				rings.push(ringBoard(one, ring, driver.seat.width, rings.length + 1));
		});
	});
	return { seated, rings };
}

/**
 * What a driver takes of its chamber, and gives back: the doublers behind its wall were counted
 * whole, but its cut-out goes through them.
 */
export function driverTakes({ driver, name, room, place }: Seated): Taken[] {
	if (room < 0) return [];
	const open = Math.abs(area(cutHole(driver, place.at).outline));
	const cut = place.layers
		.filter((b) => b.role === 'doubler')
		.map((b) => ({ room, what: DOUBLED, volume: -open * b.material.measured }));
	const own = { room, what: name, volume: cubicTicks(driver.displacement ?? 0) };
	return own.volume > 0 ? [own, ...cut] : cut;
}

/** The line of the doublers in the list of what is taken off the volume. */
export const DOUBLED = 'Doubled boards';

function cutRadius({ cutout }: Driver): number {
	if (cutout.kind === 'round') return cutout.diameter / 2;
	if (cutout.kind === 'oval') return Math.max(cutout.length, cutout.width) / 2;
	const b = bounds(cutout.outline);
	return Math.hypot(b.length, b.width) / 2;
}

/** Outline of the cut-out round its centre, and its size for the drawing. */
function cutHole(driver: Driver, at: Point): Hole {
	const { cutout } = driver;
	if (cutout.kind === 'round') return roundHole(at, cutout.diameter);
	if (cutout.kind === 'oval')
		return {
			...roundHole(at, cutout.width),
			outline: oval(at, cutout.length, cutout.width),
			size: [cutout.length, cutout.width],
		};
	const b = bounds(cutout.outline);
	const outline = cutout.outline.map((c) => ({
		...('bulge' in c && c.bulge ? { bulge: c.bulge } : {}),
		x: c.x - b.x - b.length / 2 + at.x,
		y: c.y - b.y - b.width / 2 + at.y,
	}));
	return { ...roundHole(at, 0), outline, size: [b.length, b.width] };
}

/** Straight sides with half circles at the ends of the longer way. */
function oval(at: Point, length: number, width: number): Outline {
	const r = Math.min(length, width) / 2;
	const [dx, dy] = length >= width ? [length / 2 - r, r] : [r, width / 2 - r];
	const c = (x: number, y: number, bulge = 0): Outline[number] => ({
		x: at.x + x,
		y: at.y + y,
		...(bulge ? { bulge } : {}),
	});
	return length >= width
		? [c(-dx, -dy), c(dx, -dy, 1), c(dx, dy), c(-dx, dy, 1)]
		: [c(dx, -dy), c(dx, dy, 1), c(-dx, dy), c(-dx, -dy, 1)];
}

/**
 * Cuts the hole in the wall and in every layer behind it, and the seat if one is routed. False when
 * it leaves the board.
 */
function holesFor(one: Seated, log: ProblemLog, tell: boolean): boolean {
	const { driver, place, name } = one;
	const hole = { ...cutHole(driver, place.at), of: 'driver', name };
	const face = faceOf(place.wall);
	if (!liesOn(hole, face)) {
		const size = hole.size.map(shown).join(' x ');
		const b = bounds(face.map(round));
		if (tell)
			log.stop(
				['drivers', one.index, 'cutout'],
				`The cut-out of ${name} (${size} mm) does not lie within its board, ${shown(b.length)} x ${shown(b.width)} mm.`,
				'Move it, take a smaller driver or a larger board.',
			);
		return false;
	}
	place.wall.holes.push(hole);
	drillBolts(one, hole, log);
	if (driver.seat.kind === 'routed') {
		// The frame lies on the outermost layer: that is where its seat is routed.
		const face = outermost(place);
		const at = through(place.at, place.wall.frame, face.frame);
		face.holes.push({
			...roundHole(at, driver.frame + mm(1), driver.seat.depth),
			of: 'seat',
			name: `seat of ${name}`,
		});
	}
	for (const layer of place.layers)
		layer.holes.push({
			...cutHole(driver, through(place.at, place.wall.frame, layer.frame)),
			of: 'driver',
			name,
		});
	return true;
}

const round = (p: Point): Point => ({ x: Math.round(p.x), y: Math.round(p.y) });

/** A square of board with the hole for the frame, glued on the face round the driver. */
function ringBoard(
	one: Seated,
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
		of: 'driver',
		name: one.name,
	});
	board.notes.push('Glue on the outside; round its edge over when the cloth is to follow it.');
	return board;
}

/** Room from the seat of the flange inward: along the axis, and at the rim of the magnet. */
export function roomFor(one: Seated, air: Air): { axis: number; rim: number } {
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
	one: Seated,
	deep: number,
	out: number,
	turn: number,
): { x: number; y: number; z: number } {
	const { place } = one;
	const { u, v } = place.wall.frame;
	const base = add3(place.point, scale3(place.inward, deep - one.proud));
	return add3(base, add3(scale3(u, out * Math.cos(turn)), scale3(v, out * Math.sin(turn))));
}
