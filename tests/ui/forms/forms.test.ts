import { describe, expect, it } from 'vitest';
import { box } from '../../../src/lib/job/box/box';
import { job } from '../../../src/lib/job/job';
import { LISTS_OF_MARKS, listOfMarks, OWN } from '../../../src/lib/job/marks';
import { panel } from '../../../src/lib/job/panel/panel';
import { aboutAt } from '../../../src/lib/ui/entries/about';
import type { Entry, Group } from '../../../src/lib/ui/entries/entry';
import { inherited } from '../../../src/lib/ui/entries/inherited';
import { fresh, freeMark, freshWay, type About } from '../../../src/lib/ui/entries/fresh';
import { BOX, JOB, PANEL } from '../../../src/lib/ui/entries/schemas';

const about: About = {
	material: 'ply-18',
	cloth: 'carpet',
	saw: 'table-saw',
	supplier: 'supplier-1',
	taken: [],
	stem: 'thing',
};

/** Every entry of a form, with the keys that lead to it. */
function* entries(
	entry: Entry,
	keys: readonly string[] = [],
): Generator<[readonly string[], Entry]> {
	yield [keys, entry];
	if (entry.kind === 'group')
		for (const f of entry.fields) yield* entries(f.entry, [...keys, String(f.key)]);
	if (entry.kind === 'list' || entry.kind === 'boards') yield* entries(entry.item, [...keys, '[]']);
	if (entry.kind === 'kinds') {
		for (const way of entry.ways)
			if (way.entry) yield* entries(way.entry, [...keys, `<${way.name}>`]);
	}
}

const everything = [...entries(JOB)];
/**
 * What stands under a key of its own, or as one of several; a form of a union is called by its word
 * instead.
 */
const fields = everything.filter(([keys]) => keys.length > 0 && !keys.at(-1)!.startsWith('<'));

describe('the forms', () => {
	it('hold every key of the job schema', () => {
		expect(JOB.fields.map((f) => f.key)).toEqual(Object.keys(job.shape));
		expect(BOX.fields.map((f) => f.key)).toEqual(Object.keys(box.shape));
		expect(PANEL.fields.map((f) => f.key)).toEqual(Object.keys(panel.shape));
		expect(everything.length).toBeGreaterThan(300);
	});

	it('name each field in words', () => {
		const unnamed = fields.filter(([, e]) => !/^[A-ZÀ-Þ][^{}_]*[^{}_:\s]$/.test(e.label));
		expect(unnamed.map(([keys, e]) => `${keys.join('.')}: ${e.label}`)).toEqual([]);
	});

	it('keep labels short enough for a narrow field', () => {
		const long = everything.filter(([, e]) => e.label.length > 34);
		expect(long.map(([keys, e]) => `${keys.join('.')}: ${e.label}`)).toEqual([]);
	});

	it('end each help with a full stop', () => {
		const open = everything.filter(([, e]) => e.help !== '' && !/[.)]$/.test(e.help));
		expect(open.map(([keys]) => keys.join('.'))).toEqual([]);
	});

	it('call each choice and each form by a word', () => {
		const words = everything.flatMap(([keys, e]) => {
			const shown = e.kind === 'choice' ? e.options : e.kind === 'kinds' ? e.ways : [];
			return shown.map((o) => ({ at: keys.join('.'), label: o.label }));
		});
		expect(words.length).toBeGreaterThan(300);
		expect(words.filter((w) => w.label.trim() === '')).toEqual([]);
	});

	it('let each of several forms be told from the others', () => {
		for (const [keys, entry] of everything) {
			if (entry.kind !== 'kinds') continue;
			for (const way of entry.ways) {
				const made = freshWay(way, about);
				const seen = entry.ways.filter((w) => w.is(made)).map((w) => w.name);
				expect(seen, keys.join('.')).toEqual([way.name]);
			}
		}
	});
});

describe('a mark', () => {
	const at = (keys: readonly string[]): Entry | undefined =>
		everything.find(([path]) => path.join('.') === keys.join('.'))?.[1];

	it('is the own one of a thing, or says in which list the thing stands that it names', () => {
		const silent = everything.filter(([keys, e]) => e.kind === 'mark' && keys.at(-1) !== 'id');
		expect(silent.map(([keys]) => keys.join('.'))).toEqual([]);
	});

	it('names things of a list that the job holds, each with a mark of its own', () => {
		const named = fields.flatMap(([keys, e]) => (e.kind === 'refers' ? [{ keys, to: e.to }] : []));
		expect([...new Set(named.map((n) => n.to))].sort()).toEqual(Object.keys(LISTS_OF_MARKS).sort());
		for (const { keys, to } of named) {
			const list = keys.join('.');
			const path = LISTS_OF_MARKS[to].flatMap((step) => (step === OWN ? ['[]'] : [step]));
			expect(at(path)?.kind, list).toBe('list');
			expect(at([...path, '[]', 'id'])?.kind, list).toBe('mark');
			const own = LISTS_OF_MARKS[to].indexOf(OWN as never);
			if (own >= 0) expect(keys.slice(0, own), list).toEqual(path.slice(0, own));
		}
	});

	it('is looked up in the rack, the shop or the panel it stands in', () => {
		expect(listOfMarks('cloths', ['panels', 3, 'cloth'])).toEqual(['stock', 'cloths']);
		expect(listOfMarks('layers', ['panels', 3, 'layers', 1, 'on'])).toEqual([
			'panels',
			3,
			'layers',
		]);
	});
});

