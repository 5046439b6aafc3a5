import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { begin, change, redo, settle, undo, type History } from '../../../src/lib/ui/state/history';

type Step = { readonly set: number; readonly run: string | null };

const steps = fc.array(
	fc.record({
		set: fc.integer(),
		run: fc.option(fc.constantFrom('width', 'height'), { nil: null }),
	}),
	{ maxLength: 30 },
);

function played(list: readonly Step[]): History<number> {
	return list.reduce((h, s) => change(h, s.set, 'a figure', s.run), begin(0));
}

function all(h: History<number>, step: (h: History<number>) => History<number>): History<number> {
	for (let i = 0; i < 100; i++) h = step(h);
	return h;
}

describe('history', () => {
	test.prop([steps])('undone to the start is the start', (list) => {
		expect(all(played(list), undo).now).toBe(0);
	});

	test.prop([steps])('done again to the end is the end', (list) => {
		const end = played(list);
		expect(all(all(end, undo), redo)).toEqual({ ...end, last: null });
	});

	test.prop([steps, fc.integer()])(
		'forgets what was undone once something else is done',
		(list, value) => {
			const back = undo(played(list));
			fc.pre(back.future.length > 0 && value !== back.now);
			expect(change(back, value, 'a figure', null).future).toEqual([]);
		},
	);

	it('takes the letters of one field as one step', () => {
		const typed = played([
			{ set: 5, run: 'width' },
			{ set: 52, run: 'width' },
			{ set: 520, run: 'width' },
		]);
		expect(typed.past).toHaveLength(1);
		expect(undo(typed).now).toBe(0);
	});

	it('starts a step of its own when the field was left in between', () => {
		const twice = change(settle(played([{ set: 5, run: 'width' }])), 6, 'a figure', 'width');
		expect(undo(twice).now).toBe(5);
	});

	it('makes no step of a change that changes nothing', () => {
		const h = begin(3);
		expect(change(h, 3, 'a figure', null)).toBe(h);
	});

	it('names what it would take back', () => {
		const h = change(begin(0), 1, 'width of Bench box', null);
		expect(undo(h).future.at(-1)?.what).toBe('width of Bench box');
	});
});
