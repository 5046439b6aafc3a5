import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { changesBetween } from '../../../src/lib/ui/revisions/changes';
import { goneBack } from '../../../src/lib/ui/revisions/go-back';

const MM = { ruler: { unit: 'mm', fraction: 32, decimal: '.' }, currency: 'EUR' } as const;
const between = (before: unknown, after: unknown) =>
	changesBetween(before as JobFile, after as JobFile, MM).map(
		({ place, field, before: old, after: now }) => [place, field, old, now],
	);
const box = (id: string, name: string, shape: object, more: object = {}) => ({
	...{ id, name, shape, material: 'ply-18' },
	...more,
});
const STRAIGHT = { kind: 'plain', width: 800, height: 360, depth: 400 };

describe('what changed between two states of a job', () => {
	it('is nothing in the same job, and where only a usual value was written down', () => {
		const job = { name: 'A', boxes: [box('B1', 'Bench box', STRAIGHT)] };
		expect(between(job, structuredClone(job))).toEqual([]);
		expect(between({ name: 'A' }, { name: 'A', revision: 'A', boxes: [], look: null })).toEqual([]);
		expect(between({}, {})).toEqual([]);
	});

	it('names thing, field, before and after by the words of the form', () => {
		const wider = { ...STRAIGHT, width: '81 cm' };
		expect(
			between(
				{ name: 'A', boxes: [box('B1', 'Bench box', STRAIGHT)] },
				{ name: 'B', customer: 'Ada', boxes: [box('B1', 'Bench box', wider)] },
			),
		).toEqual([
			['', 'Name', 'A', 'B'],
			['', 'Customer', 'nothing', 'Ada'],
			['Bench box, Form', 'Width', '800 mm', '81 cm'],
		]);
	});

	it('tells things added, taken out and set in another order by their marks', () => {
		const [a, b, c] = ['a', 'b', 'c'].map((id) => box(id, `Box ${id}`, STRAIGHT));
		expect(between({ boxes: [a, b] }, { boxes: [b, c] })).toEqual([
			['', 'Box a', 'there', 'taken out'],
			['', 'Box c', 'not there', 'added'],
		]);
		expect(between({ boxes: [a, b] }, { boxes: [b, a] })).toEqual([
			['', 'Boxes, order', 'Box a, Box b', 'Box b, Box a'],
		]);
		expect(between({}, { boxes: [a] })).toEqual([['', 'Box a', 'not there', 'added']]);
	});

	it('says a form that became another one by the name of both', () => {
		const slanted = {
			kind: 'slanted',
			by: 'depths',
			width: 800,
			height: 360,
			bottom: 400,
			top: 300,
		};
		const found = between(
			{ boxes: [box('B1', 'Bench box', STRAIGHT)] },
			{ boxes: [box('B1', 'Bench box', slanted)] },
		);
		expect(found).toHaveLength(1);
		expect(found[0]![0]).toBe('Bench box');
		expect(found[0]![2]).not.toBe(found[0]![3]);
	});

	it('tells long texts that differ at their end, and things without a mark by their place', () => {
		const long = 'x'.repeat(200);
		expect(between({ notes: `${long}1` }, { notes: `${long}2` })[0]![3]).toMatch(/ …, changed$/);
		expect(
			between({ work: [{ what: 'Wiring', hours: 2 }] }, { work: [{ what: 'Wiring', hours: 3 }] }),
		).toEqual([['Hours of work 1', 'Hours', '2 h', '3 h']]);
	});

	it('tells layouts and ticked cuts as a whole, and takes whatever was typed', () => {
		expect(between({ ticked: {} }, { ticked: { k: [1, 2] } })).toEqual([
			['', 'Ticked', 'none', '1'],
		]);
		expect(between({ boxes: 'seven', odd: { a: 1 } }, { boxes: [], odd: { a: 2 } })).toEqual([
			['', 'Boxes', 'seven', 'none'],
			['Odd', 'A', '1', '2'],
		]);
	});
});

describe('going back', () => {
	const then = { name: 'Then', stock: { offcuts: [] }, shop: { name: 'Old' } } as JobFile;
	const now = { name: 'Now', stock: { materials: [] }, shop: { name: 'New' } } as JobFile;

	it('leaves the rack of the shop as it is now, and brings back a rack of its own', () => {
		expect(goneBack(then, now, true)).toEqual({ ...now, name: 'Then' });
		expect(goneBack(then, now, false)).toBe(then);
		expect(goneBack({ name: 'Then' }, { name: 'Now' }, true)).toEqual({ name: 'Then' });
	});
});
