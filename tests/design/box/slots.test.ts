import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toMm } from '../../../src/lib/measure';
import { runs } from '../../depth';
import { figures, made, told, type Asked } from './make';

/* Inside 564 x 364 x 364 mm, boards of 18 mm; a slot 40 mm high from end to end. */
const CUBE = { kind: 'plain' as const, width: 600, height: 400, depth: 400 };
const slot = (more: object = {}) => ({
	kind: 'slot' as const,
	gap: 40,
	bend: 'U' as const,
	goal: { by: 'length' as const, length: 900 },
	...more,
});
const asked = (more: object = {}, box: Partial<Asked> = {}): Asked => ({
	shape: CUBE,
	vents: [slot(more)] as Asked['vents'],
	...box,
});
const said = (a: Asked): string[] =>
	made(a).problems.map((p) => `${p.kind} ${p.path.slice(2).join('.')}: ${p.what} ${p.fix}`);
const boardsOf = (a: Asked) =>
	figures(a)
		.boards.filter((b) => b.role === 'slot')
		.map((b) => [b.name, toMm(b.long.across), toMm(b.long.up), toMm(b.thickness)]);

describe('a slot turned twice', () => {
	test('is as long as its legs along the middle, corner to corner', () => {
		const [vent] = figures(asked()).vents;
		// Through the front 18 and to 20 before the back; up to 20 under the top; forward.
		expect(vent!.legs.map(toMm)).toEqual([18 + 364 - 20, 364 - 20 - 20, 900 - 362 - 324]);
		expect(toMm(vent!.length)).toBe(900);
		expect(vent!.bent).toBe(true);
		expect(vent!.correction).toEqual({ name: 'one-flanged', radii: expect.closeTo(1.4621, 4) });
		// A circle as large as 40 x 564 has a radius of 84.741 mm; 1.46213 of them are 123.90 mm.
		expect(toMm(vent!.acting)).toBeCloseTo(900 + 123.9, 1);
		expect(vent!.notes.join(' ')).toContain('from the outer face: 362 + 324 + 214 mm');
	});

	test('is made of three boards, each up to the slot side of the next', () => {
		// 364 - 40; 364 - 40 - 18 - 40; 234 of top behind the mouth - 40 - 18.
		expect(boardsOf(asked())).toEqual([
			['Slot vent 1 board 1', 564, 324, 18],
			['Slot vent 1 board 2', 564, 266, 18],
			['Slot vent 1 board 3', 564, 176, 18],
		]);
		const boards = figures(asked()).boards.filter((b) => b.role === 'slot');
		expect(boards.flatMap((b) => b.edges.map((e) => e.tilt))).toEqual(Array(12).fill(0));
		expect(boards.map((b) => b.notes.join().includes('Leave it long'))).toEqual([
			false,
			false,
			true,
		]);
	});

	test('takes its boards and its air of the chamber', () => {
		const [chamber] = figures(asked()).chambers;
		expect(chamber!.gross).toBeCloseTo(74.727744, 9); // 564 x 364 x 364
		expect(chamber!.deductions.map((d) => [d.what, d.litres])).toEqual([
			// (324 + 266 + 176) x 18 x 564
			['Slot vent 1: boards', expect.closeTo(7.776432, 9)],
			// 40 x (364 + 284 + 234) x 564
			['Slot vent 1: air in it', expect.closeTo(19.89792, 9)],
		]);
		expect(chamber!.net).toBeCloseTo(47.053392, 9);
		// 343.2 / 2 pi x root of 0.02256 / (1.0239 x 0.047053392).
		expect(chamber!.tuning).toBeCloseTo(37.38, 2);
	});

	test('along an end its boards turn behind the back and come forward along the other end', () => {
		const side = asked({ along: 'left', goal: { by: 'length', length: 1100 } });
		const [vent] = figures(side).vents;
		expect(vent!.legs.map(toMm)).toEqual([362, 564 - 40, 1100 - 362 - 524]);
		expect(boardsOf(side).map(([, across, up]) => [across, up])).toEqual([
			[324, 364],
			[466, 364],
			[176, 364],
		]);
		expect(said(side)).toEqual([]);
	});

	test('upside down along the top it is the same', () => {
		const up = figures(asked());
		const down = figures(asked({ along: 'top' }));
		expect(down.vents[0]!.legs).toEqual(up.vents[0]!.legs);
		expect(down.chambers[0]!.net).toBeCloseTo(up.chambers[0]!.net, 9);
	});

	test('has its places, placing lines, seams and steps', () => {
		const f = figures(asked());
		const placed = f.placed.filter((p) => p.name.startsWith('Slot vent 1 board'));
		const spans = (of: 'fromFront' | 'fromBottom') => placed.map((p) => p[of].map(toMm));
		expect(spans('fromFront')).toEqual([
			[0, 324],
			[306, 324],
			[130, 306],
		]);
		expect(spans('fromBottom')).toEqual([
			[40, 58],
			[58, 324],
			[306, 324],
		]);
		const left = f.boards.find((b) => b.key === 'left')!;
		expect(left.placing.flatMap((p) => p.feet.map((foot) => foot.label)).sort()).toEqual(
			placed.map((p) => p.label).sort(),
		);
		const between = f.seams.map((s) => s.between.join(' '));
		expect(between).toContain('Slot vent 1 board 1 Front');
		expect(between).toContain('Slot vent 1 board 2 Slot vent 1 board 1');
		expect(between).toContain('Slot vent 1 board 3 Slot vent 1 board 2');
		const steps = f.assembly.map((s) => s.text).filter((t) => t.includes('Slot vent 1 board'));
		expect(steps).toHaveLength(3);
	});

	test('with a cheek it takes the cheek too', () => {
		const [chamber] = figures(asked({ run: 300 })).chambers;
		const boards = chamber!.deductions.find((d) => d.what === 'Slot vent 1: boards')!;
		// 766 x 18 x 300, and a cheek of 58 x (364 + 248 + 234) x 18.
		expect(boards.litres).toBeCloseTo((766 * 18 * 300 + 58 * (364 + 248 + 234) * 18) / 1e6, 9);
		const cheek = figures(asked({ run: 300 })).boards.find((b) => b.name === 'Slot vent 1 cheek')!;
		expect(cheek.outside).toHaveLength(8);
	});

	test('reaches a lower tuning than one turned once', () => {
		const goal = { by: 'tuning' as const, hertz: 38 };
		const vent = figures(asked({ goal })).vents[0]!;
		expect(vent.tuning).toBeCloseTo(38, 3);
		expect(vent.legs).toHaveLength(3);
		expect(told(asked({ goal }), 'vents.0.goal')).toEqual([]);
		expect(told(asked({ goal, bend: 'L' }), 'vents.0.goal').join()).toMatch(
			/Turn it twice, take a smaller opening/,
		);
	});
});

