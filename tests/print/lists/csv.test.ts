import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { plan } from '../../../src/lib/plan';
import { readCsv } from '../../../src/lib/job/table/csv';
import { cuttingListCsv, offcutsCsv, orderCsv, partsCsv } from '../../../src/lib/print/lists';
import { writePartsCsv } from '../../../src/lib/job/parts-list/write';

/** What spreadsheets take for the start of a formula, in half and in full width. */
const STARTS = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];

it('no list the plan writes has a cell that a spreadsheet would run', async () => {
	for (const start of STARTS) {
		const name = `${start}SUM(A1)`;
		const made = await plan(
			{
				stock: {
					materials: [{ id: 'ply', name, nominal: 12, measured: 12 }],
					sheets: [{ id: 's', material: 'ply', length: 2440, width: 1220, code: name }],
				},
				parts: [{ id: 'a', name, material: 'ply', length: 300, width: 200, note: name }],
			},
			{ effort: 1 },
		);
		for (const text of [orderCsv(made), partsCsv(made), writePartsCsv(made.job.parts)]) {
			expect(text).toContain(`'${name}`);
			expect(
				text.split(/[,;\r\n]/).filter((cell) => cell.replace(/^"/, '').startsWith(name)),
			).toEqual([]);
		}
	}
});

const LISTS = [orderCsv, cuttingListCsv, partsCsv, offcutsCsv];
const JOBS = new URL('../../../shared/jobs/', import.meta.url);
const planned = (shop: object) => {
	const job = JSON.parse(readFileSync(new URL('camper-bench.json', JOBS), 'utf8')) as object;
	return plan({ ...job, shop: { ...('shop' in job ? (job.shop as object) : {}), ...shop } });
};
const RULERS = [
	{ unit: 'mm', decimal: '.' },
	{ unit: 'cm', decimal: ',' },
	{ unit: 'in', fraction: 64, decimal: '.' },
	{ unit: 'in', fraction: 16, decimal: ',' },
];

it.each(RULERS)('one kind of record, and each figure alone in its cell: %j', async (ruler) => {
	const made = await planned({ ruler });
	for (const list of LISTS) {
		const text = list(made);
		expect(text.startsWith('\ufeff')).toBe(true);
		const { rows, fault } = readCsv(text, ruler.decimal === ',' ? ';' : ',');
		expect(fault).toBeNull();
		expect(rows.length).toBeGreaterThan(1);
		const [head, ...records] = rows.map(({ cells }) => cells);
		expect(new Set(head).size).toBe(head?.length);
		for (const record of records) {
			expect(record).toHaveLength(head?.length ?? 0);
			// What begins as a figure is one, with the decimal sign of the job.
			const free = ['what', 'code', 'for', 'board', 'name', 'mark', 'frees', 'bought by'];
			record.forEach((cell, i) => {
				if (head?.[i] === 'price of' && cell !== '') {
					expect(cell).toMatch(/^\d{4}-\d{2}-\d{2}$/);
					return;
				}
				if (free.includes(head?.[i] ?? '') || !/^[-\d]/.test(cell)) return;
				expect(cell).toMatch(ruler.decimal === ',' ? /^\d+(,\d+)?$/ : /^\d+(\.\d+)?$/);
			});
		}
	}
});

it('sizes are those of the pieces, to the mark of the tape, and every piece is there once', async () => {
	for (const ruler of RULERS) {
		const made = await planned({ ruler });
		const { rows } = readCsv(partsCsv(made), ruler.decimal === ',' ? ';' : ',');
		const placed = made.boards.flatMap(({ answer }) => answer.layouts.flatMap((l) => l.placed));
		const ticks = (cell: string | undefined): number =>
			Number(cell?.replace(',', '.')) * { mm: 1600, cm: 16_000, in: 40_640 }[ruler.unit as 'mm'];
		const mark = ruler.unit === 'in' ? 40_640 / (ruler.fraction ?? 64) : 160;
		expect(rows).toHaveLength(placed.length + 1);
		rows.slice(1).forEach(({ cells }, i) => {
			expect(Math.abs(ticks(cells[4]) - placed[i]!.length)).toBeLessThanOrEqual(mark / 2 + 1e-6);
			expect(Math.abs(ticks(cells[5]) - placed[i]!.width)).toBeLessThanOrEqual(mark / 2 + 1e-6);
			expect(cells[6]).toBe(ruler.unit);
		});
	}
});
