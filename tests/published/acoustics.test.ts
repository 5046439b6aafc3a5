import { describe, expect, test } from 'vitest';
import {
	actingLength,
	halfPower,
	leastVentArea,
	peakOf,
	QUIET,
	CEILING,
	resonance,
	sealed,
	SOUND,
	stuffingCredit,
	volumeForQtc,
} from '../../src/lib/design/box/vent/acoustics';
import { figures, made } from '../design/box/make';

describe('speed of sound', () => {
	test('20 degrees, dry: 343.2 m/s (ISO 9613-1), 343.21 by 331.3 sqrt(1 + T / 273.15)', () => {
		expect(SOUND).toBe(343.2);
		expect(331.3 * Math.sqrt(1 + 20 / 273.15)).toBeCloseTo(SOUND, 1);
	});
});

/**
 * J. D. Cook, 'Pitch of a big wine bottle', 8 February 2021: necks of 0.75 in, no end correction, c
 * = 343 m/s.
 */
describe('bottles', () => {
	const neck = Math.PI * ((0.75 * 0.0254) / 2) ** 2;
	test.each([
		[1.5e-3, 7, 56.4, 56.434],
		[0.75e-3, 3.5, 113, 112.868],
		[12 * 29.5735e-6, 3, 177, 177.229],
	])('%s m3 with a neck %s in long: %s Hz', (volume, inches, published, again) => {
		const f = resonance(volume, neck, inches * 0.0254, 343);
		expect(Math.abs(f - published)).toBeLessThan(0.5);
		expect(Math.abs(f - again)).toBeLessThan(0.01);
	});

	test('1 L, 3 cm2, 5 cm: about 130 Hz (university physics page, from memory)', () => {
		expect(Math.abs(resonance(1e-3, 3e-4, 0.05, 340) / 130 - 1)).toBeLessThan(0.04);
	});
});

/**
 * Small, JAES 20 (1972) and 21 (1973): a closed box as a second-order high-pass; formula from
 * memory, recomputed.
 */
describe('closed boxes', () => {
	test.each([
		[0.5, 1.5538, 0],
		[0.5774, 1.272, 0],
		[0.7071, 1, 0],
		[0.8, 0.8972, 0.213],
		[0.9, 0.8295, 0.688],
		[1, 0.7862, 1.249],
		[1.1, 0.7567, 1.833],
		[1.2, 0.7358, 2.412],
	])('Qtc %s: half power at %s fc, peak %s dB', (q, ratio, peak) => {
		expect(Math.abs(halfPower(q) - ratio)).toBeLessThan(5e-4);
		expect(Math.abs(peakOf(q) - peak)).toBeLessThan(5e-3);
	});

	test.each([
		[Math.SQRT1_2, 26.82, 58.34, 58.34],
		[0.9, 14.03, 74.25, 61.59],
		[1, 10.86, 82.5, 64.86],
	])('Qts 0.40, Vas 57 L, fs 33 Hz for Qtc %s: %s L, fc %s, f3 %s', (q, litres, fc, f3) => {
		const volume = volumeForQtc(0.4, 57, q)!;
		expect(volume).toBeCloseTo(litres, 1);
		const found = sealed(33, 0.4, 57, volume);
		expect(found.qtc).toBeCloseTo(q, 6);
		expect(Math.abs(found.fc - fc)).toBeLessThan(0.01);
		expect(Math.abs(found.f3 - f3)).toBeLessThan(0.01);
	});

	test('a Qtc below the Q of the driver has no volume and is refused', () => {
		expect(volumeForQtc(0.8, 57, 0.7)).toBeNull();
		const asked = {
			shape: { kind: 'plain' as const, width: 500, height: 400, depth: 350 },
			drivers: [
				{
					cutout: { kind: 'round' as const, diameter: 230 },
					frame: 260,
					depth: 120,
					data: { fs: 33, qts: 0.8, vas: 57 },
				},
			],
			qtc: 0.7,
		};
		const plan = made(asked);
		expect(plan.problems.map((p) => p.path.at(-1))).toContain('qtc');
		expect(figures(asked).chambers[0]!.sealed!.wantedVolume).toBeNull();
	});
});

describe('air in the vent', () => {
	/** Small, JAES 21 (1973), part II, from memory. */
	test.each([
		[0.2e-3, 40, 64],
		[0.8e-3, 32, 204.8],
	])('%s m3 at %s Hz: at least %s cm2', (moved, hertz, cm2) => {
		expect(leastVentArea(hertz, moved) * 1e4).toBeCloseTo(cm2, 1);
	});

	test('17 and 34 m/s are a twentieth and a tenth of the speed of sound (Salvatti, Devantier and Button 2002)', () => {
		expect(QUIET / SOUND).toBeCloseTo(0.05, 2);
		expect(CEILING / SOUND).toBeCloseTo(0.1, 2);
	});

	test('10 % more acting length lowers the tuning by 4.65 %', () => {
		const long = actingLength(0.05, 0.01, 35);
		expect((1 - resonance(0.05, 0.01, 1.1 * long) / 35) * 100).toBeCloseTo(4.65, 2);
	});
});

describe('stuffing', () => {
	test('counts 25 % at most in a sealed box and nothing in a vented one (common practice, no source)', () => {
		expect([
			stuffingCredit(40, false),
			stuffingCredit(15, false),
			stuffingCredit(15, true),
		]).toEqual([25, 15, 0]);
	});
});
