import type { Box } from '../../job/box';
import type { Brace } from '../../job/box-inside';
import type { Outline, Point } from '../../geometry/outline';
import { mm } from '../../measure/length';
import type { Line } from '../../geometry/meet';
import type { SweptAir } from './air';
import { boardOf, type Board, type Hole } from './board';
import { endFrame, plate } from './end';
import { rodObstacle, type Obstacle } from './obstacle';
import { woodOf } from './part-of';
import { shown } from './shown';
import type { Rack } from './rack';
import { edgeSeams, originOf, plateMeets, stripMeets, type Meeting } from './rooms';
import type { Seam } from './seam';
import { setIn } from './section';
import { flat, frameOf, type Frame, type Solid } from './solid';
import { crossingsOf, halfOf, stripAcross } from './strip';
import type { Trouble } from './trouble';
import { p3, type Point3 } from './vec';
import { sweptSolid } from './wall';

/** A rod from wall to wall; its ends are cut to the walls. */
export interface Rod {
	readonly name: string;
	readonly diameter: number;
	/** Longest length, ticks. */
	readonly length: number;
	readonly from: Point3;
	readonly to: Point3;
}

export interface Braced {
	readonly boards: readonly Board[];
	readonly rods: readonly Rod[];
	readonly seams: readonly Seam[];
	readonly obstacles: readonly Obstacle[];
	/** Cubic ticks taken from each chamber. */
	readonly taken: readonly number[];
}

type Plate = Exclude<Brace, { kind: 'dowel' }>;

/** Braces set into the clear air of the chambers: what is left once slots have taken their place. */
export function braceAll(
	box: Box,
	clear: readonly (SweptAir | null)[],
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
				taken[r]! += Math.PI * (rod.diameter / 2) ** 2 * axisLength(rod);
			} else {
				const made = plateIn(air, bare, brace, b, rack, `brace-${boards.length + 1}`);
				if (!made) return;
				boards.push(made.board);
				seams.push(...edgeSeams(made.board, made.meets, false));
				taken[r]! += woodOf(made.board);
			}
			met++;
		});
		if (met === 0) missed(brace, b, trouble);
	});
	return { boards, rods, seams, obstacles, taken };
}

function missed(brace: Brace, b: number, trouble: Trouble): void {
	const at = brace.kind === 'dowel' ? brace.a : brace.at;
	trouble.stop(
		['braces', b],
		`Nothing can be braced at ${shown(at)} mm: the place lies outside the air, in a slot, or a corner of the form falls inside the brace.`,
		'Move it inside, clear of the corners, or leave it out.',
	);
}

const nameOf = (brace: Brace, b: number): string =>
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
	const name = nameOf(brace, b);
	const board = boardOf({
		...body,
		key,
		wall: null,
		name,
		role: 'brace',
		material,
		grain: 'along',
	});
	if (brace.kind === 'window') board.holes.push(...windowsIn(board, brace, body.profile));
	return { board, meets: body.meets };
}

interface Body {
	readonly solid: Solid;
	readonly frame: Frame;
	readonly meets: readonly Meeting[];
	/** Of a brace shaped like the side view: its outline there. */
	readonly profile: readonly Point[] | null;
}

function acrossWidth(air: SweptAir, bare: SweptAir, brace: Plate, t: number): Body | null {
	const x = originOf(bare).x + brace.at - t / 2;
	if (x <= air.x0 || x + t >= air.x1) return null;
	const n = p3(-1, 0, 0);
	return {
		solid: plate(air.corners, x, n, t),
		frame: endFrame(x, n),
		meets: plateMeets(air, x),
		profile: air.corners,
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
	return { solid: sweptSolid(strip.quad, x0, x1), frame, meets, profile: null };
}

/** Windows a rim apart, in the frame of the board; square corners, to be rounded with the cutter. */
function windowsIn(
	board: Board,
	brace: Extract<Brace, { kind: 'window' }>,
	profile: readonly Point[] | null,
): Hole[] {
	const face = profile ? board.solid.outside.map((p) => flat(p, board.frame)) : commonFace(board);
	const open = setIn(
		face,
		face.map(() => brace.rim),
	);
	if (!open) {
		board.notes.push(`No window: a rim of ${shown(brace.rim)} mm leaves no opening.`);
		return [];
	}
	const low = Math.min(...open.map((p) => p.x));
	const long = Math.max(...open.map((p) => p.x)) - low;
	const each = (long - (brace.windows - 1) * brace.rim) / brace.windows;
	if (each < mm(10)) return [windowHole(open)];
	return Array.from({ length: brace.windows }, (_, i) => {
		const from = low + i * (each + brace.rim);
		return windowHole(between(open, from, from + each));
	});
}

function between(open: readonly Point[], from: number, to: number): readonly Point[] {
	const right = cutAt(open, { at: { x: from, y: 0 }, heading: { x: 0, y: -1 } });
	return cutAt(right, { at: { x: to, y: 0 }, heading: { x: 0, y: 1 } });
}

function cutAt(open: readonly Point[], line: Line): readonly Point[] {
	return crossingsOf(open, line).length === 2 ? halfOf(open, line, 1).points : open;
}

/** What both faces of a bevelled board share: its windows are cut square through it. */
function commonFace(board: Board): Point[] {
	const faces = [board.solid.outside, board.solid.inside].map((f) =>
		f.map((p) => flat(p, board.frame)),
	);
	const most = (pick: (p: Point) => number, least: boolean): number => {
		const ends = faces.map((f) => (least ? Math.min : Math.max)(...f.map(pick)));
		return least ? Math.max(...ends) : Math.min(...ends);
	};
	const [x0, x1] = [most((p) => p.x, true), most((p) => p.x, false)];
	const [y0, y1] = [most((p) => p.y, true), most((p) => p.y, false)];
	return [
		{ x: x0, y: y0 },
		{ x: x1, y: y0 },
		{ x: x1, y: y1 },
		{ x: x0, y: y1 },
	];
}

function windowHole(points: readonly Point[]): Hole {
	const outline: Outline = points.map((p) => ({ x: p.x, y: p.y }));
	const xs = points.map((p) => p.x);
	const ys = points.map((p) => p.y);
	const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
	return {
		outline,
		of: 'window',
		name: 'window',
		recess: null,
		centre: { x: (x0 + x1) / 2, y: (y0 + y1) / 2 },
		size: [x1 - x0, y1 - y0],
	};
}

function rodIn(
	air: SweptAir,
	bare: SweptAir,
	brace: Extract<Brace, { kind: 'dowel' }>,
	b: number,
): Rod | null {
	const from = originOf(bare);
	const name = nameOf(brace, b);
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

function axisLength(rod: Rod): number {
	return Math.hypot(rod.to.x - rod.from.x, rod.to.y - rod.from.y, rod.to.z - rod.from.z);
}
