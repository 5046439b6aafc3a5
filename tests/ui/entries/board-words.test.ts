import { describe, expect, it } from 'vitest';
import { mm, toMm } from '../../../src/lib/measure/length';
import { handOf } from '../../../src/lib/measure/ruler';
import { plan } from '../../../src/lib/plan';
import { readBoard, usualSheet, withBoard } from '../../../src/lib/ui/fields/new-board/board-words';

const METRIC = handOf({ unit: 'mm', fraction: 32, decimal: '.' });
const read = (text: string) => {
	const said = readBoard(text, METRIC);
	if ('fault' in said) return said.fault;
	return [said.name, said.kind, toMm(said.nominal), toMm(said.measured), said.density];
};

describe('a board said in a line', () => {
	it('is its name, its kind, its thickness and what the caliper says', () => {
		expect(read('MDF 15, measured 15.3')).toEqual(['MDF 15', 'mdf', 15, 15.3, 745]);
		expect(read('MDF 15')).toEqual(['MDF 15', 'mdf', 15, 15, 745]);
		expect(read('Birch plywood 18 measured 17.6')).toEqual([
			...['Birch plywood 18', 'plywood'],
			...[18, 17.6, 680],
		]);
		expect(read('Foam board 10 mm')).toEqual(['Foam board 10 mm', 'other', 10, 10, 680]);
	});

	it('is asked for where a thickness is missing or is none', () => {
		expect(read('')).toMatch(/^Say what it is and how thick/);
		expect(read('MDF')).toMatch(/^Say what it is and how thick/);
		expect(read('MDF 0')).toBe('“0” is no thickness. Write it last: MDF 15.');
		expect(read('MDF 15, measured thick')).toBe(
			'“thick” is no measured thickness. Write: measured 15.3.',
		);
	});

	it('stands on the rack with its sheet, under a mark of its own, and can be used', async () => {
		const said = readBoard('MDF 15, measured 15.3', METRIC);
		if ('fault' in said) throw new Error(said.fault);
		const sheet = { length: mm(2800), width: mm(2070), price: 61.5 };
		const first = withBoard({}, { ...said, sheet });
		const second = withBoard(first.file, { ...said, sheet });
		expect([first.id, second.id]).toEqual(['mdf-15', 'mdf-15-2']);
		const part = { id: 'A', material: second.id, length: 500, width: 300 };
		const made = await plan({ ...second.file, parts: [part] }, { effort: 20 });
		expect(made.problems.filter((p) => p.kind !== 'note')).toEqual([]);
		expect(toMm(made.parts[0]!.thickness)).toBe(15.3);
		expect(toMm(made.boards[0]!.answer.layouts[0]!.length)).toBe(2800);
		expect(usualSheet(second.file)).toEqual({ length: mm(2800), width: mm(2070) });
		expect(usualSheet({})).toEqual({ length: mm(2440), width: mm(1220) });
	});
});
