import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import type { BoxBoard, BoxFigures, Placing } from '../../../src/lib/design/box/box-plan';
import { mm, toMm } from '../../../src/lib/measure/length';
import { area, boundsOfPoints, type Outline, type Point } from '../../../src/lib/geometry';
import { bodyOf } from './kernel';
import { figures, made, type Asked } from './make';
import { fullBox, fullTapered } from './random';

/** 464 x 364 x 364 mm inside. */
const PLAIN: Asked = { shape: { kind: 'plain', width: 500, height: 400, depth: 400 } };
const FRAME = { kind: 'window', across: 'width', at: 200, rim: 50 } as const;

const inMm = (outline: Outline): number[][] => {
	const { x, y, length, width } = boundsOfPoints(outline);
	return [
		[x, x + length],
		[y, y + width],
	].map((pair) => pair.map((n) => toMm(n)));
};

function feetOn(f: BoxFigures, key: string, face: Placing['face'] = 'inside') {
	const board = f.boards.find((b) => b.key === key)!;
	const feet = board.placing.find((p) => p.face === face)?.feet ?? [];
	return Object.fromEntries(feet.map((foot) => [foot.name, inMm(foot.outline)]));
}

describe('placing lines', () => {
	it('are not drawn where nothing stands inside', () => {
		const f = figures(PLAIN);
		expect(f.placed).toEqual([]);
		expect(f.boards.flatMap((b) => b.placing)).toEqual([]);
	});

	it('stand where a frame stands, on the four boards round it, seen from inside', () => {
		const f = figures({ ...PLAIN, braces: [FRAME] });
		// The frame is 18 mm thick about 200 from the left end inside. Top and bottom run past the
		// front and the back and the ends go over them: their inside face is 464 wide and 400 deep.
		expect(feetOn(f, 'front')).toEqual({
			// From inside the left end lies to the right.
			'Window brace 1': [
				[464 - 209, 464 - 191],
				[0, 364],
			],
		});
		expect(feetOn(f, 'back')).toEqual({
			'Window brace 1': [
				[191, 209],
				[0, 364],
			],
		});
		expect(feetOn(f, 'bottom')['Window brace 1']![1]).toEqual([18, 382]);
		expect(feetOn(f, 'left')).toEqual({});
		expect(f.placed.map(({ key: _, ...place }) => place)).toEqual([
			{
				label: 'B7',
				name: 'Window brace 1',
				fromLeft: [mm(191), mm(209)],
				fromFront: [0, mm(364)],
				fromBottom: [0, mm(364)],
			},
		]);
	});

	it('of a divider stand on the walls, and of a frame on both sides of the divider', () => {
		const f = figures({
			...PLAIN,
			dividers: [{ across: 'height', at: 150 }],
			braces: [FRAME],
		});
		expect(Object.keys(feetOn(f, 'front'))).toEqual(['Divider', 'Window brace 1']);
		expect(feetOn(f, 'divider-1', 'inside')['Window brace 1']![0]).toEqual([464 - 209, 464 - 191]);
		expect(feetOn(f, 'divider-1', 'outside')['Window brace 1']![0]).toEqual([191, 209]);
	});

	it('of a rod are its place', () => {
		const f = figures({
			...PLAIN,
			braces: [{ kind: 'dowel', along: 'width', diameter: 20, a: 60, b: 90 }],
		});
		expect(f.rods[0]!.place).toEqual({
			fromLeft: [0, mm(464)],
			fromFront: [mm(60), mm(60)],
			fromBottom: [mm(90), mm(90)],
		});
	});

	it('lie where the bodies touch, whatever stands inside', () => {
		fc.assert(fc.property(fc.oneof(fullBox, fullTapered), touches), {
			numRuns: runs(60),
			seed: 20265,
		});
	});
});

/** A hair, mm: a body moved by it reaches into the one it stands on. */
const HAIR = 0.02;

/** What the lines enclose is what the bodies share once one is pushed into the other. */
function touches(asked: Asked): void {
	const plan = made(asked);
	const f = plan.figures;
	fc.pre(f !== undefined && !plan.problems.some((p) => p.kind === 'stop'));
	const byKey = new Map(f.boards.map((b) => [b.key, b]));
	for (const board of f.boards) {
		const whole = bodyOf(board.solid);
		for (const { face, feet, outline } of board.placing) {
			const looks = face === 'inside' ? -1 : 1;
			const { n } = board.frame;
			for (const key of new Set(feet.map((foot) => foot.key))) {
				const other = bodyOf(byKey.get(key)!.solid);
				const by = -looks * HAIR;
				const shared = other.translate([n.x * by, n.y * by, n.z * by]).intersect(whole);
				const own = feet.filter((foot) => foot.key === key);
				const told = own.reduce((sum, foot) => sum + Math.abs(area(foot.outline)), 0) / 1600 ** 2;
				expect(Math.abs(shared.volume() / HAIR - told)).toBeLessThan(0.01 * told + 2);
				const { min, max } = shared.boundingBox();
				for (const foot of own)
					for (const p of foot.outline.map((c) => inBox(board, face, outline, c)))
						[p.x, p.y, p.z].forEach((at, i) => {
							expect(at).toBeGreaterThan(min[i]! - 2 * HAIR);
							expect(at).toBeLessThan(max[i]! + 2 * HAIR);
						});
			}
		}
	}
}

/** A point of a face, as it is looked at, back in the box. mm. */
function inBox(board: BoxBoard, face: Placing['face'], outline: Outline, p: Point) {
	const { u, v } = board.frame;
	const corners = board.solid[face];
	const along = (q: typeof u, axis: typeof u): number => q.x * axis.x + q.y * axis.y + q.z * axis.z;
	const us = corners.map((q) => along(q, u));
	const low = Math.min(...corners.map((q) => along(q, v)));
	const wide = boundsOfPoints(outline).length;
	const x = face === 'inside' ? Math.min(...us) + wide - p.x : Math.min(...us) + p.x;
	const out = along(corners[0]!, board.frame.n);
	const y = low + p.y;
	const at = (axis: 'x' | 'y' | 'z'): number =>
		toMm(u[axis] * x + v[axis] * y + board.frame.n[axis] * out);
	return { x: at('x'), y: at('y'), z: at('z') };
}
