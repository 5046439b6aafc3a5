import { fc, test as law } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { runs } from '../../depth';
import { writeCsv } from '../../../src/lib/job/table/csv';
import { readPartsList } from '../../../src/lib/job/parts-list/parts-list';
import { withoutRows } from '../../../src/lib/job/table/table';
import { writePartsCsv } from '../../../src/lib/job/parts-list/write';
import { readJob } from '../../../src/lib/job/reading/read';
import { mm } from '../../../src/lib/measure/length';

const boards = [
	{ id: 'ply', name: 'Birch ply', nominal: mm(18), measured: mm(17.8) },
	{ id: 'mdf', name: 'MDF', nominal: mm(12), measured: mm(12) },
];
const metric = { hand: { unit: 'mm', decimal: '.' } as const, boards, taken: [] };

/** Every column in some words a person may head it with, and how its cells may be written. */
interface Part {
	readonly mark: string;
	readonly name: string;
	/** Hundredths of a millimetre. */
	readonly length: number;
	readonly width: number;
	readonly count: number;
	readonly board: number;
	readonly grain: 'length' | 'width' | 'any';
	readonly note: string;
}

const words = fc.string({ minLength: 1, maxLength: 12 }).map((s) => s.trim() || 'x');
const size = fc.integer({ min: 100, max: 9_999_900 });
const somePart: fc.Arbitrary<Omit<Part, 'mark'>> = fc.record({
	name: words,
	length: size,
	width: size,
	count: fc.integer({ min: 1, max: 200 }),
	board: fc.integer({ min: 0, max: 1 }),
	grain: fc.constantFrom('length', 'width', 'any'),
	note: fc.string({ maxLength: 20 }).map((s) => s.trim()),
});
const someParts = fc
	.array(somePart, { minLength: 1, maxLength: 6 })
	.map((list) => list.map((p, i) => ({ ...p, mark: `P${i}` })));

/** How a person may write the table. */
const someHand = fc.record({
	separator: fc.constantFrom(',' as const, ';' as const, '\t' as const),
	decimal: fc.constantFrom('.' as const, ',' as const),
	unit: fc.constantFrom('mm' as const, 'cm' as const, 'm' as const),
	where: fc.constantFrom('heading' as const, 'cell' as const),
	lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
	mark: fc.constantFrom('\ufeff', ''),
	heads: fc.record({
		name: fc.constantFrom('Name', 'Description', 'component'),
		count: fc.constantFrom('Qty', 'Pcs', 'COUNT', 'Quantity', 'no. of'),
		length: fc.constantFrom('L', 'Length', 'long'),
		width: fc.constantFrom('W', 'width', 'Breadth'),
		board: fc.constantFrom('Material', 'Board', 'Mat.'),
		mark: fc.constantFrom('Mark', 'Part No.', 'Ref'),
	}),
	order: fc.array(fc.nat(), { minLength: 8, maxLength: 8 }),
	boards: fc.constantFrom(['ply', 'mdf'], ['BIRCH PLY', ' mdf '], ['birchply', 'MDF']),
	counts: fc.constantFrom('', ' pcs', 'x'),
});
type Writing = typeof someHand extends fc.Arbitrary<infer T> ? T : never;

function written(parts: readonly Part[], by: Writing): string {
	const per = { mm: 2, cm: 3, m: 5 }[by.unit];
	// One decimal more than is needed, so that three decimals are never taken for thousands.
	const figure = (hundredths: number): string =>
		(hundredths / 10 ** per).toFixed(per + 2).replace('.', by.decimal) +
		(by.where === 'cell' ? ` ${by.unit}` : '');
	const head = (word: string): string => (by.where === 'heading' ? `${word} (${by.unit})` : word);
	const columns: (readonly [string, (p: Part) => string])[] = [
		[by.heads.mark, (p) => p.mark],
		[by.heads.name, (p) => p.name],
		[by.heads.count, (p) => `${p.count}${by.counts}`],
		[head(by.heads.length), (p) => figure(p.length)],
		[head(by.heads.width), (p) => figure(p.width)],
		[by.heads.board, (p) => by.boards[p.board]!],
		['Grain', (p) => p.grain],
		['Notes', (p) => p.note],
	];
	const mixed = columns
		.map((column, i) => ({ column, key: by.order[i]! }))
		.sort((a, b) => a.key - b.key)
		.map(({ column }) => column);
	const rows = [mixed.map(([h]) => h), ...parts.map((p) => mixed.map(([, cell]) => cell(p)))];
	const text = writeCsv(rows, by.separator);
	return by.mark + text.replaceAll('\r\n', by.lineEnd);
}