describe('a turned slot that does not come out as asked', () => {
	test('is built with fewer turns where it would end in one, and that is said', () => {
		for (const [length, legs, times] of [
			[700, 2, 'turned once'],
			[750, 3, null],
			[380, 1, 'straight'],
		] as const) {
			const a = asked({ goal: { by: 'length', length } });
			expect(figures(a).vents[0]!.legs).toHaveLength(legs);
			const notes = told(a, 'vents.0.bend').filter((t) => t.startsWith('note'));
			expect(notes.join()).toContain(times === null ? '' : `so it is built ${times}`);
			expect(notes).toHaveLength(times === null ? 0 : 1);
		}
		expect(told(asked({ bend: 'L', goal: { by: 'length', length: 380 } }), 'vents.0.bend')).toEqual(
			[expect.stringContaining('it would end in a turn, so it is built straight')],
		);
	});

	test.each([
		['not deep enough', { depth: 36 + 57 }, 'Leg 1 of the slot does not fit', 'mm deeper'],
		['not high enough', { height: 36 + 133 }, 'Leg 2 of the slot does not fit', 'mm higher'],
	])('in a box that is %s it is refused', (_, size, what, fix) => {
		const a = asked({}, { shape: { ...CUBE, ...size } });
		expect(told(a, 'vents.0.bend').join()).toContain(what);
		// One millimetre more and it fits.
		expect(told(a, 'vents.0.bend').join()).toContain(`1 ${fix}`);
		const [key, mm] = Object.entries(size)[0]!;
		const more = asked({}, { shape: { ...CUBE, [key]: mm + 1 } });
		expect(told(more, 'vents.0.bend').filter((t) => t.startsWith('stop'))).toEqual([]);
	});

	test('not wide enough, along an end', () => {
		const a = asked({ along: 'left' }, { shape: { ...CUBE, width: 36 + 133 } });
		expect(told(a, 'vents.0.bend').join()).toMatch(/Leg 2 of the slot .* 1 mm wider/s);
	});

	test('a leg shorter than the slot is high is told', () => {
		// Depth 364 + 18 - 60 for the first leg, the last 86 mm behind its turn.
		const a = asked(
			{ gap: 120, goal: { by: 'length', length: 322 + 244 + 100 } },
			{ shape: { ...CUBE, depth: 400 } },
		);
		expect(figures(a).vents[0]!.legs.map(toMm)).toEqual([322, 244, 100]);
		expect(told(a, 'vents.0.bend').join()).toContain('Leg 3 of Slot vent 1 is 100 mm long');
		const more = { gap: 120, goal: { by: 'length' as const, length: 322 + 244 + 120 } };
		expect(told(asked(more), 'vents.0.bend')).toEqual([]);
	});

	test('where three boards do not follow each other round the chamber it is refused', () => {
		const shape = {
			kind: 'stepped' as const,
			width: 600,
			height: 420,
			depth: 420,
			corner: 'bottom-back' as const,
			stepHeight: 150,
			stepDepth: 150,
		};
		expect(told(asked({}, { shape }), 'vents.0.bend').join()).toContain(
			'each meeting the next at an inside corner',
		);
		expect(told(asked({ along: 'top' }, { shape }), 'vents.0.bend').join()).not.toContain('stop');
	});

	test('turned sharply behind a back that leans far forward, its last board is no shorter than thick', () => {
		const lean = { by: 'depths' as const, bottom: 600, top: 280 };
		const shape = { kind: 'slanted' as const, width: 600, height: 280, lean };
		for (let length = 520; length < 700; length += 10) {
			const a = asked({ bend: 'L', gap: 33, goal: { by: 'length', length } }, { shape });
			const [one, two] = figures(a).boards.filter((b) => b.role === 'slot');
			if (!two) continue;
			// It stands on the first board: both faces start there and run on at least 18 mm.
			for (const face of [two.solid.outside, two.solid.inside]) {
				const [from, , , to] = face;
				const up = Math.hypot(to!.y - from!.y, to!.z - from!.z);
				const along = Math.hypot(face[2]!.y - face[1]!.y, face[2]!.z - face[1]!.z);
				expect(Math.max(up, along)).toBeGreaterThan(18 * 1600 - 2);
			}
			const top = Math.max(...one!.solid.inside.map((p) => p.z));
			const low = Math.min(...[...two.solid.outside, ...two.solid.inside].map((p) => p.z));
			expect(low).toBeGreaterThan(top - 2);
		}
	});

	test('a step in the way of a leg between two turns is told', () => {
		const front = (gap: number, at: number) =>
			asked(
				{ gap, along: 'top', goal: { by: 'length', length: 900 } },
				{
					shape: {
						kind: 'stepped',
						width: 900,
						height: 580,
						depth: 480,
						corner: 'bottom-front',
						stepHeight: 60,
						stepDepth: 90,
					},
					dividers: [{ across: 'depth', at }],
				},
			);
		// The step stands 90 mm into the chamber: 80 mm are left before the divider, or 20.
		expect(told(front(60, 170), 'vents.0.bend').join()).not.toContain('stop');
		expect(told(front(40, 110), 'vents.0.bend').join()).toContain('stands in the way');
	});

	test('longer than the board opposite it says so', () => {
		const a = asked({ goal: { by: 'length', length: 1100 } });
		expect(toMm(figures(a).vents[0]!.length)).toBe(362 + 324 + 344 - 40);
		expect(told(a, 'vents.0.goal').join()).toContain('the box takes 990 mm with 40 mm free');
	});
});

