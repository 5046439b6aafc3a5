import { showLength, type Money, type Ruler } from '../../measure';
import { clothName, materialName } from '../in-use';
import type { Job } from '../job';

export type GoodsList = 'sheets' | 'rolls' | 'sundries';

/** A thing of the rack that has a price. */
export interface Goods {
	readonly list: GoodsList;
	readonly id: string;
	/** 'Birch plywood 18, 2440 × 1220 mm'. */
	readonly name: string;
	readonly code: string;
	readonly supplier: string;
	readonly price: Money;
}

/** Everything of the rack that is bought, in its order. */
export function goodsOf(job: Pick<Job, 'stock'>, ruler: Ruler): Goods[] {
	const { sheets, rolls, sundries } = job.stock;
	const say = (length: Job['stock']['sheets'][number]['length']): string =>
		showLength(length, ruler);
	return [
		...sheets.map((s) => ({
			...told('sheets', s),
			name: `${materialName(job, s.material)}, ${say(s.length)} × ${say(s.width)}`,
		})),
		...rolls.map((r) => ({
			...told('rolls', r),
			name: `${clothName(job, r.cloth)}, ${say(r.width)} wide`,
		})),
		...sundries.map((s) => ({ ...told('sundries', s), name: s.name })),
	];
}

function told(
	list: GoodsList,
	{ id, code, supplier, price }: Job['stock']['sheets' | 'rolls' | 'sundries'][number],
): Omit<Goods, 'name'> {
	return { list, id, code, supplier: supplier ?? '', price };
}

const WORDS: Readonly<Record<GoodsList, readonly string[]>> = {
	sheets: ['sheet', 'sheets', 'board', 'boards'],
	rolls: ['roll', 'rolls', 'cloth', 'cloths'],
	sundries: ['sundry', 'sundries'],
};

/** The kind a cell names; null for a word that is none. */
export const kindIn = (cell: string): GoodsList | null =>
	(['sheets', 'rolls', 'sundries'] as const).find((list) =>
		WORDS[list].includes(cell.toLowerCase()),
	) ?? null;

/** The word of a kind in a price list. */
export const kindWord = (list: GoodsList): string => WORDS[list][0] ?? list;

/** What a row says of the thing it prices. */
export interface GoodsNamed {
	readonly kind: string;
	readonly mark: string;
	readonly code: string;
	readonly name: string;
	/** Mark of the supplier; '' where the row names none. */
	readonly supplier: string;
}

/** Things the row may mean: by our mark, else by the supplier's code, else by its name. */
export function goodsNamed(all: readonly Goods[], row: GoodsNamed): Goods[] {
	const kind = kindIn(row.kind);
	const mine = kind === null ? all : all.filter((g) => g.list === kind);
	if (row.mark !== '') return mine.filter((g) => g.id === row.mark);
	if (row.code !== '') {
		const coded = mine.filter((g) => plain(g.code) === plain(row.code));
		const theirs = coded.filter((g) => g.supplier === row.supplier);
		return row.supplier !== '' && theirs.length > 0 ? theirs : coded;
	}
	return row.name === '' ? [] : mine.filter((g) => plain(g.name) === plain(row.name));
}

const plain = (word: string): string =>
	word
		.normalize('NFKC')
		.toLowerCase()
		.replace(/[\s._-]+/g, '');
