import { describe, expect, test } from 'vitest';
import { stepsOf } from '../../steps';
import {
	type ListAbout,
	type PartsList,
	readPartsList,
	type PartsChosen,
} from '../../../src/lib/job/parts-list/parts-list';
import { withoutRows } from '../../../src/lib/job/table/table';
import { tableText } from '../../../src/lib/job/table/table-text';
import { pathText } from '../../../src/lib/job/problems/problem';
import { mm } from '../../../src/lib/measure/length';
import type { Hand } from '../../../src/lib/measure/reading';

const board = (id: string, name: string, nominal: number) => ({
	id,
	name,
	nominal: mm(nominal),
	measured: mm(nominal - 0.2),
});
const boards = [board('ply18', 'Birch ply 18', 18), board('mdf', 'MDF 12', 12)];
const about = (hand: Partial<Hand> = {}, taken: string[] = []): ListAbout => ({
	hand: { unit: 'mm', decimal: '.', ...hand },
	boards,
	taken,
});
const read = (text: string, chosen: PartsChosen = {}, hand: Partial<Hand> = {}): PartsList =>
	readPartsList(text, about(hand), chosen);
const parts = (list: PartsList) => list.rows.map((row) => row.part);
const faults = (list: PartsList): string =>
	list.rows
		.flatMap((row) => row.faults.map((f) => `${pathText(f.path)}: ${f.what} ${f.fix}`))
		.join('\n');
const open = (list: PartsList): string => list.open.map((p) => `${p.what} ${p.fix}`).join('\n');
/** Length, width and count of each part. */
const sizes = (list: PartsList) => parts(list).map((p) => p && [p.length, p.width, p.count ?? 1]);

describe('headings as people write them', () => {
	test('Part, Qty, L, W, Material', () => {
		const list = read('Part,Qty,L,W,Material\nSide,2,600,300,Birch ply 18\n');
		expect(list.open).toEqual([]);
		expect(parts(list)).toEqual([
			{ id: 'row-2', name: 'Side', material: 'ply18', length: 600, width: 300, count: 2, note: '' },
		]);
	});

	test.each([
		['Description;Pcs;Length (mm);Width (mm);Board', 'Side;2;600;300;mdf'],
		['No.,Description,Count,Length,Width,Mat.', 'A1,Side,2,600,300,mdf'],
		['BOARD\tLENGTH [MM]\tWIDTH [MM]\tQUANTITY\tNAME', 'mdf\t600\t300\t2\tSide'],
		['Width in mm,Length in mm,Material,Qty.,Title', '300,600,mdf,2,Side'],
		['Item;Name;Nos;Length/cm;Width cm;Board', 'A1;Side;2;60;30;mdf'],
		['Length (in),Width (in.),Qty,Material,Component', '23 5/8,11-13/16,2,mdf,Side'],
		['L",W",Qty,Material,Part', '"23 5/8""","11 13/16""",2,mdf,Side'],
		['Length (ft),Width (ft),Qty,Material,Part', '2,1,2,mdf,Side'],
	])('%s', (heading, row) => {
		const list = read(`${heading}\n${row}\n`);
		expect(list.open).toEqual([]);
		expect(faults(list)).toBe('');
		const [part] = parts(list);
		expect(part).toMatchObject({ name: 'Side', material: 'mdf', count: 2 });
		expect(Math.abs(Number(part!.length) - 600)).toBeLessThan(10);
		expect(Math.abs(Number(part!.width) - 300)).toBeLessThan(6);
	});

	test('a mark where there is a name beside it; grain, note and thickness', () => {
		const list = read(
			'Part,Name,Qty,L,W,Thk,Grain,Comments,Edging\nA1,Side,1,600,300,12,Across,"by the door, left",2L\n',
		);
		expect(list.open).toEqual([]);
		expect(list.setting.columns.at(-1)).toBe('out');
		expect(parts(list)[0]).toEqual({
			id: 'A1',
			name: 'Side',
			material: 'mdf',
			length: 600,
			width: 300,
			count: 1,
			grain: 'width',
			note: 'by the door, left',
		});
	});

	test('a title above the headings is passed over', () => {
		const list = read('Cutting list for the bench\n\nPart,Qty,L,W,Material\nSide,2,600,300,mdf\n');
		expect(list.setting.heading).toBe(1);
		expect(sizes(list)).toEqual([[600, 300, 2]]);
	});
});

