import { test as law } from '@fast-check/vitest';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { job as schema, type JobFile } from '../../../src/lib/job/job';
import { goodsOf } from '../../../src/lib/job/price-list/goods';
import { type PricesChosen, readPriceList } from '../../../src/lib/job/price-list/price-list';
import { takePrices } from '../../../src/lib/job/price-list/take-prices';
import { writePricesCsv } from '../../../src/lib/job/price-list/write-prices';
import { readJob } from '../../../src/lib/job/reading/read';
import { handOf } from '../../../src/lib/measure/ruler';
import { runs } from '../../depth';

const FILE: JobFile = {
	stock: {
		suppliers: [
			{ id: 'board', name: 'Quayside Boards' },
			{ id: 'trim', name: 'Ferry Lane Trimmings' },
		],
		materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
		sheets: [
			{ id: 'full', material: 'ply', length: 2440, width: 1220, price: 80, code: 'PL-12 full' },
			{ id: 'half', material: 'ply', length: 1220, width: 1220, price: 45, code: 'PL-12 half' },
		],
		cloths: [{ id: 'felt', name: 'Felt', loose: 3, pressed: 2 }],
		rolls: [{ id: 'roll', cloth: 'felt', width: 1400, usable: 1370, price: 20, code: 'F-1' }],
		sundries: [
			{ id: 'glue', name: 'Glue', kind: 'wood-glue', pack: 4, price: 9, code: 'G-1' },
			{ id: 'tape', name: 'Tape', kind: 'other', pack: 1, price: 3, code: 'G-1', supplier: 'trim' },
		],
	},
};

function read(text: string, chosen: PricesChosen = {}, shop: NonNullable<JobFile['shop']> = {}) {
	const job = schema.parse({ ...FILE, shop });
	const about = {
		...{ hand: handOf(job.shop.ruler), currency: job.shop.currency },
		...{ goods: goodsOf(job, job.shop.ruler), suppliers: job.stock.suppliers },
	};
	return readPriceList(text, about, chosen);
}

const newsOf = (text: string, chosen: PricesChosen = {}) =>
	read(text, chosen).rows.flatMap((r) =>
		r.news ? [[r.news.goods.id, r.news.price, r.news.priced, r.news.from]] : [],
	);
const faults = (text: string, chosen: PricesChosen = {}) =>
	read(text, chosen).rows.flatMap((r) => r.faults.map((f) => `${r.line} ${f.what} ${f.fix}`));

describe('a price list', () => {
	it('finds things by their code, whatever its case and gaps, and leaves what the rack has not', () => {
		const text =
			'Article no;Description;Net price\npl12FULL;Ply;82,50\nZZ-9;Oak;120\nf1;Felt;21,00\n';
		expect(newsOf(text, { day: '2026-11-30' })).toEqual([
			['full', 82.5, '2026-11-30', null],
			['roll', 21, '2026-11-30', null],
		]);
		expect(read(text).rows.map((r) => r.foreign)).toEqual([false, true, false]);
		expect(faults(text)).toEqual([]);
	});

	it('takes our mark before their code, and the supplier where two have one code', () => {
		expect(newsOf('id,code,price\nhalf,PL-12 full,47\n')).toEqual([['half', 47, '', null]]);
		expect(newsOf('code,supplier,price\nG-1,Ferry Lane Trimmings,3.50\n')).toEqual([
			['tape', 3.5, '', null],
		]);
		expect(faults('code,price\nG-1,3.50\n')).toEqual([
			'2 This may be Glue (glue) or Tape (tape). Write the kind and the mark of the one that is meant.',
		]);
	});

	it('reads prices from many on: pieces, and metres of a roll', () => {
		const text = 'code,from,price\nPL-12 full,,80\nPL-12 full,10,74\nF-1,5,18\nF-1,1000 cm,16\n';
		expect(newsOf(text)).toEqual([
			['full', 80, '', null],
			['full', 74, '', 10],
			['roll', 18, '', 5000],
			['roll', 16, '', 10_000],
		]);
	});

	it('says in a row what is wrong with it, and takes the others', () => {
		const text = [
			'code,price,date',
			'PL-12 full,USD 80.00,',
			'PL-12 half,ask us,',
			'F-1,20.005,',
			'G-1,-4,',
			'PL-12 half,46.00,31/12/2026',
			'PL-12 half,46.00,31.12.2026',
			'PL-12 half,47.00,2026-12-31',
		].join('\n');
		expect(faults(text)).toEqual([
			"2 This price is in USD, and the shop's are in EUR. Write it in EUR; a price list has one currency.",
			'3 "ask us" is no price. Write an amount such as 12.50.',
			'4 "20.005" has more decimals than EUR has. Write the price of more of it, as it is sold, or round it.',
			'5 This may be Glue (glue) or Tape (tape). Write the kind and the mark of the one that is meant.',
			'5 "-4" is no price. Write an amount such as 12.50.',
			'6 "31/12/2026" is no day of the calendar. Write it as 2026-11-30.',
			'8 Row 7 prices Plywood, 1220 mm × 1220 mm already. Leave one of them out.',
		]);
		expect(newsOf(text)).toEqual([['half', 46, '2026-12-31', null]]);
	});

	it.each([
		['€ 12.50', 12.5],
		['12.50 EUR', 12.5],
		['eur 1,234.50', 1234.5],
		["1'234.50", 1234.5],
		['0', 0],
	])('reads %s', (cell, price) => {
		expect(newsOf(`code,price\nF-1,"${cell}"\n`, { decimal: '.' })).toEqual([
			['roll', price, '', null],
		]);
	});

	it('refuses another currency in a column of its own, and the sign of another', () => {
		expect(faults('code,price,currency\nF-1,12.50,GBP\n')[0]).toContain('in GBP');
		expect(faults('code,price\nF-1,£12.50\n')[0]).toContain('in £');
	});

	it('asks which sign parts decimals where a price may be a thousand or one', () => {
		const list = read('code,price\nF-1,1.200\n');
		expect(list.waits).toBe(true);
		expect(list.open.map((p) => p.fix)).toEqual(['Choose the decimal sign of the list.']);
		expect(newsOf('code,price\nF-1,1.200\n', { decimal: ',' })).toEqual([['roll', 1200, '', null]]);
	});

	it('asks for the column of the price, and refuses what is no text', () => {
		expect(read('code;height\nF-1;3\n').open.map((p) => p.what)).toContain(
			'No column is the price.',
		);
		expect(read('PK\u0003\u0004').open[0]?.what).toContain('This is no text');
		expect(read('').open.map((p) => p.fix)).toEqual([
			'Give a row for each thing, with its price. A first row may name the columns.',
		]);
	});
});

