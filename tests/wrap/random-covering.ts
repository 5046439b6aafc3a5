import fc from 'fast-check';
import type { ClothEdge, Covering, ClothStep } from '../../src/lib/design/covering';
import { crossings } from '../../src/lib/geometry/meeting/crossing';
import { area } from '../../src/lib/geometry/extent';
import type { Outline } from '../../src/lib/geometry/outline';
import { circle, rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mm } from '../../src/lib/measure/length';
import { BARE, covering, GROOVED, PLAIN } from './make';

/**
 * Outlines round a middle, with inside corners and some edges curved in or out; none crosses
 * itself.
 */
export const anyOutline: fc.Arbitrary<Outline> = fc
	.array(
		fc.record({
			radius: fc.integer({ min: 120, max: 420 }),
			step: fc.integer({ min: 20, max: 60 }),
			bulge: fc.oneof(
				{ weight: 3, arbitrary: fc.constant(0) },
				{ weight: 1, arbitrary: fc.integer({ min: -20, max: 40 }).map((b) => b / 100) },
			),
		}),
		{ minLength: 3, maxLength: 9 },
	)
	.map((corners) => {
		const round = corners.reduce((sum, c) => sum + c.step, 0);
		let angle = 0;
		return corners.map((c): Outline[number] => {
			angle += (c.step / round) * 2 * Math.PI;
			const at = {
				x: mm(500 + c.radius * Math.cos(angle)),
				y: mm(500 + c.radius * Math.sin(angle)),
			};
			return c.bulge === 0 ? at : { ...at, bulge: c.bulge };
		});
	})
	.filter((o) => area(o) > mm(100) ** 2 && crossings(o, 1).length === 0);

const anyEdge = fc.oneof(
	{ weight: 3, arbitrary: fc.constant(GROOVED) },
	fc.constant(PLAIN),
	fc.constant(BARE),
	fc.integer({ min: 6, max: 40 }).map((b): ClothEdge => ({ ...PLAIN, build: mm(b) })),
);

/** Layers about the middle of the outline, some of them running past its edge. */
export const anyStep: fc.Arbitrary<ClothStep> = fc
	.record({
		x: fc.integer({ min: 350, max: 550 }),
		y: fc.integer({ min: 350, max: 550 }),
		a: fc.integer({ min: 20, max: 180 }),
		b: fc.integer({ min: 20, max: 180 }),
		height: fc.integer({ min: 1, max: 20 }),
		raised: fc.boolean(),
		round: fc.boolean(),
	})
	.map(({ x, y, a, b, height, raised, round }) => ({
		outline: round ? circle(mm(x), mm(y), mm(a / 2)) : rectangle(mm(x), mm(y), mm(a), mm(b)),
		height: mm(height),
		raised,
	}));

export function anyCovering(steps = 3): fc.Arbitrary<Covering> {
	return anyOutline.chain((outline) =>
		fc
			.record({
				edges: fc.array(anyEdge, { minLength: outline.length, maxLength: outline.length }),
				steps: fc.array(anyStep, { maxLength: steps }),
				nap: fc.constantFrom(0, 90, 180, -90),
			})
			.map((r) => covering({ outline, ...r })),
	);
}
