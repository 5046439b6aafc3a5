import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../src/lib/measure/length';
import { clothEdge } from '../../src/lib/wrap/girth/develop';
import { flapsOf } from '../../src/lib/wrap/girth/flap';
import { STILL } from '../../src/lib/wrap/girth/girth';
import { boardSpans } from '../../src/lib/wrap/girth/span';
import { covering, outline } from './make';

/** A board of 400 x 300 mm with a notch in its upper edge, its floor so wide, its sides so high. */
function edgeOfCloth(floor: number, height: number, flap: number): string[] {
	const [left, right, low] = [200, 200 + floor, 300 - height];
	const board = outline(
		...([
			[0, 0],
			[400, 0],
			[400, 300],
			[right, 300],
		] as const),
		...([
			[right, low],
			[left, low],
			[left, 300],
			[0, 300],
		] as const),
	);
	const flaps = flapsOf(boardSpans(covering({ outline: board })));
	const even = flaps.map((f) => ({ ...f, total: mm(flap) }));
	return clothEdge(even, STILL).map(({ x, y }) => `${toMm(Math.round(x))},${toMm(Math.round(y))}`);
}

/** Where each flap of a notch ends by itself, and the board's corner between them. */
const toRightCorner = (right: number, low: number, flap: number): string[] => [
	`${right - flap},${low}`,
	`${right},${low}`,
	`${right},${low + flap}`,
];
const toLeftCorner = (left: number, low: number, flap: number): string[] => [
	`${left},${low + flap}`,
	`${left},${low}`,
	`${left + flap},${low}`,
];

describe('flaps at the inside corners of a notch', () => {
	it('are trimmed where they meet while each edge has room for both of its ends', () => {
		const edge = edgeOfCloth(100, 80, 25);
		expect(edge).toHaveLength(8);
		expect(edge).toContain('275,245');
		expect(edge).toContain('225,245');
	});

	it('up to half of the edge, which is just enough', () => {
		expect(edgeOfCloth(50, 80, 25)).toHaveLength(8);
		expect(edgeOfCloth(100, 50, 25)).toHaveLength(8);
	});

	it.each([
		['floor', 49, 80],
		['floor', 20, 80],
		['sides', 100, 49],
		['sides', 100, 20],
	])('and go whole to the corner where the %s is short: %i x %i mm', (_, floor, height) => {
		const edge = edgeOfCloth(floor, height, 25);
		expect(edge).toHaveLength(12);
		const low = 300 - height;
		const text = edge.join(' ');
		expect(text).toContain(toRightCorner(200 + floor, low, 25).join(' '));
		expect(text).toContain(toLeftCorner(200, low, 25).join(' '));
	});
});
