import { describe, expect, it } from 'vitest';
import { area } from '../../../src/lib/geometry/extent';
import type { BoxPlan } from '../../../src/lib/design/box/box-plan';
import { mm, toMm } from '../../../src/lib/measure/length';
import { figures, made, MATERIALS, told, type Asked } from './make';

/* What is told of the boards of a box, worked by hand. Inside 564 x 364 x 364 mm. */

const shape = { kind: 'plain' as const, width: 600, height: 400, depth: 400 };
const cube: Asked = { shape };
const driver = {
	at: { across: 250, up: 150 },
	cutout: { kind: 'round' as const, diameter: 232 },
	frame: 262,
	depth: 118,
	displacement: 1.5,
};

describe('seams', () => {
	const seams = (asked: Asked) =>
		figures(asked).seams.map((s) => [s.between.join(' '), s.kind, toMm(s.length), s.area]);
	// Ends of 25.2, so that it shows whose thickness counts; 600 - 2 x 25.2 between them.
	const thick = (fit: 'over' | 'between' | 'rabbet'): Asked => ({
		...cube,
		ends: { fit, ...(fit === 'rabbet' ? { rabbet: 6 } : {}) },
		boards: { left: { material: 'mdf-25' }, right: { material: 'mdf-25' } },
	});

	it.each([
		['over', 549.6, 'butt', 18],
		['between', 600, 'butt', 25.2],
		['rabbet', 600, 'rabbet', 25.2 + 6],
	] as const)(
		'of ends %s the walls: along the corner, and round the ends',
		(fit, long, kind, wide) => {
			const all = seams(thick(fit));
			expect(all).toHaveLength(12);
			const [first] = all;
			expect(first).toEqual(['Front Bottom', 'butt', long, expect.closeTo(long * 18, 6)]);
			const ends = all.filter(([between]) => String(between).includes(' end'));
			expect(ends).toHaveLength(8);
			for (const [, how, length, glued] of ends) {
				expect([how, length]).toEqual([kind, 364]);
				expect(glued).toBeCloseTo(364 * wide, 6);
			}
		},
	);

	it('of a slot with a cheek: as wide as its run, as long as each board', () => {
		const vent = { kind: 'slot' as const, gap: 40, bend: 'U' as const, run: 300 };
		const vents = [{ ...vent, goal: { by: 'length' as const, length: 900 } }];
		const own = seams({ ...cube, vents }).filter(([between]) => String(between).startsWith('Slot'));
		expect(own.map(([between, , length]) => [between, length])).toEqual([
			['Slot vent 1 board 1 Front', 300],
			['Slot vent 1 board 1 Left end', 324],
			['Slot vent 1 board 1 Slot vent 1 cheek', 324],
			['Slot vent 1 board 2 Slot vent 1 board 1', 300],
			['Slot vent 1 board 2 Left end', 266],
			['Slot vent 1 board 2 Slot vent 1 cheek', 266],
			['Slot vent 1 board 3 Slot vent 1 board 2', 300],
			['Slot vent 1 board 3 Left end', 176],
			['Slot vent 1 board 3 Slot vent 1 cheek', 176],
		]);
		for (const [, , length, glued] of own) expect(glued).toBeCloseTo(Number(length) * 18, 6);
	});
});

/** Where the middle of a hole lies in the box, and the frame it is told in. */
function middles(plan: BoxPlan, key: RegExp) {
	const boards = plan.figures!.boards.filter((b) => key.test(b.key));
	return boards.flatMap(({ frame: { at, u, v, n }, holes }) =>
		holes.map(({ centre: c }) => ({
			n,
			x: at.x + u.x * c.x + v.x * c.y,
			y: at.y + u.y * c.x + v.y * c.y,
			z: at.z + u.z * c.x + v.z * c.y,
		})),
	);
}

describe('a hole goes on through the layer behind', () => {
	const tapered = {
		kind: 'tapered' as const,
		front: { width: 600, height: 450 },
		back: { width: 500, height: 350 },
		depth: 400,
	};
	it.each([
		['front', shape],
		['top', shape],
		['left', shape],
		['front', tapered],
		['right', tapered],
	] as const)('of the %s of a %o, square to the board', (board, form) => {
		const at = { across: 180, up: 160 };
		const plan = made({
			shape: form,
			doublers: [{ board }],
			drivers: [
				{ ...driver, at, board, cutout: { kind: 'round', diameter: 100 }, frame: 120, depth: 50 },
			],
		});
		const [wall] = middles(plan, new RegExp(`^${board}$`));
		const [layer] = middles(plan, /^doubler/);
		const d = { x: layer!.x - wall!.x, y: layer!.y - wall!.y, z: layer!.z - wall!.z };
		const deep = d.x * wall!.n.x + d.y * wall!.n.y + d.z * wall!.n.z;
		expect(toMm(Math.round(-deep) as never)).toBeCloseTo(18, 2);
		expect(Math.hypot(d.x, d.y, d.z)).toBeCloseTo(Math.abs(deep), 0);
	});

	it('and is told with its distance to the edge, and no recess', () => {
		const boards = figures({ ...cube, drivers: [driver] }).boards.filter((b) => b.holes.length > 0);
		const [hole] = boards.flatMap((b) => b.holes);
		expect([boards.length, hole!.recess]).toEqual([1, null]);
		// 150 up from the inside of the bottom, less half of 232.
		expect(toMm(hole!.edge)).toBeCloseTo(150 - 116, 6);
	});

	it('and through the cloth as a circle', () => {
		const { skin } = made({ ...cube, drivers: [driver] });
		const holes = skin!.round.map(({ holes: cut }) => cut.length);
		expect(holes).toEqual([1, 0, 0, 0]);
		const [round] = skin!.round[0]!.holes;
		expect(area(round!) / mm(1) ** 2).toBeCloseTo((Math.PI / 4) * 232 ** 2, 3);
	});
});

