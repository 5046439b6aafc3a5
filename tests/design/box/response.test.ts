import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runs } from '../../depth';
import { figures, told, type Asked } from './make';

/*
 * Response curves against a circuit of its own: coil, moving mass and springs, the air of the box
 * and of the vents, four unknowns and four equations solved at each frequency. It starts from what
 * a driver is made of; the plan is given the data sheet that follows from it.
 */

type Num = readonly [re: number, im: number];
const mul = (a: Num, b: Num): Num => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const sub = (a: Num, b: Num): Num => [a[0] - b[0], a[1] - b[1]];
const div = (a: Num, b: Num): Num => {
	const d = b[0] ** 2 + b[1] ** 2;
	return [(a[0] * b[0] + a[1] * b[1]) / d, (a[1] * b[0] - a[0] * b[1]) / d];
};

/** Gauss, with the largest of each column on top. */
function solve(rows: Num[][]): Num[] {
	const n = rows.length;
	const done: Num[][] = [];
	for (let c = 0; c < n; c++) {
		rows.sort((a, b) => Math.hypot(...b[c]!) - Math.hypot(...a[c]!));
		const [top, ...rest] = rows;
		done.push(top!);
		rows = rest.map((row) => {
			const by = div(row[c]!, top![c]!);
			return row.map((x, k) => sub(x, mul(by, top![k]!)));
		});
	}
	const out: Num[] = [];
	for (let c = n - 1; c >= 0; c--) {
		const row = done[c]!;
		let rest = row[n]!;
		for (let k = c + 1; k < n; k++) rest = sub(rest, mul(row[k]!, out[k]!));
		out[c] = div(rest, row[c]!);
	}
	return out;
}

const RHO = 1.18;
const C = 345;

interface Made {
	readonly mass: number; // kg
	readonly spring: number; // m/N
	readonly friction: number; // Ns/m
	readonly bl: number; // Tm
	readonly re: number;
	readonly le: number; // H
	readonly sd: number; // m2
}

/** The data sheet of a driver, in the units of the job. */
function sheetOf(d: Made) {
	const ws = 1 / Math.sqrt(d.mass * d.spring);
	const qms = (ws * d.mass) / d.friction;
	const qes = (ws * d.mass * d.re) / d.bl ** 2;
	return {
		fs: ws / (2 * Math.PI),
		qes,
		qms,
		vas: RHO * C * C * d.spring * d.sd ** 2 * 1000,
		sd: d.sd * 1e4,
		re: d.re,
		le: d.le * 1000,
	};
}

