import { type Hand, readLength, toMm } from '../../measure';
import type { Problem } from '../problems';
import { dayNumber, type Supplier } from '../stock';
import { brokenRow, type CsvRow, unguarded } from '../table';
import { priceCell } from './amount-cell';
import { type Goods, goodsNamed, kindIn } from './goods';
import type { PriceColumn, PriceMeaning } from './price-words';

/** What a row of a price list says of a thing of the rack, as a job file holds it. */
export interface PriceNews {
	readonly goods: Goods;
	/** In the currency itself. */
	readonly price: number;
	/** '' where nobody says. */
	readonly priced: string;
	/** It holds from this much on, millimetres along a roll; null for the price of one. */
	readonly from: number | null;
	readonly supplier: string | null;
	readonly code: string | null;
	/** Only of sheets and packs. */
	readonly least: number | null;
	readonly soldBy: number | null;
}

/** What a row came to: news, something the rack does not hold, or all that is wrong with it. */
export interface PriceVerdict extends CsvRow {
	readonly news: PriceNews | null;
	/** The rack has no such thing: the row is none of the shop's business. */
	readonly foreign: boolean;
	readonly faults: readonly Problem[];
}

/** How rows are read. */
export interface PriceReader {
	readonly columns: readonly PriceColumn[];
	readonly hand: Hand;
	readonly currency: string;
	readonly goods: readonly Goods[];
	readonly suppliers: readonly Pick<Supplier, 'id' | 'name'>[];
	/** Of rows that name none: '' for none. */
	readonly day: string;
	readonly supplier: string;
	/** Rows read before, by what they price. */
	readonly taken: Map<string, number>;
}

/** Reads one row; what it prices is taken from then on. */
export function judgePrice(row: CsvRow, reader: PriceReader): PriceVerdict {
	const broken = brokenRow(row, reader.columns);
	if (broken) return { ...row, news: null, foreign: false, faults: [broken] };
	const faults: Problem[] = [];
	const cell = (column: PriceMeaning): string =>
		unguarded(row.cells[reader.columns.indexOf(column)] ?? '').trim();
	const wrong = (column: PriceMeaning, what: string, fix: string): void => {
		faults.push({ path: ['row', row.line, column], what, fix, kind: 'stop' });
	};
	const said: Said = { cell, wrong, reader };
	const supplier = supplierIn(said);
	const found = goodsIn(said, supplier ?? '');
	if (found === null && faults.length === 0)
		return { ...row, news: null, foreign: true, faults: [] };
	const amount = priceCell(cell('price'), cell('currency'), {
		currency: reader.currency,
		decimal: reader.hand.decimal,
	});
	if (!('major' in amount)) wrong(amount.column, amount.what, amount.fix);
	const news = {
		...{ price: 'major' in amount ? amount.major : 0, priced: dayIn(said), supplier },
		...{ from: fromIn(said, found), code: cell('code') || null },
		...{ least: countOf('least', said, 0), soldBy: countOf('multiple', said, 1) },
	};
	if (found === null) return { ...row, news: null, foreign: false, faults };
	const key = JSON.stringify([found.list, found.id, news.from]);
	const before = reader.taken.get(key);
	if (before !== undefined)
		wrong('price', `Row ${before} prices ${found.name} already.`, 'Leave one of them out.');
	else if (faults.length === 0) reader.taken.set(key, row.line);
	return {
		...{ ...row, foreign: false, faults },
		news: faults.length === 0 ? { ...news, goods: found } : null,
	};
}

interface Said {
	readonly cell: (column: PriceMeaning) => string;
	readonly wrong: (column: PriceMeaning, what: string, fix: string) => void;
	readonly reader: PriceReader;
}

/** The mark of the supplier a row names by mark or name; null where it names none. */
function supplierIn({ cell, wrong, reader }: Said): string | null {
	const named = cell('supplier');
	if (named === '') return reader.supplier || null;
	const like = reader.suppliers.find((s) =>
		[s.id, s.name].some((word) => word.toLowerCase() === named.toLowerCase()),
	);
	if (like) return like.id;
	const known = reader.suppliers.map((s) => s.name).slice(0, 8);
	wrong(
		'supplier',
		`There is no supplier "${named.slice(0, 40)}" on the rack.`,
		known.length === 0 ? 'Add the supplier first.' : `Write one of ${known.join(', ')}, or add it.`,
	);
	return null;
}

function goodsIn({ cell, wrong, reader }: Said, supplier: string): Goods | null {
	const kind = cell('kind');
	if (kind !== '' && kindIn(kind) === null) return null;
	const named = { kind, mark: cell('mark'), code: cell('code'), name: cell('name'), supplier };
	const [goods, ...more] = goodsNamed(reader.goods, named);
	if (goods === undefined) return null;
	if (more.length === 0) return goods;
	const all = [goods, ...more].map((g) => `${g.name} (${g.id})`).slice(0, 4);
	wrong(
		named.mark !== '' ? 'mark' : named.code !== '' ? 'code' : 'name',
		`This may be ${all.join(' or ')}.`,
		'Write the kind and the mark of the one that is meant.',
	);
	return null;
}

/** Year first, or day, month and year with dots; with strokes nobody knows which is the month. */
function dayIn({ cell, wrong, reader }: Said): string {
	const text = cell('day');
	if (text === '') return reader.day;
	const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text);
	const day = dotted
		? [dotted[3], dotted[2]?.padStart(2, '0'), dotted[1]?.padStart(2, '0')].join('-')
		: text;
	if (dayNumber(day) !== null) return day;
	wrong('day', `"${text.slice(0, 40)}" is no day of the calendar.`, 'Write it as 2026-11-30.');
	return '';
}

/** Pieces, or a length along a roll; null for the price of one. */
function fromIn({ cell, wrong, reader }: Said, goods: Goods | null): number | null {
	const text = cell('from');
	if (text === '' || text === '1' || text === '0') return null;
	if (goods?.list === 'rolls') {
		// A metre is what a roll is priced by; a bare number counts those.
		const reading = readLength(/^[\d.,]+$/.test(text) ? `${text} m` : text, reader.hand);
		if (reading.ok && reading.value > 0) return toMm(reading.value);
		wrong(
			'from',
			`"${text.slice(0, 40)}" is no length.`,
			'Write metres, or a length with its unit.',
		);
		return null;
	}
	if (/^\d{1,5}$/.test(text)) return Number(text);
	wrong('from', `"${text.slice(0, 40)}" is no number.`, 'Write a whole number such as 10.');
	return null;
}

function countOf(column: 'least' | 'multiple', { cell, wrong }: Said, low: number): number | null {
	const text = cell(column);
	if (text === '') return null;
	if (/^\d{1,4}$/.test(text) && Number(text) >= low) return Number(text);
	wrong(column, `"${text.slice(0, 40)}" is no number.`, 'Write a whole number such as 10.');
	return null;
}
