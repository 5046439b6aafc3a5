import { expect } from 'vitest';
import { toMm } from '../../../src/lib/measure/length';
import type { SheetLayout } from '../../../src/lib/nest/types';
import type { Plan } from '../../../src/lib/plan';
import { partLabel, type SheetAt } from '../../../src/lib/print/wording';
import { figure, sawn } from './saw-from-words';

/** A sawn sheet of a plan. */
export interface Sheet {
	readonly at: SheetAt;
	readonly layout: SheetLayout;
	readonly kerf: number;
}

export function sheetsOf(made: Plan): Sheet[] {
	return made.boards.flatMap((boards) =>
		boards.answer.layouts.flatMap((layout, index) =>
			boards.problem.method !== 'saw' || layout.cuts.length === 0
				? []
				: [{ at: { plan: made, boards, index }, layout, kerf: boards.problem.kerf }],
		),
	);
}

/** What the words alone make is what the plan lays, to the figures' rounding. */
export function expectSawn(sheet: Sheet, rows: readonly (readonly string[])[]): void {
	const { at, layout, kerf } = sheet;
	const unit = at.plan.job.shop.ruler.unit === 'in' ? 25.4 : 1;
	const step = unit === 1 ? 0.1 : 25.4 / 32;
	const real = (ticks: number): number => toMm(ticks) / unit;
	const heap = sawn(rows, {
		length: real(layout.length),
		width: real(layout.width),
		kerf: real(kerf),
	});
	const slack = (step * (layout.cuts.length + 2)) / unit / 2;
	const wanted = [
		...layout.placed.map((p) => ({
			name: partLabel(at.plan, p.id),
			length: p.length,
			width: p.width,
		})),
	];
	const got = heap.filter((h) => !h.name.startsWith('offcut'));
	expect(got.map((h) => h.name).sort()).toEqual(wanted.map((w) => w.name).sort());
	for (const { name, length, width } of wanted) {
		const i = got.findIndex(
			(h) =>
				h.name === name &&
				(h.area < h.length * h.width - 1e-6 ||
					(Math.abs(h.length - real(length)) <= slack && Math.abs(h.width - real(width)) <= slack)),
		);
		expect({ name, found: i >= 0 }).toEqual({ name, found: true });
		got.splice(i, 1);
	}
	for (const offcut of heap.filter((h) => h.name.startsWith('offcut'))) {
		const [, length, width] = /(\S+(?: \d+\/\d+)?) × (.+)$/.exec(offcut.name)!;
		expect(Math.abs(figure(length!) - offcut.length)).toBeLessThanOrEqual(slack);
		expect(Math.abs(figure(width!) - offcut.width)).toBeLessThanOrEqual(slack);
	}
}
