import { stepsOf } from '../../steps';
import { describe, expect, test } from 'vitest';
import { showHidden } from '../../../src/lib/job/reading/hidden-letters';
import { pathText } from '../../../src/lib/job/problems/problem';
import { readJob } from '../../../src/lib/job/reading/read';
import { parseJobText } from '../../../src/lib/job/reading/text';
import { heldTwice } from '../../../src/lib/job/reading/twice';
import { plan } from '../../../src/lib/plan';
import { orderCsv } from '../../../src/lib/print/lists/csv-files';

describe('a field that stands twice', () => {
	test('is said with its place and both values, and the last one counts', () => {
		const text =
			'{"name": "A", "parts": [{"id": "p"}, {"id": "q", "length": 600, "length" : {"a": [1, 2]} }], "name":"B"}';
		const read = parseJobText(text);
		if ('problems' in read) throw new Error('it is JSON');
		expect(read.file).toMatchObject({ name: 'B' });
		expect(read.twice.map((p) => pathText(p.path))).toEqual(['parts[1].length', 'name']);
		expect(read.twice[0]!.what).toContain('first as 600, then as {"a": [1, 2]};');
		expect(read.twice[1]!.what).toContain('first as "A", then as "B";');
		expect(read.twice.every((p) => p.kind === 'check')).toBe(true);
	});

	test('is found however its name is written, and never across two objects', () => {
		expect(heldTwice('{"na\\u006de": 1, "name": 2}')).toHaveLength(1);
		expect(heldTwice('{"a": {"x": 1}, "b": {"x": 2}, "c": ["x", "x"], "d": "x\\",\\"x"}')).toEqual(
			[],
		);
		expect(heldTwice('[{"x": {"x": 1}}, {"x": 2}, "x"]')).toEqual([]);
	});

	test('shows a long value cut short, and hides nothing in it', () => {
		const [problem] = heldTwice(`{"notes": "${'long '.repeat(900)}", "notes": "\u202e"}`);
		expect(problem!.what.length).toBeLessThan(250);
		expect(problem!.what).toContain('\\u{202e}');
	});

	test('costs little in a large file, and a file made of nothing else is cut short', () => {
		const row = '{"id": "a", "material": "m", "length": 600, "width": 300, "note": "top"},';
		for (const rows of [7_000, 70_000]) {
			const text = `{"parts": [${row.repeat(rows)}{}]}`;
			const steps = stepsOf(() => expect(heldTwice(text)).toEqual([]));
			expect(steps / text.length).toBeLessThan(3);
		}
		expect(heldTwice(`{${'"a": 1,'.repeat(100_000)}"a": 1}`)).toHaveLength(50);
		expect(heldTwice(`{"a": ${'['.repeat(190)}${']'.repeat(190)}, "a": 1}`)).toHaveLength(1);
	});
});

describe('letters that cannot be seen', () => {
	const FILE = {
		name: 'Van \u202egnp.exe',
		notes: 'first line\r\nsecond\tline \u001b[31m',
		customer: 'Two\nlines',
		vehicle: 'می‌خواهم \u200fשלום',
		shop: { 'od\u0007d': 1 },
	};

	test('are taken out of every text, and said', () => {
		const { job, problems } = readJob(FILE);
		expect(job.name).toBe('Van gnp.exe');
		expect(job.notes).toBe('first line\nsecond\tline [31m');
		expect(job.customer).toBe('Two lines');
		expect(job.vehicle).toBe(FILE.vehicle);
		const said = problems.filter((p) => p.what.startsWith('This text holds letters'));
		expect(said.map((p) => pathText(p.path)).sort()).toEqual(['customer', 'name', 'notes']);
		expect(said.find((p) => p.path[0] === 'name')!.what).toContain('Van \\u{202e}gnp.exe');
		const words = problems.map((p) => p.what + p.fix).join(' ');
		expect(words).toContain('od');
		expect(showHidden(words)).toBe(words);
	});

	test('leave a drawing as it is', () => {
		const outline = { kind: 'svg', text: '<svg>\n</svg>' };
		expect(readJob({ panels: [{ id: 'p', opening: outline }] }).problems).not.toContainEqual(
			expect.objectContaining({ what: expect.stringContaining('cannot be seen') as string }),
		);
	});
});

describe('money of a currency without cents, or with more decimals', () => {
	const file = (currency: string, price: number) => ({
		shop: { currency },
		stock: {
			materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
			sheets: [{ id: 's', material: 'ply', length: 2440, width: 1220, price }],
		},
		parts: [{ id: 'A', material: 'ply', length: 600, width: 400 }],
	});

	test('is read, summed and printed in its own minor units', async () => {
		const yen = await plan(file('JPY', 5980), { effort: 50 });
		expect(yen.order.total).toBe(5980);
		expect(orderCsv(yen)).toContain(',5980,5980,');
		expect(Number.isInteger(yen.quote.total)).toBe(true);
		const dinar = await plan(file('KWD', 12.345), { effort: 50 });
		expect(dinar.order.total).toBe(12_345);
		expect(orderCsv(dinar)).toContain(',12.345,12.345,');
		expect(readJob(file('EUR', 12.34)).job.stock.sheets[0]!.price).toBe(1234);
	});

	test('counts cents while the file names no currency that can be read', () => {
		expect(readJob(file('yen', 12.34)).job.stock.sheets[0]!.price).toBe(1234);
	});
});

describe('a wrong setting of the shop', () => {
	/** Every setting of the shop as it stands by itself, outside lists. */
	function settings(value: object, path: string[] = []): string[][] {
		return Object.entries(value).flatMap(([key, inner]) => {
			const here = [...path, key];
			if (typeof inner !== 'object' || inner === null || Array.isArray(inner)) return [here];
			return settings(inner as object, here);
		});
	}
	const usual = readJob({}).job.shop;

	test.each(settings(usual).map((path) => [path.join('.'), path] as const))(
		'%s has its default put back, and nothing else is lost',
		(_, path) => {
			const file: Record<string, unknown> = { shop: {} };
			let holder = file['shop'] as Record<string, unknown>;
			for (const key of path.slice(0, -1)) holder = holder[key] = {} as Record<string, unknown>;
			holder[path.at(-1)!] = { wrong: true };
			const { job, problems } = readJob(file);
			expect(problems.length).toBeGreaterThan(0);
			expect(job.shop).toEqual(usual);
		},
	);

	test.each([
		['saw', 'none-such'],
		['labels', 'none-such'],
	])('%s that names nothing is forgotten, and every other setting stays', (key, value) => {
		const { job, problems } = readJob({ shop: { name: 'Bench & Bow', [key]: value } });
		expect(problems).toHaveLength(1);
		expect(job.shop).toEqual({ ...usual, name: 'Bench & Bow' });
	});
});
