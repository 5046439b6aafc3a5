import type { Box } from '../../job/box';
import type { Outline, Point } from '../../geometry/outline';
import { distanceTo } from '../../geometry/inside';
import { ticks, TICKS_PER_MM, type Length } from '../../measure/length';
import type { Part } from '../part';
import { evenSpacing, assemblyOf } from './assembly';
import { leastVentArea, ventSpeed } from './acoustics';
import { boardName, type Board } from './board';
import type {
	BoardHole,
	BoxBoard,
	BoxFigures,
	BoxSeam,
	Chamber,
	DriverFigures,
	FitFigures,
	Solved,
	VentFigures,
} from './box-plan';
import { speedWord } from './chamber';
import { clashes } from './clash';
import { roomFor, type Seated } from './driver';
import { outsidePoints, sizesOf } from './fit';
import type { Inside } from './inside';
import { personsFor } from './lifting';
import { bradsOf, screwsOf } from './needs';
import { boardObstacle, rodObstacle, type Obstacle } from './obstacle';
import { layOf, massOf } from './part-of';
import { faceOf } from './place';
import { shown } from './shown';
import type { Seam } from './seam';
import type { Section } from './shell';
import { flat } from './solid';
import { LEAST_EDGE } from './trim';
import type { Trouble } from './trouble';
import { angleBetween, p3, type Point3 } from './vec';
import type { VentResult } from './vent-result';

export const near = (n: number): Length => ticks(Math.round(n));
const squareMm = (area: number): number => area / TICKS_PER_MM ** 2;

export interface Whole {
	readonly box: Box;
	readonly inside: Inside;
	readonly seams: readonly Seam[];
	readonly parts: readonly Part[];
	readonly section: Section | null;
	/** Corners of the air of a tapered box; none for any other. */
	readonly innerCorners: readonly Point3[];
	readonly chambers: readonly Chamber[];
	readonly fit: FitFigures;
	readonly solved: Solved | null;
	readonly trouble: Trouble;
}

/** Everything of a box that is shown and printed, in whole lengths. */
export function figuresOf(whole: Whole): BoxFigures {
	const { box, inside, seams, parts, section, trouble } = whole;
	const { boards } = inside;
	const labels = new Map(boards.map((b, i) => [b.key, parts[i]!.label]));
	const names = new Map(boards.map((b) => [b.key, b.name]));
	const mass = parts.reduce((sum, p) => sum + p.mass, 0);
	const drivers = inside.seated.map((s) => driverFigures(s, inside, trouble));
	const loadedMass = mass + inside.seated.reduce((sum, s) => sum + s.driver.mass, 0);
	return {
		profile: section && {
			outer: grid(section.outer),
			inner: grid(section.inner),
			keys: section.keys,
		},
		outside: sizesOf(outsidePoints(boards)),
		inside: insideSizes(section, whole.innerCorners),
		leans: leansOf(boards),
		boards: boards.map((b, i) => boardFigures(b, parts[i]!)),
		seams: seams.map((s) => seamFigures(s, names, box)),
		chambers: whole.chambers,
		solved: whole.solved,
		drivers,
		vents: inside.vents.map((v) => ventFigures(v, inside, trouble)),
		rods: inside.rods.map((r) => ({
			name: r.name,
			diameter: near(r.diameter),
			length: near(Math.ceil(r.length - 1e-3)),
		})),
		fit: whole.fit,
		assembly: assemblyOf(box, boards, seams, labels),
		glued: squareMm(seams.reduce((sum, s) => sum + s.area, 0)),
		screws: seams.reduce((sum, s) => sum + screwsOf(s, box), 0),
		brads: seams.reduce((sum, s) => sum + bradsOf(s, box), 0),
		bead: near(seams.reduce((sum, s) => sum + (s.seals ? s.length : 0), 0)),
		mass,
		loadedMass,
		persons: personsFor(loadedMass),
	};
}

const grid = (points: readonly Point[]): Outline =>
	points.map((p) => ({ x: Math.round(p.x), y: Math.round(p.y) }));

function insideSizes(section: Section | null, corners: readonly Point3[]): BoxFigures['inside'] {
	if (!section) return sizesOf(corners);
	return sizesOf(
		section.inner.flatMap((p) => [section.x0, section.x1].map((x) => p3(x, p.x, p.y))),
	);
}

/** Walls that are neither level nor upright: how far they lean from upright. */
function leansOf(boards: readonly Board[]): BoxFigures['leans'] {
	return boards.flatMap((b) => {
		if (b.role !== 'wall' && b.role !== 'end') return [];
		// An end leans away from square to the width, any other wall from upright.
		const axis = b.role === 'end' ? p3(1, 0, 0) : p3(0, 0, 1);
		const lean = Math.abs(90 - angleBetween(b.frame.n, axis));
		const square = lean < 0.01 || lean > 89.99;
		return square ? [] : [{ board: b.key, angle: b.role === 'end' ? 90 - lean : lean }];
	});
}

