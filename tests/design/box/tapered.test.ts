import { describe, expect, it } from 'vitest';
import { mm } from '../../../src/lib/measure/length';
import { figures, made, told, type Asked } from './make';

/*
 * Inside 400 x 300 at the front, 300 x 200 at the back, 300 deep, every wall leaning by 50 in 300:
 * a section at the depth y is (400 - y / 3) x (300 - y / 3).
 */
const wedge: Asked = {
	sizes: 'inner',
	shape: {
		kind: 'tapered',
		front: { width: 400, height: 300 },
		back: { width: 300, height: 200 },
		depth: 300,
	},
};
const section = (y: number): number => (400 - y / 3) * (300 - y / 3);
/** Litres of the air from one depth to another: the integral of the section, a cubic. */
const between = (from: number, to: number): number => {
	const upTo = (y: number): number => 120_000 * y - (350 / 3) * y * y + (y * y * y) / 27;
	return (upTo(to) - upTo(from)) / 1e6;
};
const lines = (asked: Asked) => figures(asked).chambers[0]!.deductions;
const boards = (asked: Asked, role: string) => figures(asked).boards.filter((b) => b.role === role);
describe('what stands in a box that leans on four sides', () => {
	it('is empty to begin with', () => {
		expect(section(0)).toBe(120_000);
		expect(figures(wedge).chambers[0]!.net).toBeCloseTo(between(0, 300), 6);
	});

	it('a layer inside the front takes the air from there to its inside', () => {
		const asked: Asked = { ...wedge, doublers: [{ board: 'front' }] };
		expect(lines(asked)).toEqual([
			{ what: 'Doubled boards', litres: expect.closeTo(between(0, 18), 6) as number },
		]);
		const [layer] = boards(asked, 'doubler');
		expect([layer!.long.across, layer!.long.up].map((l) => l / 1600)).toEqual([400, 300]);
		expect([layer!.short.across, layer!.short.up].map((l) => l / 1600)).toEqual([394, 294]);
		// The walls lean by 50 in 300.
		for (const edge of layer!.edges)
			expect(edge.tilt).toBeCloseTo((Math.atan(1 / 6) * 180) / Math.PI, 6);
	});

	it('a layer outside covers the edges of the leaning boards and takes no air', () => {
		const asked: Asked = { ...wedge, doublers: [{ board: 'front', side: 'outside' }] };
		const f = figures(asked);
		expect(f.chambers[0]!.deductions).toEqual([]);
		const [layer] = boards(asked, 'overlay');
		expect(layer!.long.across).toBe(f.boards.find((b) => b.key === 'front')!.long.across);
		expect(f.outside.depth - figures(wedge).outside.depth).toBe(mm(18));
	});

	it('a shelf across the depth is cut to all four walls, a frame keeps its rim all round', () => {
		const asked: Asked = {
			...wedge,
			braces: [{ kind: 'window', across: 'depth', at: 150, rim: 40 }],
		};
		const [frame] = boards(asked, 'brace');
		expect(frame!.long.across / 1600).toBeCloseTo(400 - 141 / 3, 3);
		expect(frame!.short.across / 1600).toBeCloseTo(400 - 159 / 3, 3);
		const window = (400 - 159 / 3 - 80) * (300 - 159 / 3 - 80) * 18;
		expect(lines(asked)[0]!.litres).toBeCloseTo(between(141, 159) - window / 1e6, 5);
	});

	it('a frame across the width has square edges, and stands only clear of the leaning sides', () => {
		const frame = (at: number): Asked => ({
			...wedge,
			braces: [{ kind: 'window', across: 'width', at, rim: 40 }],
		});
		const [made] = boards(frame(200), 'brace');
		expect(made!.edges.map((e) => e.tilt)).toEqual([0, 0, 0, 0]);
		expect([made!.long.across, made!.long.up].map((l) => l / 1600)).toEqual([300, 300]);
		expect(told(frame(40), 'braces.0')[0]).toMatch(
			/^stop: .*40 mm.*from 50 to 350 mm.*across the depth/s,
		);
	});

	it('dividers give each chamber what lies on its side', () => {
		const net = (across: 'width' | 'depth', at: number) =>
			figures({ ...wedge, dividers: [{ across, at }] }).chambers.map((c) => c.net);
		expect(net('depth', 100)).toEqual([
			expect.closeTo(between(0, 100), 6),
			expect.closeTo(between(118, 300), 6),
		]);
		// Down the middle: both halves alike, the divider between them 18 x 300 deep and 250 high
		// on average.
		const [left, right] = net('width', 191);
		expect(left).toBeCloseTo(right!, 6);
		expect(left! + right!).toBeCloseTo(between(0, 300) - (18 * 300 * 250) / 1e6, 6);
		expect(told({ ...wedge, dividers: [{ at: 20 }] }, 'dividers.0.at')[0]).toMatch(
			/^stop: .*20 mm.*50 to 350 mm.*left/,
		);
	});

	it('cleats lie in the four corners and round both ends, their corner ripped on', () => {
		const cleats = (where: 'corners' | 'ends' | 'both') =>
			boards({ ...wedge, cleats: { where, width: 30 } }, 'cleat');
		expect([cleats('corners'), cleats('ends'), cleats('both')].map((c) => c.length)).toEqual([
			4, 8, 12,
		]);
		// Two walls that both lean by 1 in 6 meet at an angle whose cosine is 1/37: not quite
		// square.
		const tilt = (Math.asin(1 / 37) * 180) / Math.PI;
		for (const b of cleats('corners'))
			expect(b.edges.filter((e) => Math.abs(e.tilt - tilt) < 1e-6)).toHaveLength(1);
		expect(told({ ...wedge, cleats: { width: 280 } }, 'cleats.width')[0]).toContain(
			'280 mm wide has no room',
		);
	});

	it('cleats are parted by a frame that stands across them', () => {
		const asked: Asked = {
			...wedge,
			braces: [{ kind: 'window', across: 'depth', at: 150, rim: 40 }],
			cleats: { where: 'corners', width: 30 },
		};
		expect(boards(asked, 'cleat')).toHaveLength(8);
		expect(made(asked).problems).toEqual([]);
	});

	it('a rod is as long as from wall to wall at its longer side', () => {
		const rod = (along: 'width' | 'depth') => ({
			kind: 'dowel' as const,
			along,
			diameter: 20,
			a: along === 'width' ? 150 : 200,
			b: 150,
		});
		const length = (along: 'width' | 'depth'): number =>
			figures({ ...wedge, braces: [rod(along)] }).rods[0]!.length / 1600;
		expect(length('depth')).toBeCloseTo(300, 2);
		// 350 wide in the middle, both ends cut to walls that lean 1 in 6: ten millimetres off its
		// axis, 10/6 more at each.
		expect(length('width')).toBeCloseTo(350 + 20 / 6, 2);
	});

	it('braces that cross are told, and a slot is refused with what to do instead', () => {
		const asked: Asked = {
			...wedge,
			braces: [
				{ kind: 'window', across: 'width', at: 200 },
				{ kind: 'window', across: 'depth', at: 150 },
			],
		};
		expect(told(asked, 'braces')[0]).toMatch(/^check: .*cross each other/);
		expect(
			told(
				{ ...wedge, vents: [{ kind: 'slot', gap: 30, goal: { by: 'tuning', hertz: 40 } }] },
				'vents.0.along',
			)[0],
		).toMatch(/^stop: .*twist.*round vent/);
	});
});
