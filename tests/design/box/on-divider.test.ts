import { describe, expect, test } from 'vitest';
import { job } from '../../../src/lib/job/job';
import { toMm } from '../../../src/lib/measure';
import { figures, made, MATERIALS, told, type Asked } from './make';

/* Inside 564 x 364 x 314 mm, boards of 18 mm: 300 mm left of the divider, 246 right of it. */
const plain: Asked = { shape: { kind: 'plain', width: 600, height: 400, depth: 350 } };
const divided: Asked = { ...plain, dividers: [{ across: 'width', at: 300 }] };
const DATA = { fs: 30, qts: 0.4, vas: 40, sd: 300, xmax: 8, qes: 0.45 };
const driver = {
	board: 'divider-1',
	cutout: { kind: 'round' as const, diameter: 232 },
	frame: 262,
	depth: 118,
	displacement: 1.5,
	data: DATA,
};
const near = { ...driver, into: 'near' as const };
const vent = {
	kind: 'round' as const,
	diameter: 60,
	board: 'left',
	goal: { by: 'tuning' as const, hertz: 60 },
};
const through = {
	kind: 'round' as const,
	diameter: 100,
	board: 'divider-1',
	goal: { by: 'length' as const, length: 118 },
};
const LEFT = (300 * 364 * 314) / 1e6;
const RIGHT = (246 * 364 * 314) / 1e6;
/** What the cut-out opens in the divider, litres. */
const OPEN = ((Math.PI / 4) * 232 ** 2 * 18) / 1e6;

const nets = (asked: Asked) => figures(asked).chambers.map((c) => c.net);
const all = (asked: Asked) =>
	made(asked).problems.map((p) => `${p.kind} ${p.path.slice(2).join('.')}: ${p.what}`);
const board = (asked: Asked, key: string) => figures(asked).boards.find((b) => b.key === key)!;

