import { describe, expect, it } from 'vitest';
import { mm, inches } from '../../src/lib/measure/length';
import { fileName } from '../../src/lib/ui/files';
import { fromText } from '../../src/lib/ui/jobs/open-file';
import { byWeight, pageOf, placeOf } from '../../src/lib/ui/shell/where';
import { showPull } from '../../src/lib/ui/shell/pull';
import { marksOf, nextMark, readingOf, worth } from '../../src/lib/ui/trace/marks';

const MM = { unit: 'mm', fraction: 32, decimal: '.' } as const;

describe('a place in the file', () => {
	const file = {
		boxes: [{ id: 'b', name: 'Bench box', shape: { width: 'x' } }],
		parts: [{ id: 'P1' }],
	};

	it('is said in words a person knows', () => {
		expect(placeOf(file, ['boxes', 0, 'shape', 'width'])).toBe('Bench box, shape, width');
		expect(placeOf(file, ['parts', 0])).toBe('P1');
		expect(placeOf(file, ['parts', 7, 'length'])).toBe('Parts 8, length');
		expect(placeOf(file, [])).toBe('The file');
	});

	it('is edited on its page', () => {
		expect(pageOf(['stock', 'sheets', 0])).toBe('rack');
		expect(pageOf(['shop', 'saws', 0, 'kerf'])).toBe('shop');
		expect(pageOf(['boxes', 0])).toBe('job');
	});

	it('that stops something comes before one to check', () => {
		const problem = (kind: 'stop' | 'check', what: string) => ({ path: [], what, fix: '', kind });
		const sorted = byWeight([problem('check', 'a'), problem('stop', 'b'), problem('check', 'c')]);
		expect(sorted.map((p) => p.what)).toEqual(['b', 'a', 'c']);
	});
});

it('rounds cloth to pull up, never down, in the seller’s measure', () => {
	const rule = { fraction: 32, decimal: '.' } as const;
	expect(showPull(mm(2001), { ...rule, unit: 'mm' })).toBe('2.01 m');
	expect(showPull(mm(2000), { ...rule, unit: 'mm' })).toBe('2.00 m');
	expect(showPull(inches(36), { ...rule, unit: 'in' })).toBe('1.00 yd');
	expect(showPull(mm(2050), { ...rule, unit: 'cm', decimal: ',' })).toBe('2,05 m');
});

it('makes a file name of any title', () => {
	expect(fileName('Camper van, rear bench', 'json')).toBe('camper-van-rear-bench.json');
	expect(fileName('../../etc', 'json')).toBe('etc.json');
	expect(fileName('  ', 'json')).toBe('job.json');
	expect(fileName('Größe 18', 'csv')).toMatch(/^gro.*-18\.csv$/);
});

describe('a file opened', () => {
	it('comes up exactly as it stands, faults and all', () => {
		const read = fromText('{"name":"Bad","parts":[{"id":"P1","length":"6oo"}]}', 'bad.json');
		expect('opening' in read && read.opening.file).toEqual({
			name: 'Bad',
			parts: [{ id: 'P1', length: '6oo' }],
		});
	});

	it('is refused in words when it is torn or no job', () => {
		for (const text of ['{"name":', '[]', '"job"', '']) {
			const read = fromText(text, 'torn.json');
			expect('refused' in read && read.refused[0], text).toMatch(/^torn\.json/);
		}
	});
});

describe('a tracing', () => {
	const paper = {
		sheet: [
			{ x: 100, y: 100 },
			{ x: 310, y: 100 },
			{ x: 310, y: 397 },
			{ x: 100, y: 397 },
		],
	};

	it('asks for the corners of the paper one by one, then for the outline', () => {
		expect(nextMark(marksOf({}))).toContain('top left');
		expect(nextMark(marksOf({ sheet: paper.sheet.slice(0, 3) }))).toContain('bottom left');
		expect(nextMark(marksOf(paper))).toContain('at least 3 more');
	});

	it('says what the squaring is worth, and when a picture cannot be trusted', () => {
		const good = marksOf({ ...paper, points: [{ x: 0, y: 0 }] });
		expect(worth(readingOf({ paper: 'a4' }, good)!, good, { ...MM, decimal: ',' })).toMatch(
			/up to \d+,\d mm/,
		);
		const crossed = marksOf({
			sheet: [paper.sheet[0], paper.sheet[2], paper.sheet[1], paper.sheet[3]],
		});
		expect(worth(readingOf({}, crossed)!, crossed, MM)).toContain('do not make a sheet of paper');
		expect(readingOf({}, marksOf({ sheet: paper.sheet.slice(0, 2) }))).toBeNull();
	});
});
