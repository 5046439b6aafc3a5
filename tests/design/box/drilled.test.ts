import { describe, expect, it } from 'vitest';
import { toMm } from '../../../src/lib/measure/length';
import { figures, made, told, type Asked } from './make';

const DRIVER = {
	cutout: { kind: 'round', diameter: 230 },
	frame: 270,
	depth: 100,
	displacement: 2,
	bolts: 8,
	boltCircle: { diameter: 250, angle: 22.5 },
} as const;
const BOX: Asked = {
	shape: { kind: 'plain', width: 500, height: 400, depth: 400 },
	drivers: [DRIVER],
};
const driver = (more: object): Asked => ({ ...BOX, drivers: [{ ...DRIVER, ...more }] });

const drilled = (asked: Asked, of: 'bolt' | 'screw', key = 'front') =>
	figures(asked)
		.boards.find((b) => b.key === key)!
		.holes.filter((h) => h.of === of);
const middles = (asked: Asked, of: 'bolt' | 'screw', key = 'front') =>
	drilled(asked, of, key).map((h) => [toMm(h.centre.x), toMm(h.centre.y)]);

describe('the bolt circle of a driver', () => {
	it('is drilled where it is given, the first bolt right of straight up', () => {
		const found = middles(driver({ bolts: 4, boltCircle: { diameter: 250, angle: 0 } }), 'bolt');
		// The front stands between top and bottom and the ends: 464 x 364, its middle at 232, 182.
		const close = [
			[232, 307],
			[357, 182],
			[232, 57],
			[107, 182],
		];
		found.forEach((p, i) => p.forEach((n, k) => expect(n).toBeCloseTo(close[i]![k]!, 6)));
		const [first] = middles(BOX, 'bolt');
		expect(first![0]).toBeGreaterThan(232);
		expect(Math.hypot(first![0]! - 232, first![1]! - 182)).toBeCloseTo(125, 6);
	});

	it('is not drilled where none is given, and changes neither air nor cloth', () => {
		const without = driver({ boltCircle: null });
		expect(drilled(without, 'bolt')).toEqual([]);
		expect(figures(without).chambers).toEqual(figures(BOX).chambers);
		const holes = (asked: Asked) => made(asked).skin!.round.map((f) => f.holes.length);
		expect(holes(BOX)).toEqual(holes(without));
		const routed = (asked: Asked) => made(asked).parts.map((p) => p.routed);
		expect(routed(BOX)).toEqual(routed(without));
	});

	it('goes through every layer, and is cut from the part', () => {
		const doubled: Asked = { ...BOX, doublers: [{ board: 'front', layers: 2 }] };
		for (const key of ['front', 'doubler-1', 'doubler-2'])
			expect(drilled(doubled, 'bolt', key)).toHaveLength(8);
		expect(made(BOX).parts.find((p) => p.name === 'Front')!.holes).toHaveLength(9);
	});

	it('is told where a frame or a cleat stands behind a bolt, and not where it stands clear', () => {
		const braced = (at: number): Asked => ({
			...BOX,
			braces: [{ kind: 'window', across: 'width', at, rim: 20 }],
		});
		// The bolts nearest the left stand 116.5 from the left end inside.
		expect(told(braced(116), 'drivers.0.boltCircle').join()).toContain('Window brace 1');
		expect(told(braced(80), 'drivers.0.boltCircle')).toEqual([]);
	});

	it('is drilled for each driver of a row', () => {
		const two: Asked = {
			...driver({ count: 2 }),
			shape: { kind: 'plain', width: 900, height: 400, depth: 400 },
		};
		expect(drilled(two, 'bolt')).toHaveLength(16);
	});

	it.each([
		[{ bolts: 0 }, 'drivers.0.bolts', 'no bolts'],
		[{ boltCircle: { diameter: 270 } }, 'drivers.0.boltCircle.diameter', 'past its frame'],
		[{ boltCircle: { diameter: 232 } }, 'drivers.0.boltCircle.diameter', 'into its cut-out'],
		[{ boltCircle: { diameter: 100 } }, 'drivers.0.boltCircle.diameter', 'into its cut-out'],
		[{ at: { up: 117 } }, 'drivers.0.boltCircle.diameter', 'within its board'],
		[
			{
				bolts: 24,
				boltCircle: { diameter: 250, hole: 33 },
				frame: 300,
				cutout: { kind: 'round', diameter: 200 },
			},
			'drivers.0.boltCircle.hole',
			'into each other',
		],
	])('%j is told and not drilled', (more, path, words) => {
		const asked = driver(more);
		expect(told(asked, path).join()).toContain(words);
		expect(drilled(asked, 'bolt')).toEqual([]);
	});
});

describe('the screws of a terminal', () => {
	const cup = (more: object): Asked => ({
		shape: { kind: 'plain', width: 500, height: 400, depth: 400 },
		terminal: { hole: { kind: 'rectangle', width: 60, height: 50 }, ...more },
	});

	it('stand at the corners of their rectangle', () => {
		const asked = cup({ screwHoles: { kind: 'rectangle', across: 80, up: 60 } });
		expect(middles(asked, 'screw', 'back')).toEqual([
			[192, 152],
			[272, 152],
			[272, 212],
			[192, 212],
		]);
	});

	it('are drilled in the outer layer that the cup lies on', () => {
		const asked: Asked = {
			...cup({ screwHoles: { kind: 'circle', diameter: 100 }, screws: 6 }),
			doublers: [{ board: 'back', side: 'outside' }],
		};
		expect(drilled(asked, 'screw', 'back')).toEqual([]);
		expect(drilled(asked, 'screw', 'overlay-1')).toHaveLength(6);
	});

	it.each([
		[{ screwHoles: { kind: 'rectangle', across: 60, up: 50 } }, 'terminal.screwHoles', 'opening'],
		[
			{ screwHoles: { kind: 'rectangle', across: 700, up: 50 } },
			'terminal.screwHoles',
			'off the board',
		],
		[{ screwHoles: { kind: 'circle', diameter: 100 }, screws: 0 }, 'terminal.screws', 'no screws'],
		[
			{ screwHoles: { kind: 'rectangle', across: 80, up: 60 }, screws: 6 },
			'terminal.screws',
			'6 screws',
		],
	])('%j is told', (more, path, words) => {
		expect(told(cup(more), path).join()).toContain(words);
	});
});
