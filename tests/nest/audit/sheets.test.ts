import { describe, expect, test } from 'vitest';
import { ticks } from '../../../src/lib/measure/length';
import { auditSheets } from '../../../src/lib/nest/audit/audit';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import type { SheetLayout, SheetsAnswer } from '../../../src/lib/nest/types';
import { finish, piece, sawProblem, sheet } from '../saw/samples';

const problem = sawProblem([sheet('S', 200, 100)], [piece('A', 90, 40, 3), piece('B', 50, 30, 2)], {
	kerf: ticks(2),
});
const answer = finish(nestSaw(problem, { seed: 1, effort: 200 }));

/** What the auditor says of the answer with its first layout changed. */
function said(change: (layout: SheetLayout) => Partial<SheetLayout>, more: object = {}): string {
	const [first, ...rest] = answer.layouts;
	const changed = { ...answer, layouts: [{ ...first!, ...change(first!) }, ...rest] };
	return auditSheets({ ...problem, ...more }, changed as SheetsAnswer)
		.map(({ what }) => what)
		.join('\n');
}

describe('a fault put into a sound layout is found', () => {
	test('sound as it is', () => expect(said(() => ({}))).toBe(''));

	test('a copy past the count', () => {
		const past = ({ placed }: SheetLayout) => ({
			placed: placed.map((p, i) => (i === 0 ? { ...p, copy: 9 } : p)),
		});
		expect(said(past)).toMatch(/copy/i);
	});

	test('a piece over the edge of its sheet', () => {
		const over = ({ placed }: SheetLayout) => ({
			placed: placed.map((p, i) => (i === 0 ? { ...p, x: 150 } : p)),
		});
		expect(said(over)).toMatch(/leaves the sheet/);
	});

	test('two cuts in each other’s place', () => {
		const swapped = ({ cuts }: SheetLayout) => ({
			cuts: [cuts[1]!, cuts[0]!, ...cuts.slice(2)].map((cut, i) => ({ ...cut, n: i + 1 })),
		});
		expect(said(swapped)).toMatch(/not there|to be taken up/);
	});

	test('a strip that another cut was to take up', () => {
		const other = ({ cuts }: SheetLayout) => ({
			cuts: cuts.map((cut) => ({
				...cut,
				gives: cut.gives.map((g) => (g.kind === 'strip' ? { ...g, nextCut: 77 } : g)),
			})) as unknown as SheetLayout['cuts'],
		});
		expect(said(other)).toMatch(/to be taken up by cut 77/);
	});

	test('a side that is larger than what the cut leaves, a fence set wrong, and one set too far', () => {
		const wider = ({ cuts }: SheetLayout) => ({
			cuts: cuts.map((cut, i) =>
				i > 0
					? cut
					: {
							...cut,
							gives: cut.gives.map((g, k) =>
								k === 0 ? { ...g, rect: { ...g.rect, length: g.rect.length + 1 } } : g,
							),
						},
			) as unknown as SheetLayout['cuts'],
		});
		expect(said(wider)).toMatch(/The lower side does not add up/);
		const fenced = ({ cuts }: SheetLayout) => ({
			cuts: cuts.map((cut) => ({ ...cut, fence: ticks(cut.fence + 1) })),
		});
		expect(said(fenced)).toMatch(/not the distance to the blade/);
		expect(said(() => ({}), { fenceLimit: ticks(1) })).toMatch(/cannot be set that far/);
		expect(said(() => ({}), { narrowestRip: ticks(99) })).toMatch(/too narrow to be held/);
	});
});
