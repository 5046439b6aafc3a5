import { describe, expect, test } from 'vitest';
import { tiltOf } from '../../src/lib/design/box/shell/joint';
import { insideAngle } from '../../src/lib/design/box/solid/section';
import { edgeTilt, frameOf } from '../../src/lib/design/box/solid/solid';
import { sideOf } from '../../src/lib/design/box/board/part-of';
import { flat } from '../../src/lib/design/box/solid/solid';
import { meet3 } from '../../src/lib/design/box/solid/six';
import { angleBetween, dot3, p3, scale3, unit3 } from '../../src/lib/design/box/solid/vec';
import { area, perimeter } from '../../src/lib/geometry/extent';
import { circle } from '../../src/lib/geometry/shaping/tidy';
import { radiusFromRise } from '../../src/lib/geometry/arc';
import { inches, toInches, toMm } from '../../src/lib/measure/length';
import { figures, made } from '../design/box/make';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * The slant-front box of the examples: 8 in deep at the top, 14 in at the bottom, 15 in high, 34 in
 * wide, all inside.
 */
const slantFront = {
	shape: {
		kind: 'slanted' as const,
		width: '34 in',
		height: '15 in',
		face: 'front' as const,
		lean: { by: 'depths' as const, bottom: '14 in', top: '8 in' },
	},
	sizes: 'inner' as const,
};

describe('segments of a circle', () => {
	test("Machinery's Handbook, 31st edition, p. 83: chord 21, rise 6", () => {
		const r = radiusFromRise(21, 6);
		expect(r).toBe(12.1875);
		const angle = 4 * Math.atan((2 * 6) / 21);
		expect((angle * 180) / Math.PI).toBeCloseTo(118.97953, 5);
		expect(r * angle).toBeCloseTo(25.308373, 5);
		expect((r * r * (angle - Math.sin(angle))) / 2).toBeCloseTo(89.254148, 5);
	});

	test('a circle cut-out of 10.875 in, from pi r2 and pi D', () => {
		const hole = circle(0, 0, inches(10.875 / 2));
		expect(area(hole) / inches(1) ** 2).toBeCloseTo(92.886, 3);
		expect(perimeter(hole) / inches(1)).toBeCloseTo(34.165, 3);
	});
});

describe('the slant-front box (plane geometry, Pythagoras)', () => {
	const f = figures(slantFront);
	const inner = f.profile!.inner;
	const edge = (key: string): number => f.profile!.keys.indexOf(key);

	test('its slanted board runs 6 in over a rise of 15 in: 16.15549 in long, leaning 21.8014 degrees', () => {
		const k = edge('front');
		const [a, b] = [inner[k]!, inner[(k + 1) % 4]!];
		expect(toInches(Math.hypot(b.x - a.x, b.y - a.y))).toBeCloseTo(16.15549, 3);
		expect(f.leans.find((l) => l.board === 'front')!.angle).toBeCloseTo(21.8014, 3);
	});

	test('it meets the bottom at 68.1986 and the top at 111.8014 degrees', () => {
		expect(insideAngle(inner, edge('bottom'))).toBeCloseTo(68.1986, 3);
		expect(insideAngle(inner, edge('front'))).toBeCloseTo(111.8014, 3);
	});
});