describe('what stands in the way of a slot turned twice', () => {
	const driver = {
		cutout: { kind: 'round' as const, diameter: 180 },
		frame: 210,
		depth: 90,
		displacement: 1,
	};
	test('a driver whose magnet runs into the leg under the top, or sits over it', () => {
		const at = (up: number, board = 'front') =>
			asked({}, { drivers: [{ ...driver, board, at: { up } }] });
		expect(told(at(200), 'drivers.0.at')).toEqual([]);
		const deep = asked({}, { drivers: [{ ...driver, depth: 330 }] });
		expect(said(deep).join()).toContain('Slot vent 1 board 2');
		expect(said(at(200, 'top')).join()).toMatch(/drivers\.0.*(slot|Slot)/);
	});

	test('a terminal over one of its legs', () => {
		const hole = { kind: 'round' as const, diameter: 50 };
		const at = (board: string) => said(asked({}, { terminal: { board, hole } }));
		expect(at('back').join()).toMatch(/terminal.*Slot vent 1/);
		expect(at('top').join()).toMatch(/terminal.*Slot vent 1/);
		expect(at('left').join()).not.toContain('terminal');
	});

	test('a brace stops at its boards on three sides', () => {
		const f = figures(asked({}, { braces: [{ kind: 'window', at: 280, rim: 40 }] }));
		const brace = f.boards.find((b) => b.role === 'brace')!;
		// 364 less 58 under and 58 over; 364 less 58 behind.
		expect([brace.long.across, brace.long.up].map(toMm).sort((a, b) => a - b)).toEqual([248, 306]);
		expect(brace.notes.filter((n) => n.startsWith('Stops 58 mm short'))).toHaveLength(3);
	});
});

