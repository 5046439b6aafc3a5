import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
	type Behind,
	motion,
	type Motor,
	ventBreather,
} from '../../src/lib/design/box/response/circuit';
import { decibels, halfPowerOf } from '../../src/lib/design/box/response/curve';
import { efficiency, soundLevel } from '../../src/lib/design/box/response/motor';
import { SOUND } from '../../src/lib/design/box/vent/acoustics';
import { runs } from '../depth';

const VOLUME = 0.05;

/** A driver of 30 Hz by its Qts and how many times the box its Vas is. */
const motor = (qts: number, alpha: number, fs = 30): Motor => ({
	fs,
	damping: { electrical: 1 / qts, mechanical: 0 },
	vas: alpha * VOLUME,
	lag: 0,
});

const SEALED: Behind = { volume: VOLUME, breather: null, losses: null };

/** A vented box tuned to so many Hz; without `q` nothing is lost. */
function vented(hertz: number, q: number | null): Behind {
	const conductance = ((2 * Math.PI * hertz) / SOUND) ** 2 * VOLUME;
	const losses = q === null ? null : { hertz, q };
	return { volume: VOLUME, breather: ventBreather(conductance), losses };
}

const level = (m: Motor, behind: Behind, hertz: number): number =>
	decibels(motion(m, behind, hertz).level);

describe('vented alignments', () => {
	/**
	 * A. N. Thiele, J. Audio Eng. Soc. 19 (1971), 'Loudspeakers in Vented Boxes', table I; from
	 * memory. It gives f3 over fs and f3 over fb.
	 */
	test.each([
		['QB3, number 1', 0.18, 10.48, 2.68, 1.34],
		['QB3, number 2', 0.209, 7.48, 2.28, 1.32],
		['QB3, number 3', 0.259, 4.46, 1.77, 1.25],
		['QB3, number 4', 0.303, 2.95, 1.45, 1.18],
		['B4, number 5', 0.383, 1.414, 1, 1],
		['C4, number 6', 0.415, 1.055, 0.867, 0.935],
	])('%s: Qts %s, Vas / Vb %s: f3 / fs %s, f3 / fb %s', (_, qts, alpha, ofFs, ofFb) => {
		const f3 = halfPowerOf(motor(qts, alpha), vented((30 * ofFs) / ofFb, null));
		expect(Math.abs(f3 / 30 / ofFs - 1)).toBeLessThan(0.003);
	});

	test('B4 without losses is the fourth order Butterworth: 1 / sqrt(1 + (fs / f)^8) everywhere', () => {
		// The Butterworth polynomial: a1 = a3 = 1 / Qts = 2.6131, a2 = 2 + alpha = 3.4142.
		const qts = 1 / (2 * Math.cos(Math.PI / 8) + 2 * Math.cos((3 * Math.PI) / 8));
		expect(qts).toBeCloseTo(0.3827, 4);
		const b4 = motor(qts, Math.SQRT2);
		for (const f of [5, 15, 29, 30, 31, 60, 300])
			expect(motion(b4, vented(30, null), f).level).toBeCloseTo(
				1 / Math.sqrt(1 + (30 / f) ** 8),
				9,
			);
	});

	test('B4 with QL 7: Qts 0.405, Vas / Vb 1.061 (Small 1973 III, from memory; recomputed)', () => {
		const b4 = motor(0.4048, 1.0613);
		const box = vented(30, 7);
		expect(halfPowerOf(b4, box)).toBeCloseTo(30, 1);
		for (const f of [15, 30, 60])
			expect(motion(b4, box, f).level).toBeCloseTo(1 / Math.sqrt(1 + (30 / f) ** 8), 3);
	});
});