describe('what cannot be guessed is asked, and nothing is a part until it is said', () => {
	const ask = (text: string, words: string[], chosen: PartsChosen, then: unknown): void => {
		const list = read(text);
		for (const word of words) expect(open(list)).toContain(word);
		expect(parts(list).every((part) => part === null)).toBe(true);
		expect(list.rows.length).toBeGreaterThan(0);
		const said = read(text, chosen);
		expect(open(said)).toBe('');
		expect(sizes(said)).toEqual(then);
	};

	test('a list without headings', () => {
		ask(
			'Side;2;600;300;mdf\nTop;1;500;300;MDF 12\n',
			['of column 1, 2, 3, 4.', 'No column is the length', 'No column is the width'],
			{ columns: { 0: 'name', 1: 'count', 2: 'length', 3: 'width' } },
			[
				[600, 300, 2],
				[500, 300, 1],
			],
		);
	});

	test('headings in words nobody here knows', () => {
		ask(
			'Teil;Anz;Lg;Br;Platte\nSeite;2;600;300;mdf\n',
			['column 1 ("Teil"), 2 ("Anz"), 3 ("Lg"), 4 ("Br").'],
			{ columns: { 0: 'name', 1: 'count', 2: 'length', 3: 'width' } },
			[[600, 300, 2]],
		);
	});

	test('a number that may be a mark or how many; a height that may be either side', () => {
		ask('No.,L,W,Material\n2,600,300,mdf\n', ['column 1 ("No.")'], { columns: { 0: 'count' } }, [
			[600, 300, 2],
		]);
		ask(
			'Part,Qty,Height,Width,Material\nSide,2,600,300,mdf\n',
			['column 3 ("Height")', 'No column is the length'],
			{ columns: { 2: 'length' } },
			[[600, 300, 2]],
		);
	});

	test('whole numbers under a word nobody knows, where nothing else says how many', () => {
		ask(
			'Part,Stk,L,W,Material\nSide,2,600,300,mdf\n',
			['column 2 ("Stk")'],
			{ columns: { 1: 'count' } },
			[[600, 300, 2]],
		);
		const plain = read('Part,Stk,L,W,Material,Qty\nSide,2,600,300,mdf,3\n');
		expect(open(plain)).toBe('');
		expect(sizes(plain)).toEqual([[600, 300, 3]]);
	});

	test('two columns by one name, and two said to be the same', () => {
		ask(
			'L,Length,W,Material\n600,590,300,mdf\n',
			['column 2 ("Length")'],
			{ columns: { 1: 'out' } },
			[[600, 300, 1]],
		);
		const both = read('A,B,C\n1,2,3\n', { columns: { 0: 'length', 1: 'length', 2: 'width' } });
		expect(open(both)).toContain('Column 2 ("B") is the length, and so is column 1');
		expect(parts(both)).toEqual([null]);
	});

	test('1,200 in millimetres may be a metre or a millimetre', () => {
		const text = 'L;W;Material\n1,200;1,300;mdf\n';
		ask(text, ['"1,200"', 'decimal sign'], { decimal: '.' }, [[1200, 1300, 1]]);
		expect(sizes(read(text, { decimal: ',' }))).toEqual([[1.2, 1.3, 1]]);
		ask('L;W;Material\n600,5;300.5;mdf\n', ['decimal sign'], { decimal: ',' }, [null]);
		// Another row of the list, or a figure no thousands have, tells.
		expect(sizes(read('L;W;Material\n1.200;300,5;mdf\n'))).toEqual([[1200, 300.5, 1]]);
		expect(sizes(read('L;W;Material\n1.200,5;300;mdf\n'))).toEqual([[1200.5, 300, 1]]);
		expect(sizes(read('L;W;Material\n0,125;300;mdf\n'))).toEqual([[0.125, 300, 1]]);
		expect(sizes(read('L;W;Material\n1.125;12;mdf\n', {}, { unit: 'in' }))).toEqual([
			[28.575, 304.8, 1],
		]);
	});

	test('the first row may be said to be no heading, and the separator another', () => {
		const text = 'L,W,Material\n600,300,mdf\n';
		expect(read(text, { heading: false }).rows).toHaveLength(2);
		expect(read(text, { separator: ';' }).setting.columns).toHaveLength(1);
		expect(open(read(text, { separator: ';' }))).toContain('No column is the width');
	});
});

