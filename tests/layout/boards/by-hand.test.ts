import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { bookCut, pinSheet } from '../../../src/lib/layout/boards/booking';
import { heldOn, layByHand, letGo } from '../../../src/lib/layout/boards/hand-edits';
import { handLaid, roundHeld, withHeld } from '../../../src/lib/layout/boards/hand-laid';
import { mm, toMm } from '../../../src/lib/measure/length';
import { auditSheets } from '../../../src/lib/nest/audit/audit';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import { plan, type Plan } from '../../../src/lib/plan';
import { readJob } from '../../../src/lib/job/reading/read';
import { runs } from '../../depth';
import { finish, problems } from '../../nest/saw/samples';

const QUICK = { effort: 100 };
const JOB: JobFile = {
	shop: { saws: [{ id: 'saw', name: 'Saw', kerf: 3, trim: 0 }], keep: { length: 100, width: 100 } },
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
		sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, factoryEdges: false }],
	},
	parts: [
		{ id: 'A', material: 'ply', length: 400, width: 300 },
		{ id: 'B', material: 'ply', length: 300, width: 200, count: 3 },
	],
};
const place = { material: 'ply', sheet: 'buy/s' };
const by = (...byHand: NonNullable<JobFile['byHand']>): JobFile => ({ ...JOB, byHand });
const A_RIGHT = { ...place, part: 'part.A', x: 600, y: 300 };

const lain = (p: Plan) =>
	p.boards.flatMap((b) =>
		b.answer.layouts.flatMap((l, i) =>
			l.placed.map((at) => `${i} ${at.id} ${toMm(at.x)} ${toMm(at.y)} ${at.turn}`),
		),
	);
const told = (p: Plan) => p.problems.filter((q) => q.path[0] === 'byHand').map((q) => q.what);

describe('a part laid by hand', () => {
	it('lies there in the plan, and the rest is laid round it on the same sheet', async () => {
		const made = await plan(by(A_RIGHT), QUICK);
		const [boards] = made.boards;
		expect(boards!.faults).toEqual([]);
		expect(boards!.answer.layouts).toHaveLength(1);
		expect(lain(made)).toContain('0 part.A 600 300 0');
		expect(lain(made)).toHaveLength(4);
		expect(heldOn(made.job, boards!, 0).filter((held) => held)).toHaveLength(1);
		expect(boards!.answer.proven).toBe(false);
		expect(made.problems.filter((q) => q.kind === 'stop')).toEqual([]);
	});

	it('is laid with the rest where it cannot lie, and that is said', async () => {
		const made = await plan(by({ ...A_RIGHT, x: 650 }), QUICK);
		expect(told(made)).toEqual([
			'A part laid by hand is not kept where it lay. A reaches 50 mm over the right edge.',
		]);
		expect(lain(made)).toHaveLength(4);
	});

	it('is said to be gone with its part or its sheet', async () => {
		const gone = await plan(
			by({ ...A_RIGHT, part: 'part.C' }, { ...A_RIGHT, sheet: 'buy/t' }),
			QUICK,
		);
		expect(told(gone)).toEqual([
			'A part laid by hand is not kept where it lay. No such part is left to lay: there are fewer of it, or none.',
			'A part laid by hand is not kept where it lay. Its sheet is not on the rack now.',
		]);
	});

	it('is laid once, however often it is asked for', async () => {
		const twice = await plan(by(A_RIGHT, { ...A_RIGHT, x: 0, y: 0 }), QUICK);
		expect(told(twice)).toHaveLength(1);
		expect(lain(twice).filter((at) => at.includes('part.A'))).toEqual(['0 part.A 600 300 0']);
	});

	it('of two that clash gives way to the first', async () => {
		const other = { ...place, part: 'part.B', x: 700, y: 250 };
		expect(told(await plan(by(A_RIGHT, other), QUICK))[0]).toMatch(/A and B overlap by/);
		expect(told(await plan(by({ ...other, on: 1 }, A_RIGHT), QUICK))).toEqual([]);
	});

	it('keeps the saw within its limits, or the free places stay free', async () => {
		const shop = { ...JOB.shop, saws: [{ ...JOB.shop!.saws![0]!, stages: 2 }] } as JobFile['shop'];
		const made = await plan({ ...by(A_RIGHT), shop }, QUICK);
		expect(made.boards[0]!.faults).toEqual([]);
		expect(lain(made)).toContain('0 part.A 600 300 0');
		expect(lain(made)).toHaveLength(4);
	});

	it('by router lies there too', async () => {
		const made = await plan({ ...by(A_RIGHT), shop: { ...JOB.shop, method: 'router' } }, QUICK);
		expect(made.boards[0]!.faults).toEqual([]);
		expect(lain(made)).toContain('0 part.A 600 300 0');
		expect(made.boards[0]!.answer.layouts).toHaveLength(1);
	});

	it('is held for good with its sheet, printed or cut, and needs no place then', async () => {
		const made = await plan(by(A_RIGHT), QUICK);
		const which = { material: 'ply', index: 0 };
		const pinned = pinSheet(by(A_RIGHT), made.job, made.boards, which);
		expect(pinned.byHand).toEqual([]);
		expect(lain(await plan(pinned, QUICK))).toEqual(lain(made));
		expect(bookCut(by(A_RIGHT), made.job, made.boards, which).byHand).toEqual([]);
	});

	it('is laid and let go as the file says', async () => {
		const free = await plan(JOB, QUICK);
		const which = { material: 'ply', index: 0 };
		const spots = [{ id: 'part.A', x: mm(600), y: mm(300), turn: 0 as const }];
		const file = layByHand(JOB, free.job, free.boards, { which, spots });
		expect(file.byHand).toEqual([{ ...A_RIGHT, on: 0, turn: 0 }]);
		const made = await plan(file, QUICK);
		expect(lain(made)).toContain('0 part.A 600 300 0');
		expect(letGo(file, made.job, 0).byHand).toEqual([]);
		expect(layByHand(file, made.job, made.boards, { which, spots: [] }).byHand).toEqual([]);
	});
});

