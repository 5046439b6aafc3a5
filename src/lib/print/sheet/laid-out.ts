import type { Part } from '../../design';
import type { Rect } from '../../geometry';
import { mm, ticks } from '../../measure';
import type { Cut, Placed } from '../../nest';
import { partWithId, type Figures, type SheetAt } from '../wording';
import { fitLabel } from '../marks';
import {
	type Mark,
	hatch,
	line,
	onPaper,
	rect,
	type Spot,
	type View,
	type Bounds,
} from '../drawing';
import { partOnSheet } from './part-on-sheet';
import type { Plan } from '../../plan';

/** What is to be seen on a sheet or a strip of one. */
export interface OnSheet {
	readonly placed: readonly Placed[];
	readonly offcuts: readonly { readonly rect: Rect; readonly n: number; readonly rack: string }[];
	readonly waste: readonly Rect[];
}

/**
 * Parts, offcuts and waste where they lie, and the boxes of their words. `spoiled` are parts that
 * were cut and are waste now, as {@link pieceKey} names them.
 */
export function laidOut(
	plan: Plan,
	laid: OnSheet,
	view: View,
	figures: Figures,
	spoiled: ReadonlySet<string> = new Set(),
) {
	const words: Bounds[] = [];
	const marks: Mark[] = laid.waste.map((r) => hatch('waste', [corners(r, view)]));
	for (const offcut of laid.offcuts) {
		const drawn = offcutMarks(offcut, view, figures);
		marks.push(...drawn.marks);
		words.push(...drawn.words);
	}
	for (const placed of laid.placed) {
		const part = partWithId(plan, placed.id) ?? goneFromJob(placed);
		const drawn = partOnSheet(part, placed, view, figures);
		const isSpoiled = spoiled.has(pieceKey(placed));
		marks.push(
			...(isSpoiled ? asSpoiled(drawn.marks, corners(placed, view), placed.id) : drawn.marks),
		);
		words.push(...drawn.words);
	}
	return { marks, words };
}

/** One piece of several equal ones. */
export const pieceKey = ({ id, copy }: Pick<Placed, 'id' | 'copy'>): string => `${id}/${copy}`;

/** The pieces of a sheet that is cut that were spoiled. */
export function spoiledOn({ boards, index }: Pick<SheetAt, 'boards' | 'index'>): Set<string> {
	const placed = boards.answer.layouts[index]?.placed ?? [];
	const spoiled = boards.sources[index]?.spoiled ?? [];
	return new Set(placed.filter((_, i) => spoiled.includes(i)).map(pieceKey));
}

/**
 * Crossed from corner to corner and named: it is waste, whatever its words say. The cross is thin,
 * for it is no cut, and stops at the words.
 */
function asSpoiled(part: readonly Mark[], spots: readonly Spot[], id: string): Mark[] {
	const [a, b, c, d] = spots as [Spot, Spot, Spot, Spot];
	const of = `part:${id}`;
	const size = Math.min(3.4, Math.abs(c.x - a.x) / 5, Math.abs(a.y - c.y) / 2);
	const named: Mark = {
		...{ x: (a.x + c.x) / 2, y: (a.y + c.y) / 2 + size / 3, size, of, halo: true },
		kind: 'text',
		text: 'SPOILED',
		anchor: 'middle',
		weight: 'semibold',
	};
	const cross: Mark = {
		kind: 'path',
		steps: [...line(a.x, a.y, c.x, c.y), ...line(b.x, b.y, d.x, d.y)],
		line: 'hair',
		of,
	};
	const words = part.filter((m) => m.kind === 'text').map((m) => ({ ...m, halo: true }));
	const rest = part.filter((m) => m.kind !== 'text');
	return [...rest, cross, ...(size < 1.4 ? [] : [named]), ...words];
}

/** What falls as waste by some cuts; a router's leavings have no rectangles. */
export function wasteRects(cuts: readonly Cut[]): Rect[] {
	return cuts
		.flatMap((cut) => cut.gives)
		.filter((g) => g.kind === 'waste' && g.rect.length > 0 && g.rect.width > 0)
		.map((g) => g.rect);
}

/** A rectangle of the work on paper: lower left, lower right, upper right, upper left. */
export function corners(r: Rect, view: View): Spot[] {
	return [
		onPaper({ x: r.x, y: r.y }, view),
		onPaper({ x: r.x + r.length, y: r.y }, view),
		onPaper({ x: r.x + r.length, y: r.y + r.width }, view),
		onPaper({ x: r.x, y: r.y + r.width }, view),
	];
}

/** The same as steps of a path. */
export function rectSteps(r: Rect, view: View) {
	const [low, , high] = corners(r, view) as [Spot, Spot, Spot];
	return rect(low.x, high.y, high.x - low.x, low.y - high.y);
}

/**
 * A sheet that was printed or cut keeps what lies on it, even where the job has no such part now.
 */
function goneFromJob({ id, length, width }: Placed): Part {
	return {
		id,
		label: id,
		name: 'no part of the job now',
		owner: '',
		material: '',
		thickness: mm(0),
		count: 0,
		length: ticks(length),
		width: ticks(width),
		holes: [],
		grain: 'any',
		bevels: [],
		face: 'outside',
		show: false,
		routed: mm(0),
		mass: 0,
		notes: [],
	};
}

function offcutMarks(offcut: OnSheet['offcuts'][number], view: View, figures: Figures) {
	const { rack } = offcut;
	const spots = corners(offcut.rect, view);
	const of = `offcut:${offcut.n}`;
	const size = figures.size(offcut.rect.length, offcut.rect.width);
	const name = `Offcut ${rack}`.trim();
	const label = fitLabel(
		[
			{ name: `${name}: rack it`, lines: [size] },
			{ name, lines: [size] },
			{ name, lines: [] },
			// The letter and number alone are enough to find it in the table.
			...(rack === '' ? [] : [{ name: rack, lines: [] }]),
		],
		[spots],
	);
	const marks: Mark[] = [
		hatch('offcut', [spots]),
		{ kind: 'path', steps: rectSteps(offcut.rect, view), line: 'wide', of },
		...label.marks.map((m) => ({ ...m, halo: true, of })),
	];
	return { marks, words: label.boxes };
}
