import { expect, test } from 'vitest';
import { bounds } from '../../../src/lib/geometry/extent';
import type { PanelPlan } from '../../../src/lib/design/panel/panel-plan';
import { panel } from '../../../src/lib/job/panel/panel';
import { notes } from '../../../src/lib/job/zod';
import { mm, toMm } from '../../../src/lib/measure/length';
import { planned } from './stock';

const rect = (length: number, width: number) => ({ kind: 'rectangle', length, width }) as const;
const at = (x: number, y: number, length: number, width: number) => ({
	shape: rect(length, width),
	x,
	y,
});

test('a stepped panel: raised and recessed layers covered with it, groove and cloth edges', () => {
	const plan = planned({
		opening: rect(600, 400),
		cloth: 'carpet',
		layers: [
			{ id: 'step', name: 'Step', outline: at(100, 100, 400, 200), material: 'ply-6' },
			{ id: 'top', name: 'Top', on: 'step', outline: at(150, 150, 100, 100), material: 'ply-6' },
			{
				id: 'dip',
				name: 'Dip',
				place: 'recessed',
				on: 'step',
				outline: at(300, 150, 100, 100),
				material: 'mdf-3',
			},
			{
				id: 'pit',
				name: 'Pit',
				place: 'recessed',
				outline: at(520, 300, 40, 40),
				material: 'mdf-3',
				lap: 10,
			},
		],
	});
	expect(plan.problems).toEqual([]);
	expect(plan.parts.map((p) => [p.id, toMm(p.length), p.holes.length])).toEqual([
		['p.board', 593, 1],
		['p.step', 400, 1],
		['p.top', 100, 0],
		['p.pit', 60, 0],
	]);
	const [face] = plan.coverings;
	expect(plan.coverings).toHaveLength(1);
	expect(face!.steps.map((s) => [toMm(s.height), s.raised])).toEqual([
		[6, true],
		[6, true],
		[6, false],
		[12, false],
	]);
	expect(face!.edges[0]).toEqual({
		kind: 'wrapped',
		numbers: [1],
		build: mm(12),
		groove: { offset: mm(12), depth: mm(5) },
		margin: mm(40),
		grip: mm(15),
	});
	expect(plan.detail!.layers.map((l) => [toMm(l.bottom), toMm(l.top), toMm(l.step)])).toEqual([
		[12, 18, 6],
		[18, 24, 6],
		[12, 12, 6],
		[-3, 0, 12],
	]);
	// Groove: 593 x 393 set in 12 and half of 4 on every side: a rectangle of 565 x 365.
	expect(toMm(plan.detail!.groove!.length)).toBe(2 * (565 + 365));
	expect(plan.needs).toContainEqual({
		kind: 'wood-glue',
		amount: expect.closeTo(0.4 * 0.2 + 0.1 * 0.1 + 0.06 * 0.06 - 0.04 * 0.04, 9) as number,
		for: 'layers and ledges of Panel',
	});
});

test('the groove stops at what is glued behind the board', () => {
	const pit = { id: 'pit', name: 'Pit', place: 'recessed', material: 'mdf-3', lap: 10 } as const;
	const plan = planned({
		opening: rect(600, 400),
		cloth: 'carpet',
		layers: [{ ...pit, outline: at(100, 23.5, 40, 40) }],
	});
	const groove = plan.detail!.groove!;
	expect(groove.stops).toEqual(['the floor of Pit']);
	expect(groove.runs).toHaveLength(2);
	// The floor is 60 long; the groove ends 1 mm and half its width before it, a little less off
	// the rounded corners.
	expect(2 * (565 + 365) - toMm(groove.length)).toBeCloseTo(66, 0);
});

test('the seat of a wrapped inlay grows by two thicknesses of its cloth, and by the cloth turned into it', () => {
	const inlay = {
		id: 'inlay',
		name: 'Inlay',
		outline: at(100, 100, 200, 100),
		material: 'ply-6',
		covering: 'own',
		cloth: 'vinyl',
		sink: 12,
		clearance: 0,
	} as const;
	const bare = planned({ opening: rect(600, 400), layers: [inlay] });
	expect(toMm(bounds(bare.detail!.layers[0]!.hole!).length)).toBe(200 + 2 * 1);
	const plan = planned({
		opening: rect(600, 400),
		cloth: 'carpet',
		layers: [{ ...inlay, clearance: 0.5 }],
	});
	expect(toMm(bounds(plan.detail!.layers[0]!.hole!).length)).toBe(200 + 2 * (1 + 3 + 0.5));
	expect(plan.coverings.map((c) => [c.id, c.cloth, c.windows.length])).toEqual([
		['p.face', 'carpet', 1],
		['p.inlay', 'vinyl', 0],
	]);
	expect(plan.parts[0]!.holes).toHaveLength(1);
});

test('a layer flush with an edge of the board is climbed at that edge', () => {
	const plan = planned({
		opening: rect(300, 200),
		cloth: 'carpet',
		layers: [{ id: 'rim', outline: at(3.5, 3.5, 293, 50), material: 'ply-6' }],
	});
	// At both its ends the rim stands on the board's edge too, and the tape climbs it there.
	expect(plan.coverings[0]!.edges.map((e) => toMm(e.build))).toEqual([18, 18, 12, 18]);
});