/** Small, J. Audio Eng. Soc. 20 (1972) and 21 (1973); the figures of the sealed check. */
describe('closed boxes', () => {
	test.each([
		[0.5, 1.5538],
		[0.5774, 1.272],
		[0.7071, 1],
		[0.9, 0.8295],
		[1, 0.7862],
		[1.2, 0.7358],
	])('Qtc %s: half power at %s fc', (qtc, ratio) => {
		const alpha = 2;
		const up = Math.sqrt(1 + alpha);
		const f3 = halfPowerOf(motor(qtc / up, alpha), SEALED);
		expect(Math.abs(f3 / (30 * up) - ratio)).toBeLessThan(5e-4);
	});

	test('Qtc 1 peaks by 1.25 dB at fc times root 2', () => {
		const one = motor(1 / Math.sqrt(3), 2);
		const at = 30 * Math.sqrt(3) * Math.SQRT2;
		expect(level(one, SEALED, at)).toBeCloseTo(1.249, 3);
		expect(level(one, SEALED, at * 1.02)).toBeLessThan(level(one, SEALED, at));
		expect(level(one, SEALED, at / 1.02)).toBeLessThan(level(one, SEALED, at));
	});
});

/** Small 1972: reference efficiency 9.6e-7 fs3 Vas / Qes, SI; 112 dB for a watt of sound at 1 m. */
describe('efficiency', () => {
	test('9.6e-7 fs3 Vas / Qes', () => {
		expect(efficiency(33, 0.48, 0.044) / ((9.6e-7 * 33 ** 3 * 0.044) / 0.48)).toBeCloseTo(1, 2);
	});

	test('1 W of sound in half space is 112 dB at 1 m', () => {
		expect(soundLevel(1)).toBeCloseTo(112.1, 1);
		expect(soundLevel(0.01)).toBeCloseTo(92.1, 1);
	});
});

/** What moves, where it can be said without any circuit. */
describe('cone and vent', () => {
	test('a steady push moves a cone in a sealed box 1 / (1 + Vas / Vb) as far as in free air', () => {
		expect(motion(motor(0.4, 3), SEALED, 1e-3).cone).toBeCloseTo(1 / 4, 6);
	});

	test('at the tuning the cone of a box without losses stands still, with them it is least near it', () => {
		expect(motion(motor(0.4, 1.4), vented(34, null), 34).cone).toBeLessThan(1e-9);
		const cone = (f: number): number => motion(motor(0.4, 1.4), vented(34, 7), f).cone;
		const near = Array.from({ length: 201 }, (_, i) => 24 + i / 10);
		const least = near.reduce((a, b) => (cone(b) < cone(a) ? b : a));
		expect(Math.abs(least / 34 - 1)).toBeLessThan(0.05);
	});

	test('far under the tuning the vent passes all that the cone pushes', () => {
		const { cone, breather } = motion(motor(0.4, 1.4), vented(34, null), 0.5);
		expect(breather / cone).toBeCloseTo(1, 3);
	});
});

/**
 * Small 1973, 'Vented-Box Loudspeaker Systems', part I: the system function of fourth order with
 * losses by leaks. Coefficients from memory.
 */
function small(f: number, fs: number, qts: number, alpha: number, h: number, ql: number): number {
	const w = f / (fs * Math.sqrt(h));
	const a1 = (ql + h * qts) / (Math.sqrt(h) * ql * qts);
	const a2 = (h + (alpha + 1 + h * h) * ql * qts) / (h * ql * qts);
	const a3 = (h * ql + qts) / (Math.sqrt(h) * ql * qts);
	return w ** 4 / Math.hypot(w ** 4 - a2 * w ** 2 + 1, a3 * w - a1 * w ** 3);
}

test('any vented box follows the published function of fourth order', () => {
	const near = (min: number, max: number) => fc.double({ min, max, noNaN: true });
	fc.assert(
		fc.property(
			fc.record({ qts: near(0.15, 1.2), alpha: near(0.2, 8), h: near(0.4, 2), ql: near(3, 30) }),
			near(5, 300),
			({ qts, alpha, h, ql }, f) => {
				const own = motion(motor(qts, alpha), vented(30 * h, ql), f).level;
				expect(own / small(f, 30, qts, alpha, h, ql)).toBeCloseTo(1, 8);
			},
		),
		{ numRuns: runs(200) },
	);
});
