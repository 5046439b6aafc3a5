import { describe, expect, it } from 'vitest';
import { figures, made, told, type Asked } from './make';

const plain: Asked = { shape: { kind: 'plain', width: 600, height: 400, depth: 350 } };
const driver = { cutout: { kind: 'round' as const, diameter: 232 }, frame: 262, depth: 118 };
const tube = { kind: 'round' as const, diameter: 100 };
const long = (length: number) => ({ by: 'length' as const, length });
const hertz = (wanted: number) => ({ by: 'tuning' as const, hertz: wanted });
const cup = { kind: 'round' as const, diameter: 75 };

/** Asked for, where it is told, the values seen and the limit named. */
const CASES: readonly (readonly [string, Asked, string, readonly string[]])[] = [
	[
		'a vent tuned so high that no length is left',
		{ ...plain, vents: [{ ...tube, goal: hertz(150) }] },
		'vents.0.goal',
		['No length of Vent 1 reaches 150 Hz', '18 mm thick', 'It is drawn 18 mm long, tuned to 63.2'],
	],
	[
		'a tuning that makes a vent shorter than its board',
		{ ...plain, vents: [{ ...tube, goal: hertz(66) }] },
		'vents.0.goal',
		['For 66 Hz Vent 1 would have to be 10', '18 mm thick', 'drawn 18 mm long'],
	],
	[
		'a vent shorter than its board and the doubler behind it',
		{ ...plain, doublers: [{}], vents: [{ ...tube, goal: long(30) }] },
		'vents.0.goal',
		['asked 30 mm long', '36 mm thick', 'Give at least 36 mm'],
	],
	[
		'a slot shorter than the front',
		{ ...plain, vents: [{ kind: 'slot', gap: 60, goal: long(10) }] },
		'vents.0.goal',
		['asked 10 mm long', '36 mm', 'Give at least 36 mm'],
	],
	[
		'a tube off the edge of its board',
		{ ...plain, vents: [{ ...tube, goal: long(120), at: { across: 20 } }] },
		'vents.0.at',
		['stop: The hole of Vent 1 (106 mm', '564 x 364 mm', 'inwards'],
	],
	[
		'a row of tubes off the edge of its board',
		{ ...plain, vents: [{ ...tube, goal: long(120), count: 6 }] },
		'vents.0.at',
		['stop: One of the 6 holes', '564 x 364 mm'],
	],
	[
		'tubes of a row in each other',
		{ ...plain, vents: [{ ...tube, goal: long(120), count: 2, pitch: 105 }] },
		'vents.0.pitch',
		['105 mm apart', 'Give at least 106 mm'],
	],
	[
		'a row of tubes on both sides of a divider',
		{
			...plain,
			dividers: [{ across: 'width', at: 273 }],
			vents: [{ ...tube, goal: long(120), count: 2, pitch: 200 }],
		},
		'vents.0.at',
		['do not all lead into one chamber'],
	],
	[
		'an oval cut-out whose rounded end leaves the board',
		{
			...plain,
			drivers: [
				{ ...driver, at: { across: 115 }, cutout: { kind: 'oval', length: 240, width: 150 } },
			],
		},
		'drivers.0.cutout',
		['stop: The cut-out of Driver 1 (240 x 150 mm)', '564 x 364 mm'],
	],
	[
		'the frames of two drivers over each other',
		{
			...plain,
			drivers: [
				{ ...driver, at: { across: 151 } },
				{ ...driver, at: { across: 412.9 } },
			],
		},
		'drivers.1.at',
		['overlap by 0.1 mm', '262 mm apart or more; they are 261.9 mm apart'],
	],
	[
		'a ring over the frame of another driver',
		{
			...plain,
			drivers: [
				{ ...driver, at: { across: 142 } },
				{ ...driver, at: { across: 420 }, seat: { kind: 'ring', material: 'mdf-12' } },
			],
		},
		'drivers.1.at',
		['the ring of Driver 2 overlap'],
	],
	[
		'a vent under the frame of a driver',
		{ ...plain, drivers: [driver], vents: [{ ...tube, goal: long(60), at: { across: 460 } }] },
		'vents.0.at',
		['The frame of Driver 1 and Vent 1 overlap by 6 mm', '184 mm apart'],
	],
	[
		'a terminal under the frame of a driver',
		{ ...plain, drivers: [driver], terminal: { board: 'front', at: { across: 140 }, hole: cup } },
		'terminal.at',
		['and the terminal overlap by 26.5 mm'],
	],
	[
		'a square terminal on a vent',
		{
			...plain,
			vents: [{ ...tube, board: 'back', goal: long(120) }],
			terminal: { hole: { kind: 'rectangle', width: 80, height: 60 } },
		},
		'terminal.at',
		['Vent 1 and the terminal overlap', '80 x 60 mm'],
	],
	[
		'two vents in each other',
		{
			...plain,
			vents: [
				{ ...tube, goal: long(120), at: { across: 200 } },
				{ ...tube, goal: long(120), at: { across: 250 } },
			],
		},
		'vents.1.at',
		['Vent 1 and Vent 2 overlap by 56 mm', '106 mm apart'],
	],
	[
		'a tube through the rim of a brace',
		{
			...plain,
			vents: [{ ...tube, goal: long(200) }],
			braces: [{ kind: 'window', across: 'depth', at: 150, rim: 150 }],
		},
		'vents.0.at',
		['Vent 1 runs into Window brace 1', 'window'],
	],
	[
		'a driver into a shelf brace',
		{
			...plain,
			drivers: [driver],
			braces: [{ kind: 'shelf', at: 182, from: 100, length: 364 }],
		},
		'drivers.0.at',
		['Driver 1 runs into Shelf brace 1'],
	],
	[
		'tubes of two boards in each other',
		{
			...plain,
			vents: [
				{ ...tube, goal: long(200) },
				{ ...tube, goal: long(200), board: 'top' },
			],
		},
		'vents.1.at',
		['Vent 2 runs into Vent 1'],
	],
	[
		'a tube into the board beside it',
		{ ...plain, joint: 'upright-past', vents: [{ ...tube, goal: long(120), at: { up: 60 } }] },
		'vents.0.at',
		['Vent 1 runs into a wall'],
	],
];

describe('what is mounted where it cannot be', () => {
	it.each(CASES)('%s', (_, asked, path, words) => {
		const text = told(asked, path).join(' ');
		for (const word of words) expect(text).toContain(word);
	});

	it('draws a vent no shorter than its boards, and tunes it by that', () => {
		const [vent] = figures({ ...plain, vents: [{ ...tube, goal: hertz(150) }] }).vents;
		const [held] = figures({ ...plain, vents: [{ ...tube, goal: long(18) }] }).vents;
		expect(vent!.length).toBe(18 * 1600);
		expect(vent!.tuning).toBeCloseTo(held!.tuning!, 6);
	});

	it('says nothing of things that touch, or of a tube that fits a window whole', () => {
		const beside = [
			{ ...driver, at: { across: 140 } },
			{ ...driver, at: { across: 402 } },
		];
		const through = { kind: 'window' as const, across: 'depth' as const, at: 150, rim: 120 };
		const wide: Asked = { shape: { kind: 'plain', width: 800, height: 400, depth: 350 } };
		expect(told({ ...wide, drivers: beside }, 'drivers.1.at')).toEqual([]);
		expect(
			made({ ...plain, vents: [{ ...tube, goal: long(200) }], braces: [through] }).problems,
		).toEqual([]);
	});
});
