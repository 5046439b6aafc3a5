import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { readCsv, unguarded, writeCsv } from '../../../src/lib/job/reading/csv';
import { readPartsCsv, writePartsCsv } from '../../../src/lib/job/reading/csv-parts';
import { pathText } from '../../../src/lib/job/problems/problem';
import { readJob } from '../../../src/lib/job/reading/read';
import type { Hand } from '../../../src/lib/measure/reading';

const metric: Hand = { unit: 'mm', decimal: '.' };
const cells = (text: string) => readCsv(text, ',').rows.map((row) => row.cells);

describe('RFC 4180', () => {
	test('line ends of any kind, the last one optional', () => {
		expect(cells('a,b\r\nc,d\ne,f\rg,h')).toEqual([
			['a', 'b'],
			['c', 'd'],
			['e', 'f'],
			['g', 'h'],
		]);
	});

	test('quotes, doubled quotes, delimiters and line ends inside quotes', () => {
		expect(cells('"a ""b""","c,d","e\r\nf"\n1,2,3')).toEqual([
			['a "b"', 'c,d', 'e\r\nf'],
			['1', '2', '3'],
		]);
		expect(readCsv('"e\nf"\n1', ',').rows[1]!.line).toBe(3);
	});

	test('empty rows are passed over, empty cells are kept', () => {
		expect(cells('\ufeffa,,b\n\n,,\n')).toEqual([['a', '', 'b']]);
	});

	test('a quote without end and a text after a quote are refused with their line', () => {
		expect(readCsv('a\n"b', ',').fault).toMatchObject({ line: 2 });
		expect(readCsv('a\n"b"c', ',').fault).toMatchObject({
			line: 2,
			what: expect.stringContaining('c'),
		});
	});

	law.prop([
		fc.array(fc.array(fc.string(), { minLength: 1, maxLength: 5 }), { maxLength: 8 }),
		fc.constantFrom(',' as const, ';' as const, '\t' as const),
	])('what is written is read again', (rows, delimiter) => {
		const full = rows.map((row) => ['x', ...row]); // no row is empty
		const read = readCsv(writeCsv(full, delimiter), delimiter);
		expect(read.fault).toBeNull();
		expect(read.rows.map((row) => row.cells.map(unguarded))).toEqual(full);
	});

	law.prop([fc.string()])('whatever the text, it is taken apart or refused', (text) => {
		const { rows, fault } = readCsv(text, ';');
		expect(rows.every((row) => row.cells.length > 0)).toBe(true);
		expect(fault === null || fault.line >= 1).toBe(true);
	});

	test('a text that a spreadsheet would run is made harmless, a negative number is left alone', () => {
		expect(writeCsv([['=SUM(A1)', '@x', '+1+2', '-3.5', -3.5]])).toBe(
			"'=SUM(A1),'@x,'+1+2,-3.5,-3.5\r\n",
		);
	});
});

describe('a list of parts', () => {
	test('columns in any order, semicolons, decimal comma, byte order mark', () => {
		const text = '\ufeffName;Material;Width;Length;Count\r\nShelf;ply;300;600,5;2;;\r\n';
		const read = readPartsCsv(text, { unit: 'mm', decimal: ',' });
		expect(read.problems).toEqual([]);
		expect(read.parts).toEqual([
			{
				id: 'row-2',
				name: 'Shelf',
				material: 'ply',
				length: 600.5,
				width: 300,
				count: 2,
				note: '',
			},
		]);
	});

	test('tabs, inches with fractions', () => {
		const read = readPartsCsv('id\tmaterial\tlength\twidth\nA\tply\t23 5/8\t12\n', {
			unit: 'in',
			decimal: '.',
		});
		expect(read.parts[0]).toMatchObject({ id: 'A', length: 600.075, width: 304.8 });
	});

	test('every bad row is a problem with its line, the good ones are read', () => {
		const rows = [
			'id,material,length,width,count',
			'A,ply,600,300,2',
			'B,ply,long,300,x',
			'C,,1,2,3',
		];
		const read = readPartsCsv([...rows, 'D,ply,600,300,1,more', 'E,ply,5,6,7'].join('\n'), metric);
		expect(read.parts.map((p) => p.id)).toEqual(['A', 'E']);
		expect(read.problems.map((p) => pathText(p.path))).toEqual([
			'row[3].length',
			'row[3].count',
			'row[4].material',
			'row[5]',
		]);
		expect(read.problems[0]!.what).toContain('"long"');
		expect(read.problems[1]!.what).toContain('"x"');
	});

	test('a header without the columns needed, an unknown column, no header', () => {
		const read = readPartsCsv('id,lenght,width\nA,1,2', metric);
		expect(read.parts).toEqual([]);
		expect(read.problems.map((p) => p.kind)).toEqual(['check', 'stop']);
		expect(read.problems[0]!.fix).toContain('"length"');
		expect(read.problems[1]!.what).toContain('"material", "length"');
		expect(readPartsCsv('', metric).problems[0]!.fix).toContain('id, name, material');
	});

	test('more rows than a job takes', () => {
		const text = 'material,length,width\n' + 'ply,600,300\n'.repeat(3001);
		const read = readPartsCsv(text, metric);
		expect(read.parts).toHaveLength(3000);
		expect(read.problems[0]!.what).toContain('3001');
	});

	law.prop([
		fc.array(
			fc.record({
				length: fc.integer({ min: 1, max: 1e6 }),
				width: fc.integer({ min: 1, max: 1e6 }),
				count: fc.integer({ min: 1, max: 99 }),
				grain: fc.constantFrom('length', 'width', 'any'),
				note: fc.string({ maxLength: 20 }).map((text) => text.trim()),
			}),
			{ maxLength: 10 },
		),
	])('written and read again, the parts are the same', (raw) => {
		const parts = raw.map((p, i) => ({
			...p,
			id: `p${i}`,
			material: 'ply',
			length: p.length / 100,
			width: p.width / 100,
		}));
		const stock = { materials: [{ id: 'ply', name: 'Ply', nominal: 18, measured: 18 }] };
		const { job } = readJob({ stock, parts });
		const back = readPartsCsv(writePartsCsv(job.parts), metric);
		expect(back.problems).toEqual([]);
		const again = readJob({ stock, parts: [...back.parts] }).job.parts;
		expect(again).toEqual(job.parts);
	});
});