describe('what two of a box take', () => {
	const { needs } = made({
		...cube,
		count: 2,
		terminal: { hole: { kind: 'rectangle', width: 60, height: 50 }, screws: 3 },
	});
	it('is twice a terminal and its screws', () => {
		const own = needs.filter((n) => n.kind === 'terminal' || n.for === 'terminal of Box');
		expect(own.map(({ kind, amount }) => [kind, amount])).toEqual([
			['terminal', 2],
			['screws', 6],
		]);
	});
});

describe('the corners of the side view, to the tick', () => {
	const outer = (form: Asked['shape']) =>
		figures({ shape: form }).profile!.outer.map(({ x, y }) => [toMm(x as never), toMm(y as never)]);

	it('of a box whose lower back is cut off', () => {
		const cut = { cutHeight: 100, cutDepth: 150 };
		expect(outer({ kind: 'truncated', width: 600, height: 400, depth: 400, ...cut })).toEqual([
			...[
				[0, 0],
				[250, 0],
				[400, 100],
				[400, 400],
				[0, 400],
			],
		]);
	});

	it('of a box stepped over a wheel arch', () => {
		const step = { stepHeight: 120, stepDepth: 160 };
		expect(outer({ kind: 'stepped', width: 600, height: 400, depth: 400, ...step })).toEqual([
			...[
				[0, 0],
				[240, 0],
				[240, 120],
				[400, 120],
				[400, 400],
				[0, 400],
			],
		]);
	});
});

describe('through an opening', () => {
	const through = (width: number, height: number, form: Asked['shape'] = shape) => {
		const { fit } = figures({ shape: form, opening: { width, height } });
		return [fit.passes, fit.turn];
	};

	it('goes end first, its 400 x 400 just through, and not a hair less', () => {
		expect(through(400, 400)).toEqual([true, 'One end first, upright as it stands.']);
		expect(through(399.9, 400)).toEqual([false, null]);
		expect(figures(cube).fit.passes).toBe(null);
	});

	it('turned flush by what no whole degree comes to', () => {
		// A parallelogram with a slanted side of 403.11: 200 x 350 / 403.11 thick, 502.34 long.
		const corners = [
			{ x: 0, y: 0 },
			{ x: 200, y: 0 },
			{ x: 400, y: 350 },
			{ x: 200, y: 350 },
		];
		const leaning = { kind: 'free' as const, width: 600, corners };
		const turn = 90 - (Math.atan2(350, 200) * 180) / Math.PI;
		expect(through(173.66, 502.4, leaning)).toEqual([
			true,
			`One end first, turned ${Math.round(turn * 100) / 100}°.`,
		]);
		expect(through(173.6, 502.4, leaning)).toEqual([false, null]);
		expect(through(173.66, 502.3, leaning)).toEqual([false, null]);
	});
});

describe('a corner with a joint of its own', () => {
	const tall = (
		between: ['front' | 'bottom', 'front' | 'bottom'],
		joint: 'first-past' | 'second-past',
	) => {
		const { boards } = figures({ ...cube, corners: [{ between, joint }] });
		const size = (key: string) => toMm(boards.find((b) => b.key === key)!.long.up);
		return [size('front'), size('bottom')];
	};

	it('runs the board past that is named first, whichever way round they are named', () => {
		const past = tall(['front', 'bottom'], 'first-past');
		expect(tall(['bottom', 'front'], 'second-past')).toEqual(past);
		const other = tall(['bottom', 'front'], 'first-past');
		expect(tall(['front', 'bottom'], 'second-past')).toEqual(other);
		// What the one gains the other loses: a thickness of 18.
		expect([past[0]! - other[0]!, past[1]! - other[1]!]).toEqual([18, -18]);
	});
});

