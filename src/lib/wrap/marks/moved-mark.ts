import { plus, type Point } from '../../geometry';
import type { BlankMark } from '../blank';

export const movedMark = (m: BlankMark, by: Point): BlankMark => ({
	...m,
	line: m.line.map((p) => plus(p, by)),
});
