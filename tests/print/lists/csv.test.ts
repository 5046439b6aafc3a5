import { expect, it } from 'vitest';
import { plan } from '../../../src/lib/plan';
import { cuttingListCsv, orderCsv } from '../../../src/lib/print/lists';
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
		for (const text of [orderCsv(made), cuttingListCsv(made), writePartsCsv(made.job.parts)]) {
			expect(text).toContain(`'${name}`);
			expect(
				text.split(/[,;\r\n]/).filter((cell) => cell.replace(/^"/, '').startsWith(name)),
			).toEqual([]);
		}
	}
});
