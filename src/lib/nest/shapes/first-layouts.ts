import { nth } from '../../measure';
import { fillColumns, SpanTables, type Filled, type Strip } from './free-columns';
import type { FreeKind } from './free-shape';
import {
	endOf,
	STRETCHES_PER_UNIT,
	type FreeBest,
	type FreeState,
	type StripSearch,
} from './strip-search';

/** Columns to the width of the strip. */
const COLUMNS = 200;
/** No further order is tried once so much of the budget is spent. */
const SHARE = 0.5;

/** First layouts by columns in several orders, slid to the left; keeps the best of them. */
export function* firstLayouts(search: StripSearch): Generator<FreeState, void, void> {
	const { kinds, strip } = search;
	const spans = new SpanTables();
	for (const order of firstOrders(kinds)) {
		const filled = fillColumns(kinds, order, strip, columnOf(strip), spans);
		search.filled += Math.ceil(filled.work / STRETCHES_PER_UNIT) + 1;
		if (isBetter(filled, search.best)) {
			const spots = search.settled(filled.spots);
			search.best = { spots, left: filled.left, length: endOf(spots) };
		}
		yield search.state;
		if (search.isOver(SHARE)) return;
	}
}

export function columnOf(strip: Strip): number {
	return Math.max(1, Math.ceil(strip.width / COLUMNS));
}

/** Less left over, then shorter. */
function isBetter(a: Filled, b: FreeBest): boolean {
	return a.left.length < b.left.length || (a.left.length === b.left.length && a.length < b.length);
}

/** Orders by area, longest side, width, length and rectangle, falling. */
export function firstOrders(kinds: readonly FreeKind[]): number[][] {
	const length = (kind: FreeKind): number => nth(kind.shapes, 0).length;
	const width = (kind: FreeKind): number => nth(kind.shapes, 0).width;
	return [
		orderBy(kinds, (kind) => kind.area),
		orderBy(kinds, (kind) => Math.max(length(kind), width(kind))),
		orderBy(kinds, width),
		orderBy(kinds, length),
		orderBy(kinds, (kind) => length(kind) * width(kind)),
	];
}

/** One entry a copy, falling by a size of the kind. */
function orderBy(kinds: readonly FreeKind[], key: (kind: FreeKind) => number): number[] {
	const all = kinds.map((_, k) => k);
	all.sort(
		(a, b) =>
			key(nth(kinds, b)) - key(nth(kinds, a)) || nth(kinds, b).area - nth(kinds, a).area || a - b,
	);
	return all.flatMap((k) => new Array<number>(nth(kinds, k).count).fill(k));
}
