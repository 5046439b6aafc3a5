import type { Box } from '../../job/box';
import type { Job } from '../../job/job';
import type { Part } from '../part';
import type { Board } from './board';
import type { BoxPlan } from './box-plan';
import { letter } from './letters';
import { seamNeeds } from './needs';
import { partOf } from './part-of';
import { Rack } from './rack';
import { shellOf } from './shell';
import { skinOf } from './skin';
import { Trouble } from './trouble';

/**
 * Everything worked out of one box: its boards, their bevels, the air inside, and what has to be looked at. Never throws for
 * what a person typed; `path` is where the box stands in the job, for the problems.
 */
export function planBox(box: Box, job: Job, path: readonly (string | number)[]): BoxPlan {
	const trouble = new Trouble(path);
	const rack = new Rack(box, job.stock.materials, trouble);
	const shell =
		box.shape.kind === 'tapered' ? null : shellOf(box, box.shape, rack, tiltLimit(job), trouble);
	const nothing = { id: box.id, name: box.name, parts: [], needs: [], skin: null, mass: 0 };
	if (!shell) return { ...nothing, problems: trouble.problems };
	const seams = letter(shell.boards, shell.seams);
	const parts = partsOf(shell.boards, box, job);
	return {
		id: box.id,
		name: box.name,
		parts,
		problems: trouble.problems,
		needs: seamNeeds(seams, box),
		skin: skinOf(shell.section, shell.boards, box.id, box.name),
		mass: parts.reduce((sum, p) => sum + p.mass, 0),
	};
}

function tiltLimit(job: Job): number {
	const saw = job.shop.saws.find((s) => s.id === job.shop.saw) ?? job.shop.saws[0];
	return saw?.tiltLimit ?? 45;
}

/** B1, B2 ... when there is one box in the job; B2-1, B2-2 ... for the second of several. */
export function partsOf(boards: readonly Board[], box: Box, job: Job): Part[] {
	const own = job.boxes.length > 1 ? `B${job.boxes.findIndex((b) => b.id === box.id) + 1}-` : 'B';
	return boards.map((board, i) =>
		partOf(
			board,
			{ id: `${box.id}.${board.key}`, label: `${own}${i + 1}`, owner: box.id, count: box.count },
			false,
		),
	);
}
