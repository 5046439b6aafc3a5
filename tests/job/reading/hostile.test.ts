import { stepsOf } from '../../steps';
import { describe, expect, test } from 'vitest';
import { readJob } from '../../../src/lib/job/reading/read';
import { LARGEST_FILE, parseJobText } from '../../../src/lib/job/reading/text';

/** Reads a text as the command line and the page do. */
function open(text: string) {
	const read = parseJobText(text);
	return 'problems' in read ? read.problems : readJob(read.file).problems;
}

const nested = (depth: number) => '{"notes":'.repeat(depth) + '1' + '}'.repeat(depth);

describe('a hostile file is refused in words', () => {
	test.each([
		['nested deep', nested(60), 'nested'],
		['nested deeper than a parser bears', '['.repeat(1_000_000), 'nested'],
		['a list', '[1]', 'a list'],
		['a number', '7', 'a number'],
		['null', 'null', 'nothing'],
		['empty', '', 'empty'],
		['only a byte order mark', '\ufeff', 'empty'],
		['__proto__', '{"__proto__": {"name": "x"}}', '"__proto__"'],
		['constructor inside', '{"shop": {"constructor": 1}}', '"constructor"'],
		['a newer version', '{"version": 99}', 'version 99'],
		['a version that is none', '{"version": "two"}', '"two"'],
		['a negative version', '{"version": -1}', '-1'],
		['a foreign format', '{"format": "another thing"}', '"another thing"'],
		['too many entries', `{"parts": [${'0,'.repeat(20_000)}0]}`, '20001 entries'],
		['a text without end', `{"notes": "${'x'.repeat(30_000)}"}`, '30000 characters'],
		['infinity', '{"seed": 1e999}', 'Infinity'],
		['larger than we read', ' '.repeat(LARGEST_FILE + 1), 'million characters'],
	])('%s', (_, text, word) => {
		const problems = open(text);
		expect(problems).toHaveLength(1);
		expect(problems[0]!.what).toContain(word);
		expect(problems[0]!.fix).not.toBe('');
	});

	test('a wide file is read letter by letter, and no farther into it than is borne, however wide', () => {
		const wide = (times: number): string => {
			const rows = '{"id":"a","material":"m","length":600,"width":300},'.repeat(900 * times);
			return `{"parts":[${rows}{}],"notes":[${`[${'1,'.repeat(900)}1],`.repeat(2000 * times)}1]}`;
		};
		const cost = (text: string): { perLetter: number; within: number } => {
			let file: unknown;
			const letters = stepsOf(() => {
				const read = parseJobText(text);
				file = 'file' in read ? read.file : null;
			});
			const within = stepsOf(() => expect(readJob(file).problems[0]!.what).toContain('values'));
			return { perLetter: letters / text.length, within };
		};
		const [one, four] = [cost(wide(1)), cost(wide(4))];
		expect(wide(4).length).toBeGreaterThan(14e6);
		expect(one.perLetter).toBeLessThan(4);
		expect(four.perLetter).toBeLessThan(4);
		expect(one.within).toBeLessThan(3e6);
		expect(four.within).toBeLessThan(3e6);
	});

	test('a loop, a function and a bigint, which only a program can hand over', () => {
		const loop: Record<string, unknown> = {};
		loop['shop'] = loop;
		expect(readJob(loop).problems[0]!.what).toContain('itself');
		expect(readJob({ name: () => 1 }).problems[0]!.what).toContain('function');
		expect(readJob({ name: 1n }).problems[0]!.what).toContain('bigint');
		const twice = { paper: 'a4' };
		expect(readJob({ shop: twice, stock: {} }).problems).toEqual([]);
	});
});

describe('sound JSON that is no job is refused, never opened as an empty one', () => {
	test.each([
		['a list of programs', '{"name": "x", "version": "0.1.0", "scripts": {}}', '"scripts"'],
		['a map', '{"type": "FeatureCollection", "features": []}', '"type", "features"'],
		['a problem of layout', '{"nest": "sheets", "pieces": []}', '"pieces"'],
		[
			'many fields',
			JSON.stringify(Object.fromEntries('abcdefgh'.split('').map((c) => [c, 1]))),
			'2 more',
		],
		['a list', '[{"parts": []}]', 'a list'],
		['a text', '"parts"', 'a text'],
		['true', 'true', 'a boolean'],
	])('%s', (_, text, words) => {
		const read = parseJobText(text);
		const [problem] = 'problems' in read ? read.problems : [];
		expect(problem!.what).toContain(words);
		expect(problem!.fix).not.toBe('');
	});

	test.each([
		['nothing yet', '{}'],
		['a name alone', '{"name": "Van", "notes": "x"}'],
		['a list of parts', '{"parts": [], "colour": 1}'],
		['a slip of the finger, which the reader names', '{"panles": []}'],
		['of our format', '{"format": "kerf-and-nap job", "version": 1, "colour": 2}'],
	])('%s may be one', (_, text) => {
		expect(parseJobText(text)).toHaveProperty('file');
	});
});

describe('a torn file is refused with line and column', () => {
	test.each([
		['{"name": "x",}', 'line 1, column 14', 'name of a field'],
		['{"name": "x"', 'line 1, column 13', 'the file ends'],
		['{"name": "x"} x', 'line 1, column 15', 'nothing more'],
		['{name: 1}', 'line 1, column 2', 'double quotes'],
		['{"a": 1\n\n  "b": 2}', 'line 3, column 3', 'a comma or }'],
		['{"a" 1}', 'line 1, column 6', 'a colon'],
		['{"a": [1, 2}', 'line 1, column 12', 'a comma or ]'],
		['{"a": tru}', 'line 1, column 7', 'a value'],
		['{"a": 01}', 'line 1, column 7', 'a value'],
		['{"a": NaN}', 'line 1, column 7', 'a value'],
		['{"a": "\\x"}', 'line 1, column 7', 'closing quote'],
		['{"a": "x\ny"}', 'line 1, column 7', 'closing quote'],
	])('%s', (text, place, wanted) => {
		const [problem] = open(text);
		expect(problem!.what).toContain(place);
		expect(problem!.what).toContain(wanted);
	});

	test('cut anywhere, a file is refused at the cut and never read as another job', () => {
		const text = JSON.stringify({
			name: 'a "b" \\ é',
			notes: [1.5e3, -2, true, null, {}],
			seed: 3,
		});
		for (let end = 1; end < text.length; end++) {
			const [problem, ...more] = open(text.slice(0, end));
			expect(more).toEqual([]);
			expect(problem!.what).toMatch(/line 1, column \d+/);
		}
	});
});

test('a drawing of millions of characters reaches its reader; the same length of notes does not', () => {
	const long = 'x'.repeat(3_000_000);
	const opening = { kind: 'dxf', text: long, unit: 'mm' };
	const panels = [{ id: 'p', name: 'P', material: 'ply', opening }];
	const drawn = readJob({ format: 'kerf-and-nap job', version: 1, panels });
	expect(drawn.problems.filter((p) => p.what.includes('characters'))).toEqual([]);
	const noted = readJob({ format: 'kerf-and-nap job', version: 1, notes: long });
	expect(noted.problems.map((p) => p.what)).toEqual(['This text has 3000000 characters.']);
});
