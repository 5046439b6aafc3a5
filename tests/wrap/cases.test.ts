import { stepsOf } from '../steps';
import { describe, expect, it } from 'vitest';
import { distanceTo, whereIs } from '../../src/lib/geometry/meeting/inside';
import type { Outline } from '../../src/lib/geometry/outline';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mirrored } from '../../src/lib/geometry/turn';
import { mm } from '../../src/lib/measure/length';
import { clothShape } from '../../src/lib/wrap/marks/cloth-shape';
import { layOver } from '../../src/lib/wrap/girth/girth';
import { crosses } from '../../src/lib/wrap/reliefs/folds';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { BARE, carpet, covering, GROOVED, outline, PLAIN, SHOP } from './make';

/* What once went wrong, each as a case. */

const wrap = (c: Parameters<typeof covering>[0]) =>
	wrapCovering(covering(c), carpet(), SHOP, ['panels', 0]);

const SMALL = { ...PLAIN, build: mm(6) };

/** A ring drawn with short straight edges, waved or plain, as a drawing program hands it over. */
function ring(n: number, radius: number, waves = 0, from = 0): Outline {
	return Array.from({ length: n }, (_, i) => {
		const a = (2 * Math.PI * (i + from)) / n;
		const r = radius * (1 + 0.12 * Math.sin(waves * a));
		return { x: mm(500 + r * Math.cos(a)), y: mm(400 + 0.7 * r * Math.sin(a)) };
	});
}

describe('a step that ends right in the middle of the largest one', () => {
	it('is climbed on both sides alike, so that left and right stay a pair', () => {
		const outline = rectangle(0, 0, mm(600), mm(300));
		const steps = [
			{ outline: rectangle(mm(200), mm(100), mm(200), mm(100)), height: mm(6), raised: true },
			{ outline: rectangle(mm(250), mm(120), mm(50), mm(40)), height: mm(4), raised: true },
		];
		const flip = (o: Outline) => mirrored(o, mm(300));
		const left = layOver({ outline, steps }).climb;
		const right = layOver({
			outline: flip(outline),
			steps: steps.map((s) => ({ ...s, outline: flip(s.outline) })),
		}).climb;
		expect(right.left).toBe(left.right);
		expect(right.right).toBe(left.left);
		expect(left.left + left.right).toBe(mm(20));
	});
});

describe('a curve of short edges', () => {
	it('gets the same reliefs wherever its outline starts', () => {
		const starts = [0, 7, 23].map((from) => wrap({ outline: ring(48, 300, 0, from) }).blanks[0]!);
		expect(new Set(starts.map((b) => JSON.stringify(b.reliefs))).size).toBe(1);
	});

	it('gets far fewer notches than it has corners', () => {
		const { notches } = wrap({ outline: ring(400, 300) }).blanks[0]!.reliefs;
		expect(notches).toBeGreaterThan(30);
		expect(notches).toBeLessThan(90);
	});
});

describe('a sharp corner', () => {
	it('has a notch that stays outside the fold on its way round', () => {
		const wedge = outline([0, 0], [400, 0], [60, 160]);
		const blank = wrap({ outline: wedge }).blanks[0]!;
		const folds = blank.marks.filter((m) => m.kind === 'fold');
		expect(blank.reliefs.corners).toBe(3);
		for (const n of blank.marks.filter((m) => m.kind === 'notch'))
			for (const f of folds) expect(crosses([...n.line, n.line[0]!], f.line)).toBe(false);
	});
});

describe('a slot narrower than two turn-unders', () => {
	it('shares what is there between both sides and says so', () => {
		const slot = outline(
			[0, 0],
			[600, 0],
			[600, 300],
			[330, 300],
			[330, 100],
			[270, 100],
			[270, 300],
			[0, 300],
		);
		const { blanks, problems } = wrap({ outline: slot });
		expect(problems.map((p) => p.what)).toEqual([
			'Tray face: in a slot of the outline only 29.5 mm of cloth can be turned under; 50 mm is asked for.',
		]);
		expect(blanks[0]!.reliefs.slits).toBe(2);
	});
});

describe('two hundred corners and five layers', () => {
	const steps = (corners: number): number => {
		const board = covering({
			outline: ring(corners, 400, 5),
			edges: Array(corners).fill(GROOVED),
			steps: [300, 250, 200, 150, 100].map((r, i) => ({
				outline: ring(corners, r, 4),
				height: mm(6 + i),
				raised: i % 2 === 0,
			})),
		});
		return stepsOf(() => wrapCovering(board, carpet({ standOff: 0.5 }), SHOP, ['panels', 0]));
	};

	it('are wrapped in under a million steps, and twice the corners in about twice as many', () => {
		expect(steps(200)).toBeLessThan(1e6);
		expect(steps(400) / steps(200)).toBeLessThan(2.3);
	});
});

describe('a blunt inside corner between a bare and a wrapped edge', () => {
	it('leaves no gap between the two flaps where steps push both outwards', () => {
		const board = outline(
			[664.029375, 643.59125, 0.39],
			[589.89625, 755.655],
			[388.725625, 844.47375],
			[218.453125, 597.64875, 0.4],
			[176.72625, 412.141875],
			[296.579375, 235.0925],
			[606.814375, 196.233125],
			[676.068125, 345.870625],
			[717, 500],
		);
		const steps = [
			{ outline: rectangle(mm(350), mm(350), mm(20), mm(20)), height: mm(18), raised: false },
			{ outline: rectangle(mm(350), mm(361), mm(20), mm(20)), height: mm(7), raised: false },
		];
		const edges = [BARE, SMALL, PLAIN, GROOVED, BARE, BARE, PLAIN, PLAIN, GROOVED];
		const shape = clothShape(covering({ outline: board, steps, edges }));
		// Inside the arc, near its end: what the steps push outwards there must not fall into the
		// gap.
		const corner = { x: mm(619.88625), y: mm(732.031875) };
		const { left, right, down, up } = shape.laid.climb;
		for (const x of [-left, right])
			for (const y of [-down, up]) {
				const p = { x: corner.x + x, y: corner.y + y };
				const on = whereIs(p, shape.outline) !== 'outside' || distanceTo(p, shape.outline) < 4;
				expect(on).toBe(true);
			}
	});
});
