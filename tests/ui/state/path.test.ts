import { valueAt } from '../../../src/lib/job/problems/value-at';
import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import {
	insert,
	listAt,
	move,
	put,
	remove,
	startsWith,
} from '../../../src/lib/ui/state/edits/path';

const paths = fc.array(fc.oneof(fc.constantFrom('a', 'b', 'name'), fc.nat(3)), { maxLength: 5 });

describe('a value put somewhere', () => {
	test.prop([fc.jsonValue(), paths, fc.integer()])('is found there again', (root, path, value) => {
		expect(valueAt(put(root, path, value), path)).toBe(value);
	});

	test.prop([fc.dictionary(fc.constantFrom('a', 'b'), fc.jsonValue()), fc.integer()])(
		'leaves the original and everything beside the way alone',
		(root, value) => {
			const before = structuredClone(root);
			const after = put(root, ['a'], value);
			expect(root).toEqual(before);
			expect(valueAt(after, ['b'])).toBe(valueAt(root, ['b']));
		},
	);

	it('takes a key out when it is undefined', () => {
		expect(put({ a: 1, b: 2 }, ['a'], undefined)).toEqual({ b: 2 });
	});

	it('makes what is missing on the way', () => {
		expect(put({}, ['boxes', 0, 'name'], 'Box')).toEqual({ boxes: [{ name: 'Box' }] });
	});

	it('never reaches into a prototype', () => {
		expect(valueAt({}, ['constructor'])).toBeUndefined();
		expect(valueAt(put({}, ['__proto__', 'bad'], 1), ['bad'])).toBeUndefined();
		expect(({} as Record<string, unknown>)['bad']).toBeUndefined();
	});
});

describe('a list', () => {
	const lists = fc.array(fc.integer(), { minLength: 1, maxLength: 9 });

	test.prop([lists, fc.nat(), fc.integer()])('gives back what was put in', (list, n, value) => {
		const index = n % (list.length + 1);
		const grown = insert({ list }, ['list'], value, index);
		expect(listAt(grown, ['list'])[index]).toBe(value);
		expect(remove(grown, ['list'], index)).toEqual({ list });
	});

	test.prop([lists, fc.nat(), fc.nat()])(
		'keeps its things when one is moved and moved back',
		(list, a, b) => {
			const [from, to] = [a % list.length, b % list.length];
			const moved = move({ list }, ['list'], from, to);
			expect(listAt(moved, ['list'])[to]).toBe(list[from]);
			expect(move(moved, ['list'], to, from)).toEqual({ list });
		},
	);

	it('is empty where there is none', () => {
		expect(listAt({ boxes: 'none' }, ['boxes'])).toEqual([]);
	});
});

it('knows what lies inside what', () => {
	expect(startsWith(['boxes', 0, 'shape'], ['boxes', 0])).toBe(true);
	expect(startsWith(['boxes', 10], ['boxes', 1])).toBe(false);
});
