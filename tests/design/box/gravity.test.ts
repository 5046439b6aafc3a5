import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toMm } from '../../../src/lib/measure';
import type { BoxFigures } from '../../../src/lib/design/box/box-plan';
import { runs } from '../../depth';
import { figures, made, told, type Asked } from './make';
import { fullBox, emptyBox } from './random';

const place = (g: { across: number; back: number; up: number } | null) =>
	g && { across: toMm(g.across), back: toMm(g.back), up: toMm(g.up) };

const PLAIN = { kind: 'plain' as const, width: 500, height: 400, depth: 350 };
const driver = {
	cutout: { kind: 'round' as const, diameter: 230 },
	frame: 260,
	depth: 120,
	displacement: 1.6,
};

describe('centre of gravity', () => {
	test('of a plain empty box it is the middle', () => {
		for (const fit of ['over', 'between'] as const)
			for (const joint of ['level-past', 'upright-past', 'mitre'] as const) {
				const found = place(figures({ shape: PLAIN, ends: { fit }, joint }).gravity);
				expect(found).toEqual({ across: 250, back: 175, up: 200 });
			}
	});

	test('a heavier front draws it forward, and a driver by its mass and two thirds of its depth', () => {
		const heavy = figures({ shape: PLAIN, boards: { front: { material: 'mdf-25' } } });
		expect(place(heavy.gravity)!.back).toBeLessThan(175);
		expect(place(heavy.gravity)!.across).toBe(250);
		const holed = figures({ shape: PLAIN, drivers: [driver] });
		const loaded = figures({ shape: PLAIN, drivers: [{ ...driver, mass: 7 }] });
		const before = place(holed.gravity)!.back;
		const want = (before * holed.loadedMass + 80 * 7) / (holed.loadedMass + 7);
		expect(loaded.loadedMass).toBeCloseTo(holed.loadedMass + 7, 9);
		expect(place(loaded.gravity)!.back).toBeCloseTo(want, 1);
		expect(before).toBeGreaterThan(175);
	});

	test('a shift of a driver by 100 mm shifts it by its share of the mass', () => {
		const at = (across: number) =>
			figures({ shape: PLAIN, drivers: [{ ...driver, mass: 7, at: { across } }] });
		const [left, right] = [at(200), at(300)];
		const open = (Math.PI / 4) * 0.23 ** 2 * 0.018 * 680;
		const moved = place(right.gravity)!.across - place(left.gravity)!.across;
		expect(moved).toBeCloseTo((100 * (7 - open)) / left.loadedMass, 1);
	});
});

interface Body {
	readonly outside: readonly P[];
	readonly inside: readonly P[];
}

type P = { readonly x: number; readonly y: number; readonly z: number };

/** Where the plane at this height crosses the edges of a convex body, once round it. */
function sectionAt({ outside, inside }: Body, z: number): P[] {
	const ring = (points: readonly P[]): [P, P][] =>
		points.map((p, i) => [p, points[(i + 1) % points.length]!]);
	const edges = [...ring(outside), ...ring(inside)].concat(outside.map((p, i) => [p, inside[i]!]));
	const met = edges.flatMap(([p, q]) => {
		if ((p.z - z) * (q.z - z) >= 0) return [];
		const t = (z - p.z) / (q.z - p.z);
		return [{ x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y), z }];
	});
	const mid = (k: 'x' | 'y') => met.reduce((sum, p) => sum + p[k], 0) / met.length;
	const [x, y] = [mid('x'), mid('y')];
	const turn = (p: P) => Math.atan2(p.y - y, p.x - x);
	return met.toSorted((p, q) => turn(p) - turn(q));
}

/** Area of a section, and its moment. */
function areaOf(section: readonly P[]): { area: number; x: number; y: number } {
	const sum = { area: 0, x: 0, y: 0 };
	const o = section[0];
	if (!o) return sum;
	section.forEach((p, i) => {
		const q = section[(i + 1) % section.length]!;
		const area = ((p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x)) / 2;
		sum.area += area;
		sum.x += (area * (o.x + p.x + q.x)) / 3;
		sum.y += (area * (o.y + p.y + q.y)) / 3;
	});
	return sum;
}

/**
 * Volume of a convex body and its moment, by level sections. Between one corner and the next one
 * up, each side of a section grows evenly: its moments go by the third power of the height, for
 * which two sections stand exactly, where Gauss puts them.
 */
