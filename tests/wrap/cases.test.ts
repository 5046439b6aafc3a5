import { describe, expect, it } from 'vitest';
import type { Outline } from '../../src/lib/geometry/outline';
import { rectangle } from '../../src/lib/geometry/tidy';
import { mirrored } from '../../src/lib/geometry/turn';
import { mm } from '../../src/lib/measure/length';
import { layOver } from '../../src/lib/wrap/girth';
import { crosses } from '../../src/lib/wrap/reliefs';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { carpet, covering, GROOVED, outline, SHOP } from './make';

/* What once went wrong, each as a case. */

const wrap = (c: Parameters<typeof covering>[0]) =>
	wrapCovering(covering(c), carpet(), SHOP, ['panels', 0]);

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
			'In a slot of the outline only 29.5 mm of cloth can be turned under; 50 mm is asked for.',
		]);
		expect(blanks[0]!.reliefs.slits).toBe(2);
	});
});

describe('two hundred corners and five layers', () => {
	it('are wrapped in well under 50 ms of computing', () => {
		const board = covering({
			outline: ring(200, 400, 5),
			edges: Array(200).fill(GROOVED),
			steps: [300, 250, 200, 150, 100].map((r, i) => ({
				outline: ring(200, r, 4),
				height: mm(6 + i),
				raised: i % 2 === 0,
			})),
		});
		// Computing time, not the wall clock, and the best of several: other work on the machine must not decide.
		const spent = Array.from({ length: 12 }, () => {
			const before = process.cpuUsage();
			wrapCovering(board, carpet({ standOff: 0.5 }), SHOP, ['panels', 0]);
			return process.cpuUsage(before).user / 1000;
		});
		expect(Math.min(...spent)).toBeLessThan(50);
	});
});