describe('a driver on a divider', () => {
	test('takes its share where its magnet lies, and gives its cut-out to that chamber once', () => {
		const [a, b] = nets({ ...divided, drivers: [driver] });
		expect(a).toBeCloseTo(LEFT, 9);
		expect(b).toBeCloseTo(RIGHT - 1.5 + OPEN, 9);
		const [c, d] = nets({ ...divided, drivers: [near] });
		expect(c).toBeCloseTo(LEFT - 1.5 + OPEN, 9);
		expect(d).toBeCloseTo(RIGHT, 9);
	});

	test('of which the frame is let in leaves that much less of the cut-out behind it', () => {
		const seat = { kind: 'routed' as const, depth: 6 };
		expect(nets({ ...divided, drivers: [{ ...driver, seat }] })[1]).toBeCloseTo(
			RIGHT - 1.5 + (OPEN * 12) / 18,
			9,
		);
	});

	test.each([
		['width', 300, 'to the right', 'outside', 246],
		['depth', 150, 'to the back', 'outside', 146],
		['height', 170, 'up', 'inside', 176],
	] as const)(
		'across the %s has its magnet away from the datum unless it is asked otherwise',
		(across, at, way, face, room) => {
			const asked = { ...plain, dividers: [{ across, at }] };
			const far = figures({ ...asked, drivers: [driver] });
			expect(far.drivers[0]).toMatchObject({ chamber: 2, front: 1 });
			expect(toMm(far.drivers[0]!.room)).toBeCloseTo(room + 18, 6);
			const note = board({ ...asked, drivers: [driver] }, 'divider-1').notes.join(' ');
			expect(note).toContain(`its frame lies on the ${face} face, its magnet points ${way}`);
			const back = figures({ ...asked, drivers: [near] });
			expect(back.drivers[0]).toMatchObject({ chamber: 1, front: 2 });
			expect(toMm(back.drivers[0]!.room)).toBeCloseTo(at + 18, 6);
		},
	);

	test('in a leaning box too', () => {
		const lean = figures({
			shape: {
				kind: 'slanted',
				width: 600,
				height: 400,
				lean: { by: 'depths', bottom: 400, top: 300 },
			},
			dividers: [{ across: 'depth', at: 150 }],
			drivers: [driver],
		});
		expect(lean.drivers[0]).toMatchObject({ chamber: 2, front: 1 });
	});

	test('too deep for the chamber its magnet lies in is told, whatever the other one gives', () => {
		const deep = { depth: 260 };
		expect(
			told({ ...divided, drivers: [{ ...driver, ...deep }] }, 'drivers.0.depth').join(),
		).toContain('260 mm deep; the box gives 264 mm');
		expect(told({ ...divided, drivers: [{ ...near, ...deep }] }, 'drivers.0.depth')).toEqual([]);
	});

	test('has its cut-out, seat and bolts cut in the part of the divider, on the face they lie', () => {
		const bolted = {
			seat: { kind: 'routed' as const, depth: 5 },
			boltCircle: { diameter: 246, angle: 0, hole: 5 },
		};
		const holes = (one: object) =>
			board({ ...divided, drivers: [{ ...driver, ...bolted, ...one }] }, 'divider-1').holes;
		expect(holes({}).map((h) => [h.of, h.face ?? 'through or outside'])).toEqual([
			['driver', 'through or outside'],
			...Array.from({ length: 8 }, () => ['bolt', 'through or outside']),
			['seat', 'through or outside'],
		]);
		expect(holes({ into: 'near' }).find((h) => h.of === 'seat')!.face).toBe('inside');
		const part = made({ ...divided, drivers: [{ ...driver, ...bolted }] }).parts.find((p) =>
			p.id.endsWith('divider-1'),
		)!;
		expect(part.holes.length).toBe(9);
	});

	test('is fixed before the box is shut', () => {
		const steps = figures({ ...divided, drivers: [driver] }).assembly.map((s) => s.text);
		const fixed = steps.findIndex((t) => t.startsWith('Fix Driver 1 on Divider'));
		expect(fixed).toBeGreaterThan(steps.findIndex((t) => t.includes('Divider')));
		expect(fixed).toBeLessThan(steps.findIndex((t) => t.startsWith('Close with')));
		const front = figures({ ...divided, drivers: [{ ...driver, board: 'front' }] });
		expect(front.assembly.filter((s) => s.text.startsWith('Fix'))).toEqual([]);
	});

	test('cuts no hole in the cloth', () => {
		const plan = made({ ...divided, drivers: [driver] });
		expect(
			made({ ...divided, drivers: [{ ...driver, board: 'front' }] }).skin!.round[0]!.holes,
		).toHaveLength(1);
		expect([...plan.skin!.round, ...plan.skin!.ends].flatMap((f) => f.holes)).toEqual([]);
	});

	test('is counted in gasket, nuts, mass and the centre of gravity', () => {
		const plan = made({ ...divided, drivers: [{ ...driver, mass: 6 }] });
		const need = (kind: string) => plan.needs.find((n) => n.kind === kind)!.amount;
		expect(need('gasket')).toBeCloseTo(Math.PI * 0.262, 9);
		expect(need('t-nuts')).toBe(8);
		const across = (one: object) =>
			toMm(figures({ ...divided, drivers: [{ ...driver, mass: 6, ...one }] }).gravity!.across);
		const loaded = plan.figures!.loadedMass;
		expect(loaded).toBeCloseTo(plan.mass + 6, 9);
		// Two thirds of the depth from a face each, 18 mm apart.
		const apart = (2 * 2 * 118) / 3 - 18;
		expect(across({}) - across({ into: 'near' })).toBeCloseTo((6 * apart) / loaded, 2);
	});

	test('two on one divider, each to its own side', () => {
		const wide: Asked = {
			shape: { kind: 'plain', width: 600, height: 400, depth: 700 },
			dividers: [{ across: 'width', at: 300 }],
		};
		const pair = (apart: number): Asked => ({
			...wide,
			drivers: [
				{ ...driver, at: { across: 332 - apart / 2 } },
				{ ...near, displacement: 2, at: { across: 332 + apart / 2 } },
			],
		});
		const [a, b] = nets(pair(300));
		const [left, right] = nets(wide);
		expect(a).toBeCloseTo(left! - 2 + OPEN, 9);
		expect(b).toBeCloseTo(right! - 1.5 + OPEN, 9);
		expect(told(pair(300), 'drivers.1.at')).toEqual([]);
		expect(told(pair(260), 'drivers.1.at').join()).toContain('overlap by 2 mm');
		const row = { ...wide, drivers: [{ ...driver, count: 2, pitch: 300 }] };
		expect(nets(row)[1]).toBeCloseTo(right! - 3 + 2 * OPEN, 9);
	});

	test.each([
		['larger than the divider', { cutout: { kind: 'round', diameter: 330 }, frame: 350 }, 'cutout'],
		['off its edge', { at: { across: 110 } }, 'cutout'],
	] as const)('%s is refused in words, and its holes with it', (_, more, path) => {
		const asked: Asked = { ...divided, drivers: [{ ...driver, ...more }] };
		expect(told(asked, `drivers.0.${path}`).join()).toMatch(
			/^stop: The cut-out of Driver 1 .* does not lie within its board, 314 x 364 mm/,
		);
		expect(board(asked, 'divider-1').holes).toEqual([]);
		expect(nets(asked)).toEqual(nets(divided));
		expect(
			figures(asked)
				.chambers[0]!.deductions.map((d) => d.what)
				.join(),
		).toContain('Without Driver 1');
	});

	test('whose frame stands over the edge of the divider is told', () => {
		const asked = { ...divided, drivers: [{ ...driver, at: { across: 125 } }] };
		expect(told(asked, 'drivers.0.frame').join()).toContain('stands over the edge of its board');
	});

	test.each([
		['that there is none', plain, 'divider-1', 'The box has no divider 1; it has none'],
		['past the last', divided, 'divider-2', 'The box has no divider 2; it has 1'],
		[
			'that is itself refused',
			{ ...plain, dividers: [{ at: 2000 }] },
			'divider-1',
			'Divider 1 was refused, so nothing can be mounted on it',
		],
		[
			'that stands in two chambers',
			{ ...plain, dividers: [{ at: 300 }, { across: 'height', at: 170 }] },
			'divider-2',
			'Divider 2 stands in 2 chambers',
		],
	] as const)('on a divider %s is told', (_, asked, key, words) => {
		const where = { ...asked, drivers: [{ ...driver, board: key }] } as Asked;
		expect(told(where, 'drivers.0.board').join()).toContain(`stop: ${words}`);
		const tube = { ...asked, vents: [{ ...through, board: key }] } as Asked;
		expect(told(tube, 'vents.0.board').join()).toContain(`stop: ${words}`);
	});

	test('keeps to the divider it names when one before it is refused', () => {
		const asked: Asked = {
			...plain,
			dividers: [{ at: 2000 }, { at: 300 }],
			drivers: [{ ...driver, board: 'divider-2' }],
		};
		expect(figures(asked).drivers[0]).toMatchObject({ board: 'Divider 2', chamber: 2, front: 1 });
		expect(told({ ...asked, drivers: [driver] }, 'drivers.0.board').join()).toContain(
			'Divider 1 was refused',
		);
	});

	test('with no driver and no tube a divider is what it was', () => {
		const f = figures(divided);
		expect(f.chambers.map((c) => [c.says, c.vented])).toEqual([
			[[], false],
			[[], false],
		]);
		expect(board(divided, 'divider-1').notes).toEqual([]);
	});

	test('a ring is refused there, and a side asked for on a wall is told to have no effect', () => {
		const ring = { ...driver, seat: { kind: 'ring' as const, material: 'mdf-12' } };
		expect(told({ ...divided, drivers: [ring] }, 'drivers.0.seat').join()).toContain('stop: ');
		const wall = { ...plain, drivers: [{ ...near, board: 'front' }] };
		expect(told(wall, 'drivers.0.into').join()).toMatch(/^note: On the board 'front'/);
		expect(
			told({ ...plain, vents: [{ ...vent, into: 'near' as const }] }, 'vents.0.into').length,
		).toBe(1);
	});

	test('a board that is neither a wall nor a divider by its number is refused by the reader', () => {
		for (const key of ['divider', 'divider-0', 'divider-8', 'brace-1'])
			expect(job.safeParse(jobWithBoard(key)).success, key).toBe(false);
		expect(job.safeParse(jobWithBoard('divider-7')).success).toBe(true);
	});

	test('what stands where its frame lies is told, on that side alone', () => {
		const shelf = (from: number, length: number) => ({
			...divided,
			drivers: [driver],
			braces: [{ kind: 'shelf' as const, at: 182, from, length }],
		});
		expect(told(shelf(200, 100), 'drivers.0.frame').join()).toContain(
			'Where the frame of Driver 1 lies on Divider stands Shelf brace 1',
		);
		expect(told(shelf(200, 100), 'drivers.0.at')).toEqual([]);
		expect(told(shelf(318, 100), 'drivers.0.frame')).toEqual([]);
		expect(told(shelf(318, 100), 'drivers.0.at').join()).toContain('runs into Shelf brace 1');
		expect(told(shelf(0, 200), 'drivers.0.frame')).toEqual([]);
	});

	test('the bolts have their nuts beside the divider they go through, not in it', () => {
		const bolted = { ...driver, boltCircle: { diameter: 246, angle: 0, hole: 7 } };
		expect(told({ ...divided, drivers: [bolted] }, 'drivers.0.boltCircle')).toEqual([]);
	});
});