describe('a ring that a driver is set behind', () => {
	it('is glued on all round its hole', () => {
		const set = { ...driver, seat: { kind: 'ring' as const, material: 'mdf-12' } };
		const { boards, seams } = figures({ ...cube, drivers: [set] });
		const [ring, ...more] = boards.filter((b) => b.role === 'ring');
		expect(more).toEqual([]);
		const [seam] = seams.filter((s) => s.kind === 'face' && s.between.includes(ring!.name));
		const [across, up] = [toMm(ring!.long.across), toMm(ring!.long.up)];
		// Cut round the frame of 262, not round the cut-out of 232.
		const hole = toMm(ring!.holes[0]!.size[0]!);
		expect(hole).toBeGreaterThanOrEqual(262);
		expect(seam!.area).toBeCloseTo(across * up - (Math.PI / 4) * hole ** 2, 1);
	});
});

describe('what is said', () => {
	it('of corners that are none, and of one named twice', () => {
		const corners: Asked['corners'] = [
			{ between: ['top', 'bottom'], joint: 'mitre' },
			{ between: ['top', 'back'], joint: 'mitre' },
			{ between: ['back', 'top'], joint: 'first-past' },
		];
		const asked: Asked = { ...cube, corners };
		expect(told(asked, 'corners.0.between')).toEqual([
			'check: top and bottom do not meet in a corner of this form. Name two neighbours of bottom, back, top, front.',
		]);
		expect(told(asked, 'corners.1.between')).toEqual([]);
		expect(told(asked, 'corners.2.between')).toEqual([
			expect.stringContaining('is named twice; the later one goes.'),
		]);
	});

	it('of a board the rack does not hold: up to eight that it does', () => {
		const [known] = MATERIALS;
		const materials = Array.from({ length: 10 }, (_, i) => ({ ...known!, id: `b${i}` }));
		const { problems } = made({ ...cube, material: 'none' }, { stock: { materials } });
		expect(problems.map((p) => p.fix)).toEqual([
			'Choose one of b0, b1, b2, b3, b4, b5, b6, b7, or add it.',
		]);
	});

	it('of a chamber that is filled up, by its number', () => {
		const small = { cutout: { kind: 'round' as const, diameter: 100 }, frame: 120, depth: 40 };
		const filled = { ...driver, ...small, board: 'right', at: {}, displacement: 60 };
		const asked: Asked = { ...cube, dividers: [{ across: 'width', at: 500 }], drivers: [filled] };
		// 564 - 500 - 18 = 46 wide: 46 x 364 x 364.
		expect(made(asked).problems.map((p) => p.what)).toContain(
			'Nothing is left of chamber 2: what stands in it takes 60 L, more than its 6.09 L.',
		);
	});

	it('of a magnet as high as the driver is deep: nothing', () => {
		const magnet = (magnetHeight: number) =>
			told(
				{ ...cube, drivers: [{ ...driver, magnet: 150, magnetHeight }] },
				'drivers.0.magnetHeight',
			);
		expect(magnet(118)).toEqual([]);
		expect(magnet(118.1)).toEqual([expect.stringContaining('more than its mounting depth')]);
	});

	it('of a slot whose length would end in a turn: which turn, and what is built', () => {
		const said = (bend: 'L' | 'U', length: number) => {
			const vent = {
				kind: 'slot' as const,
				gap: 40,
				bend,
				goal: { by: 'length' as const, length },
			};
			return made({ ...cube, vents: [vent] }).problems.map((p) => p.what);
		};
		// Straight: 18 + 364 less the 40 kept free; once turned: 362 + 364 - 20 - 40.
		expect(said('L', 360)[0]).toContain(
			'360 mm long: too long to be straight (342 mm) and too short for an L, whose second board would be lost in the elbow.',
		);
		expect(said('U', 700)[0]).toContain(
			'700 mm long: too long for an L (666 mm) and too short to turn twice, for its third board would be lost in the second turn.',
		);
	});

	it('of an elbow tighter than its tube, with the radius that would do', () => {
		const tube = (radius: number): Asked => ({
			shape: { kind: 'plain', width: 600, height: 600, depth: 450 },
			vents: [
				{
					...{ kind: 'round', board: 'front', diameter: 80, wall: 3 },
					elbows: [{ after: 100, radius, turn: 'up' }],
					goal: { by: 'length', length: 300 },
				},
			],
		});
		expect(told(tube(42), 'vents.0.elbows.0.radius')).toEqual([
			'check: An elbow of 42 mm radius folds a tube of 86 mm into itself. Give at least 43 mm, half the outside of the tube.',
		]);
		expect(told(tube(43), 'vents.0.elbows.0.radius')).toEqual([]);
	});

	it('to do: a layer inside is glued on before anything stands', () => {
		const steps = figures({ ...cube, doublers: [{ board: 'front' }] }).assembly.map((s) => s.text);
		expect(steps[1]).toMatch(/^Glue B\d+ Front doubler on the inside of its board\.$/);
		expect(steps[2]).toMatch(/^Lay B\d+ Left end flat, outside down\.$/);
	});
});
