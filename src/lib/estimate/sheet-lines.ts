import { buyCounted, materialName, type Job, type StockSheet } from '../job';
import type { BoardLayouts } from '../layout';
import { money } from '../measure';
import type { Amount, OrderLine } from './types';

/**
 * Sheets and offcuts of one material that its layouts take. A sheet already cut was paid for and
 * booked: it is not ordered.
 */
export function sheetLines(job: Job, boards: BoardLayouts): OrderLine[] {
	const taken = boards.sources.filter((s) => !s.cut);
	const name = materialName(job, boards.material);
	const sheets = job.stock.sheets
		.filter((s) => s.material === boards.material)
		.map((s) => sheetLine(s, name, countOf(taken, 'owned', s.id), countOf(taken, 'buy', s.id)))
		.filter((line) => line.need.number > 0);
	const offcuts = taken.filter((s) => s.kind === 'offcut').length;
	return offcuts > 0 ? [...sheets, offcutLine(name, offcuts, job, boards.material)] : sheets;
}

function countOf(sources: BoardLayouts['sources'], kind: 'owned' | 'buy', id: string): number {
	return sources.filter((s) => s.kind === kind && s.id === id).length;
}

const sheetsOf = (number: number): Amount => ({ number, unit: 'sheets' });

function sheetLine(sheet: StockSheet, name: string, fromRack: number, wanted: number): OrderLine {
	const { count: buy, each, total, more } = buyCounted(sheet, wanted, sheet.buy);
	return {
		group: 'sheets',
		id: sheet.id,
		what: name,
		code: sheet.code,
		supplier: sheet.supplier ?? '',
		priced: sheet.priced,
		need: sheetsOf(fromRack + wanted),
		rack: sheetsOf(sheet.owned),
		fromRack: sheetsOf(fromRack),
		buy,
		more,
		unit: 'sheet',
		pack: 1,
		each,
		total,
		spare: sheetsOf(buy - wanted),
		sparePercent: 0,
		for: [],
	};
}

function offcutLine(name: string, count: number, job: Job, material: string): OrderLine {
	const racked = job.stock.offcuts
		.filter((o) => o.material === material)
		.reduce((sum, o) => sum + o.count, 0);
	return {
		group: 'sheets',
		id: '',
		what: `${name}, offcuts`,
		code: '',
		supplier: '',
		priced: '',
		need: { number: count, unit: 'offcuts' },
		rack: { number: racked, unit: 'offcuts' },
		fromRack: { number: count, unit: 'offcuts' },
		buy: 0,
		more: '',
		unit: 'offcut',
		pack: 1,
		each: money(0),
		total: money(0),
		spare: { number: 0, unit: 'offcuts' },
		sparePercent: 0,
		for: [],
	};
}
