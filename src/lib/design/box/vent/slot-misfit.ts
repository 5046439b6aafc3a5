import { around } from '../../../measure';
import type { SlotVent } from '../../../job';
import { convex, type SlotPlane } from '../solid';
import type { ProblemLog } from '../../problem-log';
import { boardsBetween, roomBetween, type SlotSize, turnsOf } from './slot-legs';

/** Where in the vent the fault lies, and what would be right. */
interface Misfit {
	readonly of: 'gap' | 'bend' | 'run';
	readonly what: string;
	readonly fix: string;
}

/** Why a slot of these figures cannot be built along a board, if it cannot. */
export function misfit(
	vent: SlotVent,
	plane: SlotPlane,
	size: SlotSize,
	log: ProblemLog,
): Misfit | null {
	const asked = { vent, plane, size };
	return tooHigh(asked, log) ?? cannotTurn(asked, log) ?? tooWide(asked, log);
}

interface Asked {
	readonly vent: SlotVent;
	readonly plane: SlotPlane;
	readonly size: SlotSize;
}

function tooHigh({ vent, plane, size: { board } }: Asked, log: ProblemLog): Misfit | null {
	const foot = around(plane.corners, plane.front + 1);
	const high = Math.max(0, ...plane.corners.map((p) => Math.abs(p.y - foot.y)));
	if (vent.gap + board < high) return null;
	return {
		of: 'gap',
		what: `A slot of ${log.say(vent.gap)} with its board fills the chamber, which is ${log.say(high)} there.`,
		fix: `Give less than ${log.most(high - board)}.`,
	};
}

function cannotTurn({ vent, plane, size }: Asked, log: ProblemLog): Misfit | null {
	const turns = turnsOf(vent);
	if (turns > 0 && !plane.bends)
		return {
			of: 'bend',
			what: `${vent.bend === 'U' ? 'A U' : 'An L'} along the ${vent.along} end needs a back that stands square to it.`,
			fix: 'Make it straight, or run it along the bottom or the top.',
		};
	if (turns > 1 && !(turnsInward(plane, 1) && turnsInward(plane, 2)))
		return {
			of: 'bend',
			what: `A slot along the ${vent.along} that turns twice needs three boards one after the other round the chamber, each meeting the next at an inside corner.`,
			fix: 'Turn it once, or run it along another board.',
		};
	const t = size.board;
	const short = boardsBetween(plane, size, turns).findIndex((long) => long < t);
	if (short < 0)
		return roomBetween(plane, size, turns)
			? null
			: {
					of: 'bend',
					what: `A board of the box stands in the way of this slot before its last turn.`,
					fix: 'Make the slot lower, turn it less often, or run it along another board.',
				};
	const by = t - (boardsBetween(plane, size, turns)[short] ?? 0);
	const upright = vent.along === 'bottom' || vent.along === 'top';
	const way = short === 0 ? 'deeper' : upright ? 'higher' : 'wider';
	return {
		of: 'bend',
		what: `Leg ${short + 1} of the slot does not fit: between its turns its board of ${log.say(t)} has ${log.say(by)} too little.`,
		fix: `Make the box ${log.least(by)} ${way} or more, the slot lower, or turn it less often.`,
	};
}

/** Is the corner before leg `k` one of the air, so that the slot can turn round in it? */
function turnsInward(plane: SlotPlane, k: number): boolean {
	const n = plane.corners.length;
	return n > 3 && convex(plane.corners, (plane.front + 1 + k) % n);
}

function tooWide({ vent, plane, size: { board } }: Asked, log: ProblemLog): Misfit | null {
	const width = plane.run[1] - plane.run[0];
	if (vent.run === null || vent.run + board <= width || vent.run === width) return null;
	return {
		of: 'run',
		what: `A slot ${log.say(vent.run)} wide with its cheek does not fit in ${log.say(width)}.`,
		fix: `Give at most ${log.most(width - board)}, or leave it empty for wall to wall.`,
	};
}
