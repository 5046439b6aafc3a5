import { describe, expect, it } from 'vitest';
import { figures, made, told, type Asked } from './make';

const DRIVER = { fs: 32, qes: 0.42, qms: 5, vas: 40, sd: 330, xmax: 9 };
const CONE = { fs: 20, vas: 90, sd: 350, qms: 8, xmax: 12 };
const driver = {
	at: { across: 170 },
	cutout: { kind: 'round' as const, diameter: 232 },
	frame: 262,
	depth: 118,
	displacement: 1.8,
	mass: 4,
	data: DRIVER,
};
const cone = {
	at: { across: 560 },
	cutout: { kind: 'round' as const, diameter: 232 },
	frame: 262,
	depth: 80,
	displacement: 0.9,
	mass: 0.8,
	data: CONE,
};
const plain: Asked = { shape: { kind: 'plain', width: 760, height: 400, depth: 350 } };
const passive = (more: object = {}, rest: Partial<Asked> = {}): Asked => ({
	...plain,
	drivers: [driver],
	radiators: [{ ...cone, ...more }],
	...rest,
});
const says = (asked: Asked): string[] => made(asked).problems.map((p) => p.what);

describe('a passive radiator in a box', () => {
	it('changes nothing where there is none', () => {
		const none = { ...plain, drivers: [driver] };
		expect(made({ ...none, radiators: [] })).toEqual(made(none));
		expect(figures(none).radiators).toEqual([]);
	});

	it('is cut, held, weighed, taken off the air, and tunes what is left', () => {
		const bare = figures({ ...plain, drivers: [driver] });
		const one = figures(passive({ boltCircle: { diameter: 246 } }));
		const [room] = one.chambers;
		expect(room!.net).toBeCloseTo(bare.chambers[0]!.net - 0.9, 9);
		expect(room!.deductions).toContainEqual({
			what: 'Passive radiator 1',
			litres: expect.closeTo(0.9, 6),
		});
		expect(room!.vented).toBe(true);
		expect(room!.sealed).toBeNull();
		const tuned = 20 * Math.sqrt(1 + 90 / room!.net);
		expect(room!.tuning).toBeCloseTo(tuned, 9);
		expect(one.radiators[0]).toMatchObject({ chamber: 1, board: 'Front', added: 0 });
		expect(one.radiators[0]!.tuning).toBeCloseTo(tuned, 9);
		expect(one.radiators[0]!.own).toBeCloseTo(20, 9);
		const holes = one.boards.find((b) => b.key === 'front')!.holes.map((h) => h.of);
		expect(holes.filter((of) => of === 'radiator')).toHaveLength(1);
		expect(holes.filter((of) => of === 'bolt')).toHaveLength(8);
		expect(one.loadedMass - one.mass).toBeCloseTo(4.8, 6);
		const needs = made(passive()).needs.filter((n) => n.for.includes('passive'));
		expect(needs.map((n) => [n.kind, n.amount])).toEqual([
			['gasket', expect.closeTo((Math.PI * 262) / 1000, 6)],
			['t-nuts', 8],
		]);
	});

	it('weighs with what is added, which moves the centre of gravity towards it', () => {
		const light = figures(passive());
		const heavy = figures(passive({ goal: { by: 'mass', grams: 500 } }));
		expect(heavy.loadedMass - light.loadedMass).toBeCloseTo(0.5, 6);
		expect(heavy.gravity!.across).toBeGreaterThan(light.gravity!.across);
		expect(heavy.radiators[0]!.tuning).toBeLessThan(light.radiators[0]!.tuning!);
	});

	it('says the mass for a tuning, per radiator, and that two share the air', () => {
		const row = { count: 2, pitch: 300, board: 'back', at: {}, goal: { by: 'tuning', hertz: 25 } };
		const { radiators, chambers } = figures(passive(row));
		expect(radiators.map((r) => r.name)).toEqual(['Passive radiator 1 a', 'Passive radiator 1 b']);
		expect(chambers[0]!.tuning).toBeCloseTo(25, 9);
		// Moving mass from resonance and Vas; then as much as the wanted tuning needs.
		const stiff = 1.18 * 345 ** 2 * 0.035 ** 2;
		const mass = stiff / ((2 * Math.PI * 20) ** 2 * 0.09);
		const bare = 20 ** 2 * (1 + 180 / chambers[0]!.net);
		expect(radiators[0]!.added).toBeCloseTo(1000 * mass * (bare / 25 ** 2 - 1), 6);
		expect(radiators[1]!.added).toBe(radiators[0]!.added);
	});

	it('counts a doubler without its cut-out', () => {
		const doubled = { doublers: [{}] };
		const round = (Math.PI / 4) * 2.32 ** 2 * 0.18;
		const off = (asked: Asked): number =>
			figures(asked).chambers[0]!.deductions.find((d) => d.what === 'Doubled boards')!.litres;
		const without = off({ ...plain, drivers: [driver], ...doubled });
		expect(without - off(passive({}, doubled))).toBeCloseTo(round, 5);
	});

	it('sits in a ring of its own beside the ring of a driver', () => {
		const seat = { kind: 'ring' as const, material: 'mdf-12' };
		const plan = made(passive({ seat }, { drivers: [{ ...driver, seat }] }));
		const rings = plan.figures!.boards.filter((b) => b.role === 'ring');
		expect(rings.map((b) => b.key)).toEqual(['ring-1', 'ring-2']);
		expect(rings.map((b) => b.holes[0]!.of)).toEqual(['driver', 'radiator']);
	});

	it('stands in a tapered box too', () => {
		const size = { width: 760, height: 400 };
		const shape = {
			kind: 'tapered' as const,
			front: size,
			back: { width: 700, height: 360 },
			depth: 350,
		};
		expect(figures(passive({}, { shape })).radiators[0]!.tuning).toBeGreaterThan(20);
	});
});

