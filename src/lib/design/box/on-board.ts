import type { Point } from '../../geometry';
import { nth } from '../../measure';
import type { BoxBoard } from './box-plan';
import { add3, type Point3, scale3 } from './solid';

/** A point of the drawing of a board's outside, where it is in the box, ticks. */
export function pointOnBoard(b: Pick<BoxBoard, 'frame' | 'solid' | 'outside'>, p: Point): Point3 {
	const from = nth(b.outside, 0);
	const right = scale3(b.frame.u, p.x - from.x);
	const up = scale3(b.frame.v, p.y - from.y);
	return add3(nth(b.solid.outside, 0), add3(right, up));
}
