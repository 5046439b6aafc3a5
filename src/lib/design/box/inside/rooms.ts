import { nth } from '../../../measure';
import type { Box, Divider } from '../../../job';
import { type Line, type Point, cornerAt } from '../../../geometry';
import {
	volumeOfAir,
	type SweptAir,
	frameOf,
	type Frame,
	type Solid,
	stripAcross,
	type BoardStrip,
	length3,
	middle3,
	p3,
	sub3,
	type Point3,
} from '../solid';
import { boardOf, type Board, type Seam } from '../board';
import { endFrame, plate, sweptSolid } from '../shell';
import type { BoardRack } from '../rack';
import type { ProblemLog } from '../../problem-log';

/** One chamber: what is left of it for air, and what it was before its walls were doubled. */
export interface InsideChamber {
	readonly air: SweptAir;
	/** Cubic ticks between the walls as they stand. */
	readonly gross: number;
}

export interface Divided {
	readonly rooms: readonly InsideChamber[];
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
}

/** An edge of a board that stands inside, and what it meets there. */
export interface Meeting {
	readonly other: string;
	readonly from: Point3;
	readonly to: Point3;
}

interface Cut {
	readonly parts: readonly [SweptAir, SweptAir];
	readonly solid: Solid;
	readonly frame: Frame;
	readonly meets: readonly Meeting[];
}

/**
 * Splits the air by the dividers in the order they are listed; chambers are numbered from the left,
 * the bottom, the front.
 */
export function divide(
	box: Box,
	bare: SweptAir,
	doubled: SweptAir,
	rack: BoardRack,
	log: ProblemLog,
): Divided {
	let rooms: { air: SweptAir; bare: SweptAir }[] = [{ air: doubled, bare }];
	const boards: Board[] = [];
	const seams: Seam[] = [];
	box.dividers.forEach((divider, d) => {
		const material = rack.of(divider.material, ['dividers', d, 'material']);
		if (!material) return;
		let met = 0;
		rooms = rooms.flatMap((room, r) => {
			if (divider.only !== null && divider.only !== r + 1) return [room];
			const key = `divider-${boards.length + 1}`;
			const cut = cutAir(room.air, bare, divider, material.measured, key);
			if (!cut) return [room];
			const bareCut = cutAir(room.bare, bare, divider, material.measured, key);
			met++;
			const board = boardOf({
				key,
				wall: null,
				name: dividerName(box, d),
				divider: d + 1,
				role: 'divider',
				material,
				...cut,
				grain: 'along',
			});
			boards.push(board);
			seams.push(...edgeSeams(board, cut.meets));
			return [0, 1].map((k) => ({
				air: nth(cut.parts, k),
				bare: bareCut?.parts[k] ?? nth(cut.parts, k),
			}));
		});
		if (met === 0) missed(divider, d, doubled, log);
	});
	return { rooms: rooms.map((r) => ({ air: r.air, gross: volumeOfAir(r.bare) })), boards, seams };
}

/** Its number is told where there are several. */
export const dividerName = ({ dividers }: Box, d: number): string =>
	dividers.length > 1 ? `Divider ${d + 1}` : 'Divider';

function missed(divider: Divider, d: number, air: SweptAir, log: ProblemLog): void {
	const limit = {
		width: air.x1 - air.x0,
		height: spread(air, 'y'),
		depth: spread(air, 'x'),
	}[divider.across];
	log.stop(
		['dividers', d, 'at'],
		`No straight wall fits across the ${divider.across} at ${log.say(divider.at)}: it lies outside the air, or a corner of the form falls inside it.`,
		`Give a place within ${log.most(limit)}, clear of the corners.`,
	);
}

function spread(air: SweptAir, axis: 'x' | 'y'): number {
	const values = air.corners.map((c) => c[axis]);
	return Math.max(...values) - Math.min(...values);
}

/** Inside of the left end, the bottom and the front: what places are measured from. */
export function originOf(air: SweptAir): { x: number; y: number; z: number } {
	return {
		x: air.x0,
		y: Math.min(...air.corners.map((c) => c.x)),
		z: Math.min(...air.corners.map((c) => c.y)),
	};
}

function cutAir(
	air: SweptAir,
	bare: SweptAir,
	divider: Divider,
	t: number,
	key: string,
): Cut | null {
	const from = originOf(bare);
	if (divider.across === 'width') return cutWidth(air, from.x + divider.at, t, key);
	const level = divider.across === 'height';
	// Of a shelf the upper face is the outside; of an upright wall the front one.
	const line: Line = level
		? { at: { x: 0, y: from.z + divider.at + t }, heading: { x: 1, y: 0 } }
		: { at: { x: from.y + divider.at, y: 0 }, heading: { x: 0, y: 1 } };
	const strip = stripAcross(air.corners, line, t);
	if (!strip) return null;
	const half = (corners: SweptAir['corners'], sides: readonly number[]): SweptAir => ({
		...air,
		corners,
		keys: sides.map((i) => (i < 0 ? key : nth(air.keys, i))),
	});
	const left = half(strip.left, strip.leftSides);
	const right = half(strip.right, strip.rightSides);
	return {
		parts: level ? [right, left] : [left, right],
		solid: sweptSolid(strip.quad, air.x0, air.x1),
		frame: level
			? frameOf(p3(0, 0, 0), p3(0, 0, 1), p3(0, 1, 0))
			: frameOf(p3(0, 0, 0), p3(0, -1, 0), p3(0, 0, 1)),
		meets: stripMeets(air, strip),
	};
}

function cutWidth(air: SweptAir, x: number, t: number, key: string): Cut | null {
	if (x <= air.x0 || x + t >= air.x1) return null;
	const n = p3(-1, 0, 0);
	return {
		parts: [
			{ ...air, x1: x, right: key },
			{ ...air, x0: x + t, left: key },
		],
		solid: plate(air.corners, x, n, t),
		frame: endFrame(x, n),
		meets: plateMeets(air, x),
	};
}

/** What the four edges of a board laid across the side view meet. */
export function stripMeets(air: SweptAir, strip: BoardStrip): Meeting[] {
	const [a, b] = strip.quad.outside;
	const line = (other: string, p: Point3, q: Point3): Meeting => ({ other, from: p, to: q });
	const corner = (x: number, p: Point): Point3 => p3(x, p.x, p.y);
	return [
		line(nth(air.keys, strip.sides[0]), corner(air.x0, a), corner(air.x1, a)),
		line(nth(air.keys, strip.sides[1]), corner(air.x0, b), corner(air.x1, b)),
		line(air.left, corner(air.x0, a), corner(air.x0, b)),
		line(air.right, corner(air.x1, a), corner(air.x1, b)),
	];
}

/** What the edges of a board that fills the side view meet: every wall round it. */
export function plateMeets(air: SweptAir, x: number): Meeting[] {
	return air.corners.map((c, i) => {
		const d = cornerAt(air.corners, i + 1);
		return { other: nth(air.keys, i), from: p3(x, c.x, c.y), to: p3(x, d.x, d.y) };
	});
}

/** The seams of a board that stands inside. */
export function edgeSeams(board: Board, meets: readonly Meeting[], seals = true): Seam[] {
	return meets.map(({ other, from, to }): Seam => {
		const length = length3(sub3(to, from));
		return {
			letter: '',
			between: [board.key, other],
			kind: 'butt',
			length,
			area: length * board.material.measured,
			at: middle3(from, to),
			seals,
		};
	});
}
