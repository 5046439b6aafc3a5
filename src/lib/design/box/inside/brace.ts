import { lastOf, nth, around } from '../../../measure';
import type { Box, Brace } from '../../../job';
import type { Line } from '../../../geometry';
import { type SweptAir, frameOf, crossingsOf, stripAcross, p3, type Point3 } from '../solid';
import {
	braceAll,
	braceName,
	type Braced,
	type Dowel,
	type Plate,
	type PlateBody,
	type Rod,
} from './braces';
import { endFrame, plate, sweptSolid } from '../shell';
import type { BoardRack } from '../rack';
import { originOf, plateMeets, stripMeets } from './rooms';
import type { ProblemLog } from '../../problem-log';

/**
 * The clear air of a chamber, if there is enough to set anything in, and its walls that slots run
 * along.
 */
interface OpenRoom {
	readonly air: SweptAir | null;
	readonly slotted: readonly SlottedWall[];
}

/**
 * Braces set into the clear air of the chambers: what is left once slots have taken their place.
 */
export function braceSwept(
	box: Box,
	rooms: readonly OpenRoom[],
	bare: SweptAir,
	rack: BoardRack,
	log: ProblemLog,
): Braced {
	const maker = {
		rod(brace: Dowel, b: number, r: number) {
			const { air } = nth(rooms, r);
			return air ? rodIn(air, bare, brace, b) : null;
		},
		plate(brace: Plate, r: number, t: number) {
			const { air, slotted } = nth(rooms, r);
			const body = air ? plateIn(air, bare, brace, t) : null;
			return body && besideSlots(body, slotted, log);
		},
		missed: (brace: Brace, b: number) => missed(brace, b, log),
	};
	return braceAll(box, rooms.length, maker, rack, log);
}

/** A wall that a slot runs along, and how far braces stay off it. */
export interface SlottedWall {
	readonly wall: string;
	readonly deep: number;
	readonly slot: string;
}

/**
 * Says where a brace stops short of a wall because a slot runs there; it is glued to that wall no
 * more.
 */
function besideSlots(body: PlateBody, slotted: readonly SlottedWall[], log: ProblemLog): PlateBody {
	const met = slotted.filter((s) => body.meets.some((m) => m.other === s.wall));
	const notes = met.map(
		({ wall, deep, slot }) =>
			`Stops ${log.say(deep)} short of the ${wall}, where ${slot} runs: glue it to the slot board as far as that reaches.`,
	);
	const meets = body.meets.filter((m) => !slotted.some((s) => s.wall === m.other));
	return { ...body, meets, notes };
}

function missed(brace: Brace, b: number, log: ProblemLog): void {
	const at = brace.kind === 'dowel' ? brace.a : brace.at;
	log.stop(
		['braces', b],
		`Nothing can be braced at ${log.say(at)}: the place lies outside the air, in a slot, or a corner of the form falls inside the brace.`,
		'Move it inside, clear of the corners, or leave it out.',
	);
}

function plateIn(air: SweptAir, bare: SweptAir, brace: Plate, t: number): PlateBody | null {
	return brace.across === 'width'
		? acrossWidth(air, bare, brace, t)
		: acrossSide(air, bare, brace, t);
}

function acrossWidth(air: SweptAir, bare: SweptAir, brace: Plate, t: number): PlateBody | null {
	const x = originOf(bare).x + brace.at - t / 2;
	if (x <= air.x0 || x + t >= air.x1) return null;
	const n = p3(-1, 0, 0);
	return {
		solid: plate(air.corners, x, n, t),
		frame: endFrame(x, n),
		meets: plateMeets(air, x),
		square: true,
	};
}

function acrossSide(air: SweptAir, bare: SweptAir, brace: Plate, t: number): PlateBody | null {
	const from = originOf(bare);
	const level = brace.across === 'height';
	const line: Line = level
		? { at: { x: 0, y: from.z + brace.at + t / 2 }, heading: { x: 1, y: 0 } }
		: { at: { x: from.y + brace.at - t / 2, y: 0 }, heading: { x: 0, y: 1 } };
	const strip = stripAcross(air.corners, line, t);
	if (!strip) return null;
	const x0 = brace.kind === 'shelf' ? Math.max(air.x0, from.x + brace.from) : air.x0;
	const x1 = brace.kind === 'shelf' ? Math.min(air.x1, from.x + brace.from + brace.length) : air.x1;
	if (x1 <= x0) return null;
	const frame = level
		? frameOf(p3(0, 0, 0), p3(0, 0, 1), p3(0, 1, 0))
		: frameOf(p3(0, 0, 0), p3(0, -1, 0), p3(0, 0, 1));
	const short = { ...air, x0, x1 };
	const meets = stripMeets(short, strip).filter(
		(_, i) => i < 2 || (i === 2 ? x0 === air.x0 : x1 === air.x1),
	);
	return { solid: sweptSolid(strip.quad, x0, x1), frame, meets, square: false };
}

function rodIn(air: SweptAir, bare: SweptAir, brace: Dowel, b: number): Rod | null {
	const from = originOf(bare);
	const name = braceName(brace, b);
	const rod = (a: Point3, c: Point3, extra = 0): Rod => ({
		name,
		diameter: brace.diameter,
		length: Math.hypot(c.x - a.x, c.y - a.y, c.z - a.z) + extra,
		from: a,
		to: c,
	});
	if (brace.along === 'width') {
		const p = { x: from.y + brace.a, y: from.z + brace.b };
		const line: Line = { at: p, heading: { x: 1, y: 0 } };
		const met = crossingsOf(air.corners, line);
		if (met.length < 2 || nth(met, 0).along > 0 || lastOf(met).along < 0) return null;
		return rod(p3(air.x0, p.x, p.y), p3(air.x1, p.x, p.y));
	}
	const x = from.x + brace.a;
	if (x <= air.x0 || x >= air.x1) return null;
	const deep = brace.along === 'depth';
	const line: Line = deep
		? { at: { x: from.y, y: from.z + brace.b }, heading: { x: 1, y: 0 } }
		: { at: { x: from.y + brace.b, y: from.z }, heading: { x: 0, y: 1 } };
	const met = crossingsOf(air.corners, line);
	if (met.length !== 2) return null;
	const [s, e] = [nth(met, 0).p, nth(met, 1).p];
	return rod(p3(x, s.x, s.y), p3(x, e.x, e.y), slantExtra(air, line, met, brace.diameter));
}

/** A rod cut to a slanted wall is longer at one side than along its middle. */
function slantExtra(
	air: SweptAir,
	line: Line,
	met: readonly { side: number }[],
	diameter: number,
): number {
	return met.reduce((sum, { side }) => {
		const a = nth(air.corners, side);
		const b = around(air.corners, side + 1);
		const along = Math.abs((b.x - a.x) * line.heading.x + (b.y - a.y) * line.heading.y);
		const off = Math.abs((b.x - a.x) * line.heading.y - (b.y - a.y) * line.heading.x);
		return sum + (off === 0 ? 0 : ((diameter / 2) * along) / off);
	}, 0);
}
