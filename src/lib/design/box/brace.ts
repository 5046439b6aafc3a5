import type { Box } from '../../job/box';
import type { Brace } from '../../job/box-inside';
import type { Sundry } from '../../job/stock';
import type { Line } from '../../geometry/meet';
import type { SweptAir } from './air';
import { apart } from './apart';
import { boardOf, type Board } from './board';
import { endFrame, plate } from './end';
import { rodObstacle, type Obstacle } from './obstacle';
import { kg, woodOf } from './part-of';
import { shown } from './shown';
import type { Rack } from './rack';
import { edgeSeams, originOf, plateMeets, stripMeets, type Meeting } from './rooms';
import type { Seam } from './seam';
import { frameOf, type Frame, type Solid } from './solid';
import { crossingsOf, stripAcross } from './strip';
import type { Trouble } from './trouble';
import { p3, type Point3 } from './vec';
import { sweptSolid } from './wall';
import { windowsIn } from './window';

/** A rod from wall to wall; its ends are cut to the walls. */
export interface Rod {
	readonly name: string;
	readonly diameter: number;
	/** Longest length, ticks. */
	readonly length: number;
	readonly from: Point3;
	readonly to: Point3;
}

/** Cubic ticks a rod takes: cut to leaning walls it loses at one side of its axis what it keeps at the other. */
export function rodVolume(rod: Rod): number {
	const { from, to } = rod;
	const axis = Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
	return Math.PI * (rod.diameter / 2) ** 2 * axis;
}

/** kg/m3 of a beech rod at 12 % moisture: Wood Handbook, FPL-GTR-282 (2021), table 5-3a, specific gravity 0.64. From memory. */
const BEECH = 720;

/** kg of one rod, of the rods on the rack. */
export function rodMass(rod: Rod, sundries: readonly Sundry[]): number {
	const own = sundries.find((s) => s.kind === 'dowel' && s.density !== undefined);
	return kg(rodVolume(rod), own?.density ?? BEECH);
}

export interface Braced {
	readonly boards: readonly Board[];
	readonly rods: readonly Rod[];
	readonly seams: readonly Seam[];
	readonly obstacles: readonly Obstacle[];
	/** Cubic ticks taken from each chamber. */
	readonly taken: readonly number[];
}

export type Plate = Exclude<Brace, { kind: 'dowel' }>;

/** Braces set into the clear air of the chambers: what is left once slots have taken their place. */
export function braceAll(
	box: Box,
	clear: readonly (SweptAir | null)[],
	slotted: readonly (readonly SlottedWall[])[],
	bare: SweptAir,
	rack: Rack,
	trouble: Trouble,
): Braced {
	const boards: Board[] = [];
	const rods: Rod[] = [];
	const seams: Seam[] = [];
	const obstacles: Obstacle[] = [];
	const taken = clear.map(() => 0);
	box.braces.forEach((brace, b) => {
		let met = 0;
		clear.forEach((air, r) => {
			if (!air) return;
			if (brace.kind === 'dowel') {
				const rod = rodIn(air, bare, brace, b);
				if (!rod) return;
				rods.push(rod);
				obstacles.push(rodObstacle(rod.name, rod.from, rod.to, rod.diameter / 2));
				taken[r]! += rodVolume(rod);
			} else {
				const made = plateIn(air, bare, brace, b, rack, `brace-${boards.length + 1}`);
				if (!made) return;
				const meets = besideSlots(made.board, made.meets, slotted[r] ?? []);
				boards.push(made.board);
				seams.push(...edgeSeams(made.board, meets, false));
				taken[r]! += woodOf(made.board);
			}
			met++;
		});
		if (met === 0) missed(brace, b, trouble);
	});
	sayCrossing(boards, trouble);
	return { boards, rods, seams, obstacles, taken };
}

/** A wall that a slot runs along, and how far braces stay off it. */
export interface SlottedWall {
	readonly wall: string;
	readonly deep: number;
	readonly slot: string;
}

/** Says where a brace stops short of a wall because a slot runs there; it is glued to that wall no more. */
function besideSlots(
	board: Board,
	meets: readonly Meeting[],
	slotted: readonly SlottedWall[],
): readonly Meeting[] {
	for (const { wall, deep, slot } of slotted) {
		if (!meets.some((m) => m.other === wall)) continue;
		board.notes.push(
			`Stops ${shown(deep)} mm short of the ${wall}, where ${slot} runs: glue it to the slot board as far as that reaches.`,
		);
	}
	return meets.filter((m) => !slotted.some((s) => s.wall === m.other));
}

/** Braces that stand in each other's place; each frame or shelf is looked at as its full board. */
export function sayCrossing(boards: readonly Board[], trouble: Trouble): void {
	boards.forEach((a, i) => {
		for (const b of boards.slice(i + 1)) {
			if (apart(a.solid, b.solid)) continue;
			trouble.check(
				['braces'],
				`${a.name} and ${b.name} cross each other.`,
				'Cut each halfway through where they cross, so that they slide together, or move one of them.',
			);
		}
	});
}

function missed(brace: Brace, b: number, trouble: Trouble): void {
	const at = brace.kind === 'dowel' ? brace.a : brace.at;
	trouble.stop(
		['braces', b],
		`Nothing can be braced at ${shown(at)} mm: the place lies outside the air, in a slot, or a corner of the form falls inside the brace.`,
		'Move it inside, clear of the corners, or leave it out.',
	);
}

export const braceName = (brace: Brace, b: number): string =>
	brace.name ??
	`${{ window: 'Window brace', shelf: 'Shelf brace', dowel: 'Rod' }[brace.kind]} ${b + 1}`;

function plateIn(
	air: SweptAir,
	bare: SweptAir,
	brace: Plate,
	b: number,
	rack: Rack,
	key: string,
): { board: Board; meets: readonly Meeting[] } | null {
	const material = rack.of(brace.material, ['braces', b, 'material']);
	if (!material) return null;
	const t = material.measured;
	const body =
		brace.across === 'width' ? acrossWidth(air, bare, brace, t) : acrossSide(air, bare, brace, t);
	if (!body) return null;
	const name = braceName(brace, b);
	const board = boardOf({
		...body,
		key,
		wall: null,
		name,
		role: 'brace',
		material,
		grain: 'along',
	});
	if (brace.kind === 'window') board.holes.push(...windowsIn(board, brace, body.square));
	return { board, meets: body.meets };
}

interface Body {
	readonly solid: Solid;
	readonly frame: Frame;
	readonly meets: readonly Meeting[];
	/** Are its edges square? Then its windows follow its outline. */
	readonly square: boolean;
}

function acrossWidth(air: SweptAir, bare: SweptAir, brace: Plate, t: number): Body | null {
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

function acrossSide(air: SweptAir, bare: SweptAir, brace: Plate, t: number): Body | null {
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

function rodIn(
	air: SweptAir,
	bare: SweptAir,
	brace: Extract<Brace, { kind: 'dowel' }>,
	b: number,
): Rod | null {
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
		if (met.length < 2 || met[0]!.along > 0 || met.at(-1)!.along < 0) return null;
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
	const [s, e] = [met[0]!.p, met[1]!.p];
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
		const a = air.corners[side]!;
		const b = air.corners[(side + 1) % air.corners.length]!;
		const along = Math.abs((b.x - a.x) * line.heading.x + (b.y - a.y) * line.heading.y);
		const off = Math.abs((b.x - a.x) * line.heading.y - (b.y - a.y) * line.heading.x);
		return sum + (off === 0 ? 0 : ((diameter / 2) * along) / off);
	}, 0);
}
