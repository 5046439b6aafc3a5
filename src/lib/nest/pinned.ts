import { ticks } from '../measure';
import type { Piece, Sheet, SheetLayout } from './types';

/*
 * Sheets that were printed or partly cut stay as they are, and the rest is planned round them.
 */

const bare = { left: ticks(0), right: ticks(0), bottom: ticks(0), top: ticks(0) };

/** The sheet id that offcut `i` of a layout goes by. */
export type NameOffcut = (layout: SheetLayout, i: number) => string;

const byPlace: NameOffcut = (layout, i) => `${layout.sheet}, copy ${layout.copy}, offcut ${i + 1}`;

/**
 * What a cut sheet still gives: its offcuts as stock of their own, owned, cut on all sides, first
 * to be used up.
 */
export function offcutSheets(layout: SheetLayout, name: NameOffcut = byPlace): Sheet[] {
	return layout.offcuts.map((o, i) => ({
		id: name(layout, i),
		length: ticks(o.length),
		width: ticks(o.width),
		price: 0,
		count: 1,
		rank: 0,
		trim: bare,
	}));
}

function lessLaid(piece: Piece, pinned: readonly SheetLayout[]): Piece {
	const laid = pinned.reduce((sum, l) => sum + l.placed.filter((p) => p.id === piece.id).length, 0);
	return { ...piece, count: Math.max(0, piece.count - laid) };
}

function lessUsed(sheet: Sheet, pinned: readonly SheetLayout[]): Sheet {
	if (sheet.count === null) return sheet;
	const used = pinned.filter((l) => l.sheet === sheet.id).length;
	return { ...sheet, count: Math.max(0, sheet.count - used) };
}

/** What pinned layouts take their share of; saw and router problems alike. */
interface Demand {
	readonly pieces: readonly Piece[];
	readonly sheets: readonly Sheet[];
}

/**
 * The problem that is left once the pinned layouts are taken out: their pieces and sheets are off
 * the lists, and their offcuts are stock. Its answer belongs beside the pinned layouts, which it
 * never changes.
 */
export function withPinned<P extends Demand>(
	problem: P,
	pinned: readonly SheetLayout[],
	name: NameOffcut = byPlace,
): P {
	return {
		...problem,
		pieces: problem.pieces.map((p) => lessLaid(p, pinned)),
		sheets: [
			...problem.sheets.map((s) => lessUsed(s, pinned)),
			...pinned.flatMap((l) => offcutSheets(l, name)),
		],
	};
}
