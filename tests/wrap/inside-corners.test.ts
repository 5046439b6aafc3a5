import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { area } from '../../src/lib/geometry/extent';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mirrored, mirrorOrder } from '../../src/lib/geometry/turn';
import { mm, toMm } from '../../src/lib/measure/length';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { runs } from '../depth';
import { BARE, carpet, covering, outline, PLAIN, SHOP } from './make';

const EDGE = { ...PLAIN, build: mm(12) };
const HARD = { stretchAlong: 0, stretchAcross: 0 };
type Changes = Partial<Parameters<typeof covering>[0]>;

const wrap = (c: Changes & { outline: ReturnType<typeof outline> }, cloth = {}) =>
	wrapCovering(
		covering({
			insideCorners: 'said',
			edges: c.outline.map((_, i) => ({ ...EDGE, numbers: [i + 1] })),
			...c,
		}),
		carpet({ stretchAlong: 5, stretchAcross: 8, ...cloth }),
		SHOP,
		['panels', 0],
	);

/** An L 600 x 400 with its notch at the upper right; the inside corner lies at 300, 200. */
const ell = outline([0, 0], [600, 0], [600, 200], [300, 200], [300, 400], [0, 400]);
const QUARTER = Math.tan(Math.PI / 8);
/** The same with the inside corner rounded to `r`: the edge that bends is edge 4. */
const rounded = (r: number) =>
	outline(
		[0, 0],
		[600, 0],
		[600, 200],
		[300 + r, 200, -QUARTER],
		[300, 200 + r],
		[300, 400],
		[0, 400],
	);
const board = rectangle(0, 0, mm(600), mm(400));
const windowed = (hole: ReturnType<typeof outline>, changes: Changes = {}) => ({
	outline: board,
	windows: [{ outline: hole, edge: EDGE, name: 'Hatch', index: 2 }],
	...changes,
});
/** 200 x 150 with all corners rounded to `r`. */
const hatch = (r: number) =>
	r === 0
		? rectangle(mm(200), mm(150), mm(200), mm(150))
		: outline(
				[200 + r, 150],
				[400 - r, 150, QUARTER],
				[400, 150 + r],
				[400, 300 - r, QUARTER],
				[400 - r, 300],
				[200 + r, 300, QUARTER],
				[200, 300 - r],
				[200, 150 + r, QUARTER],
			);
const corners = (made: ReturnType<typeof wrap>) =>
	made.blanks[0]!.verdicts!.filter((v) => v.where.includes('inside corner'));

/** A hole 200 x 150 with its four corners rounded to these radii, from the lower left round. */
const uneven = ([a, b, c, d]: readonly [number, number, number, number]) =>
	outline(
		[200 + a, 150],
		[400 - b, 150, QUARTER],
		[400, 150 + b],
		[400, 300 - c, QUARTER],
		[400 - c, 300],
		[200 + d, 300, QUARTER],
		[200, 300 - d],
		[200, 150 + a, QUARTER],
	);

describe('a hole with corners of several radii', () => {
	it('is told of once, with its radii and what the tightest asks', () => {
		const made = wrap(windowed(uneven([20, 30, 30, 45])), HARD);
		// 12 / (20 - 12) = 150 %; each opens by a quarter circle of radius 12 in all.
		const told = made.problems.filter((p) => p.what.includes('inside corners'));
		expect(told.map((p) => [p.kind, p.path.join('.'), p.what])).toEqual([
			[
				'note',
				'panels.0.windows.2',
				'Tray face: Hatch, inside corners, radii 20 mm, 30 mm and 45 mm. At the tightest the cloth must stretch by 150 % and gives 0 %; ' +
					'slit there, its cuts open by up to 18.9 mm in all at the foot of the edge, 12 mm high.',
			],
		]);
		expect(corners(made).map((v) => [v.asks, v.takes])).toEqual([[150, false]]);
	});

	it('tells those that leave bare board from those that do not', () => {
		const { problems } = wrap(windowed(uneven([8, 10, 30, 30])), HARD);
		const told = problems.filter((p) => p.what.includes('inside corners'));
		expect(told.map((p) => [p.kind, /corners, (.*?)\./.exec(p.what)?.[1]])).toEqual([
			['check', 'radii 8 mm and 10 mm'],
			['note', 'radius 30 mm'],
		]);
	});

	it('with more radii than are worth a list tells the tightest and the widest', () => {
		const star = outline(
			...[...Array(8).keys()].flatMap((i): [number, number, number][] => {
				const along = (i * Math.PI) / 4;
				const reach = 60 + 8 * i;
				return [[300 + reach * Math.cos(along), 200 + reach * Math.sin(along), 0.1]];
			}),
		);
		const { problems } = wrap(windowed(star), HARD);
		const told = problems.filter((p) => /radii from [\d.]+ mm to [\d.]+ mm/.test(p.what));
		expect(told).toHaveLength(1);
	});
});

