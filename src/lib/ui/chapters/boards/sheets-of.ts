import type { BoardLayouts } from '../../../layout';
import type { Plan } from '../../../plan';

/** A laid-out sheet by its board and its place among that board's layouts. */
export interface SheetPlace {
	readonly boards: BoardLayouts;
	readonly index: number;
}

/** Every sheet of a plan in the order they are printed. */
export function sheetsOf(plan: Plan): SheetPlace[] {
	return plan.boards.flatMap((boards) =>
		boards.answer.layouts.map((_, index) => ({ boards, index })),
	);
}

/**
 * Which sheet is worked at: the one of the address, '#boards/2' for the second, else the first that
 * holds the part in hand, else the first.
 */
export function sheetInHand(
	sheets: readonly SheetPlace[],
	hash: string,
	part: string | null,
): number {
	const asked = /^#boards\/(\d+)$/.exec(hash)?.[1];
	if (asked !== undefined) return Math.min(Math.max(Number(asked), 1), sheets.length) - 1;
	const holds = sheets.findIndex(({ boards, index }) =>
		boards.answer.layouts[index]?.placed.some((p) => p.id === part),
	);
	return Math.max(0, holds);
}
