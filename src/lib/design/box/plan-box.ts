import { clothOnFace, sawOf, type Box, type BoxShape, type Job, type Path } from '../../job';
import type { Need } from '../need';
import type { Part } from '../part';
import { type Board, letter, needs, seamNeeds, partOf, withTurnedEnd } from './board';
import type { BoxPlan, Chamber } from './box-plan';
import {
	chambersOf,
	netOf,
	figuresOf,
	clothOn,
	clothRound,
	fitOf,
	outerBoards,
	outsidePoints,
	sizesOf,
} from './report';
import { withSlotsNamed } from './halving';
import { bareAir, fillSwept, type Inside } from './inside';
import type { Framed, Seated } from './mounted';
import { BoardRack } from './rack';
import { sweptSectionOf, shellOf, type SweptSection } from './shell';
import { skinOf, taperedSkin } from './skin';
import { solveBox } from './solve';
import { taperedShell, type TaperedShell, fillTapered, taperedForm } from './tapered';
import { ProblemLog } from '../problem-log';
import { litres, volumeOfAir } from './solid';
import { sayLength, ticks, toMm, type Ruler } from '../../measure';

/**
 * Everything worked out of one box: its boards, their bevels, the air inside, and what has to be
 * looked at. Never throws for what a person typed; `path` is where the box stands in the job, for
 * the problems.
 */
export function planBox(asked: Box, job: Job, path: Path): BoxPlan {
	const log = new ProblemLog(path, job.shop.ruler);
	const { shape, solved, known } = solvedShape(asked, job, path, log);
	const box = { ...asked, shape };
	const built = known ? known.built : build(box, job, log);
	if (known) log.add(known.log);
	if (!built) {
		const nothing = { id: box.id, name: box.name, parts: [], needs: [], skin: null, mass: 0 };
		return { ...nothing, problems: log.problems };
	}
	const { section, tapered } = built;
	const boards = withSlotsNamed(built.inside.boards, (i) => labelOf(i, box, job), log.ruler);
	const inside = { ...built.inside, boards };
	const seams = letter(inside.boards, inside.seams);
	const parts = withTurnedEnd(partsOf(inside.boards, box, job), inside.boards);
	const chambers = chambersOf(box, inside, log);
	compare(box, chambers, log);
	const fit = fitOf(box, inside.boards, clothOn(job, box), log);
	const innerCorners = tapered?.innerCorners ?? [];
	const whole = {
		box,
		inside,
		seams,
		parts,
		section,
		innerCorners,
		chambers,
		fit,
		solved,
		log,
		sundries: job.stock.sundries,
	};
	const figures = figuresOf(whole);
	return {
		id: box.id,
		name: box.name,
		parts,
		problems: log.problems,
		needs: [...seamNeeds(seams, box), ...fittingNeeds(box, inside, figures.chambers, log.ruler)],
		skin: section
			? skinOf(section, inside.boards, box.id, box.name)
			: taperedSkin(tapered, inside.boards, box.id, box.name),
		mass: figures.mass,
		figures,
	};
}

type Built = { readonly inside: Inside } & (
	| { readonly section: SweptSection; readonly tapered: null }
	| { readonly section: null; readonly tapered: TaperedShell }
);

/** The boards and the air of a box of known size; null when its form cannot be made. */
function build(box: Box, job: Job, log: ProblemLog): Built | null {
	const rack = new BoardRack(box, job, log);
	const limit = tiltLimit(job);
	if (box.shape.kind !== 'tapered') {
		const shell = shellOf(box, box.shape, rack, limit, log);
		return (
			shell && {
				inside: fillSwept(box, shell, rack, log),
				section: shell.section,
				tapered: null,
			}
		);
	}
	const tapered = taperedShell(box, box.shape, rack, limit, log);
	return tapered && { inside: fillTapered(box, tapered, rack, log), section: null, tapered };
}

interface Tried {
	readonly built: Built | null;
	readonly log: ProblemLog;
}

/**
 * The form with the dimension that was to be solved, what came of it, and that box when it was
 * built on the way.
 */
function solvedShape(
	box: Box,
	job: Job,
	path: Path,
	log: ProblemLog,
): Pick<ReturnType<typeof solveBox>, 'shape' | 'solved'> & { known: Tried | undefined } {
	const { space } = box;
	const room = box.target ? box.target.chamber - 1 : 0;
	const tried = new Map<string, Tried>();
	const tryOut = (shape: BoxShape): Built | null => {
		const key = JSON.stringify(shape);
		const own = new ProblemLog(path, job.shop.ruler);
		const known = tried.get(key) ?? { built: build({ ...box, shape }, job, own), log: own };
		tried.set(key, known);
		return known.built;
	};
	const net = (shape: BoxShape): number | null => {
		const built = tryOut(shape);
		return built && built.inside.rooms.length > room ? netOf(built.inside, room) : null;
	};
	const over = (shape: BoxShape): Partial<Record<'width' | 'height' | 'depth', number>> | null => {
		const built = space ? tryOut(shape) : null;
		return built && space ? pastSpace(box, space, job, built) : null;
	};
	const gross = (shape: BoxShape): number | null => grossOf({ ...box, shape }, job);
	const solution = solveBox(box, job, { net, gross }, over);
	// A form that cannot be made has said so; that no size of it gives the volume is the same fault
	// once more.
	const first = tried.get(JSON.stringify(box.shape));
	const formless = solution.solved === null && first?.built === null;
	if (solution.unmet && !formless) log.check(['target'], solution.unmet.what, solution.unmet.fix);
	return { ...solution, known: tried.get(JSON.stringify(solution.shape)) };
}

