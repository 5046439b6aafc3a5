import { type BoxPlan, LOOSE, type Part } from '../design';
import type { Job, PinnedLayout } from '../job';
import type { BoardLayouts, ClothLayouts, RollLayout } from '../layout';
import type { Plan } from '../plan';
import type { Blank } from '../wrap';
import { servedBy } from './bundles';
import type { RackMarks } from './rack';
import { idOf } from './tags';

/*
 * What one job's plan holds, under marks that no other of the jobs has: the job's tag before its
 * own, and the marks of the one rack for those of its own.
 */

interface Tagging {
	readonly tag: string;
	readonly marks: RackMarks;
}

const named = (marks: ReadonlyMap<string, string>, id: string): string => marks.get(id) ?? id;

/** What is written on the piece: the job, then its mark. */
const labelOf = (tag: string, label: string): string => `${tag} ${label}`;

export function taggedParts({ parts }: Plan, { tag, marks }: Tagging): Part[] {
	return parts.map((part) => ({
		...part,
		id: idOf(tag, part.id),
		label: labelOf(tag, part.label),
		owner: idOf(tag, part.owner),
		material: named(marks.materials, part.material),
	}));
}

export function taggedBlanks({ blanks }: Plan, { tag, marks }: Tagging): Blank[] {
	return blanks.map((blank) => ({
		...blank,
		id: idOf(tag, blank.id),
		label: labelOf(tag, blank.label),
		owner: idOf(tag, blank.owner),
		cloth: named(marks.cloths, blank.cloth),
		// Blanks of one job match each other; those of another vehicle need not match them.
		lot: blank.lot === '' ? '' : `${tag} ${blank.lot}`,
	}));
}

/** Each told which sundry of the one rack it is taken from. */
export function taggedNeeds({ needs }: Plan, rack: Job, { tag, marks }: Tagging): Plan['needs'] {
	return needs.map((need) => ({
		...need,
		for: `${need.for} (${tag})`,
		of: named(marks.sundries, servedBy(rack.stock, need)),
	}));
}

/** Runs and what they are cut from. */
export function taggedRuns(runs: Plan['runs'], { tag, marks }: Tagging): Plan['runs'] {
	return runs.map((run) => ({
		...run,
		id: idOf(tag, run.id),
		label: labelOf(tag, run.label),
		reel: named(marks.sundries, run.reel),
	}));
}

/** Boxes, panels and typed work as they were asked for: enough to name and count them. */
export function taggedJob(
	{ job: { boxes, panels, work, pinned, byHand, pulled }, boards }: Plan,
	{ tag, marks }: Tagging,
): Pick<Job, 'boxes' | 'panels' | 'work' | 'pinned' | 'byHand' | 'pulled'> {
	// What holds no more was said of its job.
	const fallen = new Set(boards.flatMap(({ refused }) => refused.map(({ place }) => place)));
	return {
		boxes: boxes.map((b) => ({ ...b, id: idOf(tag, b.id), name: labelOf(tag, b.name) })),
		panels: panels.map((p) => ({ ...p, id: idOf(tag, p.id), name: labelOf(tag, p.name) })),
		work: work.map((w) => ({ ...w, what: labelOf(tag, w.what) })),
		pinned: pinned.map((layout) => taggedPinned(layout, { tag, marks })),
		byHand: byHand
			.filter((_, place) => !fallen.has(place))
			.map((place) => ({
				...place,
				material: named(marks.materials, place.material),
				sheet: sheetId(place.sheet, marks),
				part: idOf(tag, place.part),
			})),
		pulled: pulled.map((cloth) => ({
			...cloth,
			cloth: named(marks.cloths, cloth.cloth),
			roll: named(marks.rolls, cloth.roll),
			placed: cloth.placed.map((p) => ({ ...p, id: idOf(tag, p.id) })),
		})),
	};
}

/**
 * The places by hand of all jobs, those of each on sheets of their own: no hand knew of another's.
 */
export function apartByHand(each: readonly Job['byHand'][]): Job['byHand'] {
	let from = 0;
	return each.flatMap((places) => {
		const own = places.map((place) => ({ ...place, on: place.on + from }));
		from = Math.max(from, ...own.map(({ on }) => on + 1));
		return own;
	});
}

