import { describe, expect, it } from 'vitest';
import { bandOf, frequencies, preferred } from '../../../src/lib/design/box/response/curve';
import { passiveCone } from '../../../src/lib/design/box/response/radiator';
import { reach, type SweptAir, type TaperedAir } from '../../../src/lib/design/box/solid/air';
import { toMm } from '../../../src/lib/measure/length';
import { figures } from './make';

describe('how far a round thing goes before it touches a wall', () => {
	/** A cube of 200 about the origin, once as six planes and once swept. */
	const axes = ['x', 'y', 'z'] as const;
	const planes = axes.flatMap((axis) =>
		[1, -1].map((sign) => ({ key: '', n: { x: 0, y: 0, z: 0, [axis]: sign }, d: 100 })),
	);
	const six = { kind: 'tapered', planes, volume: 8e6 } as unknown as TaperedAir;
	const swept: SweptAir = {
		kind: 'swept',
		corners: [
			{ x: -100, y: -100 },
			{ x: 100, y: -100 },
			{ x: 100, y: 100 },
			{ x: -100, y: 100 },
		],
		keys: ['bottom', 'back', 'top', 'front'],
		x0: -100,
		x1: 100,
		left: 'left',
		right: 'right',
	};
	const foot = { x: 0, y: 0, z: -100 };
	const up = (degrees: number) => {
		const a = (degrees * Math.PI) / 180;
		return { x: 0, y: Math.sin(a), z: Math.cos(a) };
	};

	it.each([
		// Straight on its whole face meets the wall at once.
		[0, 200],
		// On the slant its edge does: to top (200 - 10 sin) / cos, back (100 - 10 cos) / sin.
		[10, (200 - 10 * Math.sin(Math.PI / 18)) / Math.cos(Math.PI / 18)],
		[30, (100 - 10 * Math.cos(Math.PI / 6)) / Math.sin(Math.PI / 6)],
	])('at %i degrees', (degrees, far) => {
		expect(reach(six, foot, up(degrees), 10)).toBeCloseTo(far, 6);
		expect(reach(swept, foot, up(degrees), 10)).toBeCloseTo(far, 6);
	});
});

describe('the band of a curve', () => {
	it('goes by the half power frequency', () => {
		expect([40, 100, 101, 250, 251].map(bandOf)).toEqual([
			...[
				[10, 200],
				[10, 200],
				[20, 500],
				[20, 500],
				[50, 2000],
			],
		]);
	});

	it('is divided evenly in pitch, both ends among it', () => {
		const fine = frequencies([20, 80]);
		expect([fine[0], fine.at(-1), fine.length]).toEqual([20, expect.closeTo(80, 9), 33]);
		fine.slice(1).forEach((f, i) => expect(f / fine[i]!).toBeCloseTo(2 ** (1 / 16), 9));
	});

	// ISO 266: preferred frequencies, thirds of an octave.
	it('is tabled at preferred frequencies', () => {
		expect(preferred([20, 100])).toEqual([20, 25, 31.5, 40, 50, 63, 80, 100]);
		expect(preferred([50, 2000]).slice(-3)).toEqual([1250, 1600, 2000]);
	});
});

describe('a passive radiator', () => {
	it('is the same cone from any two of resonance, suspension and moving mass', () => {
		const both = passiveCone({ data: { sd: 350, vas: 90, mms: 120 } })!;
		const fs = 1 / (2 * Math.PI * Math.sqrt(both.volume * both.inertia));
		expect(both.volume).toBeCloseTo(0.09, 12);
		const byMass = passiveCone({ data: { sd: 350, mms: 120, fs } })!;
		const bySpring = passiveCone({ data: { sd: 350, vas: 90, fs } })!;
		for (const cone of [byMass, bySpring]) {
			expect(cone.volume).toBeCloseTo(both.volume, 9);
			expect(cone.inertia / both.inertia).toBeCloseTo(1, 9);
		}
		expect(passiveCone({ data: { sd: 350, mms: 120 } })).toBe(null);
		expect(passiveCone({ data: { fs: 20 } })).toBe(null);
	});
});

describe('layers on the outside of a box that leans', () => {
	it('lie on each other: each begins where the one below it ends', () => {
		const { boards } = figures({
			shape: {
				kind: 'tapered',
				front: { width: 600, height: 450 },
				back: { width: 500, height: 350 },
				depth: 400,
			},
			doublers: [{ board: 'front', side: 'outside', layers: 3 }],
		});
		const layers = boards.filter((b) => b.role === 'overlay');
		const out = (points: readonly { y: number }[]) => [...new Set(points.map((p) => -p.y))];
		expect(
			layers.map(({ solid, frame }) => [solid.inside, solid.outside, [frame.at]].map(out)),
		).toEqual([18, 36, 54].map((far) => [[(far - 18) * 1600], [far * 1600], [far * 1600]]));
		expect(layers.map((b) => toMm(b.thickness))).toEqual([18, 18, 18]);
	});
});
