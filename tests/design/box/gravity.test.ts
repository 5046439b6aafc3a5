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

interface Axes {
	readonly u: P;
	readonly v: P;
	readonly n: P;
}

/** Volume of a convex body and its moment, by points in a grid as its board lies; ticks. */
function sampledBody(body: Body, { u, v, n }: Axes, step: number): P & { volume: number } {
	const faces = facesOf(body);
	const all = [...body.outside, ...body.inside];
	const [us, vs, ns] = [u, v, n].map((axis) => {
		const low = Math.min(...all.map((p) => dot(p, axis)));
		const size = Math.max(...all.map((p) => dot(p, axis))) - low;
		const count = Math.max(4, Math.ceil(size / step));
		return {
			size: size / count,
			at: Array.from({ length: count }, (_, i) => low + ((i + 0.5) / count) * size),
		};
	});
	const cell = us!.size * vs!.size * ns!.size;
	const sum = { x: 0, y: 0, z: 0, volume: 0 };
	for (const a of us!.at)
		for (const b of vs!.at)
			for (const c of ns!.at) {
				const along = (k: 'x' | 'y' | 'z') => a * u[k] + b * v[k] + c * n[k];
				const p = { x: along('x'), y: along('y'), z: along('z') };
				if (!within(faces, p)) continue;
				sum.x += p.x * cell;
				sum.y += p.y * cell;
				sum.z += p.z * cell;
				sum.volume += cell;
			}
	return sum;
}

/** Centre of gravity of boards without holes, each a convex body less its rabbets. */
function sampled(found: BoxFigures, step: number): P {
	const sum = { x: 0, y: 0, z: 0, mass: 0 };
	for (const b of found.boards) {
		const body = sampledBody(b.solid, b.frame, step);
		const cuts = b.rabbets.map((r) => sampledBody(r, b.frame, step));
		const left = (k: 'x' | 'y' | 'z' | 'volume') => cuts.reduce((m, c) => m - c[k], body[k]);
		const volume = left('volume');
		sum.x += (left('x') / volume) * b.mass;
		sum.y += (left('y') / volume) * b.mass;
		sum.z += (left('z') / volume) * b.mass;
		sum.mass += b.mass;
	}
	return { x: sum.x / sum.mass, y: sum.y / sum.mass, z: sum.z / sum.mass };
}

type P = { readonly x: number; readonly y: number; readonly z: number };
interface Face {
	readonly n: P;
	readonly at: P;
}
const minus = (a: P, b: P): P => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const dot = (a: P, b: P): number => a.x * b.x + a.y * b.y + a.z * b.z;
const cross = (a: P, b: P): P => ({
	x: a.y * b.z - a.z * b.y,
	y: a.z * b.x - a.x * b.z,
	z: a.x * b.y - a.y * b.x,
});

/** The faces of a convex body, looking away from its middle. */
function facesOf({ outside, inside }: Body): Face[] {
	const all = [...outside, ...inside];
	const mid = all.reduce((s, p) => ({ x: s.x + p.x, y: s.y + p.y, z: s.z + p.z }));
	const middle = { x: mid.x / all.length, y: mid.y / all.length, z: mid.z / all.length };
	const rings = [
		[...outside],
		[...inside],
		...outside.map((p, i) => [p, outside[(i + 1) % outside.length]!, inside[i]!]),
	];
	return rings.map((ring) => {
		const at = ring[0]!;
		const n = cross(minus(ring[1]!, at), minus(ring[2]!, at));
		const out = dot(n, minus(at, middle)) > 0;
		return { at, n: out ? n : { x: -n.x, y: -n.y, z: -n.z } };
	});
}

const within = (faces: readonly Face[], p: P): boolean =>
	faces.every((f) => dot(f.n, minus(p, f.at)) <= 0);

const convexForms = fc.oneof(emptyBox, fullBox).filter((a) => {
	const kind = a.shape.kind;
	// Ends of a stepped or cut box are no convex bodies, and windows are holes.
	return ['plain', 'slanted', 'tapered'].includes(kind);
});

test('of any box it is where sampling its boards finds it', () => {
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
			const mid = sampled(found, 20 * 1600);
			const off = [
				mid.x - low('x') - found.gravity.across,
				mid.y - low('y') - found.gravity.back,
				mid.z - low('z') - found.gravity.up,
			].map((d) => Math.abs(d) / 1600);
			expect(Math.max(...off)).toBeLessThan(1.5);
		}),
		{ numRuns: runs(40) },
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
