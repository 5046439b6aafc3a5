import { expect, test } from 'vitest';
import { alikeSheets } from '../../src/lib/layout/alike-sheets';
import { DrawnSheets, undrawnText } from '../../src/lib/layout/most-cuts';
import { plan } from '../../src/lib/plan';
import { printPack } from '../../src/lib/print/pack';
import { wordsOn } from '../print/words-on';

const stock = {
	materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
	sheets: [{ id: 'full', material: 'ply', length: 1000, width: 500, price: 20 }],
};
const part = (id: string, count: number, length = 480) => ({
	...{ id, material: 'ply', length, width: 480, count },
});
const planOf = (...parts: object[]) => plan({ stock, parts }, { effort: 20 });

test('sheets with the same parts in the same places are one group, another is its own', async () => {
	const { boards } = await planOf(part('a', 7));
	expect(alikeSheets(boards[0]!)).toEqual([[0, 1, 2], [3]]);
});

test('a part of another name, a sheet cut already or of another kind is not alike', async () => {
	const [board] = (await planOf(part('a', 6))).boards;
	const { answer, sources } = board!;
	const [first, ...rest] = answer.layouts;
	const other = { ...first!, placed: first!.placed.map((p) => ({ ...p, id: 'b' })) };
	const named = { ...board!, answer: { ...answer, layouts: [other, ...rest] } };
	expect(alikeSheets(named)).toEqual([[0], [1, 2]]);
	for (const change of [{ cut: true }, { pinned: true }, { name: 'other' }]) {
		const own = sources.map((s, i) => (i === 1 ? { ...s, ...change } : s));
		expect(alikeSheets({ ...board!, sources: own })).toEqual([[0, 2], [1]]);
	}
});

test('they are drawn once, with their number, and the cuts of one count', async () => {
	const made = await planOf(part('a', 7));
	const sheets = printPack(made).filter((p) => p.title.includes('Sheet'));
	const words = sheets.map((p) => wordsOn(p.marks).join(' ')).join(' ');
	expect(words).toContain('Sheets 1 to 3 of 4: Plywood');
	expect(words).toContain('Cut 3 sheets by this page');
	expect(words).toContain('Sheet 4 of 4: Plywood');
	expect(words).not.toContain('Sheet 2 of 4');
	const [board] = made.boards;
	const [layout, source] = [board!.answer.layouts[0]!, board!.sources[0]!];
	const all = <T>(one: T): T[] => Array.from({ length: 10_001 }, () => one);
	const many = { ...board!, answer: { ...board!.answer, layouts: all(layout) } };
	expect(undrawnText(new DrawnSheets([{ ...many, sources: all(source) }]).undrawn)).toBe('');
});
