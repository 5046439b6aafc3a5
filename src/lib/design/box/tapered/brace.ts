import { nth } from '../../../measure';
import type { Box, Brace } from '../../../job';
import {
	type TaperedAir,
	type Plane,
	hexCorners,
	ENDS,
	leastOf,
	level,
	ON,
	opens,
	stretch,
	type Planes,
	add3,
	dot3,
	length3,
	p3,
	scale3,
	sub3,
	type Point3,
} from '../solid';
import {
	braceAll,
	braceName,
	type Braced,
	type Dowel,
	type Plate,
	type PlateBody,
	type Rod,
} from '../inside';
import type { BoardRack } from '../rack';
import type { TaperedRoom } from './divide';
import { FACING, sliceAcross } from './slice';
import type { ProblemLog } from '../../problem-log';

/** Frames, shelves and rods in a double-tapered box. */
export function braceTapered(
	box: Box,
	rooms: readonly TaperedRoom[],
	bare: Planes,
	rack: BoardRack,
	log: ProblemLog,
): Braced {
	const airOf = (r: number): TaperedAir => nth(rooms, r).air;
	const maker = {
		rod: (brace: Dowel, b: number, r: number) => rodIn(airOf(r), bare, brace, b),
		plate: (brace: Plate, r: number, t: number) => plateIn(airOf(r).sides, bare, brace, t),
		missed: (brace: Brace, b: number) => missed(brace, b, rooms, bare, log),
	};
	return braceAll(box, rooms.length, maker, rack, log);
}

function missed(
	brace: Brace,
	b: number,
	rooms: readonly TaperedRoom[],
	bare: Planes,
	log: ProblemLog,
): void {
	if (brace.kind === 'dowel') {
		log.stop(
			['braces', b],
			`The place of ${braceName(brace, b)} (${log.say([brace.a, brace.b], ' and ')}) lies outside the air.`,
			'Move it inside, clear of the leaning sides.',
		);
		return;
	}
	const { across } = brace;
	const start = leastOf(bare, across);
	const free = rooms
		.map(({ air }) => stretch(air.sides, across))
		.map(([from, to]) => `from ${log.range(from - start, to - start)}`)
		.join(' or ');
	log.stop(
		['braces', b],
		`Nothing can be braced at ${log.say(brace.at)} across the ${across}: a straight board stands clear of the leaning sides only ${free}, its thickness included.`,
		brace.kind === 'shelf'
			? 'Move it into that stretch, and let its ends reach the sides wholly or stay wholly clear of them; or scribe it in by hand.'
			: 'Move it into that stretch, or stand it across the depth, where a frame fits anywhere.',
	);
}

function plateIn(sides: Planes, bare: Planes, brace: Plate, t: number): PlateBody | null {
	const { across } = brace;
	const at = leastOf(bare, across) + brace.at - t / 2;
	const within = brace.kind === 'shelf' ? shelfSides(sides, bare, brace, at, t) : sides;
	const slice = within && sliceAcross(within, across, at, t);
	if (!slice) return null;
	const meets = slice.meets.filter((m) => m.other !== '');
	return { solid: slice.solid, frame: slice.frame, meets, square: across !== 'depth' };
}

/**
 * A shelf ends at the leaning walls or wholly clear of them; null where its end would be cut by one
 * on the way.
 */
function shelfSides(
	sides: Planes,
	bare: Planes,
	shelf: Extract<Brace, { kind: 'shelf' }>,
	at: number,
	t: number,
): Planes | null {
	const { low, high } = ENDS[shelf.across];
	const cell = {
		...sides,
		[low]: level('', shelf.across, at, -1),
		[high]: level('', shelf.across, at + t, 1),
	};
	const c = hexCorners(cell);
	const ends = (['left', 'right'] as const).map((key) => ON[key].map((i) => nth(c, i).x));
	const x0 = leastOf(bare, 'width') + shelf.from;
	const left = endOf(sides.left, x0, nth(ends, 0), -1);
	const right = endOf(sides.right, x0 + shelf.length, nth(ends, 1), 1);
	if (!left || !right || !opens(hexCorners({ ...cell, left, right }))) return null;
	return { ...sides, left, right };
}

function endOf(wall: Plane, x: number, at: readonly number[], sign: 1 | -1): Plane | null {
	const [least, most] = [Math.min(...at), Math.max(...at)];
	if (sign < 0 ? x <= least : x >= most) return wall;
	return (sign < 0 ? x >= most : x <= least) ? level('', 'width', x, sign) : null;
}

/** A rod along an axis from side to side; its ends are cut to them. */
function rodIn(air: TaperedAir, bare: Planes, brace: Dowel, b: number): Rod | null {
	const { along, a, b: up, diameter } = brace;
	const [x, y, z] = (['width', 'depth', 'height'] as const).map((axis) => leastOf(bare, axis)) as [
		number,
		number,
		number,
	];
	const start = {
		width: p3(0, y + a, z + up),
		depth: p3(x + a, 0, z + up),
		height: p3(x + a, y + up, 0),
	}[along];
	const heading = scale3(FACING[along].n, along === 'height' ? 1 : -1);
	let [low, high] = [
		{ at: -Infinity, lean: 0 },
		{ at: Infinity, lean: 0 },
	];
	for (const f of air.planes) {
		const closing = dot3(f.n, heading);
		const left = f.d - dot3(f.n, start);
		if (Math.abs(closing) < 1e-9 && left < 0) return null;
		if (Math.abs(closing) < 1e-9) continue;
		const met = { at: left / closing, lean: Math.sqrt(1 - closing * closing) / Math.abs(closing) };
		if (closing > 0 && met.at < high.at) high = met;
		if (closing < 0 && met.at > low.at) low = met;
	}
	if (high.at <= low.at) return null;
	const [from, to] = [low, high].map((end) => add3(start, scale3(heading, end.at))) as [
		Point3,
		Point3,
	];
	// A rod cut to a leaning wall is longer at one side than along its middle.
	const extra = (diameter / 2) * (low.lean + high.lean);
	const length = length3(sub3(to, from)) + extra;
	return { name: braceName(brace, b), diameter, length, from, to };
}
