import { describe, expect, test } from 'vitest';
import {
	actingLength,
	END_CORRECTION,
	equalRadius,
	FLANGED_END,
	FREE_END,
	resonance,
} from '../../src/lib/design/box/vent/acoustics';
import { figures } from '../design/box/make';

describe('end corrections in radii', () => {
	test('free 0.6133 (Levine and Schwinger 1948), flanged 8 / 3 pi = 0.8488 (Rayleigh; Beranek 1954)', () => {
		expect(FREE_END).toBe(0.6133);
		expect(FLANGED_END).toBeCloseTo(0.8488, 4);
	});

	test('one of each 1.4621; both flanged 1.698 (Kinsler and Frey: 1.7); both free 1.227', () => {
		expect(END_CORRECTION['one-flanged']).toBeCloseTo(1.4621, 4);
		expect(END_CORRECTION['both-flanged']).toBeCloseTo(1.698, 3);
		expect(END_CORRECTION['both-free']).toBeCloseTo(1.2266, 4);
	});
});

/** mm for a round vent in litres, by our own formula. */
function length(diameter: number, litres: number, hertz: number, k: number): number {
	const area = (Math.PI / 4) * (diameter / 1000) ** 2;
	return actingLength(litres / 1000, area, hertz) * 1000 - (k * diameter) / 2;
}

/**
 * Margolis and Small 1981: 2350 D2 / (V f2) - 0.73 D, mm and litres; the common inch and cm forms
 * from memory.
 */
const FORMS: readonly ((d: number, v: number, f: number) => number)[] = [
	(d, v, f) => (2350 * d * d) / (v * f * f) - 0.73 * d,
	(d, v, f) => {
		const r = d / 2 / 25.4;
		return ((1.463e7 * r * r) / (f * f * v * 61.0237440947) - 1.463 * r) * 25.4;
	},
	(d, v, f) => ((23562.5 * (d / 10) ** 2) / (f * f * v) - 0.732 * (d / 10)) * 10,
];

describe('vent lengths', () => {
	test.each([
		[101.6, 56.634, 35, 274.4, 262.3, 286.3],
		[76.2, 28.317, 40, 244.6, 235.5, 253.6],
	])('%s mm, %s L, %s Hz', (d, v, f, exact, flanged, free) => {
		const own = length(d, v, f, END_CORRECTION['one-flanged']);
		expect(Math.abs(own - exact)).toBeLessThan(0.1);
		expect(Math.abs(length(d, v, f, 1.7) - flanged)).toBeLessThan(0.1);
		expect(Math.abs(length(d, v, f, 1.227) - free)).toBeLessThan(0.1);
		for (const form of FORMS) expect(Math.abs(form(d, v, f) / own - 1)).toBeLessThan(0.015);
	});

	test('a slot 50 x 350 mm, 50 L, 35 Hz acts like 149.27 mm round and is 743.3 mm long, and back again', () => {
		const area = 0.05 * 0.35;
		const r = equalRadius(area);
		expect(r * 2000).toBeCloseTo(149.27, 2);
		const ends = END_CORRECTION['one-flanged'] * r;
		const long = actingLength(0.05, area, 35) - ends;
		expect(Math.abs(long * 1000 - 743.3)).toBeLessThan(0.1);
		expect(resonance(0.05, area, long + ends)).toBeCloseTo(35, 9);
	});
});

describe('a vent in its box', () => {
	const box = (goal: { by: 'tuning'; hertz: number } | { by: 'length'; length: number }) =>
		figures({
			shape: { kind: 'plain', width: 600, height: 400, depth: 400 },
			vents: [{ kind: 'round', diameter: 80, goal }],
		});

	test('its air and its tube are deducted, and the length gives the tuning back', () => {
		const wanted = box({ by: 'tuning', hertz: 40 });
		const vent = wanted.vents[0]!;
		const chamber = wanted.chambers[0]!;
		expect(chamber.tuning).toBeCloseTo(40, 4);
		const area = Math.PI * 0.04 ** 2;
		const ends = END_CORRECTION['one-flanged'] * 0.04;
		expect(resonance(chamber.net / 1000, area, vent.length / 1.6e6 + ends)).toBeCloseTo(40, 3);
		const inside = (vent.length / 1600 - 18) / 1e6;
		expect(chamber.gross - chamber.net).toBeCloseTo(Math.PI * 43 ** 2 * inside, 4);
		const back = box({ by: 'length', length: vent.length / 1600 });
		expect(back.chambers[0]!.tuning).toBeCloseTo(40, 4);
	});
});
