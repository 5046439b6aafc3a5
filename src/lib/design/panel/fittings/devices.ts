import { nth, ticks, TICKS_PER_MM } from '../../../measure';
import {
	commonArea,
	bounds,
	distanceTo,
	whereIs,
	type Outline,
	type Point,
	type Rect,
	rectangle,
} from '../../../geometry';
import type { Device } from '../../../job';
import { say, type Bench } from '../bench';
import type { DeviceFigure, Drill } from '../figures';
import { SCREW_EDGE } from './edge-distance';

type Side = Device['reach'][number];
const SIDES: readonly Side[] = ['right', 'top', 'left', 'bottom']; // counter-clockwise

/** The side of the board a side of the device faces once it is turned left. */
function facing(side: Side, turn: Device['turn']): Side {
	return nth(SIDES, (SIDES.indexOf(side) + turn / 90) % 4);
}

/** Devices in the panel's frame: they are asked for from the lower left of the board. */
export function deviceFigures(bench: Bench, board: Outline): DeviceFigure[] {
	return devicesOn(bench, board).map((d) => {
		const across = d.turn % 180 === 0;
		const body: Rect = {
			x: d.x,
			y: d.y,
			length: across ? d.length : d.width,
			width: across ? d.width : d.length,
		};
		const clear = { left: 0, right: 0, bottom: 0, top: 0 };
		for (const side of SIDES) clear[facing(side, d.turn)] = d.clear[side];
		return {
			id: d.id,
			name: d.name,
			body: box(body),
			space: box({
				x: body.x - clear.left,
				y: body.y - clear.bottom,
				length: body.length + clear.left + clear.right,
				width: body.width + clear.bottom + clear.top,
			}),
			reach: d.reach.map((side) => box(beside(body, facing(side, d.turn), d.reachDepth))),
			height: d.height,
			over: d.clear.over,
			mass: d.mass,
			at: d,
		};
	});
}

function devicesOn(bench: Bench, board: Outline): Device[] {
	const from = bounds(board);
	return bench.panel.devices.map((d) => ({
		...d,
		x: ticks(d.x + from.x),
		y: ticks(d.y + from.y),
	}));
}

const box = (r: Rect): Outline => rectangle(r.x, r.y, r.length, r.width);

/** The room for a hand in front of one side. */
function beside(b: Rect, side: Side, depth: number): Rect {
	if (side === 'left') return { ...b, x: b.x - depth, length: depth };
	if (side === 'right') return { ...b, x: b.x + b.length, length: depth };
	if (side === 'bottom') return { ...b, y: b.y - depth, width: depth };
	return { ...b, y: b.y + b.width, width: depth };
}

/** Fixing holes on the board, numbered, in the panel's frame. */
function holesOf(d: Device): { readonly at: Point; readonly diameter: Device['length'] }[] {
	return d.holes.map((h) => {
		const [l, w] = [d.length, d.width];
		const p =
			d.turn === 0
				? { x: h.x, y: h.y }
				: d.turn === 90
					? { x: w - h.y, y: h.x }
					: d.turn === 180
						? { x: l - h.x, y: w - h.y }
						: { x: h.y, y: l - h.x };
		return { at: { x: d.x + p.x, y: d.y + p.y }, diameter: h.diameter };
	});
}

/**
 * The drilling template: running dimensions from the lower left corner of the board's bounding
 * rectangle.
 */
export function drillsOf(bench: Bench, board: Outline): Drill[] {
	const from = bounds(board);
	const all = devicesOn(bench, board).flatMap((d) => holesOf(d).map((h) => ({ ...h, of: d.name })));
	return all.map((h, i) => ({
		n: i + 1,
		x: ticks(h.at.x - from.x),
		y: ticks(h.at.y - from.y),
		diameter: h.diameter,
		of: h.of,
	}));
}

const NOTHING = TICKS_PER_MM ** 2;
/** Overlap, cooling, reach, room and edge distances of an equipment board. */
export function checkDevices(
	bench: Bench,
	board: Outline,
	devices: readonly DeviceFigure[],
	cutOuts: readonly { readonly name: string; readonly outline: Outline }[],
): void {
	devices.forEach((d, i) => {
		onBoard(bench, d, i, board, cutOuts);
		devices.slice(i + 1).forEach((other) => besideOthers(bench, d, i, other));
		devices.forEach((other) => reachable(bench, d, i, other));
		const tall = d.height + d.over;
		if (bench.panel.room !== null && tall > bench.panel.room)
			bench.log.check(
				['devices', i, 'height'],
				`${d.name} stands ${say(bench, tall)} off the board with its free space, and there are ${say(bench, bench.panel.room)}.`,
				'Turn it, choose another place, or make more room.',
			);
	});
}

function onBoard(
	bench: Bench,
	d: DeviceFigure,
	i: number,
	board: Outline,
	cutOuts: readonly { readonly name: string; readonly outline: Outline }[],
): void {
	if (!d.body.every((p) => whereIs(p, board) !== 'outside'))
		bench.log.check(
			['devices', i],
			`${d.name} stands over the edge of the board.`,
			'Move it inwards, or make the board larger.',
		);
	for (const c of cutOuts)
		if (commonArea([d.body], [c.outline]) > NOTHING)
			bench.log.check(['devices', i], `${d.name} stands over ${c.name}.`, 'Move one of the two.');
	holesOf(d.at).forEach((h, k) => {
		const near = distanceTo(h.at, board);
		const inside = whereIs(h.at, board) === 'inside';
		if (!inside || near < SCREW_EDGE)
			bench.log.check(
				['devices', i, 'holes', k],
				inside
					? `Hole ${k + 1} of ${d.name} is ${say(bench, near)} from the edge of the board.`
					: `Hole ${k + 1} of ${d.name} lies off the board.`,
				`Keep fixing holes ${say(bench, SCREW_EDGE)} or more from the edge, or the board splits.`,
			);
	});
}

function besideOthers(bench: Bench, d: DeviceFigure, i: number, other: DeviceFigure): void {
	if (commonArea([d.body], [other.body]) > NOTHING)
		bench.log.check(
			['devices', i],
			`${d.name} and ${other.name} stand in the same place.`,
			'Move one of the two.',
		);
	else if (commonArea([d.space], [other.body]) > NOTHING) inFreeSpace(bench, d, i, other);
	else if (commonArea([other.space], [d.body]) > NOTHING) inFreeSpace(bench, other, i, d);
}

function inFreeSpace(bench: Bench, owner: DeviceFigure, i: number, intruder: DeviceFigure): void {
	bench.log.check(
		['devices', i, 'clear'],
		`${intruder.name} stands in the free space ${owner.name} asks for.`,
		'Move them apart; heat and plugs need that room.',
	);
}

function reachable(bench: Bench, d: DeviceFigure, i: number, other: DeviceFigure): void {
	if (other === d) return;
	if (d.reach.some((r) => commonArea([r], [other.body]) > NOTHING))
		bench.log.check(
			['devices', i, 'reach'],
			`${other.name} stands where a hand has to reach ${d.name}.`,
			`Leave ${say(bench, d.at.reachDepth)} free on that side.`,
		);
}
