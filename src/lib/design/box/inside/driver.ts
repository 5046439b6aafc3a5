import { mm } from '../../../measure';
import type { Box, Driver } from '../../../job';
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
	type Place,
	boardName,
	boardOf,
	dividerNumber,
} from '../board';
import { shown } from '../shown';
import type { BoardRack } from '../rack';
import { roundHole } from '../shell';
import type { ProblemLog } from '../../problem-log';
import { cutHole, cutRadius, drillBolts } from '../mounted';
import { saySeat, sayDriver } from './driver-sheet';

/** One driver of a row, in its place. */
export interface Seated {
	readonly driver: Driver;
	readonly index: number;
	readonly name: string;
	readonly place: Place;
	/** Chamber number less one; -1 where a board stands behind it. */
	readonly room: number;
	/** Of one on a divider: the chamber its cone looks into, counted alike. */
	readonly front: number | null;
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
		sayNoSide(driver, ['drivers', d, 'into'], log);
		let refused = sayRingInside(driver, d, log);
		if (refused) return;
		shifts.forEach((shift, i) => {
			const place = placeOn(boards, driver.board, driver.at, shift, driver.into);
			if (!place) {
				const lost = noSuchBoard(boards, driver.board, box.dividers.length);
				if (i === 0) log.stop(['drivers', d, 'board'], ...lost);
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
				front: onDivider(place) ? roomBefore(rooms, place) : null,
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

/** A ring would stand in the air of the other chamber, where nothing takes account of it. */
function sayRingInside(driver: Driver, d: number, log: ProblemLog): boolean {
	if (driver.seat.kind !== 'ring' || dividerNumber(driver.board) === null) return false;
	log.stop(
		['drivers', d, 'seat'],
		`${driver.name ?? `Driver ${d + 1}`} sits on a divider: a ring is made for the outside of a box.`,
		'Set its frame on the face, or in a routed seat.',
	);
	return true;
}

/**
 * What a driver takes of its chamber, and gives back: the doublers behind its wall were counted
 * whole, but its cut-out goes through them. A divider is in no chamber: what its cut-out opens
 * behind the frame is air of the chamber the magnet lies in.
 */
export function driverTakes({ driver, name, room, place, proud }: Seated): Taken[] {
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
function holesFor(one: Seated, log: ProblemLog, tell: boolean): boolean {
	const { driver, place, name } = one;
	const hole = { ...cutHole(driver, place.at), of: 'driver', name };
	if (!liesOnBoard(hole, place.wall)) {
		const size = hole.size.map(shown).join(' x ');
		const b = bounds(faceOf(place.wall).map(round));
		if (tell)
			log.stop(
				['drivers', one.index, 'cutout'],
				`The cut-out of ${name} (${size} mm) does not lie within its board, ${shown(b.length)} x ${shown(b.width)} mm.`,
				'Move it, take a smaller driver or a larger board.',
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
			of: 'driver',
			name,
		});
	return true;
}

/** Told on the drawing of a divider: which face the frame lies on, and when it goes in. */
function howItSits({ name, place: { reversed, inward } }: Seated): string {
	const face = reversed ? 'inside' : 'outside';
	return `${name}: its frame lies on the ${face} face, its magnet points ${wayOf(inward)}. Seal it to the board; it goes in before the box is shut, or through a board that can be unscrewed.`;
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
