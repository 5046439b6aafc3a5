import { describe, expect, it } from 'vitest';
import { CROSSED, made, told, type Asked } from './make';

const plain: Asked = { shape: { kind: 'plain', width: 600, height: 400, depth: 350 } };
const driver = {
	cutout: { kind: 'round' as const, diameter: 232 },
	frame: 262,
	depth: 118,
	displacement: 2,
};

/** Asked for, where it is told, the value seen and the limit named. */
const CASES: readonly (readonly [string, Asked, string, readonly string[]])[] = [
	[
		'boards thicker than half the box',
		{ shape: { kind: 'plain', width: 600, height: 30, depth: 350 } },
		'shape',
		['too thin', '30 mm'],
	],
	[
		'ends wider than the box',
		{ shape: { kind: 'plain', width: 36, height: 300, depth: 350 } },
		'shape.width',
		['36 mm'],
	],
	[
		'a lean that closes the top',
		{
			shape: {
				kind: 'slanted',
				width: 600,
				height: 400,
				lean: { by: 'angle', depth: 150, angle: 30 },
			},
		},
		'shape.lean',
		['-80.94 mm'],
	],
	[
		'a step as deep as the box',
		{
			shape: {
				kind: 'stepped',
				width: 600,
				height: 400,
				depth: 350,
				stepHeight: 100,
				stepDepth: 350,
			},
		},
		'shape.stepDepth',
		['350 mm'],
	],
	['a profile that crosses itself', CROSSED, 'shape.corners', ['crosses itself', '200, 200 mm']],
	[
		'a cleat too wide for its corners',
		{ ...plain, cleats: { width: 380 } },
		'cleats.width',
		['380 mm', 'no room'],
	],
	[
		'a board nobody has',
		{ ...plain, boards: { front: { material: 'oak' } } },
		'boards.front.material',
		["'oak'", 'ply-18'],
	],
	[
		'a mitre past the saw',
		{
			shape: {
				kind: 'slanted',
				width: 600,
				height: 300,
				lean: { by: 'depths', bottom: 500, top: 250 },
			},
			joint: 'mitre',
		},
		'corners',
		['64.9°', '45°', '39.8°'],
	],
	[
		'a cut-out larger than its board',
		{ ...plain, drivers: [{ ...driver, cutout: { kind: 'round', diameter: 380 } }] },
		'drivers.0.cutout',
		['380 mm', '564 x 364 mm'],
	],
	[
		'a driver deeper than the box',
		{ ...plain, drivers: [{ ...driver, depth: 340 }] },
		'drivers.0.depth',
		['340 mm', '332 mm'],
	],
	[
		'a driver on a board that is not there',
		{ ...plain, drivers: [{ ...driver, board: 'cut' }] },
		'drivers.0.board',
		["'cut'"],
	],
	[
		'drivers over each other',
		{ ...plain, drivers: [{ ...driver, count: 2, pitch: 250 }] },
		'drivers.0.pitch',
		['250 mm', '262 mm'],
	],
	[
		'a vent longer than the box',
		{ ...plain, vents: [{ kind: 'round', diameter: 100, goal: { by: 'tuning', hertz: 28 } }] },
		'vents.0.goal',
		['232 mm', '100 mm'],
	],
	[
		'a slot as high as its chamber',
		{ ...plain, vents: [{ kind: 'slot', gap: 360, goal: { by: 'tuning', hertz: 40 } }] },
		'vents.0.gap',
		['360 mm', '364 mm'],
	],
	[
		'a volume that cannot be reached',
		{
			...plain,
			shape: { kind: 'plain', width: 600, height: 50, depth: 60 },
			target: { litres: 4000, solve: 'width' },
		},
		'target',
		['4000 L', '4000 mm'],
	],
	[
		'a divider outside the air',
		{ ...plain, dividers: [{ at: 700 }] },
		'dividers.0.at',
		['700 mm', '564 mm'],
	],
	[
		'a brace outside the air',
		{ ...plain, braces: [{ kind: 'window', at: 700 }] },
		'braces.0',
		['700 mm'],
	],
	[
		'more stuffing than counts',
		{ ...plain, stuffing: { credit: 40 } },
		'stuffing.credit',
		['40 %', '25 %'],
	],
	[
		'a space too small',
		{ ...plain, space: { width: 640, height: 420, depth: 352 } },
		'space.depth',
		['352 mm', '350 mm', '3 too much'],
	],
	[
		'an opening too small',
		{ ...plain, opening: { width: 300, height: 300 } },
		'opening',
		['300 x 300 mm'],
	],
	[
		'a terminal off its board',
		{ ...plain, terminal: { at: { across: 5 }, hole: { kind: 'round', diameter: 75 } } },
		'terminal.at',
		['75 mm'],
	],
];

