import { nth, TICKS_PER_MM } from '../../../measure';
import type { Box, BoxDevice } from '../../../job';
import { type Outline, type Point, type Rect, rectangle } from '../../../geometry';
import {
	type Board,
	boundsOf,
	faceOf,
	liesOn,
	type Obstacle,
	outermost,
	type Place,
	placeOn,
	roomBehind,
	through,
} from '../board';
import { roundHole } from '../shell';
import { type Air, airHolds, flat, over, raised, type Point3 } from '../solid';
import type { ProblemLog } from '../../problem-log';

/** A device in its place on a wall; outlines are in the frame of the wall, from outside. */
export interface Mounted {
	readonly index: number;
	readonly name: string;
	readonly device: BoxDevice;
	readonly place: Place;
	/** The board its screws go into: the wall or a layer on it. */
	readonly on: Board;
	readonly body: Outline;
	readonly space: Outline;
	readonly reach: readonly Outline[];
	/** The chamber it stands in; null outside. */
	readonly room: number | null;
	/** Its middle, for its weight. */
	readonly middle: Point3;
	readonly obstacle: Obstacle | null;
}

type Side = BoxDevice['reach'][number];
const SIDES: readonly Side[] = ['right', 'top', 'left', 'bottom']; // counter-clockwise

/** The side of the board a side of the device faces once it is turned left. */
const facing = (side: Side, turn: number): Side =>
	nth(SIDES, (SIDES.indexOf(side) + turn / 90) % 4);

/** Places the devices and drills for their screws; what has no place is told and left out. */
export function placeDevices(
	box: Box,
	boards: readonly Board[],
	rooms: readonly { readonly air: Air }[],
	log: ProblemLog,
): Mounted[] {
	return box.devices.flatMap((device, index) => {
		const path = ['devices', index];
		const body = bodyOf(device);
		const at = { x: body.x + body.length / 2, y: body.y + body.width / 2 };
		const place = placeOn(boards, device.board, { across: null, up: null });
		if (!place) {
			const what = `This form has no board '${device.board}'.`;
			log.stop([...path, 'board'], what, 'Choose one of its own walls.');
			return [];
		}
		const here = { ...place, at, point: raised(at, place.wall.frame) };
		const inside = device.side === 'inside';
		const room = inside ? roomBehind(rooms, here) : null;
		if (room === -1) {
			log.stop(
				path,
				`Behind the middle of ${device.name} there is no air but a board.`,
				'Move it off the edge, the divider or the slot.',
			);
			return [];
		}
		const made = {
			index,
			name: device.name,
			device,
			place: here,
			...outlinesOf(device, body),
			room,
		};
		const on = inside ? innermost(here) : outermost(here);
		const deep = inside ? -place.stack - device.height / 2 : place.proud + device.height / 2;
		drill(made, on);
		return [
			{
				...made,
				on,
				middle: raised(at, place.wall.frame, deep),
				obstacle: inside ? obstacleOf(made) : null,
			},
		];
	});
}

/** The wall, or the last layer glued on inside it. */
const innermost = ({ wall, layers }: Place): Board =>
	layers.filter((b) => b.role === 'doubler').at(-1) ?? wall;

function bodyOf({ x, y, length, width, turn }: BoxDevice): Rect {
	const across = turn % 180 === 0;
	return { x, y, length: across ? length : width, width: across ? width : length };
}

function outlinesOf(d: BoxDevice, body: Rect): Pick<Mounted, 'body' | 'space' | 'reach'> {
	const clear = { left: 0, right: 0, bottom: 0, top: 0 };
	for (const side of SIDES) clear[facing(side, d.turn)] = d.clear[side];
	return {
		body: rectangle(body.x, body.y, body.length, body.width),
		space: rectangle(
			body.x - clear.left,
			body.y - clear.bottom,
			body.length + clear.left + clear.right,
			body.width + clear.bottom + clear.top,
		),
		reach: d.reach.map((side) => beside(body, facing(side, d.turn), d.reachDepth)),
	};
}

/** The room for a hand in front of one side. */
function beside({ x, y, length, width }: Rect, side: Side, depth: number): Outline {
	if (side === 'left') return rectangle(x - depth, y, depth, width);
	if (side === 'right') return rectangle(x + length, y, depth, width);
	if (side === 'bottom') return rectangle(x, y - depth, length, depth);
	return rectangle(x, y + width, length, depth);
}

/** Middles of its holes in the frame of the wall. */
export function screwsAt(d: BoxDevice): Point[] {
	const turned = (h: Point): Point => {
		if (d.turn === 0) return h;
		if (d.turn === 90) return { x: d.width - h.y, y: h.x };
		if (d.turn === 180) return { x: d.length - h.x, y: d.width - h.y };
		return { x: h.y, y: d.length - h.x };
	};
	return d.holes.map(turned).map((p) => ({ x: d.x + p.x, y: d.y + p.y }));
}

/** Drills for the screws that lie on the board; the others are told by the checks. */
function drill(
	{ device, name, place }: Pick<Mounted, 'device' | 'name' | 'place'>,
	on: Board,
): void {
	screwsAt(device).forEach((p, k) => {
		const hole = roundHole(through(p, place.wall.frame, on.frame), nth(device.holes, k).diameter);
		if (liesOn(hole, faceOf(on))) on.holes.push({ ...hole, of: 'device', name });
	});
}

type Standing = Pick<Mounted, 'name' | 'device' | 'place' | 'body'>;

/** A box on the inside of its wall. */
function obstacleOf({ name, device, place, body }: Standing): Obstacle {
	const { frame } = place.wall;
	const [from, to] = [place.stack, place.stack + device.height];
	const corners = body.flatMap((p) => [from, to].map((deep) => raised(p, frame, -deep)));
	const [a, c] = [nth(body, 0), nth(body, 2)];
	return {
		name,
		...boundsOf(corners),
		has(p, margin) {
			const q = flat(p, frame);
			const deep = -over(p, frame);
			const within = (n: number, low: number, high: number): boolean =>
				n > low - margin && n < high + margin;
			return within(q.x, a.x, c.x) && within(q.y, a.y, c.y) && within(deep, from, to);
		},
	};
}

/** Points through a device inside and the free space over it, fine enough to meet any board. */
export function pointsIn({ device, place, body }: Standing): Point3[] {
	const [a, c] = [nth(body, 0), nth(body, 2)];
	const step = (from: number, to: number): number[] => {
		const n = Math.min(40, Math.max(2, Math.ceil((to - from) / (8 * TICKS_PER_MM))));
		return Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n);
	};
	const deep = step(place.stack + 4, place.stack + device.height + device.clear.over);
	return step(a.x + 4, c.x - 4).flatMap((x) =>
		step(a.y + 4, c.y - 4).flatMap((y) => deep.map((d) => raised({ x, y }, place.wall.frame, -d))),
	);
}

/** Does the air of its chamber hold all of it? */
export const fitsIn = (air: Air, points: readonly Point3[]): boolean =>
	points.every((p) => airHolds(air, p));
