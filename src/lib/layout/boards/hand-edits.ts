import { nth, ticks, toMm } from '../../measure';
import type { HandPlace, Job, JobFile } from '../../job';
import type { HandSpot, Placed } from '../../nest';
import type { BoardLayouts } from '../layouts';

/**
 * Which laid-out sheet of a plan is meant: its material and its place among that material's
 * layouts.
 */
export interface Which {
	readonly material: string;
	readonly index: number;
}

type PlaceInFile = NonNullable<JobFile['byHand']>[number];

/** Which of the pieces on a laid-out sheet lie there by hand, alongside them. */
export function heldOn(job: Job, boards: BoardLayouts, index: number): boolean[] {
	const { placed, sheet } = nth(boards.answer.layouts, index);
	const on = boards.sources[index]?.byHand ?? null;
	const left = job.byHand.filter(
		(h) => on !== null && h.material === boards.material && h.sheet === sheet && h.on === on,
	);
	return placed.map((p) => {
		const at = left.findIndex((h) => isAt(h, p));
		if (at >= 0) left.splice(at, 1);
		return at >= 0;
	});
}

const isAt = (h: HandPlace, p: Placed): boolean =>
	h.part === p.id && h.x === p.x && h.y === p.y && h.turn === p.turn;

/**
 * These places and no others are laid by hand on this sheet from now on; those that were refused
 * there stay in the file. Returns a new file.
 */
export function layByHand(
	file: JobFile,
	job: Job,
	all: readonly BoardLayouts[],
	{ which, spots }: { readonly which: Which; readonly spots: readonly HandSpot[] },
): JobFile {
	const boards = all.find((b) => b.material === which.material);
	const layout = boards?.answer.layouts[which.index];
	if (!boards || !layout) throw new Error(`bug: ${which.material} has no layout ${which.index}`);
	const { sheet } = layout;
	const on = boards.sources[which.index]?.byHand ?? freeNumber(job, sheet);
	const kept = (file.byHand ?? []).filter(
		(h) =>
			!isOn(h, which.material, sheet, on) || boards.refused.some((r) => isPlace(job, r.place, h)),
	);
	const laid = spots.map(({ id, x, y, turn }) => ({
		...{ material: which.material, sheet, on, part: id },
		...{ x: toMm(x), y: toMm(y), turn },
	}));
	return { ...file, byHand: [...kept, ...laid] };
}

/** Lets one place of the job go: the part is laid out with the rest. */
export function letGo(file: JobFile, job: Job, place: number): JobFile {
	return { ...file, byHand: (file.byHand ?? []).filter((h) => !isPlace(job, place, h)) };
}

/** Nothing is laid by hand any more. */
export const letAllGo = (file: JobFile): JobFile => ({ ...file, byHand: [] });

/** A sheet that stays as it is as a whole needs no places of its own. */
export function withoutPlaces(
	file: JobFile,
	{ material, sheet, on }: { material: string; sheet: string; on: number | null },
): JobFile {
	if (on === null) return file;
	return { ...file, byHand: (file.byHand ?? []).filter((h) => !isOn(h, material, sheet, on)) };
}

const isOn = (h: PlaceInFile, material: string, sheet: string, on: number): boolean =>
	h.material === material && h.sheet === sheet && (h.on ?? 0) === on;

/** Is an entry of the file this place of the job? Unread ones are only in the file. */
function isPlace(job: Job, place: number, h: PlaceInFile): boolean {
	const at = job.byHand[place];
	if (!at || !isOn(h, at.material, at.sheet, at.on)) return false;
	const same = (inFile: unknown, inJob: number): boolean =>
		typeof inFile !== 'number' || inFile === toMm(ticks(inJob));
	return h.part === at.part && same(h.x, at.x) && same(h.y, at.y) && (h.turn ?? 0) === at.turn;
}

function freeNumber(job: Job, sheet: string): number {
	const taken = job.byHand.filter((h) => h.sheet === sheet).map((h) => h.on);
	let n = 0;
	while (taken.includes(n)) n++;
	return n;
}