describe('what cannot be built', () => {
	it.each(CASES)('%s', (_, asked, path, words) => {
		const text = told(asked, path).join(' ');
		expect(text).not.toBe('');
		for (const word of words) expect(text).toContain(word);
	});

	it('gives no advice that cannot be followed: a space two boards alone would fill', () => {
		const fix = (depth: number): string[] =>
			made({ ...plain, space: { width: 640, height: 420, depth } }).problems.map((p) => p.fix);
		expect(fix(50)).toEqual([expect.stringContaining('off the depth.')]);
		expect(fix(10)).toEqual([
			'No depth of the box would do: two of its boards alone take 36 mm. It needs another place.',
		]);
	});

	it('says of a brace whose board is not on the rack only that', () => {
		const braces = [
			{ kind: 'window' as const, across: 'depth' as const, at: 150, material: 'oak' },
		];
		const said = made({ ...plain, braces }).problems.map((p) => p.what);
		expect(said).toEqual(["There is no board 'oak' on the rack."]);
	});

	it('plans the rest, and tells everything at once', () => {
		const plan = made({
			...plain,
			drivers: [{ ...driver, depth: 340 }],
			dividers: [{ at: 700 }],
			terminal: { at: { across: 5 }, hole: { kind: 'round', diameter: 75 } },
		});
		expect(new Set(plan.problems.map((p) => p.path[2]))).toEqual(
			new Set(['drivers', 'dividers', 'terminal']),
		);
		expect(plan.parts).toHaveLength(6);
	});

	it('says by how much the space falls short of the volume, and which other dimension would do', () => {
		const plan = made({
			...plain,
			target: { litres: 90, solve: 'width' },
			space: { width: 700, height: 600, depth: 400 },
		});
		const refusal = plan.problems.find((p) => p.path.at(-1) === 'target')!;
		expect(refusal.what).toMatch(/For 90 L the width has to be 823\.4 mm; the space takes 690 mm/);
		const height = Number(/a height of ([\d.]+) mm/.exec(refusal.fix)?.[1]);
		const instead = made({
			shape: { kind: 'plain', width: 600, height, depth: 350 },
			space: { width: 700, height: 600, depth: 400 },
		});
		expect(instead.problems).toEqual([]);
		expect(instead.figures!.chambers[0]!.net).toBeCloseTo(90, 2);
	});

	it('says in the list of volumes what was refused and is not counted', () => {
		const lines = (asked: Asked) => made(asked).figures!.chambers[0]!.deductions;
		const without = (name: string) => ({
			what: `Without ${name}: refused, so not counted`,
			litres: 0,
		});
		expect(lines({ ...plain, drivers: [{ ...driver, board: 'cut' }] })).toEqual([
			without('Driver 1'),
		]);
		const slot = { kind: 'slot' as const, gap: 390, goal: { by: 'length' as const, length: 200 } };
		expect(lines({ ...plain, vents: [slot] })).toEqual([without('Slot vent 1')]);
		const braces = [{ kind: 'window' as const, name: 'Frame', at: 700 }];
		expect(lines({ ...plain, braces, dividers: [{ at: 700 }] })).toEqual([
			without('divider 1'),
			without('Frame'),
		]);
		expect(lines({ ...plain, drivers: [driver] }).map((l) => l.what)).toEqual(['Driver 1']);
	});

	it('tells of the one driver of a row that leaves its board, and counts without it', () => {
		const row = { ...driver, count: 2, pitch: 270, at: { across: 320 } };
		expect(told({ ...plain, drivers: [row] }, 'drivers.0.cutout').join(' ')).toContain(
			'Driver 1 b',
		);
		const { deductions } = made({ ...plain, drivers: [row] }).figures!.chambers[0]!;
		expect(deductions.map((l) => l.what)).toEqual([
			'Driver 1 a',
			'Without 1 of 2 of Driver 1: refused, so not counted',
		]);
	});

	it('says of a net below nothing how much too much is in the box', () => {
		const text = told({ ...plain, drivers: [{ ...driver, displacement: 90 }] }, 'shape').join(' ');
		expect(text).toContain('takes 90 L, more than its 64.46 L');
	});

	it('has nothing to say of a box that can be built', () => {
		expect(made({ ...plain, drivers: [driver] }).problems).toEqual([]);
	});
});

describe('true clearances', () => {
	const against = (magnet: number) =>
		made({
			shape: {
				kind: 'slanted',
				width: 600,
				height: 400,
				lean: { by: 'depths', bottom: 300, top: 200 },
			},
			drivers: [{ ...driver, magnet }],
		}).figures!.drivers[0]!;

	it('measures along the axis and at the rim of the magnet', () => {
		// At half height the outside is 250 deep; the back is 18 thick, 18.55 along the axis (lean
		// 14.04 degrees).
		const axis = 250 - (18 * Math.hypot(100, 400)) / 400;
		expect(against(160).room / 1600).toBeCloseTo(axis, 2);
		expect(against(160).roomAtRim / 1600).toBeCloseTo(axis - 80 / 4, 2);
	});

	it('sees a brace in the way of the basket, and one that is clear of it', () => {
		const braced = (at: number) =>
			made({ ...plain, drivers: [driver], braces: [{ kind: 'window', at, rim: 120 }] }).figures!
				.drivers[0]!.meets;
		expect(braced(282)).toEqual(['Window brace 1']);
		expect(braced(80)).toEqual([]);
	});
});
