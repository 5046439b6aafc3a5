import { describe, expect, it } from 'vitest';
import { circle, rectangle } from '../../../src/lib/geometry/shaping/tidy';
import { auditOutlines } from '../../../src/lib/nest/audit/outline';
import type { Placed } from '../../../src/lib/nest/types';

const L = [
	{ x: 0, y: 0 },
	{ x: 1000, y: 0 },
	{ x: 1000, y: 300 },
	{ x: 300, y: 300 },
	{ x: 300, y: 1000 },
	{ x: 0, y: 1000 },
];
const pieces = [
	{ id: 'L', length: 1000, width: 1000, outline: L },
	{ id: 'box', length: 600, width: 600 },
	{ id: 'disc', length: 2000, width: 2000, outline: circle(1000, 1000, 1000) },
	{ id: 'frame', length: 3000, width: 3000, holes: [rectangle(500, 500, 2000, 2000)] },
];
const at = (id: string, x: number, y: number, turn: Placed['turn'] = 0, copy = 0): Placed => {
	const { length, width } = pieces.find((p) => p.id === id)!;
	return { id, copy, x, y, length, width, turn };
};
const faults = (placed: Placed[], gap = 0) => auditOutlines(placed, pieces, gap).map((f) => f.what);

describe('the auditor of outlines', () => {
	it('lets a box nestle in the corner of an L, touching, and no deeper', () => {
		expect(faults([at('L', 0, 0), at('box', 300, 300)])).toEqual([]);
		expect(faults([at('L', 0, 0), at('box', 299, 300)])).toEqual([
			expect.stringMatching(/overlap/),
		]);
	});

	it('turns an outline with its rectangle', () => {
		// its arms now lie right and above
		expect(faults([at('L', 0, 0, 180), at('box', 0, 0)])).toEqual([]);
		expect(faults([at('L', 0, 0, 90), at('box', 300, 300)])).toHaveLength(1);
		expect(faults([at('L', 0, 0, 90), at('box', 100, 300)])).toEqual([]);
	});

	it('asks for the gap between true outlines', () => {
		expect(faults([at('L', 0, 0), at('box', 350, 350)], 50)).toEqual([]);
		expect(faults([at('L', 0, 0), at('box', 350, 345)], 50)).toEqual([
			expect.stringMatching(/apart/),
		]);
	});

	it('judges arcs as arcs: discs may come nearer on the slant than their rectangles', () => {
		const reach = Math.ceil(2000 / Math.SQRT2);
		expect(faults([at('disc', 0, 0), at('disc', reach + 8, reach + 8, 0, 1)])).toEqual([]);
		expect(faults([at('disc', 0, 0), at('disc', reach - 20, reach - 20, 0, 1)])).toHaveLength(1);
	});

	it('lets a piece lie in a hole, with the gap, and nowhere else inside', () => {
		expect(faults([at('frame', 0, 0), at('box', 600, 600)], 100)).toEqual([]);
		expect(faults([at('frame', 0, 0), at('box', 590, 600)], 100)).toHaveLength(1);
		expect(faults([at('frame', 0, 0), at('box', 450, 600)])).toHaveLength(1);
	});

	it('sees a piece that lies wholly inside another, or exactly on it', () => {
		expect(faults([at('disc', 0, 0), at('box', 700, 700)])).toHaveLength(1);
		expect(faults([at('L', 0, 0), at('L', 0, 0, 0, 1)])).toHaveLength(1);
	});
});
