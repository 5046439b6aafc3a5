import { describe, expect, it } from 'vitest';
import { area, bounds } from '../../../src/lib/geometry/extent';
import { distanceTo, whereIs } from '../../../src/lib/geometry/meeting/inside';
import { mm, TICKS_PER_MM, toMm } from '../../../src/lib/measure/length';
import { planned, type PanelFile } from './stock';

/*
 * Floors that fold, covers that come off, rings and places to keep clear. Opening 600 x 400, carpet
 * pressed to 3 mm (4.5 loose) and a gap of 0.5 mm all round: board 593 x 393. The rules are common
 * practice, no source.
 */

const rect = (length: number, width: number) => ({ kind: 'rectangle', length, width }) as const;
const at = (x: number, y: number, length: number, width: number) => ({
	shape: rect(length, width),
	x,
	y,
});
const panel = (more: Partial<PanelFile> = {}) =>
	planned({ opening: rect(600, 400), cloth: 'carpet', ...more });
const mm2 = (ticks2: number) => ticks2 / TICKS_PER_MM ** 2;
const said = (plan: ReturnType<typeof panel>) => plan.problems.map((p) => p.what);

describe('a floor that folds on its own cloth', () => {
	const fold = (more: object = {}) => ({
		id: 'fold',
		from: { x: 250, y: 0 },
		to: { x: 250, y: 400 },
		...more,
	});

	it('is cut in two boards, two loose cloths apart, under one cloth', () => {
		const plan = panel({ hinges: [fold()] });
		expect(plan.problems).toEqual([]);
		// The board lies 3.5 mm inside the opening; the gap is 9 mm, half of it on either side of
		// the fold.
		const sizes = plan.parts.map((p) => [toMm(p.length), toMm(p.width)]);
		expect(sizes).toEqual([
			[596.5 - 254.5, 393],
			[245.5 - 3.5, 393],
		]);
		expect(plan.coverings).toHaveLength(1);
		expect(bounds(plan.coverings[0]!.outline).length).toBe(mm(593));
	});

	it('keeps to a gap of its own, and loses just that much board at any slant', () => {
		const whole = mm2(area(panel().detail!.fit.board));
		const slanted = fold({ from: { x: 200, y: 0 }, to: { x: 320, y: 400 }, gap: 4 });
		const { leaves } = panel({ hinges: [slanted] }).detail!;
		const left = leaves.reduce((sum, leaf) => sum + mm2(area(leaf)), 0);
		// A strip 4 mm wide, as long as the fold is across 393 mm of board.
		const along = (393 * Math.hypot(120, 400)) / 400;
		expect(whole - left).toBeCloseTo(4 * along, 0);
	});

	it('is refused without two points, and doubted without a cloth or short of the edges', () => {
		expect(said(panel({ hinges: [fold({ to: { x: 250, y: 0 } })] }))).toContain(
			'The fold line starts and ends at one point.',
		);
		expect(said(panel({ cloth: null, hinges: [fold()] }))).toContain(
			'The fold is to hinge on the cloth, and the panel has none.',
		);
		const outside = fold({ from: { x: 800, y: 0 }, to: { x: 800, y: 400 } });
		expect(said(panel({ hinges: [outside] }))).toContain(
			'A fold line does not cross the board from edge to edge.',
		);
	});
});

describe('places to keep clear or within reach', () => {
	const zone = (kind: 'airbag' | 'belt' | 'battery' | 'other') => ({
		id: 'z',
		name: 'Place',
		kind,
		outline: at(200, 150, 120, 80),
	});
	const cover = (x: number, y: number, length: number, width: number) => ({
		id: 'c',
		outline: at(x, y, length, width),
		ledge: { material: 'ply-6' },
		lift: { by: 'magnets' as const, diameter: 8 },
	});

	it('are never built over where an airbag opens: the panel is not planned', () => {
		const plan = panel({ zones: [zone('airbag')] });
		expect(said(plan)).toEqual(['The panel covers Place, where an airbag opens.']);
		expect(plan.problems[0]!.kind).toBe('stop');
		expect(plan.parts).toEqual([]);
	});

	it('are left open where a belt runs, by a window round all of it', () => {
		const window = (x: number, length: number) => ({
			id: 'w',
			outline: at(x, 140, length, 100),
		});
		expect(said(panel({ zones: [zone('belt')] }))).toHaveLength(1);
		expect(said(panel({ zones: [zone('belt')], windows: [window(190, 60)] }))).toHaveLength(1);
		expect(said(panel({ zones: [zone('belt')], windows: [window(190, 140)] }))).toEqual([]);
	});

	it('stay within reach of a cover over three fifths of them', () => {
		const battery = [zone('battery')];
		expect(said(panel({ zones: battery }))).toEqual([
			'Place lies behind the panel with no cover or window over it.',
		]);
		expect(said(panel({ zones: battery, covers: [cover(180, 130, 100, 120)] }))).toEqual([
			'Only part of Place lies behind a cover or window.',
		]);
		expect(said(panel({ zones: battery, covers: [cover(170, 120, 180, 140)] }))).toEqual([]);
	});

	it('hold no fixing, whatever they are', () => {
		const fixings = { spacing: 100, inset: 30, hole: 8 };
		const edge = { ...zone('other'), outline: at(180, 0, 160, 60) };
		const free = panel({ fixings }).detail!.fixings!;
		const clear = panel({ fixings, zones: [edge] }).detail!;
		const shape = clear.zones[0]!.outline;
		const inside = (p: (typeof free.at)[number]) => whereIs(p, shape) !== 'outside';
		expect(free.at.some(inside)).toBe(true);
		for (const place of clear.fixings!.at) {
			expect(inside(place)).toBe(false);
			expect(toMm(distanceTo(place, shape))).toBeGreaterThanOrEqual(4);
		}
	});
});