law.prop([someParts, someHand], { numRuns: runs(400) })(
	'a table written in any of the ways reads back the same',
	(parts, by) => {
		const list = readPartsList(written(parts, by), metric);
		expect(list.open).toEqual([]);
		expect(list.rows.flatMap((row) => row.faults)).toEqual([]);
		expect(list.rows.map((row) => row.part)).toEqual(
			parts.map((p) => ({
				id: p.mark,
				name: p.name,
				material: boards[p.board]!.id,
				length: expect.closeTo(p.length / 100, 9) as number,
				width: expect.closeTo(p.width / 100, 9) as number,
				count: p.count,
				grain: p.grain,
				note: p.note,
			})),
		);
	},
);

law.prop([someParts, fc.constantFrom('mm' as const, 'cm' as const, 'in' as const)], {
	numRuns: runs(150),
})('a list saved and read again is the same, whatever the ruler', (parts, unit) => {
	const stock = {
		materials: boards.map((b) => ({ id: b.id, name: b.name, nominal: 18, measured: 18 })),
	};
	const file = parts.map(({ mark, board, ...p }) => ({
		...p,
		id: mark,
		material: boards[board]!.id,
		length: p.length / 160,
		width: p.width / 1000,
	}));
	const { job, problems } = readJob({ stock, parts: file });
	expect(problems.filter((p) => p.kind === 'stop')).toEqual([]);
	for (const decimal of ['.', ','] as const) {
		const list = readPartsList(writePartsCsv(job.parts), { ...metric, hand: { unit, decimal } });
		expect(list.open).toEqual([]);
		const back = list.rows.map((row) => row.part);
		expect(readJob({ stock, parts: back }).job.parts).toEqual(job.parts);
	}
});

/** Pieces that lists are made of, in any order. */
const scrap = fc.constantFrom(
	...[
		'L',
		'W',
		'Length (mm)',
		'Qty',
		'Material',
		'No.',
		'Part',
		'mdf',
		'ply',
		'600',
		'300,5',
		'1.200',
	],
	...[
		'23 5/8"',
		"2'",
		'x',
		'=1+1',
		'"',
		'""',
		',',
		';',
		'\t',
		'\n',
		'\r\n',
		'\r',
		'\0',
		'\ufeff',
		' ',
	],
	...['-', '1e9', '∞', '９', '__proto__', 'constructor', 'Grain', 'Thk', 'PK', '\u202e', '🪚'],
);
const rubbish = fc.oneof(
	fc.array(scrap, { maxLength: 40 }).map((t) => t.join('')),
	fc
		.array(fc.array(scrap, { minLength: 3, maxLength: 5 }), { maxLength: 8 })
		.map((rows) => ['L,W,Material', ...rows.map((r) => r.join(','))].join('\n')),
	fc.string({ unit: 'binary', maxLength: 200 }),
);

law.prop(
	[
		rubbish,
		fc.option(
			fc.array(fc.constantFrom('length', 'width', 'count', 'material', 'out' as const), {
				maxLength: 5,
			}),
		),
	],
	{
		numRuns: runs(800),
	},
)('whatever the text, nothing throws, and no row goes in unseen or gets lost', (text, columns) => {
	const chosen = columns ? { columns: { ...columns } as Record<number, 'length' | 'out'> } : {};
	const list = readPartsList(text, metric, chosen);
	const blocked = list.open.some((p) => p.kind === 'stop');
	for (const row of list.rows) {
		// A part, or why not: its own faults or what has to be said of the whole list.
		if (row.part) expect(row.faults).toEqual([]);
		else expect(row.faults.length > 0 || blocked).toBe(true);
		expect(text.slice(row.from, row.to).trim()).not.toBe('');
	}
	const all = [...list.open, ...list.rows.flatMap((row) => row.faults)];
	expect(all.every((p) => p.what !== '' && p.fix !== '')).toBe(true);
	const good = list.rows.filter((row) => row.part);
	const rest = withoutRows(text, list, good);
	const there = rest.length + good.reduce((sum, row) => sum + row.to - row.from, 0);
	expect(rest === '' || there === text.length).toBe(true);
	if (rest === '') expect(list.rows.every((row) => row.part) || text.trim() === '').toBe(true);
	const again = readJob({ parts: good.map((row) => row.part) }).problems;
	expect(again.filter((p) => p.path.at(-1) !== 'material' && p.kind === 'stop')).toEqual([]);
});

test('a law that reads nothing proves nothing: most tables of the first law hold parts', () => {
	const sample = fc.sample(fc.tuple(someParts, someHand), 20);
	const read = sample.map(([parts, by]) => readPartsList(written(parts, by), metric));
	expect(read.filter((list) => list.rows.some((row) => row.part)).length).toBe(20);
});
