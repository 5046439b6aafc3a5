import type { JobFile } from '../job';
import type { GoodsList } from './goods';
import type { PriceNews } from './price-row';

type StockFile = NonNullable<JobFile['stock']>;
type Thing = NonNullable<StockFile[GoodsList]>[number];

/**
 * The file with these prices in it. Price breaks of a thing are those of the list where it names
 * any, and stay as they are where it does not. The file given is left alone.
 */
export function takePrices(file: JobFile, news: readonly PriceNews[]): JobFile {
	const stock: StockFile = { ...file.stock };
	for (const list of ['sheets', 'rolls', 'sundries'] as const) {
		const mine = news.filter((n) => n.goods.list === list);
		if (mine.length === 0) continue;
		const things: readonly Thing[] = stock[list] ?? [];
		const after = things.map((thing) =>
			priced(
				thing,
				list,
				mine.filter((n) => n.goods.id === thing.id),
			),
		);
		Object.assign(stock, { [list]: after });
	}
	return { ...file, stock };
}

function priced(thing: Thing, list: GoodsList, news: readonly PriceNews[]): Thing {
	const [first] = news;
	if (!first) return thing;
	const one = news.find((n) => n.from === null);
	const breaks = news.flatMap((n) => (n.from === null ? [] : [{ from: n.from, price: n.price }]));
	const { supplier, code, least, soldBy } = one ?? first;
	const counted = list !== 'rolls';
	return {
		...thing,
		...(one ? { price: one.price } : {}),
		...(breaks.length > 0 ? { breaks: breaks.sort((a, b) => a.from - b.from) } : {}),
		...{ priced: (one ?? first).priced },
		...(supplier === null ? {} : { supplier }),
		...(code === null ? {} : { code }),
		...(least === null || !counted ? {} : { least }),
		...(soldBy === null || !counted ? {} : { soldBy }),
	};
}