describe('a cover that comes off without tools', () => {
	const cover = (lift?: object) => ({
		id: 'c',
		name: 'Lid',
		outline: at(150, 100, 300, 200),
		gap: 1,
		ledge: { material: 'ply-6', inside: 15, outside: 25 },
		...(lift ? { lift: lift as never } : {}),
	});
	const figureOf = (lift?: object) => {
		const plan = panel({ covers: [cover(lift)] });
		return { plan, figure: plan.detail!.covers[0]! };
	};
	const size = (o: Parameters<typeof bounds>[0]) => {
		const { length, width } = bounds(o);
		return [toMm(length), toMm(width)];
	};

	it('shares gap and cloth with the panel, and rests on a ledge behind both', () => {
		const { plan, figure } = figureOf({ by: 'magnets', diameter: 8 });
		expect(plan.problems).toEqual([]);
		expect(size(figure.finished)).toEqual([299, 199]);
		expect(size(figure.board)).toEqual([293, 193]);
		expect(size(figure.hole)).toEqual([307, 207]);
		expect(toMm(figure.boardGap)).toBe(7);
		expect(size(figure.ledge.inner)).toEqual([263, 163]);
		expect(size(figure.ledge.outer)).toEqual([357, 257]);
	});

	it('is held by magnets on the rim that rests, no farther apart than asked, one near each corner', () => {
		const { figure, plan } = figureOf({ by: 'magnets', spacing: 120 });
		const { magnets } = figure;
		for (const m of magnets) {
			expect(whereIs(m, figure.board)).toBe('inside');
			expect(whereIs(m, figure.ledge.inner)).toBe('outside');
			const next = Math.min(
				...magnets.filter((o) => o !== m).map((o) => Math.hypot(o.x - m.x, o.y - m.y)),
			);
			expect(toMm(next)).toBeLessThanOrEqual(120);
		}
		expect(size(magnets)).toEqual([278, 178]);
		const needed = plan.needs.filter((n) => n.kind === 'magnets').map((n) => n.amount);
		expect(needed).toEqual([magnets.length]);
		expect(figure.finger).toBeNull();
	});

	it('says where magnets leave too little board beside them on the rim', () => {
		const at = (diameter: number): string[] => said(figureOf({ by: 'magnets', diameter }).plan);
		expect(at(11)).toEqual([]);
		// 15 mm of rim: at 15 mm a magnet touches both edges of it.
		for (const diameter of [11.1, 15])
			expect(at(diameter)).toEqual([
				`The magnets of Lid are ${diameter} mm across, and the rim they sit in is 15 mm wide: less than 2 mm of board is left beside them.`,
			]);
	});

	it('has a finger hole through its board and no magnets, well inside its edge', () => {
		const hole = (x: number) => ({ by: 'finger-hole', diameter: 26, x, y: 200 });
		const { figure, plan } = figureOf(hole(300));
		expect(plan.problems).toEqual([]);
		expect(size(figure.finger!)).toEqual([26, 26]);
		expect(figure.magnets).toEqual([]);
		expect(plan.parts.find((p) => p.name === 'Lid')!.holes).toHaveLength(1);
		// Its board starts at 153.5; 13 mm of radius and 12 mm of board leave 178.5 as the least.
		expect(figureOf(hole(179)).plan.problems).toEqual([]);
		expect(said(figureOf(hole(178)).plan)).toEqual([
			'The finger hole of Lid lies less than 12 mm from its edge, or off it.',
		]);
	});
});

describe('a ring that trims a pass-through', () => {
	const ring = (sides: 1 | 2) =>
		panel({
			rings: [{ id: 'r', name: 'Ring', outline: at(200, 100, 150, 100), material: 'ply-6', sides }],
		});

	it('is cut once for one side of the wall and twice for both', () => {
		const count = (plan: ReturnType<typeof panel>) =>
			plan.parts.filter((p) => p.id.startsWith('p.r')).reduce((sum, p) => sum + p.count, 0);
		expect(count(ring(1))).toBe(1);
		expect(count(ring(2))).toBe(2);
	});
});
