import { describe, expect, it } from 'vitest';
import { toMm } from '../../../src/lib/measure/length';
import { boardBody } from './kernel';
import { figures, told, type Asked } from './make';

/*
 * A slot that turns up along the step of a wheel arch: at the edge of the step its wall ends, and
 * above the edge there is no wall to lay a slot or a cleat on.
 */

const STEP = 109.7;
const GAP = 22.8;
const arch = (length: number): Asked => ({
	shape: {
		kind: 'stepped',
		width: 500,
		height: 466.5,
		depth: 474.7,
		corner: 'bottom-back',
		stepHeight: STEP,
		stepDepth: 128.2,
	},
	sizes: 'inner',
	joint: 'upright-past',
	material: 'mdf-25',
	ends: { fit: 'over' },
	boards: { front: { material: 'mdf-12' }, back: { material: 'mdf-12' } },
	cleats: { where: 'both', width: 30, material: 'mdf-12' },
	vents: [
		{
			kind: 'slot',
			along: 'bottom',
			gap: GAP,
			bend: 'L',
			material: 'mdf-12',
			goal: { by: 'length', length },
		},
	],
});

describe('a slot up the step of a wheel arch', () => {
	// Along its middle: the front, 12.1, the bottom, 346.5 less half a gap, and up the step, which
	// stands 109.7 over the inside of the bottom, less half a gap: 445.5.
	const longest = 12.1 + (474.7 - 128.2 - GAP / 2) + (STEP - GAP / 2);

	it('ends at the edge of the step at the latest, and says so', () => {
		const [vent] = figures(arch(499.3)).vents;
		expect(toMm(vent!.length)).toBeCloseTo(longest, 3);
		expect(told(arch(499.3), 'vents.0.goal')[0]).toContain(
			'would have to be 499.3 mm long; the wall it runs along ends at 445.5 mm.',
		);
		const shorter = figures(arch(440)).vents[0]!;
		expect(toMm(shorter.length)).toBe(440);
		expect(told(arch(440), 'vents.0.goal')).toEqual([]);
	});

	it('leaves the cleats on the walls and clear of its boards', () => {
		const { boards } = figures(arch(499.3));
		const cleats = boards.filter((b) => b.role === 'cleat');
		const onStep = cleats.filter((b) => b.name.startsWith('Cleat Step top / '));
		// The step top starts 12.1 + 346.5 mm from the outside of the front.
		const starts = onStep.map((b) => boardBody(b).boundingBox().min[1]);
		expect(Math.min(...starts)).toBeCloseTo(12.1 + 346.5, 3);
		const slots = boards.filter((b) => b.role === 'slot').map(boardBody);
		for (const cleat of cleats.map(boardBody))
			for (const slot of slots) expect(slot.intersect(cleat).volume()).toBeLessThan(1e-3);
	});
});
