import { expect, test } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { packetsOf } from '../../../src/lib/layout/boards/packets-of';
import type { Plan } from '../../../src/lib/plan';
import { packetText } from '../../../src/lib/print/wording/packet-text';
import { printPack } from '../../../src/lib/print/pack';
import { samplePlan } from '../fixture';
import { wordsOn } from '../words-on';

const saw = { id: 'table-saw', name: 'Table saw', kerf: 3.2, trim: 5 };

/** The sample's sheet so many times over, on a saw that takes a stack of so many millimetres. */
function several(sheets: number, packet: number | null, cut: readonly number[] = []): Plan {
	const shop: JobFile['shop'] = { saws: [{ ...saw, packet }] };
	const plan = samplePlan({ shop });
	const boards = plan.boards[0]!;
	const [layout, source] = [boards.answer.layouts[0]!, boards.sources[0]!];
	const all = [...Array(sheets).keys()];
	const layouts = all.map((copy) => ({ ...layout, copy }));
	const sources = all.map((i) => ({ ...source, cut: cut.includes(i) }));
	return { ...plan, boards: [{ ...boards, answer: { ...boards.answer, layouts }, sources }] };
}

const packets = (plan: Plan) => packetsOf(plan.job, plan.boards[0]!);

test('sheets are cut one at a time unless the saw is said to take a stack', () => {
	expect(packets(several(3, null))).toEqual([]);
	expect(
		packetText({ plan: several(3, null), boards: several(3, null).boards[0]!, index: 0 }),
	).toBe('');
	// Two boards of 17.6 are 35.2 high.
	expect(packets(several(3, 35))).toEqual([]);
	expect(packets(several(3, 35.2))).toEqual([[[0, 1], [2]]]);
});

test('sheets that are cut already are in no stack, nor is a layout that failed its check', () => {
	const plan = several(5, 53, [1]);
	expect(packets(plan)).toEqual([[[0, 2, 3], [4]]]);
	const faults = [{ where: 'sheet 1', what: 'B1 overlaps F1 by 3 mm.' }];
	expect(packetsOf(plan.job, { ...plan.boards[0]!, faults })).toEqual([]);
});

test('the page of sheets that are alike says how they lie on the saw', () => {
	const pages = printPack(several(4, 36)).filter((p) => p.name.includes(', sheets 1 to 4 of 4'));
	const said = pages.map((p) => wordsOn(p.marks).join(' '));
	expect(said.length).toBeGreaterThanOrEqual(1);
	const firsts = said.filter((_, i) => !/\([2-9] of/.test(pages[i]!.name));
	for (const text of firsts)
		expect(text).toContain(
			'Packet: sheets 1, 2, 3 and 4 are cut alike. Stacks: 1 + 2, then 3 + 4.',
		);
	for (const text of firsts) expect(text).not.toContain('Their parts differ');
});

test('sheets alike for the saw with other parts on them say so', () => {
	const plan = several(2, 36);
	const boards = plan.boards[0]!;
	const [one, two] = boards.answer.layouts;
	const other = { ...two!, placed: two!.placed.map((p, i) => (i === 0 ? { ...p, id: 'x' } : p)) };
	const differing = { ...boards, answer: { ...boards.answer, layouts: [one!, other] } };
	expect(packetText({ plan, boards: differing, index: 1 })).toContain('Their parts differ');
});