describe('an inside corner of an outline', () => {
	it('that is sharp is said, with the bare board it would leave', () => {
		const made = wrap({ outline: ell }, HARD);
		expect(made.problems).toEqual([
			{
				path: ['panels', 0],
				kind: 'check',
				what:
					'Tray face: Edges, inside corner between edges 3 and 4, sharp. The cloth must stretch by more than any cloth gives and gives 0 %; ' +
					'slit there, the edge shows bare board 12 mm high and 24 mm wide at its foot.',
				fix: 'Ask for corner patches, or leave the edge bare.',
			},
		]);
		expect(corners(made).map((v) => [v.asks, v.gives, v.takes])).toEqual([[999, 0, false]]);
	});

	it('is offered the radius that would do, and that radius does', () => {
		// 12 x (1 + 1 / 0.05) = 252
		expect(wrap({ outline: ell }).problems[0]!.fix).toMatch(
			/^Round the board there to 252 mm, or /,
		);
		const tall = outline(
			[0, 0],
			[900, 0],
			[900, 300],
			[552, 300, -QUARTER],
			[300, 552],
			[300, 900],
			[0, 900],
		);
		const made = wrap({ outline: tall });
		expect(made.problems).toEqual([]);
		expect(corners(made).map((v) => [v.asks, v.takes])).toEqual([[5, true]]);
		const [tighter] = corners(wrap({ outline: tall }, { stretchAlong: 4.9 }));
		expect(tighter!.takes).toBe(false);
	});

	it('is judged with its own radius and the height of its edge', () => {
		// 12 / (60 - 12) = 25 %; its slits open by a quarter circle of radius 12 in all.
		const [told] = wrap({ outline: rounded(60) }).problems;
		expect(told!.kind).toBe('note');
		expect(told!.what).toContain(
			'along edge 4, radius 60 mm. The cloth must stretch by 25 % and gives 5 %',
		);
		expect(told!.what).toContain('open by 18.9 mm in all at the foot of the edge, 12 mm high');
		expect(
			wrap({ outline: rounded(60) }, { stretchAlong: 25, stretchAcross: 25 }).problems,
		).toEqual([]);
		// No radius helps where the corner is as tight as the edge is high.
		expect(
			wrap({ outline: rounded(12) }, { stretchAlong: 99, stretchAcross: 99 }).problems[0]!.kind,
		).toBe('check');
	});

	it('is not judged where one of its edges is not turned under, on a box, or where there is none', () => {
		const edges = ell.map((_, i) => (i === 2 ? BARE : EDGE));
		expect(corners(wrap({ outline: ell, edges }, HARD))).toEqual([]);
		const whole = covering({ outline: ell, edges: ell.map(() => EDGE) });
		const box = Object.fromEntries(Object.entries(whole).filter(([k]) => k !== 'insideCorners'));
		const boxed = wrapCovering(box as unknown as typeof whole, carpet(HARD), SHOP, []);
		expect(corners(boxed)).toEqual([]);
		expect(corners(wrap({ outline: board }, HARD))).toEqual([]);
	});

	it('keeps the cloth on the edge whole where it stretches, and slits the back alone', () => {
		const slits = (cloth: object) =>
			wrap({ outline: rounded(60) }, cloth).blanks[0]!.marks.filter((m) => m.kind === 'slit');
		const length = (m: { line: readonly { x: number; y: number }[] }) =>
			Math.hypot(m.line[0]!.x - m.line[1]!.x, m.line[0]!.y - m.line[1]!.y);
		const whole = slits({ stretchAlong: 25, stretchAcross: 25 });
		const cut = slits({ stretchAlong: 24, stretchAcross: 24 });
		expect(whole.length).toBe(cut.length);
		// The point lies 12 mm from the fold, down the edge, instead of the 3 mm of the cloth.
		whole.forEach((m, i) =>
			expect(toMm(Math.round(length(cut[i]!) - length(m)) as never)).toBeCloseTo(9, 0),
		);
	});
});

describe('the corners of a window', () => {
	it('are said at the window, all that are alike as one', () => {
		const { problems } = wrap(windowed(hatch(0)));
		expect(problems.map((p) => [p.path.join('.'), p.kind])).toEqual([
			['panels.0.windows.2', 'check'],
		]);
		expect(problems[0]!.what).toContain('Hatch, inside corners, sharp.');
	});

	it('are a note where they are rounded wider than the edge is high', () => {
		// 12 / (25 - 12) = 92.3 %
		const { problems } = wrap(windowed(hatch(25)));
		expect(problems.map((p) => p.kind)).toEqual(['note', 'note']);
		expect(problems[0]!.what).toContain('radius 25 mm. The cloth must stretch by 92.3 %');
		expect(
			wrap(windowed(hatch(25)), { stretchAlong: 95, stretchAcross: 93 }).problems,
		).toHaveLength(1);
	});

	it('rounded tighter than the turn-under is wide are a note that says which and by how much', () => {
		const wide = wrap(windowed(hatch(25)), { stretchAlong: 95, stretchAcross: 95 });
		expect(wide.problems.map((p) => [p.kind, p.what])).toEqual([
			[
				'note',
				'Tray face: in Hatch the inside corner of radius 25 mm leaves 24.5 mm of cloth to be turned under instead of 52 mm.',
			],
		]);
		// Radius 12 with an edge of 12: nothing of it reaches the back.
		const kinds = wrap(windowed(hatch(12)), { stretchAlong: 95, stretchAcross: 95 }).problems;
		expect(kinds.map((p) => p.kind)).toEqual(['check', 'check']);
		// Wide corners of a window of the same size say nothing.
		const even = { stretchAlong: 95, stretchAcross: 95 };
		expect(wrap(windowed(hatch(53)), even).problems).toEqual([]);
	});

	it('of an edge cut flush ask for nothing', () => {
		const made = wrap({ outline: board, windows: [{ outline: hatch(0), edge: BARE }] });
		expect([made.problems, corners(made)]).toEqual([[], []]);
	});
});

