import type { Path } from '../../job';
import {
	type Length,
	snap,
	TICKS_PER_INCH,
	TICKS_PER_MM,
	writeLength,
	type Ruler,
} from '../../measure';
import { storeLength } from '../fields';
import type { Move } from './stage-view';

/** What a drag has come to: the same values that would have been typed. */
export type Dragged = readonly { readonly path: Path; readonly value: number | string }[];

/** The marks of a ruler that a drag stops at. */
export function markOf({ unit }: Ruler): number {
	return unit === 'in' ? TICKS_PER_INCH / 16 : TICKS_PER_MM;
}

/**
 * The fields of a grip that was moved by so many ticks to the right and up: each at the nearest
 * mark of the ruler, written as it would be typed. A direction it was not moved in stays as it is.
 */
export function draggedBy(
	moves: readonly Move[],
	by: { readonly x: number; readonly y: number },
	ruler: Ruler,
): Dragged {
	const mark = markOf(ruler);
	return moves.flatMap((move) => {
		const way = by[move.along] * move.grows;
		if (way === 0) return [];
		const marked = Math.round((move.value + way) / mark) * mark;
		const value: Length = snap(Math.max(marked, move.least));
		return [{ path: move.path, value: storeLength(writeLength(value, ruler), ruler) }];
	});
}

/** One press of an arrow key: a mark of the ruler, ten with Shift. */
export function keyMove(
	key: string,
	isLarge: boolean,
	ruler: Ruler,
): { x: number; y: number } | null {
	const step = markOf(ruler) * (isLarge ? 10 : 1);
	const ways: Readonly<Record<string, { x: number; y: number }>> = {
		ArrowRight: { x: step, y: 0 },
		ArrowLeft: { x: -step, y: 0 },
		ArrowUp: { x: 0, y: step },
		ArrowDown: { x: 0, y: -step },
	};
	return ways[key] ?? null;
}