/**
 * Litres between the walls, worked out without building them; null where the form cannot be made.
 */
function grossOf(box: Box, job: Job): number | null {
	const quiet = new ProblemLog([], job.shop.ruler);
	const rack = new BoardRack(box, job, quiet);
	if (box.shape.kind === 'tapered') {
		const form = taperedForm(box, box.shape, rack, quiet);
		return form && litres(form.air.volume);
	}
	const section = sweptSectionOf(box, box.shape, rack, quiet);
	return section && litres(volumeOfAir(bareAir(section)));
}

function pastSpace(
	box: Box,
	space: NonNullable<Box['space']>,
	job: Job,
	built: Built,
): Record<'width' | 'height' | 'depth', number> {
	const cloth = clothRound(outerBoards(built.inside.boards), clothOn(job, box));
	const size = sizesOf(outsidePoints(built.inside.boards));
	const [left, right] = cloth.width;
	const [bottom, top] = cloth.height;
	const [front, back] = cloth.depth;
	return {
		width: size.width + left + right - (space.width - 2 * space.clearance),
		height: size.height + bottom + top - (space.height - space.clearance),
		depth: size.depth + front + back - (space.depth - space.clearance - box.standOff),
	};
}

/** Sizes kept as they are: says when the volume wanted is missed by more than a twentieth. */
function compare(box: Box, chambers: readonly Chamber[], log: ProblemLog): void {
	const { target } = box;
	if (!target) return;
	const chamber = chambers[target.chamber - 1];
	if (!chamber) {
		log.check(
			['target', 'chamber'],
			`There is no chamber ${target.chamber}; the box has ${chambers.length}.`,
			`Give a number from 1 to ${chambers.length}.`,
		);
		return;
	}
	const off = chamber.net - target.litres;
	if (target.solve === null && Math.abs(off) > target.litres / 20) {
		log.check(
			['target', 'litres'],
			`The chamber holds ${log.volume(chamber.net)} net; ${log.volume(target.litres)} are wanted, ${log.volume(Math.abs(off))} ${off > 0 ? 'less' : 'more'}.`,
			'Choose a dimension to solve for, or change the sizes.',
		);
	}
}

export function tiltLimit(job: Job): number {
	return sawOf(job).tiltLimit;
}

/** B1, B2 ... when there is one box in the job; B2-1, B2-2 ... for the second of several. */
function labelOf(i: number, box: Box, job: Job): string {
	const own = job.boxes.length > 1 ? `B${job.boxes.findIndex((b) => b.id === box.id) + 1}-` : 'B';
	return `${own}${i + 1}`;
}

function partsOf(boards: readonly Board[], box: Box, job: Job): Part[] {
	return boards.map((board, i) => {
		const mark = {
			id: `${box.id}.${board.key}`,
			label: labelOf(i, box, job),
			owner: box.id,
			count: box.count,
		};
		return partOf(board, mark, seen(board, box));
	});
}

/** Is the outside of a board seen in the finished work? Not when it is carpeted over. */
function seen(board: Board, box: Box): boolean {
	if (!['wall', 'end', 'overlay', 'ring'].includes(board.role)) return false;
	if (!box.carpet) return true;
	return clothOnFace(box.carpet, board.wall ?? board.key) === null;
}

/** What drivers, terminal, lining and stuffing use up. */
function fittingNeeds(
	box: Box,
	inside: Inside,
	chambers: readonly Chamber[],
	ruler: Ruler,
): Need[] {
	const times = box.count;
	const { seated, radiators } = inside;
	const frames = (all: readonly Seated<Framed>[]): number =>
		all.reduce((sum, s) => sum + Math.PI * toMm(s.driver.frame), 0) / 1000;
	const bolts = (all: readonly Seated<Framed>[]): number =>
		all.reduce((sum, s) => sum + s.driver.bolts, 0);
	const stuffed = box.stuffing
		? (chambers.filter((c) => !c.vented).reduce((sum, c) => sum + c.net, 0) * box.stuffing.fill) /
			100
		: 0;
	const cup =
		box.terminal && inside.boards.some((b) => b.holes.some((h) => h.of === 'terminal')) ? 1 : 0;
	return needs([
		{ kind: 'gasket', amount: frames(seated) * times, for: `driver frames of ${box.name}` },
		{
			kind: 'gasket',
			amount: frames(radiators) * times,
			for: `passive radiator frames of ${box.name}`,
		},
		...inside.rods.map((rod): Need => {
			const amount = (toMm(ticks(Math.ceil(rod.length))) / 1000) * times;
			return {
				kind: 'dowel',
				amount,
				for: `${rod.name} of ${box.name}, ${sayLength(rod.diameter, ruler)}`,
			};
		}),
		{ kind: 't-nuts', amount: bolts(seated) * times, for: `drivers of ${box.name}` },
		{
			kind: 't-nuts',
			amount: bolts(radiators) * times,
			for: `passive radiators of ${box.name}`,
		},
		{ kind: 'terminal', amount: cup * times, for: box.name },
		{
			kind: 'screws',
			amount: cup * (box.terminal?.screws ?? 0) * times,
			for: `terminal of ${box.name}`,
		},
		...inside.devices.map((d): Need => {
			const screws = d.device.holes.length * times;
			return { kind: 'screws', amount: screws, for: `${d.name} of ${box.name}` };
		}),
		{ kind: 'lining', amount: inside.lined.area * times, for: `walls of ${box.name}` },
		{ kind: 'stuffing', amount: stuffed * times, for: `inside of ${box.name}` },
	]);
}