describe('what a slot shares its place with', () => {
	const L = { bend: 'L' as const, goal: { by: 'length' as const, length: 600 } };
	const beside = (run: number | null, more: Partial<Asked>) =>
		told(asked({ ...L, run }, more), 'vents.0');
	test.each([
		['a frame', { braces: [{ kind: 'window', at: 100, rim: 40 }] }, 'Brace'],
		[
			'a shelf',
			{ braces: [{ kind: 'shelf', across: 'height', at: 30, from: 0, length: 200 }] },
			'Shelf',
		],
		['a rod', { braces: [{ kind: 'dowel', along: 'depth', diameter: 20, a: 100, b: 30 }] }, 'Rod'],
		['cleats', { cleats: { where: 'both', width: 30 } }, 'Cleat'],
	] as [string, Partial<Asked>, string][])('%s in one with a cheek is told', (_, more, name) => {
		expect(beside(300, more).join()).toMatch(
			new RegExp(`Slot vent 1 and .*${name}.* stand in one place`, 'i'),
		);
		expect(beside(null, more)).toEqual([]);
	});

	test('a frame clear of its cheek is not', () => {
		expect(beside(300, { braces: [{ kind: 'window', at: 350, rim: 40 }] })).toEqual([]);
		// The cheek is 18 mm thick, the frame too.
		expect(beside(300, { braces: [{ kind: 'window', at: 327, rim: 40 }] })).toEqual([]);
		expect(beside(300, { braces: [{ kind: 'window', at: 326, rim: 40 }] })).toHaveLength(1);
	});

	test('another slot is told once', () => {
		const two = (length: number): Asked => ({
			shape: CUBE,
			vents: [
				slot(L),
				slot({ along: 'top', bend: 'straight', goal: { by: 'length', length } }),
			] as Asked['vents'],
		});
		// The boards of the first stand up to 258 of 364 mm under the top slot, so nothing meets.
		expect(told(two(330), 'vents.1')).toEqual([]);
		const long = { ...two(330), vents: [slot(), two(330).vents![1]!] as Asked['vents'] };
		expect(told(long, 'vents.1').join()).toContain(
			'Slot vent 2 and Slot vent 1 stand in one place',
		);
		expect(told(long, 'vents.0')).toEqual([]);
	});
});

describe('a slot turned once', () => {
	test('is what it was', () => {
		const a = asked({ bend: 'L', goal: { by: 'length', length: 600 } });
		const f = figures(a);
		expect(f.vents[0]!.legs.map(toMm)).toEqual([362, 238]);
		expect(boardsOf(a).map(([, , up]) => up)).toEqual([324, 200]);
		// 74.727744 less 524 x 18 x 564 and 40 x (364 + 258 - 40) x 564.
		expect(f.chambers[0]!.net).toBeCloseTo(74.727744 - 5.319648 - 13.12992, 9);
	});
});

test('the middle line of a slot is its air over its height, less a half height at each turn', () => {
	const cases = fc.record({
		along: fc.constantFrom('bottom' as const, 'top' as const, 'left' as const),
		gap: fc.integer({ min: 20, max: 60 }),
		bend: fc.constantFrom('straight' as const, 'L' as const, 'U' as const),
		length: fc.integer({ min: 300, max: 1100 }),
		width: fc.integer({ min: 400, max: 800 }),
		height: fc.integer({ min: 350, max: 500 }),
		depth: fc.integer({ min: 350, max: 600 }),
	});
	fc.assert(
		fc.property(cases, ({ along, gap, bend, length, width, height, depth }) => {
			const f = figures({
				shape: { kind: 'plain', width, height, depth },
				vents: [{ kind: 'slot', along, gap, bend, goal: { by: 'length', length } }],
			});
			const [vent] = f.vents;
			const wide = toMm(vent!.size[1]!);
			const air = f.chambers[0]!.deductions.find((d) => d.what.endsWith('air in it'))!;
			// Where a slot turns its corner is a square that the middle line crosses in two halves.
			expect((air.litres * 1e6) / (wide * gap)).toBeCloseTo(toMm(vent!.length) - 18, 6);
			expect(vent!.legs.reduce((a, b) => a + b, 0)).toBe(vent!.length);
		}),
		{ numRuns: runs(150) },
	);
});
