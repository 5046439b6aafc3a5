import { type Job, type StockSheet, sawOf } from '../../job';
import { ticks } from '../../measure';
import type { Sheet } from '../../nest';
import type { SheetSource } from '../layouts';

/*
 * The rack as the nest sees it. One stock line may become two kinds of sheet: those owned, which
 * cost nothing now, and those that would have to be bought. The kind is kept in the nest's sheet
 * id, so that a layout can be traced back.
 */

const SEPARATOR = '/';

/**
 * Sheets of one material in the order they should be used up: offcuts, owned sheets, sheets to buy.
 */
export function sheetStock(job: Job, material: string): Sheet[] {
	const { trim } = sawOf(job);
	const none = edges(ticks(0));
	const offcuts = job.stock.offcuts
		.filter((o) => o.material === material)
		.map((o) => sheet('offcut', o, 0, o.count, none));
	const sheets = job.stock.sheets
		.filter((s) => s.material === material)
		.flatMap((s) => ownedAndBought(s, s.factoryEdges ? edges(trim) : none));
	return [...offcuts, ...sheets];
}

function ownedAndBought(s: StockSheet, trim: Sheet['trim']): Sheet[] {
	const owned = s.owned > 0 ? [sheet('owned', s, 0, s.owned, trim)] : [];
	// A sheet without a price still counts: at nothing at all, one sheet more would look as good as
	// one less.
	const price = Math.max(1, s.price);
	const bought = s.buy === 0 ? [] : [sheet('buy', s, price, s.buy, trim)];
	return [...owned, ...bought];
}

const RANK: Readonly<Record<SheetSource['kind'], number>> = { offcut: 0, owned: 1, buy: 2 };

function sheet(
	of: SheetSource['kind'],
	{ id, length, width }: Pick<StockSheet, 'id' | 'length' | 'width'>,
	price: number,
	count: number | null,
	trim: Sheet['trim'],
): Sheet {
	return { id: `${of}${SEPARATOR}${id}`, length, width, price, count, rank: RANK[of], trim };
}

function edges(trim: Sheet['trim']['left']): Sheet['trim'] {
	return { left: trim, right: trim, bottom: trim, top: trim };
}

/** Kind and stock id behind a nest sheet id. Throws `bug:` on an id this file did not make. */
export function sourceOf(sheetId: string): { kind: SheetSource['kind']; id: string } {
	const at = sheetId.indexOf(SEPARATOR);
	const of = sheetId.slice(0, at);
	if (of !== 'offcut' && of !== 'owned' && of !== 'buy')
		throw new Error(`bug: no source in '${sheetId}'`);
	return { kind: of, id: sheetId.slice(at + 1) };
}