describe('an edge that differs', () => {
	const own = ['panels', '[]', 'edges', 'own', '[]'];
	const field = (key: string): Entry =>
		everything.find(([keys]) => keys.join('.') === [...own, key].join('.'))![1];
	const at = (key: string) => ['panels', 0, 'edges', 'own', 0, key];
	const file = {
		panels: [{ edges: { all: { end: 'bare', tuck: '1/2 in' }, own: [{ edge: 1 }] } }],
	};

	it('takes what it does not say from every edge, and that from what is usual', () => {
		const shown = ['end', 'clearance', 'beside', 'neighbourCloth', 'tuck'].map((key) =>
			inherited(file, at(key), field(key)),
		);
		expect(shown).toEqual(['bare', 0.5, 'fixed', null, '1/2 in']);
	});

	it('has nothing to take for its number, nor has anything else', () => {
		expect(inherited(file, at('edge'), field('edge'))).toBeUndefined();
		const taking = fields.filter(([, e]) => e.inherits);
		expect(taking.map(([keys]) => keys.slice(0, -1).join('.'))).toEqual(
			Array(5).fill(own.join('.')),
		);
	});
});

describe('a new thing', () => {
	/** Things brought in from outside have nothing to start from. */
	const BROUGHT = ['svg', 'dxf', 'pasted', 'traced'];
	const read = (schema: typeof box | typeof panel, value: unknown): string[] =>
		schema.safeParse(value).error?.issues.map((i) => `${i.path.join('.')}: ${i.message}`) ?? [];

	it('is read without a problem as it is', () => {
		expect(read(box, fresh(BOX, 'boxes', { ...about, stem: 'box' }))).toEqual([]);
		expect(read(panel, fresh(PANEL, 'panels', { ...about, stem: 'panel' }))).toEqual([]);
	});

	it.each([
		['boxes', BOX, box],
		['panels', PANEL, panel],
	] as const)('is read without a problem with one of everything added: %s', (key, form, schema) => {
		const start = fresh(form, key, about) as Record<string, unknown>;
		for (const [field, value] of everyAddition(form)) {
			expect(read(schema, { ...start, [field]: value }), field).toEqual([]);
		}
	});

	/** Each field of a form set to each thing its own button would make. */
	function everyAddition(form: Group): [string, unknown][] {
		return form.fields.flatMap(({ key, entry }): [string, unknown][] => {
			const name = String(key);
			if (entry.kind === 'list') return manyOf(entry.item, name).map((v) => [name, [v]]);
			if (entry.kind === 'group' || entry.kind === 'kinds') {
				return manyOf(entry, name).map((v) => [name, v]);
			}
			return [];
		});
	}
	function manyOf(entry: Entry, key: string): unknown[] {
		if (entry.kind !== 'kinds') return [fresh(entry, key, about)];
		return entry.ways.filter((w) => !BROUGHT.includes(w.name)).map((w) => freshWay(w, about));
	}

	it('keeps what two forms have in common', () => {
		const shape = BOX.fields.find((f) => f.key === 'shape')?.entry;
		if (shape?.kind !== 'kinds') throw new Error('no shapes');
		const slanted = shape.ways.find((w) => w.name === 'slanted')!;
		const made = freshWay(slanted, about, {
			kind: 'plain',
			width: 812,
			height: '14 in',
			depth: 300,
		});
		expect(made).toMatchObject({ kind: 'slanted', width: 812 });
	});

	it('gets a mark nobody has', () => {
		expect(freeMark({ stem: 'box', taken: ['box-1', 'box-3'] })).toBe('box-2');
	});

	it('starts with the board of the thing it joins', () => {
		const file = {
			stock: { materials: [{ id: 'mdf-12', name: 'MDF', nominal: 12, measured: 12 }] },
			boxes: [
				{
					id: 'b',
					name: 'B',
					material: 'ply-18',
					shape: { kind: 'plain' as const, width: 1, height: 1, depth: 1 },
				},
			],
		};
		expect(aboutAt(file, ['boxes', 0, 'dividers'], 'dividers').material).toBe('ply-18');
		expect(aboutAt(file, ['parts'], 'parts').material).toBe('mdf-12');
	});
});
