import type { ColumnAs, Vocabulary } from '../table';

/** What a column of a price list may be. */
const MEANINGS = [
	'kind',
	'mark',
	'code',
	'name',
	'supplier',
	'price',
	'currency',
	'day',
	'from',
	'least',
	'multiple',
] as const;
export type PriceMeaning = (typeof MEANINGS)[number];
export type PriceColumn = ColumnAs<PriceMeaning>;

/** Headings people write over a price list; common practice, no source. */
export const PRICE_WORDS: Vocabulary<PriceMeaning> = {
	meanings: MEANINGS,
	words: {
		kind: 'kind group type',
		mark: 'mark id ourmark',
		code: 'code sku articleno article articlenumber itemno itemnumber partno partnumber ref reference suppliercode orderno',
		name: 'name description desc title what article item product goods',
		supplier: 'supplier vendor seller source merchant',
		price: 'price unitprice cost each net netprice pricenet priceeach listprice amount rate',
		currency: 'currency curr cur',
		day: 'day date pricedate priceof validfrom asof since',
		from: 'from fromquantity quantityfrom minqty qty quantity break pricebreak fromcount staggered',
		least: 'least minimum min minimumorder moq leasttobuy minorder',
		multiple: 'multiple soldby increment multiples packof orderby step',
	},
	doubtful: [
		// Their number of it or ours.
		{ words: ['no', 'nr', 'num', 'number', '#'], meanings: () => ['code'] },
		// What a pack holds is not what it is sold by: only the person knows.
		{ words: ['pack', 'unit', 'units', 'size'], meanings: () => [] },
	],
	needed: ['price'],
	figures: ['price'],
	counted: null,
	row: { one: 'a price', each: 'each thing' },
};
