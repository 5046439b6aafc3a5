import { nth } from '../../../measure';
import type { Box, Divider } from '../../../job';
import { type TaperedAir, ENDS, leastOf, level, stretch, type Across, type Planes } from '../solid';
import { boardOf, type Board, type Seam } from '../board';
import type { BoardRack } from '../rack';
import { dividerName, edgeSeams } from '../inside';
import { airWithin } from './form';
import { sliceAcross } from './slice';
import type { ProblemLog } from '../../problem-log';

export interface TaperedRoom {
	readonly air: TaperedAir;
	/** Cubic ticks between the walls as they stand, before they were doubled. */
	readonly gross: number;
}

/** Splits the air by the dividers in the order they are listed. */
export function divideTapered(
	box: Box,
	bare: TaperedAir,
	doubled: TaperedAir,
	rack: BoardRack,
	log: ProblemLog,
): { rooms: TaperedRoom[]; boards: Board[]; seams: Seam[] } {
	let rooms = [{ air: doubled, bare }];
	const boards: Board[] = [];
	const seams: Seam[] = [];
	box.dividers.forEach((divider, d) => {
		const material = rack.of(divider.material, ['dividers', d, 'material']);
		if (!material) return;
		const { across } = divider;
		const at = leastOf(bare.sides, across) + divider.at;
		let met = 0;
		rooms = rooms.flatMap((room, r) => {
			if (divider.only !== null && divider.only !== r + 1) return [room];
			const t = material.measured;
			const slice = sliceAcross(room.air.sides, across, at, t);
			const key = `divider-${boards.length + 1}`;
			const halves = slice && halvesOf(room.air, across, at, t, key);
			if (!slice || !halves) return [room];
			met++;
			const { solid, frame } = slice;
			const made = { key, wall: null, divider: d + 1, role: 'divider' as const };
			const board = boardOf({
				...made,
				name: dividerName(box, d),
				material,
				solid,
				frame,
				grain: 'along',
			});
			boards.push(board);
			seams.push(...edgeSeams(board, slice.meets));
			const bareHalves = halvesOf(room.bare, across, at, t, key) ?? halves;
			return [0, 1].map((k) => ({ air: nth(halves, k), bare: nth(bareHalves, k) }));
		});
		if (met === 0) missedDivider(divider, d, doubled.sides, bare.sides, log);
	});
	const gross = rooms.map(({ air, bare: own }) => ({ air, gross: own.volume }));
	return { rooms: gross, boards, seams };
}

function halvesOf(
	air: TaperedAir,
	across: Across,
	at: number,
	t: number,
	key: string,
): [TaperedAir, TaperedAir] | null {
	const { low, high } = ENDS[across];
	const before = airWithin({ ...air.sides, [high]: level(key, across, at, 1) });
	const after = airWithin({ ...air.sides, [low]: level(key, across, at + t, -1) });
	return before && after && [before, after];
}

function missedDivider(
	divider: Divider,
	d: number,
	sides: Planes,
	bare: Planes,
	log: ProblemLog,
): void {
	const { across, at } = divider;
	const [from, to] = stretch(sides, across);
	const start = leastOf(bare, across);
	log.stop(
		['dividers', d, 'at'],
		`No straight wall fits across the ${across} at ${log.say(at)}: between the leaning sides there is room from ${log.range(from - start, to - start)}.`,
		`Give a place in that stretch, counted from where the inside reaches farthest ${REACH[across]}.`,
	);
}

const REACH: Readonly<Record<Across, string>> = {
	width: 'to the left',
	height: 'down',
	depth: 'to the front',
};