function seamFigures(seam: Seam, names: ReadonlyMap<string, string>, box: Box): BoxSeam {
	const screws = screwsOf(seam, box);
	const name = (key: string): string => names.get(key) ?? boardName(key);
	return {
		letter: seam.letter,
		between: [name(seam.between[0]), name(seam.between[1])],
		kind: seam.kind,
		length: near(seam.length),
		area: squareMm(seam.area),
		screws,
		brads: bradsOf(seam, box),
		spacing: screws > 1 ? near(evenSpacing(seam.length, box.fasteners.screwSpacing)) : null,
	};
}

/** A board as it is drawn: from the lower left corner of the rectangle round both faces. */
function boardFigures(board: Board, part: Part): BoxBoard {
	const lay = layOf({ ...board, grain: 'along' });
	const home = (p: Point): Point => ({ x: p.x - lay.low.x, y: p.y - lay.low.y });
	const faces = [board.solid.outside, board.solid.inside].map((f) =>
		f.map((p) => home(flat(p, board.frame))),
	);
	const spread = (f: readonly Point[], axis: 'x' | 'y'): number =>
		Math.max(...f.map((p) => p[axis])) - Math.min(...f.map((p) => p[axis]));
	const short = (axis: 'x' | 'y'): Length => near(Math.min(...faces.map((f) => spread(f, axis))));
	return {
		key: board.key,
		part: part.id,
		label: part.label,
		name: board.name,
		role: board.role,
		solid: board.solid,
		frame: board.frame,
		...(part.face === 'inside' ? { view: 'inside' as const } : {}),
		outside: grid(faces[0]!),
		inside: grid(faces[1]!),
		edges: board.edges,
		holes: board.holes.map((h) => holeFigures(h, board, home)),
		rabbets: board.cuts,
		thickness: board.material.measured,
		long: { across: lay.length, up: lay.width },
		short: { across: short('x'), up: short('y') },
		grain: part.grain === 'any' ? 'any' : board.grain === 'across' ? 'up' : 'across',
		mass: massOf(board),
		notes: board.notes,
	};
}

function holeFigures(
	hole: Board['holes'][number],
	board: Board,
	home: (p: Point) => Point,
): BoardHole {
	const face = faceOf(board);
	const edge = Math.min(...hole.outline.map((c) => distanceTo(c, face)), edgeOfRound(hole, face));
	return {
		of: hole.of,
		name: hole.name,
		outline: hole.outline
			.map((c) => ({ ...home(c), ...(c.bulge ? { bulge: c.bulge } : {}) }))
			.map((c) => ({ ...c, x: Math.round(c.x), y: Math.round(c.y) })),
		centre: home(hole.centre),
		size: hole.size.map(near),
		recess: hole.recess === null ? null : near(hole.recess),
		edge: near(Math.max(0, edge)),
	};
}

function edgeOfRound(hole: Board['holes'][number], face: Outline): number {
	return hole.size.length === 1 ? distanceTo(hole.centre, face) - hole.size[0]! / 2 : Infinity;
}

function driverFigures(one: Seated, inside: Inside, trouble: Trouble): DriverFigures {
	const { driver, index, name, place } = one;
	const path = ['drivers', index];
	const face = faceOf(place.wall);
	const hole = place.wall.holes.find((h) => h.name === name && h.of === 'driver')!;
	const edge = Math.min(...hole.outline.map((c) => distanceTo(c, face)), edgeOfRound(hole, face));
	if (edge < LEAST_EDGE) {
		trouble.check(
			[...path, 'at'],
			`The cut-out of ${name} comes within ${shown(edge)} mm of the edge of its board.`,
			`Keep ${shown(LEAST_EDGE)} mm or more, or the edge breaks out.`,
		);
	}
	if (distanceTo(place.at, face) < driver.frame / 2) {
		trouble.check(
			[...path, 'frame'],
			`The frame of ${name} (${shown(driver.frame)} mm) stands over the edge of its board.`,
			'Move it inwards or take a larger board.',
		);
	}
	const air = inside.rooms[one.room]?.air ?? null;
	const room = air ? roomFor(one, air) : { axis: 0, rim: 0 };
	const behind = room.rim - driver.depth;
	if (air && behind < driver.behind) tooDeep(one, room, trouble);
	if (!air)
		trouble.check(
			[...path, 'at'],
			`Behind ${name} there is no air but a board.`,
			'Move it off the divider or the slot.',
		);
	const meets = clashes(one, behind < 0 ? null : air, obstaclesFor(one, inside));
	if (meets.length > 0)
		trouble.check(
			[...path, 'at'],
			`${name} runs into ${meets.join(', ')}.`,
			'Move one of them, or take a shallower driver.',
		);
	return {
		name,
		board: place.wall.name,
		chamber: air ? one.room + 1 : null,
		edge: near(edge),
		room: near(finite(room.axis)),
		roomAtRim: near(finite(room.rim)),
		depth: driver.depth,
		behind: near(finite(behind)),
		meets,
	};
}