/** The designs, so that what is done to each part after the saw is found. */
export function taggedDesigns(
	{ boxes, panels, carpets }: Plan,
	{ tag }: Tagging,
): Pick<Plan, 'boxes' | 'panels' | 'carpets'> {
	return {
		boxes: boxes.map((b) => taggedBox(b, tag)),
		panels: panels.map((p) => ({ ...p, id: idOf(tag, p.id), name: labelOf(tag, p.name) })),
		carpets: carpets.map((c) => ({ ...c, owner: idOf(tag, c.owner) })),
	};
}

function taggedBox(box: BoxPlan, tag: string): BoxPlan {
	const { figures } = box;
	const named = { ...box, id: idOf(tag, box.id), name: labelOf(tag, box.name) };
	if (!figures) return named;
	const boards = figures.boards.map((b) => ({ ...b, part: idOf(tag, b.part) }));
	return { ...named, figures: { ...figures, boards } };
}

/** What stands for the loose parts of a job, as the owner of its parts. */
export const looseOf = (tag: string): string => idOf(tag, LOOSE);

type SheetLayout = BoardLayouts['answer']['layouts'][number];

function taggedPinned(layout: PinnedLayout, { tag, marks }: Tagging): PinnedLayout {
	return {
		...layout,
		material: named(marks.materials, layout.material),
		sheet: sheetId(layout.sheet, marks),
		placed: layout.placed.map((p) => ({ ...p, id: idOf(tag, p.id) })),
		made: layout.made.map((m) => ({ ...m, id: idOf(tag, m.id) })),
		cuts: layout.cuts.map((cut) => taggedCut(cut, tag)),
	};
}

/** 'buy/ply-18' under the mark that the sheet has among all; an offcut of its own keeps its. */
function sheetId(sheet: string, { sheets }: RackMarks): string {
	const at = sheet.indexOf('/');
	return `${sheet.slice(0, at)}/${named(sheets, sheet.slice(at + 1))}`;
}

function taggedCut<C extends SheetLayout['cuts'][number]>(cut: C, tag: string): C {
	const give = (g: C['gives'][number]) => (g.id === undefined ? g : { ...g, id: idOf(tag, g.id) });
	return { ...cut, gives: [give(cut.gives[0]), give(cut.gives[1])] };
}

export function taggedBoards(boards: BoardLayouts, { tag, marks }: Tagging): BoardLayouts {
	const { answer, sources, problem } = boards;
	const pieces = problem.pieces.map((p) => ({ ...p, id: idOf(tag, p.id) }));
	const sheets = problem.sheets.map((s) => ({ ...s, id: sheetId(s.id, marks) }));
	return {
		...boards,
		refused: [],
		material: named(marks.materials, boards.material),
		problem: { ...problem, pieces, sheets },
		answer: {
			...answer,
			layouts: answer.layouts.map((l) => taggedLayout(l, { tag, marks })),
			unplaced: taggedUnplaced(answer.unplaced, tag),
		},
		sources: sources.map((s) => ({ ...s, id: named(marks.sheets, s.id) })),
	};
}

function taggedLayout(layout: SheetLayout, { tag, marks }: Tagging): SheetLayout {
	return {
		...layout,
		sheet: sheetId(layout.sheet, marks),
		placed: layout.placed.map((p) => ({ ...p, id: idOf(tag, p.id) })),
		cuts: layout.cuts.map((cut) => taggedCut(cut, tag)),
	};
}

function taggedUnplaced<U extends { readonly id: string; readonly why: string }>(
	unplaced: readonly U[],
	tag: string,
): U[] {
	return unplaced.map((u) => {
		const id = idOf(tag, u.id);
		return { ...u, id, why: u.why.replaceAll(u.id, id) };
	});
}

export function taggedCloth(cloth: ClothLayouts, { tag, marks }: Tagging): ClothLayouts {
	return {
		cloth: named(marks.cloths, cloth.cloth),
		rolls: cloth.rolls.map((r) => taggedRoll(r, { tag, marks })),
		unplaced: taggedUnplaced(cloth.unplaced, tag),
	};
}

function taggedRoll(roll: RollLayout, { tag, marks }: Tagging): RollLayout {
	const { problem, answer } = roll;
	return {
		...roll,
		roll: named(marks.rolls, roll.roll),
		problem: { ...problem, pieces: problem.pieces.map((p) => ({ ...p, id: idOf(tag, p.id) })) },
		answer: {
			...answer,
			placed: answer.placed.map((p) => ({ ...p, id: idOf(tag, p.id) })),
			unplaced: taggedUnplaced(answer.unplaced, tag),
		},
	};
}