describe('saw tilts (plane geometry; common practice, no source)', () => {
	test.each([
		['mitre' as const, 90, 45],
		['mitre' as const, 68.1986, 55.9007],
		['mitre' as const, 111.8014, 34.0993],
		['butt' as const, 68.1986, 21.8014],
	])('%s at %s degrees: %s', (joint, angle, tilt) => {
		expect(tiltOf(joint, angle)).toBeCloseTo(tilt, 4);
	});

	test('a mitre past the limit of the saw is refused and the butt joint offered', () => {
		const plan = made({ ...slantFront, joint: 'mitre' });
		const said = plan.problems.find((p) => p.path.includes('corners'))!;
		expect(said.what).toContain('55.9°');
		expect(said.what).toContain('45°');
		expect(said.fix).toContain('21.8°');
	});

	test('18 mm at 21.8014 degrees: long face less short face 7.200 mm; 0.75 in: 0.3000 in', () => {
		const part = (thick: number | string) =>
			made(slantFront, {
				stock: {
					materials: [
						{ id: 'ply-18', name: 'Board', kind: 'other', nominal: thick, measured: thick },
					],
				},
			}).parts.find((p) => p.name === 'Bottom')!;
		const metric = part(18);
		expect((metric.width - metric.short!.width) / 1600).toBeCloseTo(7.2, 3);
		const inch = part('0.75 in');
		expect(toInches(inch.width - inch.short!.width)).toBeCloseTo(0.3, 4);
	});

	test.each([
		[18, 16.15549 * 25.4, 7.2],
		['0.75 in', 16.15549 * 25.4, 0.3 * 25.4],
	])(
		'parallel bevels in %s at 21.8014 degrees: both faces %s mm, the blank t tan longer: %s mm',
		(thick, face, offset) => {
			const front = made(slantFront, {
				stock: {
					materials: [
						{ id: 'ply-18', name: 'Board', kind: 'other', nominal: thick, measured: thick },
					],
				},
			}).parts.find((p) => p.name === 'Front')!;
			const shift = front.shift!;
			expect(toMm(shift.outside.width)).toBeCloseTo(face, 2);
			expect(toMm(shift.inside.width)).toBeCloseTo(face, 2);
			expect(toMm(shift.offset.width)).toBeCloseTo(offset, 2);
			expect(toMm(front.width)).toBeCloseTo(face + offset, 2);
			expect(shift.outside.length).toBe(front.length);
			expect(shift.offset.length).toBe(0);
		},
	);

	test('a board that has a longer face is not shifted', () => {
		const parts = made(slantFront).parts;
		expect(parts.filter((p) => p.shift).map((p) => p.name)).toEqual(['Front']);
	});

	test.each([
		[15, 0.201],
		[22.5, 0.3107],
		[30, 0.433],
		[45, 0.75],
	])('setback of a bevel in 0.75 in board at %s degrees: %s in (t tan)', (tilt, setback) => {
		const solid = {
			outside: [p3(0, 0, 0), p3(10, 0, 0), p3(10, 10, 0), p3(0, 10, 0)],
			inside: [p3(0, setback, -0.75), p3(10, setback, -0.75), p3(10, 10, -0.75), p3(0, 10, -0.75)],
		};
		const seen = edgeTilt(solid, frameOf(p3(0, 0, 0), p3(0, 0, 1), p3(0, 1, 0)), 0);
		expect(seen.tilt).toBeCloseTo(tilt, 1);
		expect(seen.long).toBe('outside');
	});
});

describe('leaning boards', () => {
	test('front leaning 20, side leaning 10 degrees meet at 93.4049 inside (vector normals)', () => {
		const front = p3(0, -Math.cos(rad(20)), Math.sin(rad(20)));
		const side = p3(Math.cos(rad(10)), 0, Math.sin(rad(10)));
		expect(180 - angleBetween(front, side)).toBeCloseTo(93.4049, 3);
	});

	/**
	 * Two neighbours of an n-sided box whose sides stand `pitch` from level, mitred; the cut of one
	 * of them.
	 */
	function compound(n: number, pitch: number): { mitre: number; tilt: number } {
		const side = (turn: number) => {
			const n3 = p3(
				Math.sin(rad(pitch)) * Math.cos(turn),
				Math.sin(rad(pitch)) * Math.sin(turn),
				Math.cos(rad(pitch)),
			);
			return { key: 'side-1', n: n3, d: 1000 };
		};
		const own = side(0);
		const turns = [(-2 * Math.PI) / n, (2 * Math.PI) / n];
		const level = (d: number) => ({ key: 'side-1', n: p3(0, 0, 1), d });
		const inner = (f: typeof own) => ({ ...f, d: f.d - 20 });
		const corner = (f: (p: typeof own) => typeof own, t: number, z: number) =>
			meet3(f(own), f(side(t)), level(z));
		const face = (f: (p: typeof own) => typeof own) => [
			corner(f, turns[0]!, 0),
			corner(f, turns[1]!, 0),
			corner(f, turns[1]!, 300),
			corner(f, turns[0]!, 300),
		];
		const outside = face((p) => p);
		const frame = frameOf(outside[0]!, own.n, p3(0, 0, 1));
		const solid = { outside, inside: face(inner) };
		const [a, b] = [flat(outside[1]!, frame), flat(outside[2]!, frame)];
		return { mitre: sideOf(a, b).mitre, tilt: edgeTilt(solid, frame, 1).tilt };
	}

	test.each([
		[4, 30, 40.89, 20.7],
		[6, 30, 26.57, 14.48],
		[4, 45, 35.26, 30],
		[8, 45, 16.32, 15.7],
		[5, 35, 30.76, 19.7],
		[6, 40, 23.86, 18.75],
		[4, 20, 43.22, 14],
	])(
		'%s sides at %s degrees: gauge %s, tilt %s (setting chart of a bench saw manual)',
		(n, pitch, mitre, tilt) => {
			const cut = compound(n, pitch);
			expect(Math.abs(cut.mitre - mitre)).toBeLessThan(0.01);
			expect(Math.abs(cut.tilt - tilt)).toBeLessThan(0.01);
		},
	);

	test('three planes meet in a point of all three', () => {
		const planes = [p3(1, 0, 0), unit3(p3(0.2, 1, 0)), unit3(p3(0.1, 0.3, 1))].map((n, i) => ({
			key: 'top',
			n,
			d: i + 1,
		}));
		const p = meet3(planes[0]!, planes[1]!, planes[2]!);
		planes.forEach((f) => expect(dot3(f.n, p)).toBeCloseTo(f.d, 9));
		expect(scale3(p, 1)).toEqual(p);
	});
});
