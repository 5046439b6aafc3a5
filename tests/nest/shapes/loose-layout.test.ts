import { describe, expect, it } from 'vitest';
import { random } from '../../../src/lib/nest/random';
import { readyShapes } from '../../../src/lib/nest/shapes/free-shape';
import { LooseLayout, relax, Separation } from '../../../src/lib/nest/shapes/separate';
import { PairTables } from '../../../src/lib/nest/shapes/tables';

/** Two wedges of 28,000 x 5000 that may lie any way, both along the strip in the same place. */
function twoWedges(width: number): LooseLayout {
	const outline = [
		{ x: 0, y: 0 },
		{ x: 28_000, y: 0 },
		{ x: 14_000, y: 5000 },
	];
	const turns = [0, 90, 180, 270] as const;
	const piece = { id: 'wedge', length: 28_000, width: 5000, count: 2, turns, outline };
	const kinds = readyShapes([piece], 0);
	const tables = new PairTables(kinds, 0);
	const choices = [0, 1].map(() => Int32Array.from(kinds[0]!.shapes, (shape) => shape.n));
	const areas = [kinds[0]!.area, kinds[0]!.area];
	const start = {
		shape: Int32Array.from([0, 0]),
		x: Float64Array.from([14_000, 14_100]),
		y: Float64Array.from([2500, 2600]),
	};
	return new LooseLayout({ tables, width, choices, areas, stream: random(1) }, start);
}

describe('a loose layout', () => {
	it('turns what is too long for the strip, and holds everything within it', () => {
		const layout = twoWedges(30_000);
		layout.clamp(20_000);
		const { shape, x } = layout.lying;
		for (const i of [0, 1]) {
			const half = layout.tables.halfLength[shape[i]!]!;
			expect(x[i]! - half).toBeGreaterThanOrEqual(0);
			expect(x[i]! + half).toBeLessThanOrEqual(20_000);
		}
	});

	it('lists the pairs that overlap, and none once they are pushed apart', () => {
		const layout = twoWedges(30_000);
		layout.clamp(30_000);
		expect(layout.listPairs()).toBeGreaterThan(1000);
		expect(layout.pairs).toHaveLength(1);
		expect(relax(layout, 100)).toBe(true);
		expect(layout.listPairs()).toBe(0);
	});

	it('comes apart by single moves where pushing alone does not help', () => {
		const layout = twoWedges(5000);
		const attempt = new Separation(layout).run({ length: 43_000, patience: 30, strikes: 2 });
		let step = attempt.next();
		while (step.done !== true) step = attempt.next();
		expect(step.value).toBe(true); // head to tail: 28,000 and half as much again
	});
});
