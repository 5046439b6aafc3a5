import type { Hand } from '../../measure';
import type { Problem } from '../problems';
import type { Supplier } from '../stock';
import { type Chosen, readTable, type Setting } from '../table';
import type { Goods } from './goods';
import { judgePrice, type PriceVerdict } from './price-row';
import { PRICE_WORDS, type PriceMeaning } from './price-words';

/** A supplier's whole catalogue, of which the rack holds a little. */
const MOST_PRICES = 50_000;

/** What a price list is read against. */
export interface PricesAbout {
	/** How the person writes figures. */
	readonly hand: Hand;
	readonly currency: string;
	readonly goods: readonly Goods[];
	readonly suppliers: readonly Pick<Supplier, 'id' | 'name'>[];
}

/** What a person said of a price list. */
export interface PricesChosen extends Chosen<PriceMeaning> {
	/** The day of prices whose row names none, and who sells what no row says. */
	readonly day?: string;
	readonly supplier?: string;
}

/** A price list taken apart: every row with its verdict. Nothing is taken in by it. */
export interface PriceList {
	readonly setting: Setting<PriceMeaning>;
	/** What the heading says of each column, '' where it says nothing. */
	readonly headings: readonly string[];
	readonly rows: readonly PriceVerdict[];
	/** What has to be said or mended before any row can be read, and what is left out. */
	readonly open: readonly Problem[];
	readonly waits: boolean;
}

/** Reads a price list as suppliers write them, by the matcher of all tables. Never throws. */
export function readPriceList(
	text: string,
	about: PricesAbout,
	chosen: PricesChosen = {},
): PriceList {
	const table = { vocabulary: PRICE_WORDS, hand: about.hand, content: null, most: MOST_PRICES };
	const { setting, headings, body, open, waits } = readTable(text, table, chosen);
	const reader = {
		...{ columns: setting.columns, currency: about.currency },
		...{ goods: about.goods, suppliers: about.suppliers },
		hand: { ...about.hand, decimal: setting.decimal ?? about.hand.decimal },
		...{ day: chosen.day ?? '', supplier: chosen.supplier ?? '' },
		taken: new Map<string, number>(),
	};
	const looked = body.slice(0, MOST_PRICES);
	return {
		...{ setting, headings, waits },
		rows: looked.map((row) =>
			waits ? { ...row, news: null, foreign: false, faults: [] } : judgePrice(row, reader),
		),
		open: [...open, ...(body.length > MOST_PRICES ? [tooMany(body.length)] : [])],
	};
}

function tooMany(rows: number): Problem {
	return {
		path: [],
		what: `The list has ${rows} rows; ${MOST_PRICES} are read at once.`,
		fix: 'Bring the rest by itself.',
		kind: 'check',
	};
}