describe('what is told of a passive radiator', () => {
	it.each<[string, object, Partial<Asked>, string, string[]]>([
		[
			'off the board',
			{ at: { across: 700 } },
			{},
			'radiators.0.cutout',
			['stop', 'does not lie within', 'radiator'],
		],
		['a board there is not', { board: 'cut' }, {}, 'radiators.0.board', ["no board 'cut'"]],
		[
			'over the edge',
			{ at: { across: 600 }, frame: 340 },
			{},
			'radiators.0.frame',
			['over the edge'],
		],
		[
			'on a driver',
			{ at: { across: 400 } },
			{},
			'radiators.0.at',
			['Driver 1', 'overlap by 32 mm'],
		],
		['too deep', { depth: 330 }, {}, 'radiators.0.depth', ['330 mm deep']],
		[
			'no displacement',
			{ displacement: undefined },
			{},
			'radiators.0.displacement',
			['0 L are taken off'],
		],
		['no data', { data: {} }, {}, 'radiators.0.data', ['Too little is known']],
		[
			'only a resonance',
			{ data: { fs: 20, sd: 350 } },
			{},
			'radiators.0.data',
			['Too little is known'],
		],
		[
			'data that disagree',
			{ data: { ...CONE, mms: 900 } },
			{},
			'radiators.0.data',
			['900 g', 'not 20 Hz'],
		],
		['two compliances', { data: { ...CONE, cms: 3 } }, {}, 'radiators.0.data', ['not 3']],
		[
			'mass without an area',
			{ data: { fs: 20, vas: 90 }, goal: { by: 'mass', grams: 50 } },
			{},
			'radiators.0.data.sd',
			['50 g cannot be counted'],
		],
		[
			'a tuning without an area',
			{ data: { fs: 20, vas: 90 }, goal: { by: 'tuning', hertz: 22 } },
			{},
			'radiators.0.data.sd',
			['cannot be said in grams'],
		],
		[
			'too high a tuning',
			{ goal: { by: 'tuning', hertz: 60 } },
			{},
			'radiators.0.goal',
			['even with no mass added', 'too heavy'],
		],
		[
			'past its excursion',
			{ data: { ...CONE, xmax: 2 } },
			{ response: { power: 300 } },
			'radiators.0.data.xmax',
			['each passive radiator goes', '2 mm one way'],
		],
		[
			'rows too close',
			{ count: 2, pitch: 200, board: 'back', at: {} },
			{},
			'radiators.0.pitch',
			['2 radiators 200 mm apart'],
		],
		[
			'a seat through the board',
			{ seat: { kind: 'routed', depth: 18 } },
			{},
			'radiators.0.seat.depth',
			['18 mm deep'],
		],
		[
			'bolts past the frame',
			{ boltCircle: { diameter: 300 } },
			{},
			'radiators.0.boltCircle.diameter',
			['past its frame'],
		],
	])('%s', (_, more, rest, path, words) => {
		const seen = told(passive(more, rest), path).join(' ');
		for (const word of words) expect(seen).toContain(word);
		expect(told(passive(), path)).toEqual([]);
	});

	it('is left out beside a vent in its chamber, and not beside one in another', () => {
		const vent = {
			kind: 'round' as const,
			board: 'left' as const,
			diameter: 68,
			goal: { by: 'tuning' as const, hertz: 40 },
		};
		const both = passive({}, { vents: [vent] });
		expect(told(both, 'radiators.0.board').join()).toContain('stop: Chamber 1 has a vent');
		const f = figures(both);
		expect(f.radiators).toEqual([]);
		expect(f.boards.flatMap((b) => b.holes).some((h) => h.of === 'radiator')).toBe(false);
		expect(f.chambers[0]!.deductions.map((d) => d.what)).toContain(
			'Without Passive radiator 1: refused, so not counted',
		);
		const apart = { ...both, dividers: [{ across: 'width' as const, at: 360 }] };
		expect(told(apart, 'radiators.0.board')).toEqual([]);
		expect(figures(apart).radiators[0]!.chamber).toBe(2);
	});

	it('differs from another of its chamber: no tuning, no response', () => {
		const other = { ...cone, board: 'back' as const, at: {}, data: { ...CONE, fs: 25 } };
		const unlike = passive({}, { radiators: [cone, other] });
		expect(told(unlike, 'radiators.1.data').join()).toContain('differ in their data');
		const f = figures(unlike);
		expect(f.chambers[0]!.tuning).toBeNull();
		expect(f.responses).toEqual([]);
		const alike = passive({}, { radiators: [cone, { ...other, data: CONE }] });
		expect(figures(alike).chambers[0]!.tuning).toBeGreaterThan(20);
	});

	it('shares no name with a driver', () => {
		expect(says(passive({ name: 'Driver 1' }))).toContainEqual(
			"'Driver 1' is the name of two things in this box.",
		);
	});
});

