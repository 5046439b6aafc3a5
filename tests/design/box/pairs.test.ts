import { describe, expect, it } from 'vitest';
import type { Part } from '../../../src/lib/design/part';
import { mirrored } from '../../../src/lib/geometry/turn';
import type { Outline } from '../../../src/lib/geometry/outline';
import { mm } from '../../../src/lib/measure/length';
import { auditSheets } from '../../../src/lib/nest/audit/audit';
import { plan } from '../../../src/lib/plan';
import { facing } from '../../../src/lib/design/after-saw/facing';
import { figuresOn } from '../../../src/lib/print/wording/figures';
import { pairTexts } from '../../../src/lib/print/wording/pair-text';
import { partTemplate } from '../../../src/lib/print/templates/part-template';
import { figures, made, MATERIALS, type Asked } from './make';

/**
 * Ends of 500 and 300 by 400: a taper on one side only, so that left and right are mirror images.
 */
const box: Asked = {
	material: 'mdf-12',
	shape: {
		kind: 'slanted',
		width: 600,
		height: 400,
		lean: { by: 'depths', bottom: 500, top: 300 },
	},
};
const terminal = (board: string) => ({
	board,
	at: { across: 120, up: 90 },
	hole: { kind: 'round' as const, diameter: 75 },
});
const ends = (asked: Asked): [left: Part, right: Part] => {
	const { parts } = made(asked);
	const end = (key: string) => parts.find((p) => p.id === `box.${key}`)!;
	return [end('left'), end('right')];
};
const corners = (outline: Outline) => outline.map((c) => `${c.x} ${c.y}`).sort();

describe('the two ends of a box', () => {
	it('are one shape, the right one seen from inside', () => {
		const [left, right] = ends(box);
		expect([left.face, right.face]).toEqual(['outside', 'inside']);
		expect(right.outline).toEqual(left.outline);
		expect(corners(mirrored(left.outline!, left.length / 2))).not.toEqual(corners(left.outline!));
		expect(right.notes.join(' ')).toContain(left.label);
	});

	it('keep a hole where it is on the end, whichever face is looked at', () => {
		// 120 from the front edge of the right end, which lies on the left as that end is seen from
		// outside.
		const [left, right] = ends({ ...box, terminal: terminal('right') });
		const x = right.holes[0]!.map((c) => c.x);
		expect((Math.min(...x) + Math.max(...x)) / 2).toBe(mm(500 - 120));
		expect(left.holes).toEqual([]);
		const [hole] = ends({ ...box, terminal: terminal('left') })[0].holes;
		expect((hole![0]!.x + hole![1]!.x) / 2).toBe(mm(120));
	});

	it('of plywood stay as they are seen, unless cloth covers them', () => {
		const bare = { ...box, material: 'ply-18' };
		expect(ends(bare).map((p) => p.face)).toEqual(['outside', 'outside']);
		expect(ends(bare).map((p) => p.show)).toEqual([true, true]);
		const covered = ends({ ...bare, carpet: { cloth: 'c', cover: [] } });
		expect(covered.map((p) => p.face)).toEqual(['outside', 'inside']);
		// Only the left end is carpeted: that one may be turned, the bare right one may not.
		const one = ends({ ...bare, carpet: { cloth: 'c', cover: ['left', 'front'] } });
		expect(one.map((p) => p.face)).toEqual(['inside', 'outside']);
		expect(one[1].show).toBe(true);
	});

	it('are not turned over on to a recess, nor when they are of two materials', () => {
		const driver = {
			board: 'right',
			cutout: { kind: 'round' as const, diameter: 160 },
			frame: 180,
			depth: 60,
			seat: { kind: 'routed' as const, depth: 5 },
		};
		expect(ends({ ...box, drivers: [driver] }).map((p) => p.face)).toEqual(['inside', 'outside']);
		expect(ends({ ...box, boards: { left: { material: 'mdf-25' } } }).map((p) => p.face)).toEqual([
			'outside',
			'outside',
		]);
	});

	it('with the grain up are one shape too', () => {
		const own = { grain: 'across' as const };
		const [left, right] = ends({ ...box, boards: { left: own, right: own } });
		expect(right.outline).toEqual(left.outline);
		expect([right.face, right.length]).toEqual(['inside', mm(400)]);
	});

	it('that are rectangles have nothing to turn over', () => {
		const plain = ends({
			...box,
			shape: { kind: 'plain', width: 600, height: 400, depth: 300 },
		});
		expect(plain.map((p) => p.face)).toEqual(['outside', 'outside']);
	});

	it('are drawn as they are cut, every letter at its own edge', () => {
		const { boards } = figures({ ...box, terminal: terminal('right') });
		const board = boards.find((b) => b.key === 'right')!;
		const [, part] = ends({ ...box, terminal: terminal('right') });
		const f = facing(board);
		expect(f.seen).toBe('inside');
		expect(corners(f.near)).toEqual(corners(part.outline!));
		expect(f.holes[0]!.centre).toEqual({ x: mm(380), y: mm(90) });
		// Seen from outside an edge lies at x; from inside the same edge lies as far from the other
		// side.
		const letters = (outline: Outline, edges: typeof board.edges, flip: boolean) =>
			outline.map((p, k) => {
				const q = outline[(k + 1) % outline.length]!;
				const x = (p.x + q.x) / 2;
				return `${edges[k]!.letter} ${flip ? mm(500) - x : x} ${(p.y + q.y) / 2}`;
			});
		expect(new Set(board.edges.map((e) => e.letter)).size).toBe(4);
		expect(letters(f.near, f.edges, true).sort()).toEqual(
			letters(board.outside, board.edges, false).sort(),
		);
		// The pattern shows the same face as the part, once.
		expect(partTemplate(part).seen).toBe('inside face');
	});
});

