import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { motion, type Motor, ventBreather } from '../../src/lib/design/box/response/circuit';
import { tuneCones } from '../../src/lib/design/box/response/radiator';
import { radiator, type Radiator } from '../../src/lib/job/box/radiator';
import { SOUND } from '../../src/lib/design/box/vent/acoustics';
import { runs } from '../depth';

/*
 * Passive radiators: R. H. Small, 'Passive-Radiator Loudspeaker Systems', part I, J. Audio Eng.
 * Soc. 22 (1974), from memory: fB / fP = sqrt(1 + delta), delta = Vap / VB, fP that of the cone
 * with its added mass in free air.
 */

const one = (data: Radiator['data'], goal: Radiator['goal'] = { by: 'mass', grams: 0 }): Radiator =>
	radiator.parse({
		cutout: { kind: 'round', diameter: 230 },
		frame: 260,
		depth: 80,
		data,
		goal,
	});

const near = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('tuning', () => {
	test('20 Hz and 90 L on 30 L: 40 Hz; two of them: sqrt(7) times 20 Hz', () => {
		const cone = one({ fs: 20, vas: 90 });
		expect(tuneCones(cone, 1, 0.03)!.hertz).toBeCloseTo(40, 9);
		expect(tuneCones(cone, 2, 0.03)!.hertz).toBeCloseTo(20 * Math.sqrt(7), 9);
	});

	test('any: fB is fP times sqrt(1 + delta), with or without added mass', () => {
		fc.assert(
			fc.property(
				fc.record({ fs: near(8, 60), vas: near(5, 300), sd: near(50, 1200) }),
				near(0, 2000),
				fc.integer({ min: 1, max: 6 }),
				near(0.005, 0.5),
				(data, grams, count, box) => {
					const t = tuneCones(one(data, { by: 'mass', grams }), count, box)!;
					const delta = (count * data.vas * 1e-3) / box;
					expect(t.own / data.fs).toBeCloseTo(1, 9);
					expect(t.hertz / (t.loaded * Math.sqrt(1 + delta))).toBeCloseTo(1, 9);
				},
			),
			{ numRuns: runs(200) },
		);
	});

	test('in a box without end the tuning is its own resonance', () => {
		expect(tuneCones(one({ fs: 22, vas: 60 }), 1, 1e9)!.hertz).toBeCloseTo(22, 6);
	});

	test('where the air is far stiffer than the suspension only mass and air count', () => {
		const t = tuneCones(one({ mms: 120, cms: 1e2, sd: 330 }), 1, 0.001)!;
		// The mass of a plunger on the air of the box: 1 / (2 pi) sqrt(rho c2 S2 / (V m)).
		const stiff = Math.sqrt((1.18 * 345 ** 2 * 0.033 ** 2) / (0.001 * 0.12)) / (2 * Math.PI);
		expect(Math.abs(t.hertz / stiff - 1)).toBeLessThan(1e-4);
	});
});

describe('added mass', () => {
	test('doubling the moving mass takes the tuning down by the root of two', () => {
		const data = {
			fs: 25,
			mms: 100,
			vas: (1.18 * 345 ** 2 * 0.03 ** 2 * 1000) / ((50 * Math.PI) ** 2 * 0.1),
			sd: 300,
		};
		const bare = tuneCones(one(data), 1, 0.04)!.hertz;
		const loaded = tuneCones(one(data, { by: 'mass', grams: 100 }), 1, 0.04)!.hertz;
		expect(bare / loaded).toBeCloseTo(Math.SQRT2, 9);
		const asked = tuneCones(one(data, { by: 'tuning', hertz: loaded }), 1, 0.04)!;
		expect(asked.added).toBeCloseTo(100, 6);
		expect(asked.hertz).toBeCloseTo(loaded, 9);
	});

	test('what is asked for comes out, or no mass is added and it lies lower', () => {
		fc.assert(
			fc.property(
				near(8, 60),
				near(5, 300),
				near(10, 90),
				near(0.01, 0.3),
				(fs, vas, hertz, box) => {
					const t = tuneCones(one({ fs, vas, sd: 400 }, { by: 'tuning', hertz }), 2, box)!;
					if (t.bare < hertz) {
						expect(t.added).toBe(0);
						expect(t.hertz).toBe(t.bare);
					} else {
						expect(t.hertz / hertz).toBeCloseTo(1, 9);
						expect(t.added).toBeGreaterThanOrEqual(0);
					}
				},
			),
			{ numRuns: runs(200) },
		);
	});
});

describe('response', () => {
	const motor: Motor = {
		fs: 30,
		damping: { electrical: 1 / 0.4, mechanical: 0 },
		vas: 0.06,
		lag: 0,
	};
	const losses = { hertz: 32, q: 7 };

	test('without a suspension it is a vent of the same mass', () => {
		const vent = ventBreather(((2 * Math.PI * 32) / SOUND) ** 2 * 0.05);
		const limp = { inertia: vent.inertia, spring: { volume: 1e9, resistance: 0 } };
		for (const f of [5, 20, 32, 60, 200]) {
			const a = motion(motor, { volume: 0.05, breather: vent, losses }, f);
			const b = motion(motor, { volume: 0.05, breather: limp, losses }, f);
			expect(b.level / a.level).toBeCloseTo(1, 6);
			expect(b.cone / a.cone).toBeCloseTo(1, 6);
			expect(b.breather / a.breather).toBeCloseTo(1, 6);
		}
	});

	test('nothing sounds at the resonance of the radiator in free air, added mass and all', () => {
		const t = tuneCones(one({ fs: 20, vas: 60, sd: 350 }, { by: 'mass', grams: 150 }), 1, 0.05)!;
		expect(t.loaded).toBeLessThan(18);
		const level = (f: number) =>
			motion(motor, { volume: 0.05, breather: t.breather, losses: null }, f).level;
		expect(level(t.loaded)).toBeLessThan(1e-9);
		expect(level(t.loaded * 1.1)).toBeGreaterThan(1e-3);
	});

	test('at the tuning the cone of a box without losses stands still', () => {
		const t = tuneCones(one({ fs: 20, vas: 60 }), 1, 0.05)!;
		const behind = { volume: 0.05, breather: t.breather, losses: null };
		expect(motion(motor, behind, t.hertz).cone).toBeLessThan(1e-9);
	});
});
