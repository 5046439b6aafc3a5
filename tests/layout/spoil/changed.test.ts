import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { bookCut } from '../../../src/lib/layout/boards/booking';
import { markSpoiled } from '../../../src/lib/layout/spoil/mark';
import { plan, type Plan } from '../../../src/lib/plan';
import { cutNow } from '../../../src/lib/print/wording/spoil/cut-now';

const QUICK = { effort: 100 };
const A = { id: 'A', material: 'ply', length: 400, width: 250, count: 2 };
const JOB: JobFile = {
	shop: { keep: { length: 100, width: 100 } },
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
		sheets: [
			{ id: 's', material: 'ply', length: 1000, width: 600, price: 40, factoryEdges: false },
		],
	},
	parts: [A, { id: 'B', material: 'ply', length: 300, width: 200 }],
};

async function cut(file: JobFile = JOB): Promise<JobFile> {
	const { job, boards, parts } = await plan(file, QUICK);
	return bookCut(file, job, boards, { material: 'ply', index: 0 }, parts);
}

const open = ({ boards }: Plan): string[] =>
	boards.flatMap(({ answer, sources }) =>
		answer.layouts.flatMap(({ placed }, i) => (sources[i]?.cut ? [] : placed.map((p) => p.id))),
	);

const checks = ({ problems }: Plan): string[] =>
	problems.filter((p) => p.kind !== 'stop').map((p) => p.what);

const withPart = (file: JobFile, part: object): JobFile => ({
	...file,
	parts: (file.parts ?? []).map((p) => (p.id === 'A' ? { ...p, ...part } : p)),
});

describe('a change after cutting', () => {
	it('re-plans nothing where nothing is changed', async () => {
		const made = await plan(await cut(), QUICK);
		expect(open(made)).toEqual([]);
		expect(cutNow(made)).toEqual({ wrong: [], over: [] });
		expect(checks(made)).toEqual([]);
	});

	it('cuts again what is of another size, and only that, round what is cut', async () => {
		const file = await cut();
		const made = await plan(withPart(file, { length: 401 }), QUICK);
		expect(open(made)).toEqual(['part.A', 'part.A']);
		expect(cutNow(made)).toEqual({ wrong: ['2 of A A: size'], over: [] });
		expect(made.boards[0]?.answer.layouts[0]).toEqual(
			(await plan(file, QUICK)).boards[0]?.answer.layouts[0],
		);
	});

	it('cuts again what is of the same size with other holes, corners or bevels', async () => {
		const file = await cut();
		const { made: marks, ...sheet } = file.pinned![0]!;
		expect(marks?.map((m) => m.id).sort()).toEqual(['part.A', 'part.B']);
		const words = {
			thickness: 'thickness',
			outline: 'outline or corners',
			bevels: 'bevels',
			holes: 'holes or windows',
			faces: 'grooves or rabbets',
		};
		for (const [key, word] of Object.entries(words)) {
			const other = marks!.map((m) => (m.id === 'part.A' ? { ...m, [key]: 'x' } : m));
			const made = await plan({ ...file, pinned: [{ ...sheet, made: other }] }, QUICK);
			expect(cutNow(made).wrong).toEqual([`2 of A A: ${word}`]);
			expect(open(made)).toEqual(['part.A', 'part.A']);
			expect(checks(made)).toContain(
				`A sheet that is cut holds A at another ${word} than it has now. It is cut again.`,
			);
		}
		const old = { ...file.pinned![0]!, made: undefined };
		expect(open(await plan({ ...file, pinned: [old] }, QUICK))).toEqual([]);
	});

	it('keeps a cut part that was worked over to fit', async () => {
		const file = withPart(await cut(), { length: 399 });
		const before = await plan(file, QUICK);
		const place = before.boards[0]!.answer.layouts[0]!.placed.findIndex((p) => p.id === 'part.A');
		const at = { of: 'board', material: 'ply', index: 0, place } as const;
		const made = await plan(markSpoiled(file, before, at, { kept: true }), QUICK);
		expect(open(made)).toEqual(['part.A']);
	});

	it('tells what is cut and not needed any more', async () => {
		const file = await cut();
		const fewer = await plan(withPart(file, { count: 1 }), QUICK);
		expect(cutNow(fewer)).toEqual({ wrong: [], over: ['A A, 1 over'] });
		expect(checks(fewer)).toEqual(['2 of A are cut, and the job needs 1.']);
		const printed = file.pinned!.map((p) => ({ ...p, cut: false }));
		const less = withPart({ ...file, pinned: printed }, { count: 1 });
		expect(checks(await plan(less, QUICK))).toEqual([
			'2 of A are cut or lie on pinned sheets, and the job needs 1.',
		]);
		const none = await plan({ ...file, parts: [A] }, QUICK);
		expect(cutNow(none).over).toEqual(['part.B, 1 over']);
	});
});
