import { describe, expect, it } from 'vitest';
import { area } from '../../../src/lib/geometry';
import { figures, told, type Asked } from './make';

const plain: Asked = { shape: { kind: 'plain', width: 600, height: 400, depth: 350 } };
const driver = { cutout: { kind: 'round' as const, diameter: 232 }, frame: 262, depth: 118 };
const data = { fs: 30, qts: 0.4, vas: 30 };
const window = { kind: 'window' as const, at: 280 };

/** Asked for, where it is told, the values seen and the limit named. */
const CASES: readonly (readonly [string, Asked, string, readonly string[]])[] = [
	[
		'a brace whose rim leaves no window',
		{ ...plain, braces: [{ ...window, rim: 157 }] },
		'braces.0.rim',
		['stop: A rim of 157 mm', '314 x 364 mm', 'a wall', 'less than 157 mm'],
	],
	[
		'more windows than a brace has room for',
		{ ...plain, braces: [{ ...window, rim: 90, windows: 3 }] },
		'braces.0.windows',
		['3 windows', '90 mm', 'it gets one'],
	],
	[
		'a frame no larger than its cut-out',
		{ ...plain, drivers: [{ ...driver, frame: 232 }] },
		'drivers.0.frame',
		['(232 mm) is no larger than its cut-out (232 mm)', 'more than 232 mm'],
	],
	[
		'a magnet larger than its cut-out',
		{
			...plain,
			drivers: [{ ...driver, magnet: 160, cutout: { kind: 'oval', length: 230, width: 150 } }],
		},
		'drivers.0.magnet',
		['160 mm', 'cut-out (150 mm)'],
	],
	[
		'a magnet higher than its driver is deep',
		{ ...plain, drivers: [{ ...driver, magnetHeight: 119 }] },
		'drivers.0.magnetHeight',
		['119 mm high', '118 mm'],
	],
	[
		'a seat as deep as its board',
		{ ...plain, drivers: [{ ...driver, seat: { kind: 'routed', depth: 18 } }] },
		'drivers.0.seat.depth',
		['18 mm deep', 'less than 18 mm'],
	],
	[
		'a seat as deep as the layer outside the board',
		{
			...plain,
			doublers: [{ side: 'outside', material: 'mdf-12' }],
			drivers: [{ ...driver, seat: { kind: 'routed', depth: 13 } }],
		},
		'drivers.0.seat.depth',
		['13 mm deep into a board of 12.1 mm'],
	],
	[
		'a driver without a displacement',
		{ ...plain, drivers: [driver] },
		'drivers.0.displacement',
		['0 L are taken', 'nominal 250 mm: about 2 L (common practice, no source)'],
	],
	[
		'drivers of different data in one chamber',
		{
			...plain,
			drivers: [
				{ ...driver, data },
				{ ...driver, at: { across: 440 }, data: { ...data, fs: 33 } },
			],
		},
		'drivers.1.data',
		['Driver 1, Driver 2 share chamber 1', 'a divider'],
	],
];

describe('a driver or a brace that cannot be as its figures say', () => {
	it.each(CASES)('%s', (_, asked, path, words) => {
		const text = told(asked, path).join(' ');
		for (const word of words) expect(text).toContain(word);
	});

	it('leaves a brace without a window out, and says so once', () => {
		const plan = figures({ ...plain, braces: [{ ...window, rim: 200 }] });
		expect(plan.boards.some((b) => b.role === 'brace')).toBe(false);
		expect(plan.chambers[0]!.deductions).toEqual([
			{ what: 'Without Window brace 1: refused, so not counted', litres: 0 },
		]);
		expect(told({ ...plain, braces: [{ ...window, rim: 200 }] }, 'braces.0')).toEqual([]);
	});

	it('takes a displacement of 0 L that is given for what it is', () => {
		expect(told({ ...plain, drivers: [{ ...driver, displacement: 0 }] }, 'drivers.0')).toEqual([]);
		const asked = { ...plain, drivers: [{ ...driver, displacement: 0 }] };
		expect(told(asked, 'drivers.0.displacement')).toEqual([]);
	});

	it('counts a doubler without the cut-out of the driver', () => {
		const net = (asked: Asked) => figures(asked).chambers[0]!.net;
		const doubled = { ...plain, doublers: [{}] };
		const cut = (Math.PI / 4) * 2.32 ** 2 * 0.18;
		const asked = { ...doubled, drivers: [{ ...driver, displacement: 2 }] };
		expect(net(asked)).toBeCloseTo(net(doubled) + cut - 2, 6);
	});

	it('routes the seat into the layer the frame lies on', () => {
		const { boards } = figures({
			...plain,
			doublers: [{ side: 'outside' }],
			drivers: [{ ...driver, seat: { kind: 'routed', depth: 6 } }],
		});
		const seated = boards.filter((b) => b.holes.some((h) => h.of === 'seat'));
		expect(seated.map((b) => b.role)).toEqual(['overlay']);
		const seat = seated[0]!.holes.find((h) => h.of === 'seat')!;
		expect(area(seat.outline) / 1600 ** 2).toBeCloseTo((Math.PI / 4) * 263 ** 2, -1);
	});

	it('answers for two entries of one driver as for a row of two', () => {
		const wide: Asked = { shape: { kind: 'plain', width: 800, height: 400, depth: 350 }, qtc: 0.7 };
		const sealed = (drivers: Asked['drivers']) => figures({ ...wide, drivers }).chambers[0]!.sealed;
		const one = { ...driver, data, displacement: 2 };
		const apart = [
			{ ...one, at: { across: 200 } },
			{ ...one, at: { across: 500 } },
		];
		expect(sealed(apart)).not.toBeNull();
		expect(sealed(apart)).toEqual(sealed([{ ...one, count: 2, pitch: 300 }]));
	});
});
