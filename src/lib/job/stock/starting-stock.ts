import table from '../../../../shared/tables/starting-stock.json';

type Rack = Readonly<Record<string, unknown>>;

/** The lists of the examples, in the order of the rack. */
const LISTS = ['materials', 'sheets', 'cloths', 'rolls'] as const;

export const STARTING_STOCK = table;

/**
 * The rack of a file with the sheet sizes and cloth widths that are commonly sold beside what it
 * holds: examples without a price, named so, to be overwritten. What is there under a mark stays.
 */
export function withStartingStock(rack: Rack): Rack {
	return Object.fromEntries([
		...Object.entries(rack),
		...LISTS.map((list) => [list, [...listed(rack[list]), ...missing(rack[list], list)]] as const),
	]);
}

function listed(list: unknown): readonly unknown[] {
	return Array.isArray(list) ? (list as unknown[]) : [];
}

function missing(there: unknown, list: (typeof LISTS)[number]): readonly object[] {
	const marks = listed(there).map((thing) => (thing as { readonly id?: unknown } | null)?.id);
	const examples: readonly { readonly id: string }[] = STARTING_STOCK[list];
	return examples.filter(({ id }) => !marks.includes(id));
}
