import { describe, expect, it } from 'vitest';
import { box } from '../../../src/lib/job/box/box';
import { job } from '../../../src/lib/job/job';
import { panel } from '../../../src/lib/job/panel/panel';
import { aboutAt } from '../../../src/lib/ui/forms/about';
import type { Entry, Group } from '../../../src/lib/ui/forms/entry';
import { fresh, freeMark, freshWay, type About } from '../../../src/lib/ui/forms/fresh';
import { BOX, JOB, PANEL } from '../../../src/lib/ui/forms/schemas';

const about: About = {
	material: 'ply-18',
	cloth: 'carpet',
	saw: 'table-saw',
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

describe('the forms', () => {
	it('hold every key of the job schema', () => {
		expect(JOB.fields.map((f) => f.key)).toEqual(Object.keys(job.shape));
		expect(BOX.fields.map((f) => f.key)).toEqual(Object.keys(box.shape));
		expect(PANEL.fields.map((f) => f.key)).toEqual(Object.keys(panel.shape));
		expect(everything.length).toBeGreaterThan(300);
	});

	it('name each field in words', () => {
		const unnamed = everything.filter(([, e]) => !/^[A-ZÀ-Þ][^{}_]*$/.test(e.label));
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