describe('cells as people write them', () => {
	const row = (cells: string, hand: Partial<Hand> = {}): PartsList =>
		read(`Part\tQty\tL\tW\tMaterial\tGrain\n${cells}\n`, {}, hand);

	test.each([
		['Side\t2\t600\t300\tmdf\t', [600, 300, 2]],
		['Side\t2 pcs\t60 cm\t30cm\tmdf\tnone', [600, 300, 2]],
		['Side\t2x\t0.6 m\t300 mm\tmdf\tL', [600, 300, 2]],
		['Side\tx2\t23 5/8"\t11-13/16 in\tmdf\tlengthwise', [600.075, 300.0375, 2]],
		['Side\t2.0\t2\' 3 1/2"\t12½"\tmdf\tany', [698.5, 317.5, 2]],
		['Side\t\t600,5\t300,25\tMDF 12\tno', [600.5, 300.25, 1]],
		['Side\t3 off\t 600 \t300\t M-D_f \tACROSS', [600, 300, 3]],
		['=1+1\t1\t600\t300\tmdf\t', [600, 300, 1]],
	])('%s', (cells, expected) => {
		const list = row(cells);
		expect(faults(list)).toBe('');
		expect(sizes(list)).toEqual([expected]);
	});

	test("by a ruler in inches, and a heading's unit before the ruler's, a cell's before both", () => {
		expect(sizes(row('Side\t1\t10\t5\tmdf\t', { unit: 'in' }))).toEqual([[254, 127, 1]]);
		const list = read('L (cm),W,Material\n10,5,mdf\n10 mm,5,mdf\n', {}, { unit: 'in' });
		expect(sizes(list)).toEqual([
			[100, 127, 1],
			[10, 127, 1],
		]);
	});

	test.each([
		['Side\tx\t600\t300\tmdf\t', 'row[2].count', '"x"'],
		['Side\t1.5\t600\t300\tmdf\t', 'row[2].count', '"1.5"'],
		['Side\t0\t600\t300\tmdf\t', 'row[2].count', 'At least 1'],
		['Side\t-2\t600\t300\tmdf\t', 'row[2].count', '"-2"'],
		['Side\t20000\t600\t300\tmdf\t', 'row[2].count', 'At most 10000'],
		['Side\t1\tlong\t300\tmdf\t', 'row[2].length', '"long"'],
		['Side\t1\t\t300\tmdf\t', 'row[2].length', 'Nothing is written'],
		['Side\t1\t=B2*2\t300\tmdf\t', 'row[2].length', '"=B2*2"'],
		['Side\t1\t-600\t300\tmdf\t', 'row[2].length', 'from 0.01'],
		['Side\t1\t600 kg\t300\tmdf\t', 'row[2].length', '"kg"'],
		['Side\t1\t600\t300\tmdf\tsideways', 'row[2].grain', '"sideways"'],
		['Side\t1\t600\t300\t\t', 'row[2].material', 'names no board'],
		[
			'Side\t1\t600\t300\tMDF 21\t',
			'row[2].material',
			'"MDF 12" is near; the rack has Birch ply 18 (ply18), MDF 12 (mdf)',
		],
		['Side\t1\t600\t300\tmdf\tany\tmore', 'row[2]', '7 cells where there are 6 columns'],
	])('what is wrong is said with its row and column: %s', (cells, where, words) => {
		const list = row(cells);
		expect(parts(list)).toEqual([null]);
		expect(faults(list)).toContain(`${where}: `);
		expect(faults(list)).toContain(words);
	});

	test('all that is wrong with a row at once, and the good rows beside it', () => {
		const list = read('Part,Qty,L,W,Material\nA,x,long,300,oak\nB,1,600,300,mdf\n');
		expect(list.rows[0]!.faults.map((f) => pathText(f.path))).toEqual([
			'row[2].material',
			'row[2].count',
			'row[2].length',
		]);
		expect(sizes(list)).toEqual([null, [600, 300, 1]]);
	});

	test('marks: each but once, in the list and in the job', () => {
		const list = readPartsList(
			'Mark,L,W,Material\nA,1,1,mdf\nA,1,1,mdf\nB,1,1,mdf\nC d,1,1,mdf\n,1,1,mdf\n',
			about({}, ['B', 'row-6']),
		);
		expect(parts(list).map((p) => p?.id ?? null)).toEqual(['A', null, null, null, 'row-6-2']);
		expect(faults(list)).toContain('row[3].mark: The mark "A" is taken by row 2.');
		expect(faults(list)).toContain('row[4].mark: The mark "B" is taken by a part of the job.');
		expect(faults(list)).toContain('row[5].mark');
	});
});