const jobWithBoard = (key: string): unknown => {
	const one = { id: 'box', name: 'Box', material: 'ply-18', ...divided };
	return {
		stock: { materials: MATERIALS },
		boxes: [{ ...one, drivers: [{ ...driver, board: key }] }],
	};
};

describe('chambers a driver joins', () => {
	const bandPass: Asked = { ...divided, drivers: [driver], vents: [vent] };

	test('a vent is tuned with its own chamber as if the driver stood still, and that is said', () => {
		const f = figures(bandPass);
		const still = figures({ ...divided, vents: [vent] });
		expect(f.vents[0]!.length).toBe(still.vents[0]!.length);
		expect(f.vents[0]!.tuning).toBeCloseTo(still.vents[0]!.tuning!, 9);
		expect(f.vents[0]!.notes.join(' ')).toContain('chamber 1 alone');
		expect(f.chambers[0]!.says.join(' ')).toContain('as if the cone of the driver stood still');
	});

	test('no Qtc, no response and no speed of air are given, and that is noted once', () => {
		const f = figures(bandPass);
		expect(f.chambers.map((c) => c.sealed)).toEqual([null, null]);
		expect(f.responses).toEqual([]);
		expect([f.vents[0]!.speed, f.vents[0]!.leastArea]).toEqual([null, null]);
		expect(all(bandPass).filter((line) => line.includes('band-pass'))).toEqual([
			'note drivers.0.board: Driver 1 stands between chambers 1 and 2. The response of such a box (band-pass) is not worked out, nor a Qtc or the speed of its air.',
		]);
		expect(f.chambers.every((c) => c.says.join(' ').includes('not worked out'))).toBe(true);
	});

	test('nor for another driver in one of them, but for one in a third chamber', () => {
		const asked: Asked = {
			shape: { kind: 'plain', width: 1200, height: 400, depth: 350 },
			dividers: [{ at: 300 }, { at: 700 }],
			drivers: [
				driver,
				{ ...driver, board: 'front', at: { across: 550 } },
				{ ...driver, board: 'front', at: { across: 950 } },
			],
		};
		const f = figures(asked);
		expect(f.drivers.map((d) => [d.chamber, d.front])).toEqual([
			[2, 1],
			[2, null],
			[3, null],
		]);
		expect(f.chambers.map((c) => c.sealed !== null)).toEqual([false, false, true]);
		expect(f.responses.map((r) => r.chamber)).toEqual([3]);
	});
});

