import {
	common,
	distance,
	flatten,
	type Point,
	rectangle,
	circle,
	type Outline,
} from '../../../geometry';
import { mm, nth } from '../../../measure';
import type { Box, Path } from '../../../job';
import { type Board, boardObstacle, placeOn, type Role } from '../board';
import { framedOf, type Inside } from '../inside';
import type { Framed, Seated } from '../mounted';
import type { ProblemLog } from '../../problem-log';
import { raised } from '../solid';

/** What something mounted takes of the face of its board. */
interface Footprint {
	readonly name: string;
	readonly path: Path;
	readonly wall: Board;
	readonly outline: Outline;
	/** Of a device, which side of the board it is on. */
	readonly side?: 'outside' | 'inside';
	/** Of a round one. */
	readonly round: { readonly centre: Point; readonly radius: number } | null;
}

/**
 * Says which of the things mounted on one board take each other's place: the frames of drivers and
 * radiators, with their rings, the holes of vents, the terminal, tie-downs and devices. What stands
 * too close in one row has been told with its pitch.
 */
export function sayOverlaps(inside: Inside, log: ProblemLog): void {
	const all = footprintsOf(inside);
	all.forEach((a, i) => {
		for (const b of all.slice(i + 1)) {
			const sameRow = a.path.join('.') === b.path.join('.');
			if (a.wall !== b.wall || sameRow || acrossTheBoard(a, b)) continue;
			const over = overlap(a, b, log);
			if (over) log.check(b.path, over.what, over.fix);
		}
	});
}

const IN_THE_WAY: readonly Role[] = ['brace', 'cleat', 'divider', 'slot'];
/** How far behind its board the hole of a terminal is looked through. */
const BEHIND = mm(1);

/** Says what stands right behind the hole of the terminal, the air of a slot included. */
export function sayBehindTerminal({ terminal }: Box, inside: Inside, log: ProblemLog): void {
	const place = terminal && placeOn(inside.boards, terminal.board, terminal.at);
	const hole = place?.wall.holes.find((h) => h.of === 'terminal');
	if (!place || !hole) return;
	const boards = inside.boards.filter((b) => IN_THE_WAY.includes(b.role)).map(boardObstacle);
	const edge = flatten(hole.outline, mm(1));
	const points = [0, 0.5, 0.98].flatMap((share) =>
		edge.map((p) => {
			const towards = (a: number, b: number): number => a + (b - a) * share;
			const { x, y } = hole.centre;
			return raised(
				{ x: towards(x, p.x), y: towards(y, p.y) },
				place.wall.frame,
				-place.stack - BEHIND,
			);
		}),
	);
	const met = [...boards, ...inside.obstacles].filter((o) => points.some((p) => o.has(p, 0)));
	if (met.length === 0) return;
	log.check(
		['terminal', 'at'],
		`Right behind the terminal hole stands ${[...new Set(met.map((o) => o.name))].join(', ')}.`,
		'Move one of them: the cup needs the air of the chamber behind it.',
	);
}

/** Two devices, one on each side of their board. */
const acrossTheBoard = (a: Footprint, b: Footprint): boolean =>
	a.side !== undefined && b.side !== undefined && a.side !== b.side;

function footprintsOf(inside: Inside): Footprint[] {
	const walls = inside.boards.filter((b) => b.role === 'wall' || b.role === 'end');
	const framed = framedOf(inside).map(frameOf);
	const tubes = inside.vents.flatMap(({ setup }) => {
		if (setup.kind !== 'round') return [];
		const radius = setup.vent.diameter / 2 + setup.vent.wall;
		const own = { name: setup.name, path: ['vents', setup.index, 'at'] };
		return setup.places.map(({ wall, at }) => roundPrint({ ...own, wall }, at, radius));
	});
	const others = walls.flatMap((wall) =>
		wall.holes.flatMap((hole): Footprint[] => {
			if (hole.of !== 'terminal' && hole.of !== 'slot') return [];
			const own =
				hole.of === 'terminal'
					? { name: 'the terminal', path: ['terminal', 'at'], wall }
					: { name: hole.name, path: slotPath(hole.name, inside), wall };
			if (hole.size.length === 1) return [roundPrint(own, hole.centre, nth(hole.size, 0) / 2)];
			return [{ ...own, outline: hole.outline, round: null }];
		}),
	);
	const tied = inside.tied.flatMap(({ name, index, place: { wall, at }, hole }) =>
		hole === null
			? []
			: [roundPrint({ name, path: ['tieDowns', index, 'at'], wall }, at, hole / 2)],
	);
	const devices = inside.devices.map(
		({ name, index, place: { wall }, body, device: { side } }): Footprint => ({
			...{ name, path: ['devices', index], wall, outline: body, round: null, side },
		}),
	);
	return [...framed, ...tubes, ...others, ...tied, ...devices];
}

function slotPath(name: string, { vents }: Inside): Path {
	const slot = vents.find((v) => v.setup.kind === 'slot' && (v.setup.vent.name ?? 'slot') === name);
	return slot ? ['vents', slot.setup.index, 'gap'] : ['vents'];
}

/** The frame of a driver on the face, or the square ring it sits in. */
function frameOf({ list, driver, index, name, place: { wall, at } }: Seated<Framed>): Footprint {
	const own = { name: `the frame of ${name}`, path: [list, index, 'at'], wall };
	if (driver.seat.kind !== 'ring') return roundPrint(own, at, driver.frame / 2);
	const half = driver.frame / 2 + driver.seat.width;
	const outline = rectangle(at.x - half, at.y - half, 2 * half, 2 * half);
	return { ...own, name: `the ring of ${name}`, outline, round: null };
}

function roundPrint(
	own: Pick<Footprint, 'name' | 'path' | 'wall'>,
	centre: Point,
	radius: number,
): Footprint {
	return { ...own, outline: circle(centre.x, centre.y, radius), round: { centre, radius } };
}

/** Two that touch share no more than this, ticks. */
const TOUCH = 1;

function overlap(
	a: Footprint,
	b: Footprint,
	log: ProblemLog,
): { what: string; fix: string } | null {
	const first = a.name.replace(/^t/, 'T');
	const on = `on the board '${a.wall.name}'`;
	if (a.round && b.round) {
		const apart = distance(a.round.centre, b.round.centre);
		const least = a.round.radius + b.round.radius;
		if (apart >= least - TOUCH) return null;
		return {
			what: `${first} and ${b.name} overlap by ${log.say(least - apart)} ${on}.`,
			fix: `Set their middles ${log.least(least)} apart or more; they are ${log.say(apart)} apart.`,
		};
	}
	const shared = common([a.outline], [b.outline]).flatMap((r) => [...r.outline]);
	const wide = (axis: 'x' | 'y'): number => {
		const at = shared.map((p) => p[axis]);
		return Math.max(...at) - Math.min(...at);
	};
	if (shared.length === 0 || Math.min(wide('x'), wide('y')) <= TOUCH) return null;
	return {
		what: `${first} and ${b.name} overlap ${on}: ${log.say([wide('x'), wide('y')])} is wanted by both.`,
		fix: 'Move one of them, or mount it on another board.',
	};
}
