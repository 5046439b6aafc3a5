import { nth } from '../../../measure';
import type { Box, Cleats, Material } from '../../../job';
import { faceArea, p3, type Point3 } from '../solid';
import { boardName, boardOf, type Board, woodOf, type Seam, wallOf } from '../board';
import type { BoardRack } from '../rack';
import type { ProblemLog } from '../../problem-log';
import { sideFrame, sweptSolid } from '../shell';
import { type CleatRoom, type CleatSection, cornerSections, endSections } from './cleat-section';

export interface Cleated {
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
	/** Cubic ticks of one chamber. */
	readonly taken: number;
	/**
	 * Corners that should have had a cleat and have no room for one, by the boards that meet there.
	 */
	readonly missed: readonly string[];
}

/**
 * Strips in the corners of one chamber; the corner's own angle is ripped on the edge that meets the
 * second wall.
 */
export function cleatsIn(
	room: CleatRoom,
	wish: Cleats,
	material: Material,
	first: number,
): Cleated {
	const boards: Board[] = [];
	const add = (name: string, solid: Board['solid'], frame: Board['frame'], wall: string): void => {
		const key = `cleat-${first + boards.length}`;
		const made = {
			key,
			wall,
			name,
			role: 'cleat' as const,
			material,
			solid,
			frame,
			grain: 'along' as const,
		};
		boards.push(boardOf(made));
	};
	const t = material.measured;
	const corners = wish.where === 'ends' ? [] : cornerSections(room, wish.width, t);
	const ends = wish.where === 'corners' ? [] : endSections(room, wish, t, corners);
	const missed = [...cornerCleats(room, corners, add), ...endCleats(room, wish.width, ends, add)];
	const seams = boards.map(stripSeam);
	return { boards, seams, taken: boards.reduce((sum, b) => sum + woodOf(b), 0), missed };
}

/** Cleats in all chambers; `cleat` makes those of one, its boards numbered from `first`. */
export function cleatAll(
	box: Box,
	rooms: number,
	cleat: (room: number, wish: Cleats, material: Material, first: number) => Cleated | null,
	rack: BoardRack,
	log: ProblemLog,
): Pick<Cleated, 'boards' | 'seams'> & { readonly taken: readonly number[] } {
	const wish = box.cleats;
	const material = wish && rack.of(wish.material, ['cleats', 'material']);
	const taken = new Array<number>(rooms).fill(0);
	const boards: Board[] = [];
	const seams: Seam[] = [];
	if (!wish || !material) return { boards, seams, taken };
	const missed = new Set<string>();
	for (let r = 0; r < rooms; r++) {
		const made = cleat(r, wish, material, boards.length + 1);
		if (!made) continue;
		boards.push(...made.boards);
		seams.push(...made.seams);
		taken[r] = made.taken;
		for (const corner of made.missed) missed.add(corner);
	}
	sayMissed(wish, missed, log);
	return { boards, seams, taken };
}

/** Says which corners have no room for their cleat. */
function sayMissed(wish: Cleats, missed: ReadonlySet<string>, log: ProblemLog): void {
	if (missed.size === 0) return;
	const one = missed.size === 1;
	log.check(
		['cleats', 'width'],
		`A cleat ${log.say(wish.width)} wide has no room in ${one ? 'the corner' : 'the corners'} ${[...missed].join(', ')}; ${one ? 'it is' : 'they are'} left without one.`,
		'Take a narrower or a thinner cleat, or close these corners with glue and screws alone.',
	);
}

type Add = (name: string, solid: Board['solid'], frame: Board['frame'], wall: string) => void;

/** Along the corners of the side view. Returns those that have no room for one. */
function cornerCleats({ air, free }: CleatRoom, sections: readonly CleatSection[], add: Add) {
	return sections.flatMap(({ on, against, quad }): string[] => {
		const wall = nth(air.keys, on);
		const pair = `${boardName(wall)} / ${boardName(nth(air.keys, against ?? on))}`;
		if (!quad) return [pair];
		for (const [x0, x1] of free)
			add(`Cleat ${pair}`, sweptSolid(quad, x0, x1), sideFrame(air.corners, on), wall);
		return [];
	});
}

/** Round the inside of each end, square to it. Returns the edges that have no room for one. */
function endCleats(room: CleatRoom, width: number, sections: readonly CleatSection[], add: Add) {
	const { air } = room;
	const [left, right] = endStretches(room, width);
	const ends = [
		['left', left],
		['right', right],
	] as const;
	return sections.flatMap(({ on, quad }) =>
		ends.flatMap(([end, stretch]): string[] => {
			const wall = nth(air.keys, on);
			const pair = `${boardName(wall)} / ${boardName(end)}`;
			if (!stretch) return [];
			if (!quad) return [pair];
			add(`Cleat ${pair}`, sweptSolid(quad, ...stretch), sideFrame(air.corners, on), wall);
			return [];
		}),
	);
}

/**
 * Where the cleats at each end lie along the width; none where a frame or the other end leaves too
 * little room.
 */
function endStretches(
	room: CleatRoom,
	width: number,
): [left: [number, number] | null, right: [number, number] | null] {
	const first = room.free[0];
	const last = room.free.at(-1);
	if (!first || !last) return [null, null];
	const shared = first === last && room.ends.left && room.ends.right ? 2 : 1;
	const fits = ([from, to]: readonly [number, number]): boolean => to - from >= shared * width;
	return [
		room.ends.left && fits(first) ? [first[0], first[0] + width] : null,
		room.ends.right && fits(last) ? [last[1] - width, last[1]] : null,
	];
}

/** A cleat is glued on its broad face and on one edge. */
export function stripSeam(board: Board): Seam {
	const { outside } = board.solid;
	const spans = [0, 1].map((k) => distance3(nth(outside, k), nth(outside, k + 1)));
	const length = Math.max(...spans);
	const area = Math.abs(faceArea(outside, board.frame)) + length * board.material.measured;
	return {
		letter: '',
		between: [wallOf(board), board.key],
		kind: 'strip',
		length,
		area,
		at: middle(outside),
		seals: false,
	};
}

const distance3 = (a: Point3, b: Point3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

function middle(face: readonly Point3[]): Point3 {
	const sum = face.reduce((s, p) => p3(s.x + p.x, s.y + p.y, s.z + p.z), p3(0, 0, 0));
	return p3(sum.x / face.length, sum.y / face.length, sum.z / face.length);
}
