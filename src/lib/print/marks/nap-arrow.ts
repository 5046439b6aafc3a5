import { arrowhead } from './arrowhead';
import { type Mark, line, textWidth } from '../drawing';

/** Room the arrow takes, mm. */
export const NAP_LENGTH = 40;

/**
 * Which way the pile lies: one head for a one-way nap, two where the cloth may be turned by half.
 * `right`, `y`: where its right end lies. Nothing for a cloth without a nap.
 */
export function napArrow(nap: 'one-way' | 'two-way' | 'none', right: number, y: number): Mark[] {
	if (nap === 'none') return [];
	const x = right - NAP_LENGTH;
	const half = textWidth('NAP', 2.7, 'semibold') / 2 + 1.5;
	const middle = x + NAP_LENGTH / 2;
	const stroke = (from: number, to: number): Mark => ({
		kind: 'path',
		steps: line(from, y, to, y),
		line: 'wide',
	});
	return [
		{
			kind: 'text',
			x: middle,
			y: y + 0.95,
			text: 'NAP',
			size: 2.7,
			weight: 'semibold',
			anchor: 'middle',
		},
		stroke(x, middle - half),
		stroke(middle + half, right),
		arrowhead({ x: right, y }, 0, 'ink', 3.4),
		...(nap === 'two-way' ? [arrowhead({ x, y }, Math.PI, 'ink', 3.4)] : []),
	];
}