describe('a tube through a divider', () => {
	/** Its solid and its air beyond the divider, litres. */
	const TUBE = ((Math.PI / 4) * 106 ** 2 * 100) / 1e6;

	test('takes of the chamber it lies in what stands beyond the divider', () => {
		const [a, b] = nets({ ...divided, vents: [through] });
		expect(a).toBeCloseTo(LEFT, 9);
		expect(b).toBeCloseTo(RIGHT - TUBE, 9);
		const [c, d] = nets({ ...divided, vents: [{ ...through, into: 'near' }] });
		expect(c).toBeCloseTo(LEFT - TUBE, 9);
		expect(d).toBeCloseTo(RIGHT, 9);
		expect(figures({ ...divided, vents: [through] }).vents[0]).toMatchObject({
			chamber: 2,
			joins: 1,
			tuning: null,
		});
	});

	test('leaves neither chamber a tuning nor a Qtc, and says so', () => {
		const f = figures({ ...divided, vents: [through], drivers: [{ ...driver, board: 'right' }] });
		expect(f.chambers.map((c) => [c.vented, c.tuning, c.sealed])).toEqual([
			[true, null, null],
			[true, null, null],
		]);
		expect(f.responses).toEqual([]);
		expect(f.chambers[0]!.says.join(' ')).toContain('breathes through Vent 1 into chamber 2');
		expect(f.chambers[1]!.says.join(' ')).toContain('breathes through Vent 1 into chamber 1');
	});

	test('cannot be asked for a tuning', () => {
		const asked = { ...divided, vents: [{ ...through, goal: vent.goal }] };
		expect(told(asked, 'vents.0.goal').join()).toContain('stop: Vent 1 joins two chambers');
		expect(nets(asked)).toEqual(nets(divided));
	});

	test('takes the tuning from a vent beside it, which keeps the length for its chamber alone', () => {
		const both = { ...divided, vents: [vent, { ...through, diameter: 40 }] };
		const alone = figures({ ...divided, vents: [vent] }).vents[0]!;
		expect(figures(both).vents.map((v) => v.tuning)).toEqual([null, null]);
		expect(figures(both).vents[0]!.length).toBe(alone.length);
		expect(told(both, 'vents.0.goal').join()).toContain(
			'check: Vent 1 is asked for 60 Hz, but chamber 1',
		);
		const inSame = { ...divided, vents: [vent, { ...through, into: 'near' as const }] };
		expect(figures(inSame).vents[0]!.length).toBeGreaterThan(alone.length);
	});

	test('its clear way counts at both ends, and what stands before either is told', () => {
		const close = { ...plain, dividers: [{ at: 80 }], vents: [through] };
		expect(toMm(figures(close).vents[0]!.clear)).toBeCloseTo(80, 6);
		expect(told(close, 'vents.0.goal').join()).toContain('Only 80 mm stay free');
		const before: Asked = {
			...divided,
			vents: [through],
			braces: [{ kind: 'shelf', at: 182, from: 200, length: 100 }],
		};
		expect(told(before, 'vents.0.at').join()).toContain('Vent 1 runs into Shelf brace 1');
	});

	test('off the divider is refused', () => {
		const asked = { ...divided, vents: [{ ...through, at: { across: 30 } }] };
		expect(told(asked, 'vents.0.at').join()).toContain(
			'does not lie within its board, 314 x 364 mm',
		);
	});

	test('under the frame of a driver on it is told', () => {
		const asked = {
			...divided,
			drivers: [driver],
			vents: [{ ...through, diameter: 40, at: { up: 330 } }],
		};
		expect(told(asked, 'vents.0.at').join()).toContain('The frame of Driver 1 and Vent 1 overlap');
	});
});

