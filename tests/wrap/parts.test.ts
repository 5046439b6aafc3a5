import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mm, toMm } from '../../src/lib/measure/length';
import { heightsBetween, levelLines, risingEdges } from '../../src/lib/wrap/girth/level-lines';
import { clothShape } from '../../src/lib/wrap/marks/cloth-shape';
import { clothMass, weighed } from '../../src/lib/wrap/mass';
import { foamStageNote, stageArea, stageNote, stagesFor } from '../../src/lib/wrap/stages';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { runs } from '../depth';
import { carpet, covering, outline, SHOP } from './make';
import { anyCovering } from './random-covering';

const QUARTER = Math.tan(Math.PI / 8);

describe('the parts of a seamed cloth', () => {
	// Both ends of the board are rounded, so that notches of a row lie on each part.
	const bow = outline(
		[100, 0],
		[900, 0, QUARTER],
		[1000, 100],
		[1000, 200, QUARTER],
		[900, 300],
		[100, 300, QUARTER],
		[0, 200],
		[0, 100, QUARTER],
	);
	const whole = wrapCovering(covering({ outline: bow }), carpet(), SHOP, []).blanks[0]!;
	const shop = { ...SHOP, usable: mm(300) };
	const parts = wrapCovering(
		covering({ outline: bow }),
		carpet({ nap: 'one-way' }),
		shop,
		[],
	).blanks;

	it('count the cuts that are marked on them', () => {
		expect(parts).toHaveLength(2);
		expect(whole.reliefs.notches).toBeGreaterThan(8);
		for (const { marks, reliefs } of parts) {
			const notches = marks.filter((m) => m.kind === 'notch');
			expect(reliefs.notches).toBe(notches.filter((m) => !m.corner).length);
			expect(reliefs.corners).toBe(notches.filter((m) => m.corner).length);
			expect(reliefs.slits).toBe(marks.filter((m) => m.kind === 'slit').length);
		}
		const all = parts.reduce((sum, p) => sum + p.reliefs.notches, 0);
		expect(all).toBeGreaterThanOrEqual(whole.reliefs.notches);
	});

	it('say on each how they are joined, once', () => {
		const lap =
			'Lay the parts over each other by 20 mm and cut through both layers in one stroke along the seam line.';
		for (const { notes } of parts) expect(notes.filter((n) => n === lap)).toHaveLength(1);
		expect(whole.notes).not.toContain(lap);
	});

	it('lie on the whole where they say', () => {
		expect(parts.map(({ partAt }) => [toMm(partAt!.x), toMm(partAt!.y)])).toEqual([
			[0, expect.any(Number)],
			[0, expect.any(Number)],
		]);
		const [low, high] = parts.map((p) => p.partAt!.y + 0).sort((a, b) => a - b);
		const first = parts.find((p) => p.partAt!.y === low)!;
		expect(low).toBe(0);
		// The second begins one lap before the first ends.
		expect(toMm(first.width - high!)).toBeCloseTo(20, 1);
	});
});

describe('the mass of cloth', () => {
	it('is that of every copy, each as it is cut, for its own panel or box alone', () => {
		const c = covering({ outline: rectangle(0, 0, mm(900), mm(400)), count: 3 });
		const [blank] = wrapCovering(c, carpet(), SHOP, []).blanks;
		// 1000 x 500 mm of 0.6 kg a square metre.
		const [one] = weighed([blank!], { massPerArea: 0.6 });
		expect(one!.mass).toBeCloseTo(0.3, 9);
		expect(clothMass([one!], 'tray')).toBeCloseTo(0.9, 9);
		expect(clothMass([one!, one!], 'tray')).toBeCloseTo(1.8, 9);
		expect(clothMass([one!], 'other')).toBe(0);
	});
});

describe('gluing in stages', () => {
	// Ten minutes are left after drying; a square metre takes two to coat on both faces and three
	// to lay: two square metres a stage.
	const pace = { open: 12, dry: 2, coat: 1, lay: 1 / 3 };

	it('takes as many as the open time asks for, none for a rounding error', () => {
		expect(stageArea(pace)).toBeCloseTo(2, 12);
		expect([0, 1e6, 2e6, 2.001e6, 4e6, 4.001e6].map((a) => stagesFor(a, pace))).toEqual([
			...[1, 1, 1, 2, 2, 3],
		]);
		expect(stagesFor(2e6 * (1 + 1e-12), pace)).toBe(1);
		expect(() => stagesFor(1, { ...pace, dry: 12 })).toThrow('bug:');
	});

	it('is written on the blank with the share of each, and not where one will do', () => {
		expect(stageNote({ bonded: 2e6 }, pace)).toBe(null);
		expect(stageNote({ bonded: 5e6 }, pace)).toMatch(/^Glue it in 3 stages of about 1\.67 m²/);
		expect(foamStageNote({ foam: 4.2e6 }, pace)).toMatch(/foam on in 3 stages of about 1\.4 m²/);
		expect(foamStageNote({}, pace)).toBe(null);
	});
});

describe('level lines', () => {
	const triangle = [
		{ x: 0, y: 0 },
		{ x: 10, y: 0 },
		{ x: 5, y: 20 },
	];

	it('are drawn between any two heights at which something changes', () => {
		// The left edge crosses x = 2 at a height of 8, the right one x = 8.
		expect(heightsBetween([{ points: triangle }], 2)).toEqual([4, 14]);
		expect(heightsBetween([{ points: triangle }], 8)).toEqual([4, 14]);
		expect(heightsBetween([{ points: triangle }], -1)).toEqual([10]);
	});

	it('meet the edges where they are', () => {
		const met: number[][] = [];
		levelLines(risingEdges([{ points: triangle }]), [4, 14], (edges) =>
			met.push(edges.map((e) => e.at).sort((a, b) => a - b)),
		);
		expect(met).toEqual([
			[1, 9],
			[3.5, 6.5],
		]);
	});
});

it('no two corners of a cloth lie within four ticks of each other', () => {
	const law = fc.property(anyCovering(3), (c) => {
		const { outline: cloth } = clothShape(c);
		const sides = cloth.map((p, i) => {
			const q = cloth[(i + 1) % cloth.length]!;
			return Math.hypot(q.x - p.x, q.y - p.y);
		});
		expect(Math.min(...sides)).toBeGreaterThanOrEqual(4);
	});
	fc.assert(law, { numRuns: runs(100) });
});