const finite = (n: number): number => (Number.isFinite(n) ? n : 0);

function tooDeep(one: Seated, room: { axis: number; rim: number }, trouble: Trouble): void {
	const { driver, name, index } = one;
	const where =
		room.rim < room.axis - 1
			? `at the rim of its magnet (${shown(room.axis)} mm on its axis)`
			: 'on its axis';
	trouble.check(
		['drivers', index, 'depth'],
		`${name} is ${shown(driver.depth)} mm deep; the box gives ${shown(room.rim)} mm ${where} and ${shown(driver.behind)} mm should stay free behind it.`,
		`Make the box ${shown(driver.depth + driver.behind - room.rim)} mm deeper there, move the driver to where it is deeper, or raise it on a ring.`,
	);
}

/** Everything that stands in the air but the driver itself and the walls. */
function obstaclesFor(one: Seated, inside: Inside): Obstacle[] {
	const boards = inside.boards
		.filter((b) => b.role === 'brace' || b.role === 'cleat')
		.map(boardObstacle);
	const others = inside.seated
		.filter((s) => s !== one)
		.map((s) => {
			const magnet = (s.driver.magnet ?? 2 * s.cutRadius) / 2;
			const end = { ...s.place.point };
			const d = s.driver.depth - s.proud;
			const to = p3(
				end.x + s.place.inward.x * d,
				end.y + s.place.inward.y * d,
				end.z + s.place.inward.z * d,
			);
			return rodObstacle(s.name, s.place.point, to, magnet);
		});
	return [...boards, ...others, ...inside.obstacles];
}

function ventFigures(result: VentResult, inside: Inside, trouble: Trouble): VentFigures {
	const { setup, length, hertz, clear, bent } = result;
	const { breath, room } = setup;
	const area = breath.area / TICKS_PER_MM ** 2 / 100;
	const moved = movedBy(inside, room);
	const all = inside.vents
		.filter((v) => v.setup.room === room)
		.reduce((sum, v) => sum + v.setup.breath.area, 0);
	const speed = moved > 0 ? ventSpeed(hertz, moved, all / (TICKS_PER_MM * 1000) ** 2) : null;
	if (speed !== null && speed > 34) {
		trouble.check(
			['vents', setup.index],
			`The air in ${setup.name} reaches ${Math.round(speed)} m/s at ${Math.round(hertz)} Hz when the driver moves all it can.`,
			`Make the opening ${Math.ceil(speed / 17)} times as large for a quiet vent; 34 m/s is the ceiling.`,
		);
	}
	if (clear < setup.clearWanted - 1) {
		trouble.check(
			['vents', setup.index, 'goal'],
			`Only ${shown(Math.max(0, clear))} mm stay free at the inner end of ${setup.name}; ${shown(setup.clearWanted)} mm are wanted.`,
			'Shorten it, bend it, or move it.',
		);
	}
	const size =
		setup.kind === 'round'
			? [setup.vent.diameter]
			: [setup.vent.gap, near(setup.run[1] - setup.run[0])];
	return {
		name: setup.name,
		kind: setup.kind,
		chamber: room + 1,
		count: setup.kind === 'round' ? setup.vent.count : 1,
		size,
		area,
		length: near(length),
		acting: near(length + breath.ends),
		correction: {
			name: setup.vent.factor === null ? setup.vent.mouths : 'own',
			radii: setup.radii,
		},
		tuning: hertz,
		bent,
		clear: near(finite(clear)),
		clearWanted: near(setup.clearWanted),
		speed,
		speedWord: speed === null ? null : speedWord(speed),
		leastArea: moved > 0 ? leastVentArea(hertz, moved) * 1e4 : null,
		notes: ventNotes(setup.kind),
	};
}

function ventNotes(kind: 'round' | 'slot'): string[] {
	const trim = 'Cut long and tune by trimming: every 10 % of acting length is about 5 % of tuning.';
	const walls =
		'A slot that shares walls with the box acts longer than its boards; published corrections differ by about 5 % in tuning.';
	return kind === 'slot' ? [trim, walls] : [trim];
}

/** Air the drivers of a chamber move one way, m3. */
function movedBy(inside: Inside, room: number): number {
	return inside.seated
		.filter((s) => s.room === room)
		.reduce(
			(sum, { driver: { data } }) => sum + (data.sd ?? 0) * 1e-4 * (data.xmax ?? 0) * 1e-3,
			0,
		);
}