describe('a passive radiator beside a divider that carries something', () => {
	const cone = {
		board: 'left',
		cutout: { kind: 'round' as const, diameter: 232 },
		frame: 262,
		depth: 80,
		displacement: 0.9,
		data: { fs: 20, vas: 90, sd: 350, xmax: 12 },
	};

	test('cannot stand on a divider itself, nor be asked a side', () => {
		const one = { id: 'box', name: 'Box', material: 'ply-18', ...divided };
		const read = (more: object) =>
			job.safeParse({
				stock: { materials: MATERIALS },
				boxes: [{ ...one, radiators: [{ ...cone, ...more }] }],
			});
		const faults = (more: object) => read(more).error?.issues.map((i) => i.path.join('.'));
		expect(read({}).success).toBe(true);
		expect(faults({ board: 'divider-1' })).toEqual(['boxes.0.radiators.0.board']);
		const words = (board: string) => read({ board }).error!.issues[0]!.message;
		expect(words('divider-1')).toMatch(/^A divider does not carry this: .*\|Use front, back/);
		expect(words('floor')).toMatch(/^This is no board of a box\.\|Use front, back/);
		expect(faults({ into: 'near' })).toEqual(['boxes.0.radiators.0']);
	});

	test.each([
		['left', 1],
		['right', 2],
	] as const)('on the %s is left out where a tube joins its chamber', (wall, number) => {
		const asked: Asked = { ...divided, vents: [through], radiators: [{ ...cone, board: wall }] };
		expect(told(asked, 'radiators.0.board').join()).toContain(`stop: Chamber ${number} has a vent`);
		expect(figures(asked).radiators).toEqual([]);
		expect(figures(asked).chambers.map((c) => c.tuning)).toEqual([null, null]);
	});

	test('tunes its own chamber as if the driver stood still, and no response is given', () => {
		const asked: Asked = { ...divided, radiators: [cone] };
		const f = figures({ ...asked, drivers: [driver] });
		expect(f.drivers[0]).toMatchObject({ chamber: 2, front: 1 });
		expect(f.radiators[0]).toMatchObject({ chamber: 1, front: null });
		expect(f.radiators[0]!.tuning).toBeCloseTo(figures(asked).radiators[0]!.tuning!, 9);
		expect(f.chambers[0]!.tuning).toBeCloseTo(20 * Math.sqrt(1 + 90 / f.chambers[0]!.net), 9);
		expect(f.chambers[0]!.says.join(' ')).toContain('as if the cone of the driver stood still');
		expect(f.chambers.map((c) => c.sealed)).toEqual([null, null]);
		expect(f.responses).toEqual([]);
	});
});
