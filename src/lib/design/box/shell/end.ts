import type { Box } from '../../../job';
import type { Point } from '../../../geometry';
import { boardName, boardOf, type Board } from '../board';
import {
	sidesSetIn,
	frameOf,
	type Frame,
	type Solid,
	p3,
	scale3,
	sub3,
	type Point3,
} from '../solid';
import type { SweptSection } from './swept-section';

/**
 * The two boards that close the swept profile: over it, between its boards, or let into a rabbet.
 */
export function endBoards(section: SweptSection, box: Pick<Box, 'boards'>): Board[] {
	return (['left', 'right'] as const).map((key) => {
		const material = section.ends[key];
		const x = key === 'left' ? 0 : section.width;
		const n = key === 'left' ? p3(-1, 0, 0) : p3(1, 0, 0);
		return boardOf({
			key,
			wall: key,
			name: boardName(key),
			role: 'end',
			material,
			frame: endFrame(x, n),
			solid: plate(endOutline(section), x, n, material.measured),
			grain: box.boards[key]?.grain ?? 'along',
		});
	});
}

export function endFrame(x: number, n: Point3): Frame {
	return frameOf(p3(x, 0, 0), n, p3(0, 0, 1));
}

function endOutline(section: SweptSection): readonly Point[] {
	if (section.fit === 'over') return section.outer;
	if (section.fit === 'between') return section.inner;
	return (
		sidesSetIn(
			section.inner,
			section.inner.map(() => -section.rabbet),
		) ?? section.inner
	);
}

/**
 * An outline of the side view as a board of the given thickness, its outside at `x` looking along
 * `n`.
 */
export function plate(outline: readonly Point[], x: number, n: Point3, thickness: number): Solid {
	const outside = outline.map((p) => p3(x, p.x, p.y));
	return { outside, inside: outside.map((p) => sub3(p, scale3(n, thickness))) };
}