function bySections(body: Body): P & { volume: number } {
	const heights = [...body.outside, ...body.inside].map((p) => p.z).sort((a, b) => a - b);
	const sum = { x: 0, y: 0, z: 0, volume: 0 };
	heights.slice(1).forEach((top, i) => {
		const half = (top - heights[i]!) / 2;
		if (half === 0) return;
		for (const side of [-1, 1]) {
			const z = top - half + (side * half) / Math.sqrt(3);
			const { area, x, y } = areaOf(sectionAt(body, z));
			sum.x += x * half;
			sum.y += y * half;
			sum.z += z * area * half;
			sum.volume += area * half;
		}
	});
	return sum;
}

/** Centre of gravity of boards without holes, each a convex body less its rabbets. */
function sectioned(found: BoxFigures): P {
	const sum = { x: 0, y: 0, z: 0, mass: 0 };
	for (const b of found.boards) {
		const body = bySections(b.solid);
		const cuts = b.rabbets.map(bySections);
		const left = (k: 'x' | 'y' | 'z' | 'volume') => cuts.reduce((m, c) => m - c[k], body[k]);
		const volume = left('volume');
		sum.x += (left('x') / volume) * b.mass;
		sum.y += (left('y') / volume) * b.mass;
		sum.z += (left('z') / volume) * b.mass;
		sum.mass += b.mass;
	}
	return { x: sum.x / sum.mass, y: sum.y / sum.mass, z: sum.z / sum.mass };
}

const convexForms = fc.oneof(emptyBox, fullBox).filter((a) => {
	const kind = a.shape.kind;
	// Ends of a stepped or cut box are no convex bodies, and windows are holes.
	return ['plain', 'slanted', 'tapered'].includes(kind);
});

test('of any box it is where level sections through its boards find it', () => {
	fc.assert(
		fc.property(convexForms, (whole) => {
			const asked: Asked = { ...whole, braces: [], vents: [], cleats: null };
			const plan = made(asked);
			const found = plan.figures;
			fc.pre(found !== undefined && found.gravity !== null);
			const points = found.boards
				.filter((b) => ['wall', 'end', 'overlay', 'ring'].includes(b.role))
				.flatMap((b) => b.solid.outside);
			const low = (k: 'x' | 'y' | 'z') => Math.min(...points.map((p) => p[k]));
			const mid = sectioned(found);
			const off = [
				mid.x - low('x') - found.gravity.across,
				mid.y - low('y') - found.gravity.back,
				mid.z - low('z') - found.gravity.up,
			].map((d) => Math.abs(d) / 1600);
			// Half a tick of rounding each for the figure and for the datum it is from.
			expect(Math.max(...off)).toBeLessThan(1 / 1600);
		}),
		{ numRuns: runs(200) },
	);
});

describe('tie-down points', () => {
	const tied = (more: object = {}): Asked => ({
		shape: PLAIN,
		tieDowns: [{ board: 'left', at: { across: 100, up: 50 }, ...more }],
	});

	test('stand where they were asked, from the datum of the box', () => {
		const [one] = figures(tied()).tieDowns;
		// The left end is seen from outside: its left edge is the back.
		expect(place(one!.place)).toEqual({ across: 0, back: 250, up: 50 });
		expect(one).toMatchObject({ name: 'Tie-down 1', board: 'Left end', hole: null });
		expect(figures(tied()).boards.flatMap((b) => b.holes)).toEqual([]);
	});

	test('a hole is bored through the board and what is glued to it, and takes its wood', () => {
		const doubled = { ...tied({ hole: 12 }), doublers: [{ board: 'left' as const }] };
		const holes = figures(doubled).boards.flatMap((b) => b.holes);
		expect(holes.map((h) => h.of)).toEqual(['tie-down', 'tie-down']);
		expect(figures(tied({ hole: 12 })).mass).toBeLessThan(figures(tied()).mass);
	});

	test('off the board, on a board there is not, over a driver: said', () => {
		expect(told(tied({ at: { across: 900, up: 50 } }), 'tieDowns.0.at')).toEqual([
			'stop: Tie-down 1 does not lie within its board. Move it inwards or take another board.',
		]);
		expect(told(tied({ board: 'cut' }), 'tieDowns.0.board')).toHaveLength(1);
		const over = {
			shape: PLAIN,
			drivers: [driver],
			tieDowns: [{ board: 'front' as const, hole: 12 }],
		};
		expect(told(over, 'tieDowns.0.at')).toEqual([expect.stringContaining('overlap by')]);
		const twice = {
			shape: PLAIN,
			tieDowns: [{ name: 'Eye' }, { name: 'Eye', board: 'top' as const }],
		};
		expect(told(twice, 'tieDowns.1.name')).toHaveLength(1);
	});
});
