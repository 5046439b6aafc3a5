import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { area } from '../../src/lib/geometry/extent';
import type { Point } from '../../src/lib/geometry/outline';
import { distanceTo, whereIs } from '../../src/lib/geometry/meeting/inside';
import { common } from '../../src/lib/geometry/shaping/clip';
import { circle } from '../../src/lib/geometry/shaping/tidy';
import { snapPoint } from '../../src/lib/geometry/vector';
import { mm } from '../../src/lib/measure/length';
import type { Blank } from '../../src/lib/wrap/blank';
import type { FlapWidth } from '../../src/lib/wrap/girth/flap';
import { type CutPlace, notch, slit } from '../../src/lib/wrap/reliefs/cuts';
import { crosses, Folds } from '../../src/lib/wrap/reliefs/folds';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { runs } from '../depth';
import { carpet, covering, PLAIN, SHOP } from './make';
import { anyCovering } from './random-covering';

/** A flap that goes 18 down the edge and 32 along the back. */
const FLAP: FlapWidth = { wall: 18, back: 32, total: 50, folds: true, wanted: 50 };
const degrees = (n: number): Point => ({
	x: Math.cos((n * Math.PI) / 180),
	y: Math.sin((n * Math.PI) / 180),
});

/** A corner at the origin: the fold comes along +x and turns by so much, left when positive. */
const corner = (turn: number, flap = FLAP): CutPlace => ({
	at: { x: 0, y: 0 },
	before: { x: 1, y: 0 },
	after: degrees(turn),
	turn: (turn * Math.PI) / 180,
	flaps: [flap, flap],
});

const cut = (
	turn: number,
	more: { flap?: FlapWidth; half?: number; tip?: number; lap?: number },
) => {
	const { flap = FLAP, half = 1000, tip = 3, lap = 3 } = more;
	return notch(
		corner(turn, flap),
		[
			{ flap, half },
			{ flap, half },
		],
		{ tip, lap },
	);
};

function expectPoints(
	line: readonly Point[] | null,
	wanted: readonly (readonly [number, number])[],
) {
	expect(line).toHaveLength(wanted.length);
	wanted.forEach(([x, y], i) => {
		expect(line![i]!.x).toBeCloseTo(x, 9);
		expect(line![i]!.y).toBeCloseTo(y, 9);
	});
}

describe('a notch at a right corner', () => {
	it('laps the flaps round the upright edge and mitres the back at 45 degrees', () => {
		// From the edge of the cloth, 50 out: 32 along the back less the lap of 3.
		expectPoints(cut(90, {}), [
			[-29, -50],
			[3, -18],
			[3, -3],
			[18, -3],
			[50, 29],
		]);
	});

	it('takes no more of a narrow flap than it has', () => {
		expectPoints(cut(90, { half: 10 }), [
			...([
				[-10, -50],
				[-10, -31],
				[3, -18],
				[3, -3],
			] as const),
			...([
				[18, -3],
				[31, 10],
				[50, 10],
			] as const),
		]);
		// Narrower than the lap: it laps by all of its half.
		expectPoints(cut(90, { half: 2 }), [
			...([
				[-2, -50],
				[-2, -22],
				[2, -18],
				[3, -3],
			] as const),
			...([
				[18, -2],
				[22, 2],
				[50, 2],
			] as const),
		]);
	});

	it('leaves the edge whole where its point lies at the back edge', () => {
		expectPoints(cut(90, { tip: 18 }), [
			[-29, -50],
			[18, -18],
			[50, 29],
		]);
	});

	it('has no mitre where nothing lies on the back', () => {
		const flap = { ...FLAP, back: 0, total: 18 };
		expectPoints(cut(90, { flap }), [
			[3, -18],
			[3, -3],
			[18, -3],
		]);
	});

	it('is none where the cloth is no wider than its point stays off', () => {
		expect(cut(90, { tip: 50 })).toBe(null);
		expect(cut(90, { tip: 49 })).not.toBe(null);
		expect(slit(corner(-90), 50)).toBe(null);
		expect(slit(corner(-90), 49)).not.toBe(null);
	});
});