/** Sound pressure at 1 m, cone and vent at one frequency, of one driver in a box. */
function physical(
	d: Made,
	box: { litres: number; tuning: number | null; ql: number },
	watts: number,
	f: number,
) {
	const w = 2 * Math.PI * f;
	const air = (box.litres * 1e-3) / (RHO * C * C);
	const wb = 2 * Math.PI * (box.tuning ?? 1);
	const leak = box.tuning === null ? 0 : (wb * air) / box.ql;
	const inertia = box.tuning === null ? null : 1 / (wb * wb * air);
	const zero: Num = [0, 0];
	// Unknown: current, cone velocity, pressure in the box, flow in the vent.
	const found = solve([
		[[d.re, w * d.le], [d.bl, 0], zero, zero, [Math.sqrt(2 * watts * d.re), 0]],
		[[-d.bl, 0], [d.friction, w * d.mass - 1 / (w * d.spring)], [d.sd, 0], zero, zero],
		[zero, [-d.sd, 0], [leak, w * air], [1, 0], zero],
		inertia === null
			? [zero, zero, zero, [1, 0], zero]
			: [zero, zero, [-1, 0], [0, w * inertia], zero],
	]);
	const size = (i: number): number => Math.hypot(...found[i]!);
	// What leaves the box altogether is what presses its air.
	const out = w * air * size(2);
	const pressure = (RHO * w * out) / (2 * Math.PI) / Math.SQRT2;
	return {
		spl: 20 * Math.log10(pressure / 20e-6),
		cone: (size(1) / w) * 1000,
		vent: size(3),
	};
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const drivers: fc.Arbitrary<Made> = fc
	.record({
		mass: between(0.03, 0.2),
		spring: between(1e-4, 6e-4),
		friction: between(1, 8),
		bl: between(6, 20),
		re: between(2, 7),
		le: between(0, 3e-3),
		sd: between(0.02, 0.08),
	})
	.filter((d) => {
		const { fs, qes, qms } = sheetOf(d);
		return fs > 10 && qes > 0.1 && qes < 5 && qms > 0.5 && qms < 30;
	});

function boxOf(data: ReturnType<typeof sheetOf>, vents: Asked['vents'], power: number): Asked {
	return {
		shape: { kind: 'plain', width: 620, height: 420, depth: 430 },
		drivers: [{ cutout: { kind: 'round', diameter: 230 }, frame: 260, depth: 120, data }],
		response: { power, losses: 7 },
		...(vents ? { vents } : {}),
	};
}

describe('the response of any driver is that of its circuit', () => {
	const ventings = fc.constantFrom<Asked['vents']>(
		undefined,
		[{ kind: 'round', board: 'back', diameter: 80, goal: { by: 'tuning', hertz: 36 } }],
		[{ kind: 'slot', gap: 30, bend: 'L', goal: { by: 'tuning', hertz: 40 } }],
		[
			{ kind: 'round', board: 'left', diameter: 60, goal: { by: 'length', length: 90 } },
			{ kind: 'round', board: 'right', diameter: 90, goal: { by: 'length', length: 200 } },
		],
	);

	test('level, excursion and the speed of the air', () => {
		fc.assert(
			fc.property(drivers, ventings, between(1, 400), (d, vents, watts) => {
				const all = figures(boxOf(sheetOf(d), vents, watts));
				const chamber = all.chambers[0]!;
				const own = all.responses[0]!;
				const box = { litres: chamber.net, tuning: chamber.tuning, ql: 7 };
				// Vents side by side: a plug that acts half as long takes twice the speed.
				const plugs = all.vents.map((v) => ({ area: v.area * 1e-4, acting: v.acting / 1.6e6 }));
				const shares = plugs.reduce((sum, p) => sum + p.area / p.acting, 0);
				for (const p of own.points.filter((_, i) => i % 9 === 0)) {
					const real = physical(d, box, watts, p.hertz);
					expect(own.passband! + p.level).toBeCloseTo(real.spl, 5);
					expect(p.cone! / real.cone).toBeCloseTo(1, 6);
					if (chamber.tuning === null) expect(p.air).toBeNull();
					else {
						const speed = Math.max(...plugs.map((q) => real.vent / q.acting / shares));
						expect(p.air! / speed).toBeCloseTo(1, 4);
					}
				}
			}),
			{ numRuns: runs(60) },
		);
	});

	test('several alike share the power and play as one: 3 dB louder than one with half of it', () => {
		const data = { fs: 33, qes: 0.48, qms: 4, vas: 20, sd: 330, xmax: 9, pe: 150 };
		const one = { cutout: { kind: 'round' as const, diameter: 230 }, frame: 260, depth: 120, data };
		const of = (count: number, depth: number) =>
			figures({
				sizes: 'inner',
				shape: { kind: 'plain', width: 600, height: 320, depth },
				drivers: [{ ...one, count }],
			}).responses[0]!;
		const [alone, pair] = [of(1, 200), of(2, 400)];
		expect([alone.power, pair.power]).toEqual([150, 300]);
		expect(pair.passband! - alone.passband!).toBeCloseTo(20 * Math.log10(2), 6);
		expect(pair.points.map((p) => p.cone)).toEqual(
			alone.points.map((p) => expect.closeTo(p.cone!, 9) as number),
		);
		expect(pair.f3).toBeCloseTo(alone.f3, 6);
	});
});

const DATA = { fs: 33, qts: 0.42, vas: 44, sd: 330, xmax: 9 };
const one = { cutout: { kind: 'round' as const, diameter: 230 }, frame: 260, depth: 120 };
const PLAIN = { kind: 'plain' as const, width: 500, height: 400, depth: 350 };
const asked = (data: object, more: Partial<Asked> = {}): Asked => ({
	shape: PLAIN,
	drivers: [{ ...one, data }],
	...more,
});
const saying = (a: Asked): string => figures(a).responses[0]!.says.join(' ');

describe('what the plan says of a response', () => {
	test('there is none without a resonance, a Q and Vas', () => {
		const { fs, qts, vas } = DATA;
		for (const lack of [{}, { fs, qts }, { fs, vas }, { qts, vas }])
			expect(figures(asked(lack)).responses).toEqual([]);
		expect(figures({ shape: PLAIN }).responses).toEqual([]);
		expect(figures(asked({ fs, vas, qes: 0.5, qms: 4 })).responses).toHaveLength(1);
	});

	test('half power is that of the sealed check, stuffing counted', () => {
		const stuffed = { stuffing: { fill: 100, credit: 20 } };
		for (const more of [{}, stuffed]) {
			const { chambers, responses } = figures(asked(DATA, more));
			expect(responses[0]!.f3).toBeCloseTo(chambers[0]!.sealed!.f3, 6);
		}
		expect(saying(asked(DATA, stuffed))).toContain('Stuffing is counted as in the volume.');
	});

	test('a Qts that its parts round to does not move the half power of one from the other', () => {
		// 1 / (1 / 0.48 + 1 / 3.4) is 0.42062, given as 0.42.
		const all = { ...DATA, qes: 0.48, qms: 3.4 };
		const { chambers, responses } = figures(asked(all));
		const { sealed, acting } = chambers[0]!;
		expect(sealed!.qtc).toBeCloseTo(0.420619 * Math.sqrt(1 + 44 / acting), 5);
		expect(responses[0]!.f3).toBeCloseTo(sealed!.f3, 6);
		expect(told(asked(all), 'drivers.0.data.qts')).toEqual([]);
		const own = { ...all, qts: 0.45 };
		expect(figures(asked(own)).chambers[0]!.sealed!.qtc).toBe(sealed!.qtc);
		expect(figures(asked(own)).responses[0]!.f3).toBe(responses[0]!.f3);
		expect(told(asked(own), 'drivers.0.data.qts')).toEqual([
			'note: Qts 0.45 is given, and Qes 0.48 and Qms 3.4 make 0.421: the figures go by those two. Give a Qts of 0.421, or read the three again.',
		]);
	});

	test('two decimals of each are as near as sheets are, more are taken at their word', () => {
		const note = (qts: number, qes: number, qms: number) =>
			told(asked({ ...DATA, qts, qes, qms }), 'drivers.0.data.qts').length;
		// 0.475 to 0.485 with 3.395 to 3.405 make 0.4167 to 0.4246.
		expect([0.41, 0.42, 0.43].map((qts) => note(qts, 0.48, 3.4))).toEqual([1, 0, 1]);
		expect([0.416, 0.425, 0.426].map((qts) => note(qts, 0.48, 3.4))).toEqual([1, 0, 1]);
		expect(note(0.4, 0.45, 3.6)).toBe(0);
		// What is told as wrong already needs no note.
		expect(note(0.9, 0.48, 3.4)).toBe(0);
		expect(note(0.3, 0.48, 3.4)).toBe(0);
	});

	test('Qts alone gives the shape of the curve and says what the rest needs', () => {
		const { passband, points } = figures(asked(DATA)).responses[0]!;
		expect(passband).toBeNull();
		expect(points.every((p) => p.cone === null && p.air === null)).toBe(true);
		expect(saying(asked(DATA))).toContain('Without Qes (or Qms) level in dB, excursion');
		const noArea = { ...DATA, qes: 0.48, sd: undefined };
		expect(saying(asked(noArea))).toContain('Without the cone area excursion and air speed');
		expect(figures(asked(noArea)).responses[0]!.passband).not.toBeNull();
	});

	test('the power is the one asked, else the rated, else 100 W, and said', () => {
		const full = { ...DATA, qes: 0.48 };
		expect(saying(asked(full))).toContain('100 W into the driver (taken, for no power is given)');
		expect(saying(asked({ ...full, pe: 250 }))).toContain(
			'250 W into the driver (what it is rated',
		);
		const more = { response: { power: 60 } };
		expect(saying(asked({ ...full, pe: 250 }, more))).toContain('60 W into the driver (as asked)');
		const level = (power: number) =>
			figures(asked(full, { response: { power } })).responses[0]!.passband!;
		expect(level(200) - level(100)).toBeCloseTo(10 * Math.log10(2), 9);
	});

	test('an excursion past Xmax is said; within the band at a power asked for it is a problem', () => {
		const full = { ...DATA, qes: 0.48 };
		const loud = { response: { power: 600 } };
		expect(saying(asked(full, loud))).toContain('Within the band the cone goes');
		expect(told(asked(full, loud), 'drivers.0.data.xmax')).toEqual([
			expect.stringMatching(/^check: At 600 W the cone goes [\d.]+ mm at \d+ Hz, within the band/),
		]);
		expect(told(asked({ ...full, pe: 600 }), 'drivers.0.data.xmax')).toEqual([]);
		expect(saying(asked({ ...full, pe: 600 }))).toContain('Within the band the cone goes');
		expect(saying(asked(full, { response: { power: 1 } }))).not.toContain('the cone goes');
	});

	test('the power it advises keeps the cone within its excursion', () => {
		const full = { ...DATA, qes: 0.48 };
		const [text] = told(asked(full, { response: { power: 600 } }), 'drivers.0.data.xmax');
		const advised = Number(/Ask for (\d+) W/.exec(text!)![1]);
		const most = (power: number): number => {
			const { f3, points } = figures(asked(full, { response: { power } })).responses[0]!;
			return Math.max(...points.filter((p) => p.hertz >= f3).map((p) => p.cone!));
		};
		expect(most(advised)).toBeLessThanOrEqual(9);
		expect(most(advised + 1)).toBeGreaterThan(9);
	});

	test('air over the ceiling in a vent at a power asked for is a problem, and losses are said', () => {
		const vents: Asked['vents'] = [
			{ kind: 'round', board: 'back', diameter: 40, goal: { by: 'tuning', hertz: 34 } },
		];
		const loud = asked({ ...DATA, qes: 0.48 }, { vents, response: { power: 300 } });
		expect(told(loud, 'vents.0')).toContainEqual(
			expect.stringMatching(/At 300 W the air in the vent reaches \d+ m\/s/),
		);
		expect(saying(loud)).toContain('over 34 m/s: it will chuff');
		expect(saying(loud)).toContain('Box losses QL 7: an assumption');
		const tight = (losses: number): number =>
			figures({ ...loud, response: { losses } }).responses[0]!.points.find((p) => p.hertz > 34)!
				.level;
		expect(tight(15)).toBeGreaterThan(tight(3));
	});

	test('different drivers in one chamber get no curve, and are told of once', () => {
		for (const vents of [
			[],
			[{ kind: 'slot' as const, gap: 30, goal: { by: 'tuning' as const, hertz: 40 } }],
		]) {
			const pair = [
				{ ...one, at: { across: 160 }, data: DATA },
				{ ...one, at: { across: 440 }, data: { ...DATA, fs: 40 } },
			];
			const shape = { ...PLAIN, width: 600 };
			expect(figures({ shape, drivers: pair, vents }).responses).toEqual([]);
			expect(told({ shape, drivers: pair, vents }, 'drivers.1.data')).toHaveLength(1);
			const alike = pair.map((d) => ({ ...d, data: DATA }));
			expect(figures({ shape, drivers: alike, vents }).responses[0]!.drivers).toBe(2);
		}
	});

	test('a sheet that contradicts itself is told of', () => {
		const say = (data: object): string[] => told(asked({ ...DATA, ...data }), 'drivers.0.data');
		expect(say({ qes: 0.48, qms: 3.4 })).toEqual([]);
		expect(say({ qes: 0.9, qms: 4 })).toEqual([expect.stringContaining('make a Qts of 0.73')]);
		expect(say({ qes: 0.3 })).toEqual([expect.stringContaining('Qts 0.42 is not under the 0.3')]);
		// Vas 44 L on 330 cm2 resonates at 33 Hz with 81 g.
		expect(say({ mms: 81 })).toEqual([]);
		expect(say({ mms: 8.1 })).toEqual([expect.stringContaining('resonates at 104')]);
	});

	test('two chambers have a response each', () => {
		const { chambers, responses } = figures({
			shape: { ...PLAIN, width: 800 },
			dividers: [{ across: 'width', at: 300 }],
			drivers: [
				{ ...one, at: { across: 170 }, data: DATA },
				{ ...one, at: { across: 580 }, data: DATA },
			],
		});
		expect(responses.map((r) => r.chamber)).toEqual([1, 2]);
		expect(responses[0]!.f3).not.toBeCloseTo(responses[1]!.f3, 0);
		responses.forEach((r, i) => expect(r.f3).toBeCloseTo(chambers[i]!.sealed!.f3, 6));
	});

	test('every figure of a curve is a number', () => {
		const { responses } = figures(asked({ ...DATA, qes: 0.48, re: 3.4, le: 1.2 }));
		for (const p of responses[0]!.points)
			expect([p.hertz, p.level, p.cone].every((n) => Number.isFinite(n))).toBe(true);
		expect(responses[0]!.points[0]!.hertz).toBe(10);
		expect(responses[0]!.points.at(-1)!.hertz).toBeCloseTo(200, 9);
	});
});
