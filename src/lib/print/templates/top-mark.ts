import { line, type Mark } from '../drawing';
import { arrowhead } from '../marks';

/** Room for the arrow and the word, mm. */
export const TOP_WIDTH = 13;
/** Half the length of the arrow, mm. */
const HALF = 2;

/**
 * The word TOP and an arrow the way up lies, degrees to the left from the right, its middle as far
 * down as `y`; nothing where any way is up.
 */
export function topMark(way: number | null, x: number, y: number): Mark[] {
	if (way === null) return [];
	const turn = (-way * Math.PI) / 180;
	const [dx, dy] = [HALF * Math.cos(turn), HALF * Math.sin(turn)];
	const middle = x + HALF;
	return [
		{ kind: 'path', steps: line(middle - dx, y - dy, middle, y), line: 'narrow' },
		arrowhead({ x: middle + dx, y: y + dy }, turn),
		{ kind: 'text', x: x + 5, y: y + 0.9, text: 'TOP', size: 2.6, weight: 'semibold' },
	];
}
