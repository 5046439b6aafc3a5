import { describe, expect, test } from 'vitest';
import { toMm } from '../../../src/lib/measure';
import { figures, made, told, type Asked } from './make';

/* Outside 536 x 436 x 336 of 18 mm board: inside 500 wide, 400 high, 300 deep. */
const shape = { kind: 'plain' as const, width: 536, height: 436, depth: 336 };
type Device = NonNullable<Asked['devices']>[number];

const amp = {
	name: 'Amp',
	length: 200,
	width: 150,
	height: 50,
	x: 100,
	y: 100,
	mass: 3,
	holes: [
		{ x: 10, y: 10 },
		{ x: 190, y: 140, diameter: 5 },
	],
};
const withOne = (more: Partial<Device> = {}): Asked => ({ shape, devices: [{ ...amp, ...more }] });
const back = (box: Asked) => figures(box).boards.find((b) => b.key === 'back')!;
const lines = (box: Asked) => figures(box).chambers[0]!.deductions;
const xy = (p: { x: number; y: number }) => [p.x, p.y].map((n) => toMm(n as never));

describe('devices on a board of a box', () => {
	test('none leaves all as it was', () => {
		expect(figures({ shape, devices: [] })).toEqual(figures({ shape }));
	});

	test('one outside is drilled from the corner of its board, weighs, and takes no air', () => {
		expect(made(withOne()).problems).toEqual([]);
		const holes = back(withOne()).holes.filter((h) => h.of === 'device');
		expect(holes.map((h) => [...xy(h.centre), toMm(h.size[0]!)])).toEqual([
			[110, 110, 4],
			[290, 240, 5],
		]);
		expect(lines(withOne())).toEqual([]);
		const [f, none] = [figures(withOne()), figures({ shape })];
		expect(f.loadedMass - f.mass).toBeCloseTo(3, 9);
		// Its middle stands 25 mm behind the back: 361 from the front.
		const want = (168 * none.mass + 361 * 3) / (none.mass + 3);
		expect(toMm(f.gravity!.back)).toBeCloseTo(want, 1);
		const screws = made(withOne()).needs.filter((n) => n.kind === 'screws' && /^Amp/.test(n.for));
		expect(screws.map((n) => n.amount)).toEqual([2]);
	});

	test('one inside takes its body off the air of its chamber', () => {
		const inside = withOne({ side: 'inside' });
		expect(made(inside).problems).toEqual([]);
		expect(lines(inside)).toEqual([{ what: 'Amp', litres: 1.5 }]);
		const [f, none] = [figures(inside), figures({ shape })];
		expect(none.chambers[0]!.net - f.chambers[0]!.net).toBeCloseTo(1.5, 9);
		const want = (168 * none.mass + (318 - 25) * 3) / (none.mass + 3);
		expect(toMm(f.gravity!.back)).toBeCloseTo(want, 1);
	});

	test('it is fixed while its side can be reached', () => {
		const steps = (box: Asked) => figures(box).assembly.map((s) => s.text);
		const at = (list: string[], what: RegExp) => list.findIndex((t) => what.test(t));
		const inside = steps(withOne({ side: 'inside' }));
		expect(at(inside, /^Fix Amp on the inside of Back \(2 screws\)\.$/)).toBeGreaterThan(0);
		expect(at(inside, /^Fix Amp/)).toBeLessThan(at(inside, /^Close with/));
		const outside = steps(withOne());
		expect(at(outside, /^Fix Amp on the outside of Back/)).toBeGreaterThan(at(outside, /^Close/));
	});

	test('turned a quarter left, its body, holes and free space turn with it', () => {
		const turned = withOne({ turn: 90, clear: { right: 40 } });
		const [one] = back(turned).devices;
		expect(one!.body.map(xy)).toEqual([
			[100, 100],
			[250, 100],
			[250, 300],
			[100, 300],
		]);
		expect(one!.space.map(xy)).toEqual([
			[100, 100],
			[250, 100],
			[250, 340],
			[100, 340],
		]);
		const holes = back(turned).holes.filter((h) => h.of === 'device');
		expect(holes.map((h) => xy(h.centre))).toEqual([
			[240, 110],
			[110, 290],
		]);
	});

	test('through a doubler, only the board it sits on is drilled', () => {
		const doubled = { ...withOne({ side: 'inside' }), doublers: [{ board: 'back' as const }] };
		const drilled = figures(doubled).boards.filter((b) => b.holes.some((h) => h.of === 'device'));
		expect(drilled.map((b) => b.role)).toEqual(['doubler']);
		expect(drilled[0]!.devices).toHaveLength(1);
	});

	test('over the edge, off the board, on no board, in no air', () => {
		expect(told(withOne({ x: 400 }), 'devices.0')).toEqual([
			expect.stringContaining('stands over the edge'),
		]);
		expect(told(withOne({ x: 400 }), 'devices.0.holes.1')).toEqual([
			expect.stringContaining('lies off its board'),
		]);
		expect(told(withOne({ x: 0 }), 'devices.0.holes.0')).toEqual([
			expect.stringContaining('is 10 mm from the edge'),
		]);
		expect(told(withOne({ board: 'cut' }), 'devices.0.board')).toHaveLength(1);
		const split: Asked = {
			...withOne({ side: 'inside' }),
			dividers: [{ across: 'width', at: 295 }],
		};
		expect(told(split, 'devices.0')).toEqual([expect.stringMatching(/^stop: .*no air/)]);
		expect(figures(split).chambers[0]!.deductions.map((d) => d.what)).toEqual([
			expect.stringContaining('Without Amp'),
		]);
	});

	test('what is in its way inside: a wall, a brace, a driver', () => {
		expect(told(withOne({ side: 'inside', height: 320 }), 'devices.0')).toEqual([
			expect.stringContaining('runs into a wall'),
		]);
		const near = withOne({ side: 'inside', clear: { over: 260 } });
		expect(told(near, 'devices.0')).toEqual([expect.stringContaining('runs into a wall')]);
		const braced: Asked = {
			...withOne({ side: 'inside' }),
			braces: [{ kind: 'shelf', across: 'height', at: 150, from: 0, length: 500 }],
		};
		expect(told(braced, 'devices.0')).toEqual([expect.stringContaining('Shelf brace 1')]);
		const driven: Asked = {
			...withOne({ side: 'inside', height: 200 }),
			drivers: [
				{
					board: 'front',
					cutout: { kind: 'round', diameter: 230 },
					frame: 260,
					depth: 180,
					displacement: 1.6,
				},
			],
		};
		expect(told(driven, 'drivers.0.at')).toEqual([expect.stringContaining('runs into Amp')]);
	});

	test('two in one place, in the free space or the reach of another, on two sides', () => {
		const two = (a: Partial<Device>, b: Partial<Device>): Asked => ({
			shape,
			devices: [
				{ ...amp, ...a },
				{ ...amp, name: 'Block', length: 100, width: 60, holes: [], x: 310, ...b },
			],
		});
		expect(made(two({}, {})).problems).toEqual([]);
		expect(told(two({}, { x: 290 }), 'devices.1')).toEqual([
			expect.stringContaining('Amp and Block overlap'),
		]);
		expect(told(two({ clear: { right: 30 } }, {}), 'devices.0.clear')).toHaveLength(1);
		expect(told(two({ reach: ['right'] }, {}), 'devices.0.reach')).toHaveLength(1);
		expect(made(two({ side: 'inside' }, { x: 150 })).problems).toEqual([]);
		expect(told(two({}, { name: 'Amp' }), 'devices.1.name')).toHaveLength(1);
	});

	test('over a driver, a terminal or bored holes on its board', () => {
		const cup = { board: 'back' as const, at: { across: 200, up: 200 } };
		const over = {
			...withOne(),
			terminal: { ...cup, hole: { kind: 'round' as const, diameter: 50 } },
		};
		expect(told(over as Asked, 'devices.0')).toEqual([expect.stringContaining('overlap')]);
	});

	test('what stands outside is told where the box is measured for a space', () => {
		const space = { width: 600, height: 500, depth: 400 };
		expect(told({ ...withOne(), space }, 'devices.0.height')).toHaveLength(1);
		expect(told({ ...withOne({ side: 'inside' }), space }, 'devices.0.height')).toEqual([]);
	});
});