test('a layer flush with a part of an edge is climbed there, wherever the part lies', () => {
	const builds = (y: number, width: number) =>
		planned({
			opening: rect(300, 200),
			cloth: 'carpet',
			layers: [{ id: 'block', outline: at(3.5, y, 60, width), material: 'ply-6' }],
		}).coverings[0]!.edges.map((e) => toMm(e.build));
	expect(builds(20, 40)).toEqual([12, 12, 12, 18]);
	expect(builds(80, 40)).toEqual([12, 12, 12, 18]);
	expect(builds(150, 2)).toEqual([12, 12, 12, 18]);
});

test('the cloth comes down over foam and layers at every hole in the face', () => {
	const foam = { thickness: 5 };
	const cover = { id: 'hatch', outline: at(420, 150, 100, 100), ledge: { material: 'ply-6' } };
	const window = { id: 'w', outline: at(220, 150, 100, 100) };
	const inlay = {
		id: 'inlay',
		outline: at(60, 150, 100, 100),
		material: 'ply-6',
		covering: 'own' as const,
		sink: 12,
	};
	const builds = (more: object) =>
		planned({
			opening: rect(600, 400),
			cloth: 'carpet',
			windows: [window],
			covers: [cover],
			layers: [inlay],
			...more,
		}).coverings[0]!.windows.map((w) => toMm(w.edge.build));
	expect(builds({})).toEqual([12, 12, 12]);
	expect(builds({ foam })).toEqual([17, 17, 17]);
	const rim = { id: 'rim', outline: at(200, 100, 360, 200), material: 'ply-6' };
	expect(builds({ layers: [rim, inlay] })).toEqual([18, 18, 12]);
	// A layer round the hole has no foam beneath it, but that of its own.
	expect(builds({ foam, layers: [{ ...rim, foam: { thickness: 3 } }, inlay] })).toEqual([
		21, 21, 17,
	]);
});

test('groove deeper than the board, seat too thin, unknown boards and hosts are refused in words', () => {
	const plan = planned({
		opening: rect(300, 200),
		cloth: 'carpet',
		groove: { depth: 12 },
		layers: [
			{ id: 'a', outline: at(50, 50, 50, 50), material: 'oak' },
			{ id: 'b', on: 'c', outline: at(50, 50, 50, 50), material: 'ply-6' },
			{ id: 'd', outline: at(250, 50, 100, 50), material: 'ply-6' },
			{ id: 'e', covering: 'bare', sink: 11, outline: at(150, 50, 50, 50), material: 'ply-6' },
		],
	});
	expect(plan.problems.map((p) => [p.kind, p.path.slice(2).join('.')])).toEqual([
		['stop', 'layers.0.material'],
		['stop', 'layers.1.on'],
		['check', 'layers.3.sink'],
		['stop', 'groove'],
		['check', 'layers.2.outline'],
	]);
	expect(plan.parts.map((p) => p.id)).toEqual(['p.board', 'p.d', 'p.e']);
});

test('one of a pair is made as it is drawn, and the form says so', () => {
	const one = (pair: 'left' | 'right' | null) =>
		planned({
			opening: { kind: 'trapezoid', bottom: 300, top: 200, height: 200 },
			cloth: 'carpet',
			pair,
			edges: { own: [{ edge: 2, end: 'bare' }] },
		});
	const marks = (['left', 'right', null] as const).map((p) => one(p).parts.map((q) => q.label));
	expect(marks).toEqual([['P1L'], ['P1R'], ['P1']]);
	const shapes = (p: PanelPlan) => [
		...p.parts.map((q) => q.outline),
		...p.coverings.map((c) => [c.outline, c.edges, c.nap]),
	];
	expect(shapes(one('right'))).toEqual(shapes(one(null)));
	expect(shapes(one('left'))).toEqual(shapes(one(null)));

	const { help, options } = notes.get(panel.shape.pair)!;
	expect(options).toEqual({
		left: 'the left one, as drawn',
		right: 'the right one, as drawn',
		both: 'both: the left one as drawn, the right one mirrored',
	});
	expect(help).not.toContain('mirrored');
});

test('a pair: mirrored parts and cloth, nap kept downwards, marked L and R', () => {
	const plan = planned({
		opening: { kind: 'trapezoid', bottom: 300, top: 200, height: 200 },
		cloth: 'carpet',
		pair: 'both',
		edges: { own: [{ edge: 2, end: 'bare' }] },
	});
	expect(plan.parts.map((p) => [p.id, p.label])).toEqual([
		['p.board-L', 'P1L'],
		['p.board-R', 'P1R'],
	]);
	const [left, right] = plan.coverings;
	expect([left!.nap, right!.nap].map((n) => ((n % 360) + 360) % 360)).toEqual([270, 270]);
	const ends = (c: typeof left) => c!.edges.map((e) => e.kind);
	expect(ends(left)).toEqual(['wrapped', 'bare', 'wrapped', 'wrapped']);
	expect(ends(right)).toEqual(['wrapped', 'wrapped', 'bare', 'wrapped']);
	const xs = (c: typeof left) => c!.outline.map((p) => p.x).sort((a, b) => a - b);
	expect(xs(right)).toEqual(
		xs(left)
			.map((x) => -x)
			.sort((a, b) => a - b),
	);
	// The bare edge is the slanted one; on the right panel it lies on the other side.
	const bareTop = right!.outline[2]!;
	expect(bareTop.x).toBe(Math.min(...right!.outline.filter((p) => p.y > mm(100)).map((p) => p.x)));
});