describe('tapered ends head to tail', () => {
	// Two ends side by side need 1000, head to tail 803.
	const job = (length: number, more: Asked = box) => ({
		format: 'kerf-and-nap job',
		version: 1,
		name: 'Pair',
		shop: { saws: [{ id: 's', name: 'Saw', kerf: 3, trim: 0 }], keep: { length: 300, width: 150 } },
		stock: {
			materials: MATERIALS,
			sheets: [
				{ id: 'panel', material: 'mdf-25', length, width: 400, price: 20, factoryEdges: false },
				{ id: 'full', material: 'mdf-12', length: 2440, width: 1220, price: 40 },
			],
		},
		boxes: [
			{
				id: 'box',
				name: 'Box',
				...more,
				material: 'mdf-12',
				boards: { left: { material: 'mdf-25' }, right: { material: 'mdf-25' } },
			},
		],
	});
	const laid = async (length: number, more?: Asked) => {
		const p = await plan(job(length, more), { effort: 100 });
		const boards = p.boards.find((b) => b.material === 'mdf-25')!;
		expect(boards.faults).toEqual([]);
		expect(auditSheets(boards.problem, boards.answer)).toEqual([]);
		return { p, boards };
	};

	it('come out of one sheet where two rectangles need two', async () => {
		const { boards } = await laid(810);
		expect(boards.answer.layouts).toHaveLength(1);
		const slants = boards.answer.layouts[0]!.cuts.filter((c) => c.kind === 'slant');
		expect(slants).toHaveLength(1);
		expect(slants[0]!.gives.map((g) => String(g.id)).sort()).toEqual(['box.left', 'box.right']);
		// One mm too short for the pair: a sheet for each.
		expect((await laid(803)).boards.answer.layouts).toHaveLength(2);
	});

	it('do so with a terminal hole in one of them', async () => {
		const { boards } = await laid(810, { ...box, terminal: terminal('left') });
		expect(boards.answer.layouts).toHaveLength(1);
	});

	it('are offered in the parts list as one rectangle with one slanted cut', async () => {
		const { p } = await laid(810);
		const text = pairTexts(p, figuresOn(p.job.shop.ruler));
		const left = p.parts.find((q) => q.id === 'box.left')!;
		// The slant leans 200 in 400: a kerf of 3 square to it takes 3.4 along the edge.
		expect(text.get('box.right')).toBe(
			`Head to tail with ${left.label} from one rectangle 803.4 × 400 with one slanted cut; so it lies on its sheet`,
		);
		expect([...text.keys()].sort()).toEqual(['box.left', 'box.right']);
		const wide = await laid(2440);
		expect(pairTexts(wide.p, figuresOn(p.job.shop.ruler)).get('box.left')).toContain('803.4 × 400');
		const routed = { ...p, job: { ...p.job, shop: { ...p.job.shop, method: 'router' as const } } };
		expect(pairTexts(routed, figuresOn(p.job.shop.ruler)).size).toBe(0);
	});
});