type Num = readonly [number, number];
const add = (...all: Num[]): Num => all.reduce((a, b) => [a[0] + b[0], a[1] + b[1]], [0, 0] as Num);
const mul = (a: Num, b: Num): Num => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const by = (a: Num, n: number): Num => [a[0] * n, a[1] * n];
const inverse = (a: Num): Num => by([a[0], -a[1]], 1 / (a[0] ** 2 + a[1] ** 2));
const size = (a: Num): number => Math.hypot(a[0], a[1]);

/**
 * The same box as masses, springs and forces: the coil pushes the cone, the cone the air, the air
 * the radiators. m, kg, N, Pa; figures of the data sheet turned into those by their definitions.
 */
function mechanical(hertz: number, net: number, count: number, grams: number, watts: number) {
	const stiff = 1.18 * 345 ** 2;
	const cone = ({ fs, vas, sd, q, more }: Record<'fs' | 'vas' | 'sd' | 'q' | 'more', number>) => {
		const spring = (vas * 1e-3) / (stiff * (sd * 1e-4) ** 2);
		const mass = 1 / ((2 * Math.PI * fs) ** 2 * spring);
		const w = 2 * Math.PI * hertz;
		const friction = (2 * Math.PI * fs * mass) / q;
		const z: Num = [friction, w * (mass + more) - 1 / (w * spring)];
		return { mass, z, area: sd * 1e-4, spring };
	};
	const w = 2 * Math.PI * hertz;
	const re = 4;
	const d = cone({ ...DRIVER, q: DRIVER.qms, more: 0 });
	const p = cone({ ...CONE, q: CONE.qms, more: grams * 1e-3 });
	const bl2 = (2 * Math.PI * DRIVER.fs * d.mass * re) / DRIVER.qes;
	const volume = net * 1e-3;
	// The air of the box and the radiator's own spring, each as so many N/m on one radiator.
	const pushed = (stiff * p.area ** 2 * count) / volume + 1 / p.spring;
	const tuned = Math.sqrt(pushed / (p.mass + grams * 1e-3));
	const leak = (tuned * volume) / stiff / 7;
	const air: Num = [0, (w * volume) / stiff];
	const side = add(air, by(inverse(p.z), count * p.area ** 2), [leak, 0]);
	const load = by(inverse(side), d.area ** 2);
	const force = (Math.sqrt(bl2) * Math.sqrt(2 * watts * re)) / re;
	const u = by(inverse(add(d.z, [bl2 / re, 0], load)), force);
	const pressure = by(mul(inverse(side), u), -d.area);
	const v = by(mul(pressure, inverse(p.z)), p.area);
	const flow = add(by(u, d.area), by(v, count * p.area), by(pressure, leak));
	const passband = (force * d.area) / d.mass;
	return {
		level: 20 * Math.log10((size(flow) * w) / passband),
		cone: (size(u) / w) * 1000,
		passive: (size(v) / w) * 1000,
		tuning: tuned / (2 * Math.PI),
	};
}

