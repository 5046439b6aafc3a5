import { nth, mm, TICKS_PER_MM } from '../../../measure';
import { commonArea, distanceTo, type Outline, whereIs } from '../../../geometry';
import { type Board, boardObstacle, faceOf, isDrilled, type Obstacle, through } from '../board';
import type { Air } from '../solid';
import type { ProblemLog } from '../../problem-log';
import { fitsIn, type Mounted, pointsIn, screwsAt } from './place-devices';

const NOTHING = TICKS_PER_MM ** 2;
/**
 * Screws stand 12 mm or more from the edge of a board: industry guide for medium density
 * fibreboard.
 */
const EDGE = mm(12);

/** What stands round the devices. */
export interface Around {
	readonly boards: readonly Board[];
	readonly rooms: readonly { readonly air: Air }[];
	/** Rods, tubes and devices. */
	readonly obstacles: readonly Obstacle[];
	/** Is it measured for a space or an opening? What stands outside is not counted there. */
	readonly measured: boolean;
}

/** Says what a device stands over, runs into or is in the way of. */
export function checkMounted(all: readonly Mounted[], around: Around, log: ProblemLog): void {
	all.forEach((one, i) => {
		onBoard(one, log);
		screws(one, log);
		if (one.room === null) standsOut(one, around, log);
		else inAir(one, around, log);
		all.slice(i + 1).forEach((other) => besideOther(one, other, log));
		all.forEach((other) => reachable(one, other, log));
	});
}

const path = (one: Mounted): (string | number)[] => ['devices', one.index];

function onBoard(one: Mounted, log: ProblemLog): void {
	const face = faceOf(one.place.wall).map((p) => ({ x: Math.round(p.x), y: Math.round(p.y) }));
	if (!one.body.every((p) => whereIs(p, face) !== 'outside'))
		log.check(
			path(one),
			`${one.name} stands over the edge of its board.`,
			'Move it inwards, or take a larger board.',
		);
	const drilled = one.place.wall.holes.filter(
		(h) => isDrilled(h) && h.of !== 'device' && whereIs(h.centre, one.body) !== 'outside',
	);
	for (const name of new Set(drilled.map((h) => h.name)))
		log.check(path(one), `${one.name} stands over the ${name}.`, 'Move one of the two.');
}

function screws(one: Mounted, log: ProblemLog): void {
	const face = faceOf(one.on);
	screwsAt(one.device).forEach((at, k) => {
		const p = through(at, one.place.wall.frame, one.on.frame);
		const near = distanceTo(p, face);
		const inside = whereIs(p, face) === 'inside';
		if (inside && near >= EDGE) return;
		log.check(
			[...path(one), 'holes', k],
			inside
				? `Hole ${k + 1} of ${one.name} is ${log.say(near)} from the edge of its board.`
				: `Hole ${k + 1} of ${one.name} lies off its board.`,
			`Keep fixing holes ${log.least(EDGE)} or more from the edge, or the board splits.`,
		);
	});
}

function standsOut({ device, name, index, place }: Mounted, { measured }: Around, log: ProblemLog) {
	if (!measured) return;
	log.check(
		['devices', index, 'height'],
		`${name} stands ${log.say(device.height + device.clear.over)} off the ${place.wall.name} with its free space; the space and the opening are looked at without it.`,
		'See that there is room for it, or mount it on another board.',
	);
}

const IN_THE_WAY = ['brace', 'cleat', 'divider', 'slot'];

function inAir(one: Mounted, around: Around, log: ProblemLog): void {
	const points = pointsIn(one);
	const { air } = nth(around.rooms, one.room ?? 0);
	const others = around.obstacles.filter((o) => o !== one.obstacle);
	const boards = around.boards.filter((b) => IN_THE_WAY.includes(b.role)).map(boardObstacle);
	const met = [...boards, ...others]
		.filter((o) => points.some((p) => o.has(p, 0)))
		.map((o) => o.name);
	const walls = fitsIn(air, points) || met.length > 0 ? [] : ['a wall'];
	const all = [...new Set([...walls, ...met])];
	if (all.length > 0)
		log.check(
			path(one),
			`${one.name} runs into ${all.join(', ')} with the free space over it.`,
			'Move one of them, or mount it outside.',
		);
}

const share = (a: Outline, b: Outline): boolean => commonArea([a], [b]) > NOTHING;

const together = (one: Mounted, other: Mounted): boolean =>
	one.place.wall === other.place.wall && one.device.side === other.device.side;

function besideOther(one: Mounted, other: Mounted, log: ProblemLog): void {
	if (!together(one, other)) return;
	// Two in one place are told with all else that overlaps on a board.
	if (share(one.body, other.body)) return;
	for (const [owner, intruder] of [
		[one, other],
		[other, one],
	] as const)
		if (share(owner.space, intruder.body))
			log.check(
				[...path(owner), 'clear'],
				`${intruder.name} stands in the free space ${owner.name} asks for.`,
				'Move them apart; heat and plugs need that room.',
			);
}

function reachable(one: Mounted, other: Mounted, log: ProblemLog): void {
	if (other === one || !together(one, other)) return;
	if (one.reach.some((r) => share(r, other.body)))
		log.check(
			[...path(one), 'reach'],
			`${other.name} stands where a hand has to reach ${one.name}.`,
			`Leave ${log.least(one.device.reachDepth)} free on that side.`,
		);
}
