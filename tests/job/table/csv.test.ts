import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { readCsv, unguarded, writeCsv } from '../../../src/lib/job/table/csv';

const cells = (text: string) => readCsv(text, ',').rows.map((row) => row.cells);

/* Y. Shafranovich, RFC 4180 "Common Format and MIME Type for Comma-Separated Values (CSV) Files",
 * October 2005, section 2, its rules and examples by their numbers. */
describe('RFC 4180', () => {
	test.each([
		[
			'1: a record a line',
			'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
			[
				['aaa', 'bbb', 'ccc'],
				['zzz', 'yyy', 'xxx'],
			],
		],
		[
			'2: the last may have no line end',
			'aaa,bbb,ccc\r\nzzz,yyy,xxx',
			[
				['aaa', 'bbb', 'ccc'],
				['zzz', 'yyy', 'xxx'],
			],
		],
		['4: spaces are part of a field', 'a a, bbb ,ccc', [['a a', ' bbb ', 'ccc']]],
		[
			'5: fields may be in double quotes',
			'"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
			[
				['aaa', 'bbb', 'ccc'],
				['zzz', 'yyy', 'xxx'],
			],
		],
		[
			'6: line ends, quotes and commas in quotes',
			'"aaa","b\r\nbb","ccc"\r\nzzz,"y,y",xxx',
			[
				['aaa', 'b\r\nbb', 'ccc'],
				['zzz', 'y,y', 'xxx'],
			],
		],
		['7: a quote within is doubled', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
	])('%s', (_, text, rows) => {
		expect(cells(text)).toEqual(rows);
	});

	test('rows know where they stand: together with what lies between they are the text', () => {
		const text = '\ufeffa,b\r\n\n"c\n",d\r\re,f';
		const { rows } = readCsv(text, ',');
		expect(rows.map((row) => text.slice(row.from, row.to))).toEqual([
			'a,b\r\n',
			'"c\n",d\r',
			'e,f',
		]);
		expect(rows.map((row) => row.line)).toEqual([1, 3, 6]);
	});

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
		expect(writeCsv([['=SUM(A1)', '@x', '+1+2', '-3.5', -3.5, '＝1+2']])).toBe(
			"'=SUM(A1),'@x,'+1+2,-3.5,-3.5,'＝1+2\r\n",
		);
	});
});