describe('corner patches', () => {
	const patched = (c: Parameters<typeof wrap>[0], cloth = {}) => {
		const made = wrap({ ...c, insideCorners: 'patched' }, cloth);
		return { ...made, patches: made.blanks.filter((b) => b.label.includes('k')) };
	};

	it('are one for each corner that needs one, and take the place of the complaint', () => {
		const { patches, problems, blanks } = patched({ outline: ell }, HARD);
		expect(problems).toEqual([]);
		expect(patches.map((p) => [p.id, p.label, p.covers])).toEqual([
			['tray.face.k1', 'C1k1', 'inside corner between edges 3 and 4'],
		]);
		expect(blanks[0]!.notes[0]).toContain('patch C1k1');
		expect(patches[0]!.lot).toBe(blanks[0]!.lot);
		expect(patches[0]!.lot).not.toBe('');
	});

	it('cover what the flaps leave bare, and a lap on each side', () => {
		// Upper edge 2 x 20; foot 24 + 2 x 20 wide, 12 down; then 40 on the back.
		const [patch] = patched({ outline: ell }, HARD).patches;
		const size = ((40 + 64) / 2) * 12 + 64 * 40;
		expect(Math.abs(area(patch!.outline)) / mm(1) ** 2).toBeCloseTo(size, 0);
		expect(patch!.bonded).toBeCloseTo(size, 0);
		expect(patch!.reliefs.slits).toBe(1);
	});

	it('are as long as the curve where the corner is round', () => {
		// A quarter of radius 60, and laps: nothing is short at the foot.
		const [patch] = patched({ outline: rounded(60) }).patches;
		const wide = (Math.PI / 2) * 60 + 40;
		expect(Math.abs(area(patch!.outline)) / mm(1) ** 2).toBeCloseTo(wide * 52, -1);
	});

	it('are two for two corners, four for a window, none where the cloth gives enough', () => {
		const tee = outline(
			[0, 0],
			[600, 0],
			[600, 200],
			[400, 200],
			[400, 400],
			[200, 400],
			[200, 200],
			[0, 200],
		);
		expect(patched({ outline: tee }).patches.map((p) => p.covers)).toEqual([
			'inside corner between edges 3 and 4',
			'inside corner between edges 6 and 7',
		]);
		expect(patched(windowed(hatch(0))).patches.map((p) => p.covers)).toEqual(
			Array(4).fill('inside corner of Hatch'),
		);
		expect(patched(windowed(hatch(25)), { stretchAlong: 95, stretchAcross: 95 }).patches).toEqual(
			[],
		);
		expect(wrap({ outline: tee }).blanks).toHaveLength(1);
	});

	it('of a pair are mirror images and say the same', () => {
		const left = patched({ outline: ell, nap: -90 });
		const edges = ell.map((_, i) => ({ ...EDGE, numbers: [i + 1] }));
		const right = patched({ outline: mirrored(ell), edges: mirrorOrder(edges), nap: 270 });
		expect(right.patches.map((p) => p.covers)).toEqual(left.patches.map((p) => p.covers));
		expect(right.patches.map((p) => [p.length, p.width])).toEqual(
			left.patches.map((p) => [p.length, p.width]),
		);
	});

	it('follow the nap of the face at any angle of the corner', () => {
		fc.assert(
			fc.property(fc.integer({ min: 0, max: 359 }), (nap) => {
				const [patch] = patched({ outline: ell, nap }, HARD).patches;
				const centre = patch!.marks.find((m) => m.kind === 'centre')!.line;
				const [a, b] = [centre[0]!, centre.at(-1)!];
				// Out of the corner is up and to the right; on the back the nap stays at +x and
				// left and right change places.
				const angle = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
				expect(Math.cos(((angle - (nap - 45)) * Math.PI) / 180)).toBeCloseTo(1, 3);
			}),
			{ numRuns: runs(60) },
		);
	});
});

describe('two curves that meet', () => {
	/** 400 x 300 whose left and lower edges bow outward and meet at less than a straight angle. */
	const bowed = (bulge: number) => outline([0, 0, 0.1], [400, 0, bulge], [400, 300], [0, 300]);

	it.each([0.8, 0.9, 1, 1.05, 1.1])('in a slight corner are planned, bulge %s', (bulge) => {
		const made = wrap({ outline: bowed(bulge) }, HARD);
		for (const { asks } of corners(made)) expect(Number.isFinite(asks)).toBe(true);
		expect(made.blanks).toHaveLength(1);
	});
});
