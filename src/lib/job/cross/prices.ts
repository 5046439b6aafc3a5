import { sayLength, ticks } from '../../measure';
import type { Job } from '../job';
import type { Path } from '../problems';
import { dayNumber } from '../stock';
import { doubt, type Fault } from './fault';

interface Break {
	readonly from: number;
	readonly price: number;
}

/** Days that are none, and prices from so many on that contradict each other. */
export function oddPrices({ stock, shop }: Job): Fault[] {
	const pieces = (n: number): string => String(n);
	const along = (l: number): string => sayLength(ticks(l), shop.ruler);
	return [
		...stock.sheets.flatMap((s, i) => pricesOf(s, ['stock', 'sheets', i], pieces)),
		...stock.rolls.flatMap((r, i) => pricesOf(r, ['stock', 'rolls', i], along)),
		...stock.sundries.flatMap((s, i) => pricesOf(s, ['stock', 'sundries', i], pieces)),
	];
}

interface Priced {
	readonly id: string;
	readonly price: number;
	readonly priced: string;
	readonly breaks: readonly Break[];
}

const pricesOf = (of: Priced, path: Path, say: (from: number) => string): Fault[] => [
	...day(of, [...path, 'priced']),
	...breaks(of, path, say),
];

function day({ id, priced }: Priced, path: Path): Fault[] {
	if (priced === '' || dayNumber(priced) !== null) return [];
	const what = `"${priced}", the day of the price of "${id}", is no day of the calendar.`;
	return [doubt(path, what, 'Write year, month and day: 2026-11-30.')];
}

function breaks(of: Priced, path: Path, say: (from: number) => string): Fault[] {
	return of.breaks.flatMap((b, i): Fault[] => {
		const at = [...path, 'breaks', i];
		const before = of.breaks.slice(0, i);
		if (before.some((other) => other.from === b.from))
			return [
				doubt(
					[...at, 'from'],
					`"${of.id}" has two prices from ${say(b.from)} on; the lower one is taken.`,
					'Take one of them out.',
				),
			];
		const fewer = of.breaks.filter((other) => other.from < b.from).map((other) => other.price);
		if (of.price === 0 || b.price <= Math.min(of.price, ...fewer)) return [];
		return [
			doubt(
				[...at, 'price'],
				`"${of.id}" costs more each from ${say(b.from)} on than of fewer.`,
				'Give the price of one, lower than that of fewer.',
			),
		];
	});
}