describe('a notch at other corners', () => {
	it('takes away half the turn on each side', () => {
		const tan = Math.tan(Math.PI / 8);
		const [first, second, tip] = cut(45, {})!;
		expect(first!.x).toBeCloseTo(3 * tan - 32 * tan, 9);
		expect(second!.x).toBeCloseTo(3 * tan, 9);
		// 3 off both folds.
		expect(tip!.y).toBeCloseTo(-3, 9);
		expect(Math.hypot(tip!.x, tip!.y)).toBeCloseTo(3 / Math.cos(Math.PI / 8), 9);
	});

	it('is cut like one of 30 degrees where the corner is a needle', () => {
		const blunt = cut(150, {})!;
		const needle = cut(170, {})!;
		expect(needle[0]!.x).toBeCloseTo(blunt[0]!.x, 9);
		expect(needle[1]!.x).toBeCloseTo(blunt[1]!.x, 9);
	});
});

it('a slit at an inside corner runs from off the fold to where both edges of the cloth meet', () => {
	expectPoints(slit(corner(-90), 3), [
		[-3, -3],
		[-50, -50],
	]);
	// Between flaps of 50 and 20.
	const narrow = { ...FLAP, total: 20 };
	expectPoints(slit({ ...corner(-90), flaps: [FLAP, narrow] }, 3), [
		[-3, -3],
		[-20, -50],
	]);
});

describe('folds that no cut may reach', () => {
	const fold = [
		{ x: 10, y: 10 },
		{ x: 30, y: 10 },
	];
	const ends = (x: number, y: number, u: number, v: number) =>
		new Folds([fold]).crossedBy([
			{ x, y },
			{ x: u, y: v },
		]);

	it('are crossed by a cut that only touches them, from above, below and the ends', () => {
		expect([ends(20, 10, 20, 40), ends(20, 11, 20, 40)]).toEqual([true, false]);
		expect([ends(20, -9, 20, 10), ends(20, -9, 20, 9)]).toEqual([true, false]);
		expect([ends(30, 10, 50, 10), ends(31, 10, 50, 10)]).toEqual([true, false]);
		expect([ends(-5, 10, 10, 10), ends(-5, 10, 9, 10)]).toEqual([true, false]);
	});

	it('are not crossed by what passes a slanted fold within its box', () => {
		const slanted = [
			{ x: 0, y: 0 },
			{ x: 100, y: 100 },
		];
		const aside = [
			{ x: 60, y: 10 },
			{ x: 90, y: 40 },
		];
		expect([crosses(slanted, aside), new Folds([slanted]).crossedBy(aside)]).toEqual([
			false,
			false,
		]);
	});
});

const notchesOf = (blank: Blank) => blank.marks.filter((m) => m.kind === 'notch');
const shared = (a: readonly Point[], b: readonly Point[]): number =>
	common([a.map(snapPoint)], [b.map(snapPoint)]).reduce((sum, r) => sum + area(r.outline), 0);

describe('the notches along a curve', () => {
	it('are alike all round a disc, one beside the other, and leave a flap between', () => {
		const law = fc.property(
			fc.integer({ min: 40, max: 400 }),
			fc.integer({ min: 3, max: 40 }),
			fc.integer({ min: 5, max: 60 }),
			(radius, build, margin) => {
				const edge = { ...PLAIN, build: mm(build), margin: mm(margin) };
				const disc = circle(0, 0, mm(radius));
				const c = covering({ outline: disc, edges: disc.map(() => edge) });
				const [blank] = wrapCovering(c, carpet(), SHOP, []).blanks;
				const notches = notchesOf(blank!);
				const sizes = notches.map((m) => Math.abs(area(m.line)));
				expect(notches.length).toBeGreaterThan(3);
				expect(Math.max(...sizes) / Math.min(...sizes)).toBeLessThan(1.1);
				const lapped = notches.slice(0, 3).map((m, i) => shared(m.line, notches[i + 1]!.line));
				expect(Math.max(...lapped)).toBeLessThan(Math.min(...sizes) / 100);
			},
		);
		fc.assert(law, { numRuns: runs(60) });
	});
});

it('every corner of a notch lies on the cloth, to a few ticks of the grid', () => {
	const law = fc.property(anyCovering(0), (c) => {
		const [blank] = wrapCovering(c, carpet(), SHOP, []).blanks;
		const off = notchesOf(blank!)
			.flatMap(({ line }) => line)
			.filter((p) => whereIs(p, blank!.outline) === 'outside')
			.map((p) => distanceTo(p, blank!.outline));
		expect(Math.max(0, ...off)).toBeLessThan(6);
	});
	fc.assert(law, { numRuns: runs(120) });
});