describe('the response with passive radiators', () => {
	it.each([
		['one', {}, 1, 0],
		[
			'two, loaded',
			{ count: 2, pitch: 300, board: 'back', at: {}, goal: { by: 'mass', grams: 180 } },
			2,
			180,
		],
	] as const)('%s: as masses and springs say', (_, more, count, grams) => {
		const f = figures(passive(more, { response: { power: 150 } }));
		const [response] = f.responses;
		expect(response!.kind).toBe('passive');
		expect(response!.passiveXmax).toBe(12);
		expect(response!.points.length).toBeGreaterThan(50);
		for (const point of response!.points) {
			const own = mechanical(point.hertz, f.chambers[0]!.net, count, grams, 150);
			expect(point.level).toBeCloseTo(own.level, 6);
			expect(point.cone).toBeCloseTo(own.cone, 6);
			expect(point.passive).toBeCloseTo(own.passive, 6);
			expect(point.air).toBeNull();
			expect(f.chambers[0]!.tuning).toBeCloseTo(own.tuning, 8);
		}
	});

	it('has a figure at its notch where nothing is said of its losses', () => {
		// 20 Hz, a third of an octave of the table, is where the cone alone resonates.
		const { responses } = figures(passive({ data: { fs: 20, vas: 90, sd: 350 } }));
		const notch = responses.flatMap((r) => r.thirds).find((p) => p.hertz === 20);
		expect(notch?.level).toBeLessThan(-40);
		expect([notch?.level, notch?.cone, notch?.passive].every(Number.isFinite)).toBe(true);
	});

	it('says what is not counted, and works nothing out of nothing', () => {
		const sayings = (data: object): string =>
			figures(passive({ data }))
				.responses.flatMap((r) => r.says)
				.join(' ');
		expect(sayings({ fs: 20, vas: 90 })).toMatch(/Qms is missing.*the cone area is missing/);
		expect(sayings(CONE)).not.toContain('missing');
		expect(sayings({})).toBe('');
	});
});