describe('boards', () => {
	const list = (cells: string, more: object = {}, chosen: PartsChosen = {}): PartsList =>
		readPartsList(`L,W,Thk,Board\n600,300,${cells}\n`, { ...about(), ...more }, chosen);
	const named = (l: PartsList) => parts(l).map((p) => p?.material ?? null);

	test('by mark or name, whatever the case and spaces; by thickness where none is named', () => {
		expect(named(list(',PLY18'))).toEqual(['ply18']);
		expect(named(list(',birchply18'))).toEqual(['ply18']);
		expect(named(list('12,'))).toEqual(['mdf']);
		expect(named(list('11.8,mdf 12'))).toEqual(['mdf']);
		expect(faults(list('18,MDF 12'))).toContain('The list says 18 mm, and "MDF 12" is 12 mm.');
		expect(faults(list('9,'))).toContain('none has its thickness');
		const twins = [board('a', 'Ply', 18), board('b', 'ply', 18), board('c', 'PLY', 12)];
		expect(faults(list(',Ply', { boards: twins }))).toContain(
			'"Ply" may be Ply (a), ply (b), PLY (c).',
		);
		expect(named(list('12,Ply', { boards: twins }))).toEqual(['c']);
		expect(faults(list('18,', { boards: twins }))).toContain('several have its thickness');
	});

	test('one for all rows that name none: chosen, or the only one there is', () => {
		expect(named(list(',', {}, { board: 'mdf' }))).toEqual(['mdf']);
		expect(named(list(',ply18', {}, { board: 'mdf' }))).toEqual(['ply18']);
		expect(named(list(',', { boards: boards.slice(0, 1) }))).toEqual(['ply18']);
		expect(faults(list(',', { boards: [] }))).toContain('no board on the rack');
		expect(named(list(',constructor'))).toEqual([null]);
	});
});

describe('bad input on the way', () => {
	test.each([
		['', 'The list is empty'],
		['\ufeff \n', 'The list is empty'],
		['600', 'No column is the length'],
		['L,W,Material', 'There is no row with a part'],
		['PK\u0003\u0004\u0014\0\u0006', 'This is no text'],
		['\0\u0001\u0002', 'CSV'],
		['x'.repeat(5_000_001), 'five million'],
		['L,W,Material\n"600,300,mdf\n', 'never closed'],
	])('%#', (text, words) => {
		const list = read(text);
		expect(open(list)).toContain(words);
		expect(parts(list).filter(Boolean)).toEqual([]);
	});

	test('100,000 rows: the first 3000 are read, that is said, and the rest stays', () => {
		const text = 'L,W,Material\n' + '600,300,mdf\n'.repeat(100_000);
		let list = read('');
		const steps = stepsOf(() => (list = read(text)));
		expect(steps / text.length).toBeLessThan(20);
		expect(parts(list).filter(Boolean)).toHaveLength(3000);
		expect(open(list)).toContain('The list has 100000 rows; a job takes 3000 parts.');
		const rest = withoutRows(text, list, list.rows);
		expect(rest).toBe('L,W,Material\n' + '600,300,mdf\n'.repeat(97_000));
		const full = readPartsList(
			text,
			about(
				{},
				Array.from({ length: 3000 }, (_, i) => `p${i}`),
			),
		);
		expect(full.rows).toEqual([]);
		expect(open(full)).toContain('3000 are listed already');
	});

	test('what is taken in leaves the text, what is not stays letter by letter', () => {
		const text =
			'Title\n\nL,W,Material,Edging\r\n600,300,mdf,2L\r\n,"x,\n",oak,3\r\n500,300,mdf,\r\n';
		const list = read(text);
		const good = list.rows.filter((row) => row.part);
		expect(good).toHaveLength(2);
		const rest = withoutRows(text, list, good);
		expect(rest).toBe('Title\n\nL,W,Material,Edging\r\n,"x,\n",oak,3\r\n');
		expect(read(rest).rows.map((row) => row.cells)).toEqual([list.rows[1]!.cells]);
		const mended = rest.replace(',"x,\n",oak', '400,300,mdf');
		const again = read(mended);
		expect(withoutRows(mended, again, again.rows)).toBe('');
		// After a fault nobody knows what follows: it stays.
		const torn = 'L,W,Material\n600,300,mdf\n"500,300,mdf\n';
		const left = read(torn);
		expect(sizes(left)).toEqual([[600, 300, 1]]);
		expect(withoutRows(torn, left, left.rows)).toBe('L,W,Material\n"500,300,mdf\n');
	});

	test('files in other letters', () => {
		const bytes = (...n: number[]): string => tableText(new Uint8Array(n));
		expect(tableText(new TextEncoder().encode('\ufeffL½'))).toBe('L½');
		expect(bytes(0xff, 0xfe, 0x4c, 0, 0xbd, 0)).toBe('L½');
		expect(bytes(0xfe, 0xff, 0, 0x4c, 0, 0xbd)).toBe('L½');
		expect(bytes(0x4c, 0xbd)).toBe('L½');
		expect(open(read(bytes(0x50, 0x4b, 3, 4, 0xff, 0)))).toContain('This is no text');
	});
});