describe('a plan round parts laid by hand', () => {
	it('keeps each of them where it lies and passes the audit', () => {
		const { job } = readJob({});
		let held = 0;
		let upon = 0;
		fc.assert(
			fc.property(problems(true), fc.infiniteStream(fc.boolean()), (problem, keep) => {
				const free = finish(nestSaw(problem, { seed: 2, effort: 2 }));
				const byHand = free.layouts.flatMap((l) =>
					l.placed
						.filter(() => keep.next().value)
						.map(({ id, x, y, turn }) => ({
							...{ material: 'm', sheet: l.sheet, on: l.copy, part: id },
							...{ x: mm(0 + toMm(x)), y: mm(0 + toMm(y)), turn },
						})),
				);
				const hand = handLaid({ ...job, byHand }, 'm', problem);
				const round = (withFree: boolean) =>
					withHeld(
						finish(nestSaw(roundHeld(problem, hand, withFree), { seed: 1, effort: 2 })),
						hand,
					);
				const answer = round(true);
				if (problem.stages === null) expect(auditSheets(problem, answer)).toEqual([]);
				expect(auditSheets(problem, round(false))).toEqual([]);
				const refused = new Set(hand.refused.map((r) => r.place));
				hand.held.forEach((h, n) => {
					const mine = byHand.filter(
						(p, i) => p.sheet === h.sheet.id && p.on === h.on && !refused.has(i),
					);
					const laid = answer.layouts[n]!.placed.map((p) => `${p.id} ${p.x} ${p.y} ${p.turn}`);
					for (const p of mine) expect(laid).toContain(`${p.part} ${p.x} ${p.y} ${p.turn}`);
					held += mine.length;
					upon += laid.length - mine.length;
				});
			}),
			{ numRuns: runs(400) },
		);
		expect(held).toBeGreaterThan(20);
		expect(upon).toBeGreaterThan(20);
	});
});
