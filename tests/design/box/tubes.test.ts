import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flareActs } from '../../../src/lib/design/box/vent/flare';
import { toMm } from '../../../src/lib/measure';
import { runs } from '../../depth';
import { figures, told, type Asked } from './make';

type Round = Extract<NonNullable<Asked['vents']>[number], { kind: 'round' }>;
const boxed = (vent: Partial<Round>, more: Partial<Asked> = {}): Asked => ({
	shape: { kind: 'plain', width: 600, height: 600, depth: 450 },
	vents: [
		{ kind: 'round', board: 'front', diameter: 80, goal: { by: 'length', length: 300 }, ...vent },
	],
	...more,
});
const ventOf = (asked: Asked) => figures(asked).vents[0]!;
const elbow = (turn: 'up' | 'left' | 'right' | 'down' | 'in' | 'out', more = {}) => ({
	after: 100,
	radius: 70,
	turn,
	...more,
});

describe('elbows', () => {
	test('a bent tube of one length takes, acts and tunes as a straight one', () => {
		const straight = figures(boxed({}));
		for (const turn of ['up', 'left', 'right', 'down'] as const) {
			const bent = figures(boxed({ elbows: [elbow(turn)] }));
			expect(bent.vents[0]!.tuning).toBeCloseTo(straight.vents[0]!.tuning!, 9);
			expect(bent.chambers[0]!.net).toBeCloseTo(straight.chambers[0]!.net, 9);
		}
	});

	test('its middle line counts: 100 straight, 109.96 round, the rest straight', () => {
		const { length, notes } = ventOf(boxed({ elbows: [elbow('up')] }));
		expect(toMm(length)).toBe(300);
		expect(notes.join(' ')).toContain(
			'100 mm straight, an elbow up of 70 mm radius (109.96 mm along its middle), 90.04 mm straight.',
		);
	});

	test('what stays clear is reckoned along the last leg', () => {
		// 300 up to the outside, less the board, the radius and the last straight leg.
		const rest = 300 - 100 - (Math.PI / 2) * 70;
		const { clear } = ventOf(boxed({ elbows: [elbow('up')] }));
		expect(toMm(clear)).toBeCloseTo(300 - 18 - 70 - rest, 1);
	});

	test('a tube longer than the box is deep goes in with an elbow, and not without', () => {
		const long = { goal: { by: 'length' as const, length: 470 }, at: { across: 300, up: 120 } };
		expect(told(boxed(long), 'vents.0.goal').join(' ')).toContain('the box takes');
		const bent = { ...long, elbows: [elbow('up', { after: 150 })] };
		expect(told(boxed(bent), 'vents.0.goal')).toEqual([]);
		expect(told(boxed(bent), 'vents.0.at')).toEqual([]);
	});

	test('two elbows lead it back; one that runs into a wall is told of', () => {
		const back = [elbow('up', { after: 120 }), elbow('out', { after: 20 })];
		const asked = boxed({ elbows: back, goal: { by: 'length', length: 400 }, at: { up: 100 } });
		expect(told(asked, 'vents.0.at')).toEqual([]);
		const deep = boxed({
			elbows: [elbow('up', { after: 380 })],
			goal: { by: 'length', length: 520 },
		});
		expect(told(deep, 'vents.0.at').join(' ')).toContain('runs into a wall');
	});

	test('an elbow into a brace is told of, where the straight tube is clear of it', () => {
		const braces: Asked['braces'] = [
			{ kind: 'shelf', across: 'height', at: 340, length: 500, from: 0 },
		];
		const asked = boxed({ elbows: [elbow('up')], goal: { by: 'length', length: 330 } }, { braces });
		expect(told(asked, 'vents.0.at').join(' ')).toContain('runs into');
		expect(told(boxed({}, { braces }), 'vents.0.at')).toEqual([]);
	});

	test('an elbow that turns on, begins in its board or folds the tube is said', () => {
		expect(told(boxed({ elbows: [elbow('in')] }), 'vents.0.elbows')).toHaveLength(1);
		expect(
			told(boxed({ elbows: [elbow('up', { after: 5 })] }), 'vents.0.elbows.0.after'),
		).toHaveLength(1);
		expect(
			told(boxed({ elbows: [elbow('up', { radius: 30 })] }), 'vents.0.elbows.0.radius'),
		).toHaveLength(1);
	});

	test('shorter than its elbows it cannot be: said, and drawn as long as they are', () => {
		const short = boxed({ elbows: [elbow('up')], goal: { by: 'length', length: 120 } });
		expect(told(short, 'vents.0.goal').join(' ')).toContain('come to 209.96 mm');
		expect(toMm(ventOf(short).length)).toBeCloseTo(209.96, 1);
	});
});

/** The same integral by Simpson's rule over the angle of the quarter circle. */
function widening(bore: number, flare: number): number {
	const n = 2000;
	const f = (t: number): number =>
		(bore / (bore + flare * (1 - Math.cos(t)))) ** 2 * flare * Math.cos(t);
	const h = Math.PI / 2 / n;
	let sum = f(0) + f(Math.PI / 2);
	for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * f(i * h);
	return (sum * h) / 3;
}

describe('flares', () => {
	test('act as a tube that widens, never longer than they are', () => {
		const size = fc.double({ min: 1, max: 100, noNaN: true });
		fc.assert(
			fc.property(size, size, (bore, flare) => {
				const acts = flareActs(bore, flare);
				expect(acts / widening(bore, flare)).toBeCloseTo(1, 3);
				expect(acts).toBeLessThan(flare);
			}),
			{ numRuns: runs(100) },
		);
		expect(flareActs(1e6, 10)).toBeCloseTo(10, 4);
	});

	test('a flared tube of one length acts shorter and tunes higher; both ends more than one', () => {
		const acting = (flare: Round['flare']) => ventOf(boxed({ flare })).acting;
		const [none, outer, inner, both] = [
			acting(null),
			acting({ radius: 20, ends: 'outer' }),
			acting({ radius: 20, ends: 'inner' }),
			acting({ radius: 20, ends: 'both' }),
		];
		expect(outer).toBeLessThan(none);
		expect(both).toBeLessThan(Math.min(outer, inner));
		expect(none - both).toBeCloseTo(none - outer + (none - inner), -1);
	});

	test('one for a tuning is cut longer, and a flare of next to nothing changes nothing', () => {
		const goal = { by: 'tuning' as const, hertz: 34 };
		const plain = ventOf(boxed({ goal }));
		const flared = ventOf(boxed({ goal, flare: { radius: 20, ends: 'both' } }));
		expect(flared.length).toBeGreaterThan(plain.length);
		expect(flared.tuning).toBeCloseTo(34, 3);
		const tiny = ventOf(boxed({ goal, flare: { radius: 0.01 } }));
		expect(Math.abs(tiny.length - plain.length)).toBeLessThan(32);
	});
});