describe('prices taken in', () => {
	it('change what the list speaks of and nothing else', () => {
		const text =
			'code,supplier,price,from,least,sold by,date\nPL-12 full,board,82.50,,2,2,2026-11-01\nPL-12 full,board,75,10,,,2026-11-01\n';
		const news = read(text).rows.flatMap((r) => (r.news ? [r.news] : []));
		const after = takePrices(FILE, news);
		expect(after.stock?.sheets?.[0]).toEqual({
			...FILE.stock?.sheets?.[0],
			...{ price: 82.5, priced: '2026-11-01', supplier: 'board', least: 2, soldBy: 2 },
			...{ code: 'PL-12 full', breaks: [{ from: 10, price: 75 }] },
		});
		expect(after.stock?.sheets?.[1]).toBe(FILE.stock?.sheets?.[1]);
		expect(after.stock?.sundries).toBe(FILE.stock?.sundries);
	});

	const price = fc.integer({ min: 0, max: 999_999 }).map((n) => n / 100);
	law.prop(
		[
			fc.array(price, { minLength: 5, maxLength: 5 }),
			fc.uniqueArray(fc.integer({ min: 2, max: 90 }), { maxLength: 3 }),
			fc.constantFrom('', '2026-01-31'),
			fc.constantFrom('board', 'trim', undefined),
			fc.record({ least: fc.nat(9), soldBy: fc.integer({ min: 1, max: 9 }) }),
			fc.constantFrom('.' as const, ',' as const),
		],
		{ numRuns: runs(100) },
	)('a list written is read back into the same rack', (...made) => {
		const [prices, from, priced, supplier, counts, decimal] = made;
		const { stock } = FILE;
		let n = 0;
		const told = <T extends object>(thing: T): T => ({
			...{ ...thing, price: prices[n++ % 5], priced },
			...(supplier === undefined ? {} : { supplier }),
		});
		const file: JobFile = {
			shop: { ruler: { unit: 'mm', decimal } },
			stock: {
				...stock,
				sheets: stock?.sheets?.map((s) => ({
					...{ ...told(s), ...counts },
					breaks: from.toSorted((a, b) => a - b).map((f) => ({ from: f, price: f })),
				})),
				rolls: stock?.rolls?.map((r) => ({
					...told(r),
					breaks: from.toSorted((a, b) => a - b).map((f) => ({ from: 500 * f, price: f })),
				})),
				sundries: stock?.sundries?.map((s) => told(s)),
			},
		};
		const { job } = readJob(file);
		const bare = schema.parse({ ...FILE, shop: file.shop });
		const list = readPriceList(writePricesCsv(job), {
			...{ hand: handOf(bare.shop.ruler), currency: 'EUR' },
			...{ goods: goodsOf(bare, bare.shop.ruler), suppliers: bare.stock.suppliers },
		});
		expect(list.open).toEqual([]);
		expect(list.rows.flatMap((r) => r.faults)).toEqual([]);
		const news = list.rows.flatMap((r) => (r.news ? [r.news] : []));
		const back = readJob(takePrices({ ...FILE, shop: file.shop }, news)).job.stock;
		const rests = supplier === undefined ? { tape: 'trim' } : {};
		const plain = (of: typeof back) =>
			JSON.stringify({ ...of, sundries: of.sundries.map((s) => ({ ...s, supplier: '' })) });
		expect(plain(back)).toBe(plain(job.stock));
		expect(back.sundries.map((s) => s.supplier)).toEqual(
			job.stock.sundries.map((s) => s.supplier ?? rests[s.id as 'tape']),
		);
	});

	law.prop([fc.string({ maxLength: 200 })], { numRuns: runs(200) })(
		'whatever text is brought is judged, never thrown at',
		(text) => {
			const list = read(text);
			for (const row of list.rows) expect(row.news === null || row.faults.length === 0).toBe(true);
		},
	);
});
