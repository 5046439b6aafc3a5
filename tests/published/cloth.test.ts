import { describe, expect, it } from 'vitest';
import { radiusFromRise, riseOf, sweepForRise } from '../../src/lib/geometry/arc';
import { circle, rectangle } from '../../src/lib/geometry/shaping/tidy';
import { inches, mm, toInches, toMm } from '../../src/lib/measure/length';
import { verdictsOf } from '../../src/lib/wrap/marks/verdicts';
import { shrinkAsked, stretchAsked } from '../../src/lib/wrap/reliefs/strain';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { carpet, covering, GROOVED, PLAIN, SHOP, sizeOf } from '../wrap/make';

const wrap = (c: Parameters<typeof covering>[0], cloth = carpet()) =>
	wrapCovering(covering(c), cloth, SHOP, ['panels', 0]).blanks[0]!;

describe('the sagitta rule', () => {
	it("is the handbook's segment of a circle", () => {
		// Machinery's Handbook, 31st ed., p. 83, 'Segments of a Circle': chord 21, rise 6 give r =
		// (c2 + 4 h2) / 8 h = 12.1875, an angle of 118.97953 degrees and an arc of 25.308373.
		expect(radiusFromRise(21, 6)).toBe(12.1875);
		const angle = sweepForRise(12.1875, 6);
		expect((angle * 180) / Math.PI).toBeCloseTo(118.97953, 4);
		expect(angle * 12.1875).toBeCloseTo(25.308373, 5);
		expect(riseOf(12.1875, angle)).toBeCloseTo(6, 9);
	});

	it('spaces the flaps of a round panel so that none stands off by more than the cloth allows', () => {
		// By the handbook's formula a flap on a radius of 150 that may stand off 1 spans 2 acos(1 -
		// 1 / 150) = 13.2406 degrees.
		const half = 360 / 2 / 13.2406;
		const disc = wrap({ outline: circle(0, 0, mm(150)) }, carpet({ standOff: 1 }));
		expect(disc.reliefs.notches).toBe(Math.ceil(2 * half));
	});

	it('agrees with tabs of 12 to 15 mm round a small lid', () => {
		// Craft tutorial on covering round lids: slit the ring into tabs 12 to 15 mm wide. On a lid
		// 200 mm across such tabs stand off 0.18 to 0.28 mm.
		const width = (rise: number) => 2 * 100 * Math.sin(sweepForRise(100, rise) / 2);
		expect(width(0.18)).toBeCloseTo(12, 0);
		expect(width(0.28)).toBeCloseTo(15, 0);
	});
});

describe('a mitred corner', () => {
	const tip = (thickness: number, relief: number) => {
		const blank = wrap(
			{
				outline: rectangle(0, 0, mm(300), mm(200)),
				edges: Array(4).fill({ ...PLAIN, build: mm(2), margin: mm(20) }),
			},
			carpet({ loose: thickness, pressed: thickness, relief }),
		);
		const corner = mm(22);
		const notch = blank.marks.find(
			(m) => m.corner && m.line.some((p) => p.x < corner && p.y < corner),
		)!;
		return (
			corner -
			Math.max(
				...notch.line.filter((p) => p.x < corner && p.y < corner).map((p) => Math.min(p.x, p.y)),
			)
		);
	};

	it('stops one thickness short, or one and a half', () => {
		// Bookbinding practice: one source leaves 1 thickness at the corner, another 3 mm for 2 mm
		// stock, which is 1.5.
		expect(toMm(tip(2, 1))).toBe(2);
		expect(toMm(tip(2, 1.5))).toBe(3);
	});

	it('grows by a quarter circle of the thickness on its outer face', () => {
		// Geometry: (pi / 2) x 3 = 4.712 mm for a cloth of 3 mm round a right angle.
		const [edges] = verdictsOf({ steps: [], edges: [GROOVED] }, carpet({ tightest: 2 }), {
			unit: 'mm',
			fraction: 32,
			decimal: '.',
		});
		expect(edges!.text).toContain('grow by 4.7 mm');
		expect((Math.PI / 2) * 3).toBeCloseTo(4.712, 3);
	});
});

describe('slits', () => {
	it('stop one thickness short of the edge', () => {
		// Common practice, no source.
		const windows = [{ outline: rectangle(mm(100), mm(60), mm(200), mm(160)), edge: GROOVED }];
		const blank = wrap({ outline: rectangle(0, 0, mm(400), mm(280)), windows });
		const corner = { x: mm(50 + 100), y: mm(50 + 280 - 60) };
		const reach = blank.marks
			.filter((m) => m.kind === 'slit')
			.map((m) => m.line[0]!)
			.map((p) => ({ x: toMm(p.x - corner.x), y: toMm(corner.y - p.y) }));
		expect(reach).toContainEqual({ x: 3, y: 3 });
	});
});

describe('a blank with two inches all round', () => {
	it('is the example that shows what nap costs', () => {
		// Worked example: panels 34 x 15 in, turn-under 2 in at each edge, give blanks of 38 x 19
		// in.
		const edges = Array(4).fill({ ...PLAIN, build: inches(0.75), margin: inches(1.25) });
		const blank = wrap({ outline: rectangle(0, 0, inches(34), inches(15)), edges });
		expect([toInches(blank.length), toInches(blank.width)]).toEqual([38, 19]);
	});

	it('takes a turn-under of 25 to 50 mm, or 50 to 75 where it is stapled', () => {
		// Trade practice: 1 to 2 in on panels, 2 to 3 in at stapled edges. The default margin, 40,
		// lies in the first.
		const [length] = sizeOf(
			wrap({ outline: rectangle(0, 0, mm(300), mm(200)), edges: Array(4).fill(PLAIN) }),
		);
		const behind = (length - 300) / 2 - 18;
		expect(behind).toBeGreaterThanOrEqual(25);
		expect(behind).toBeLessThanOrEqual(50);
	});
});

describe('what a corner asks of the cloth', () => {
	it('is the ratio of two circles', () => {
		// Geometry: a circle of radius r + h drawn in to radius r shrinks by h / (r + h); one of
		// r - h let out to r stretches by h / (r - h).
		for (const [r, h] of [
			[10, 6],
			[50, 6],
			[294, 6],
		] as const) {
			expect(shrinkAsked(r, h)).toBeCloseTo(1 - (2 * Math.PI * r) / (2 * Math.PI * (r + h)), 12);
			expect(stretchAsked(r, h)).toBeCloseTo((2 * Math.PI * r) / (2 * Math.PI * (r - h)) - 1, 12);
		}
		expect(shrinkAsked(0, 6)).toBe(1);
		expect(stretchAsked(6, 6)).toBe(Infinity);
	});
});
