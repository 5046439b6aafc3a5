import { around, ticks } from '../../measure';
import type { ClothEdge, ClothStep } from '../../design';
import { bounds, boundsOfPoints, minus, type Point, type Rect, type Where } from '../../geometry';
import { boardSpans, flapsOf, type LaidCloth, STILL, windowSpans } from '../girth';
import { type ReliefRule, type Reliefs, reliefsOf } from '../reliefs';
import { movedMark } from './moved-mark';

/*
 * Relief cuts at the steps of a panel, where the cloth does not take a corner: laid from the higher
 * level down, the side of a step is an edge the cloth is turned down over, with nothing behind it.
 * At an outside corner what the cloth has too much is cut out between the two sides; at an inside
 * corner it is slit down to the foot.
 */

/** What a step stands on: the board, its cloth, and the folds of its edges on the flat cloth. */
export interface StepGround {
	readonly board: (p: Point) => Where;
	readonly laid: LaidCloth;
	readonly folds: readonly (readonly Point[])[];
}

/** The cuts at one step, on the flat cloth. Corners on the board's edge belong to that edge. */
export function stepReliefs(
	step: ClothStep,
	{ board, laid, folds }: StepGround,
	rule: ReliefRule,
): Reliefs {
	const edge = sideOf(step);
	const line = step.raised
		? boardSpans({ outline: step.outline, edges: step.outline.map(() => edge) })
		: windowSpans({ outline: step.outline, edge });
	const box = bounds(step.outline);
	const by = laid.moved({ x: box.x + box.length / 2, y: box.y + box.width / 2 });
	const inBoard = (p: Point): boolean => board(p) === 'inside';
	const moved = folds.map((fold) => fold.map((p) => minus(p, by)));
	const here = moved.filter((fold) => comesNear(fold, box, 3 * step.height));
	const made = reliefsOf(flapsOf(line), STILL, rule, here, inBoard);
	return { ...made, blocked: [], marks: made.marks.map((m) => movedMark(m, by)) };
}

/**
 * Does a line come closer to the step's box than its cuts could reach? By its boxes: never missed.
 */
function comesNear(line: readonly Point[], box: Rect, far: number): boolean {
	return line.some((p, i) => {
		const piece = boundsOfPoints([around(line, i - 1), p]);
		return (
			piece.x < box.x + box.length + far &&
			piece.x + piece.length > box.x - far &&
			piece.y < box.y + box.width + far &&
			piece.y + piece.width > box.y - far
		);
	});
}

function sideOf(step: ClothStep): ClothEdge {
	const none = ticks(0);
	return { kind: 'wrapped', build: step.height, groove: null, margin: none, grip: none };
}
