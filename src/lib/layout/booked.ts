import { snap, ticks, TICKS_PER_MM, toMm, readLength } from '../measure';
import type { JobFile } from '../job';

type StockFile = NonNullable<JobFile['stock']>;
type RollFile = NonNullable<StockFile['rolls']>[number];

/** What a booking takes: an owned sheet or an offcut of the rack, or one that never stood on it. */
export interface TakenStock {
	/** `buy`: bought for the job; `own`: an offcut of a sheet of the same job not booked yet. */
	readonly kind: 'owned' | 'offcut' | 'buy' | 'own';
	/** Of the sheet's line in the stock, or the label of the offcut. */
	readonly id: string;
	readonly material: string;
	/** Millimetres. */
	readonly length: number;
	readonly width: number;
}

/** A length off a roll of the rack, or so much of a sundry. */
export interface TakenAmount {
	readonly kind: 'roll' | 'sundry';
	/** Of its line in the stock. */
	readonly id: string;
	/**
	 * Millimetres of a roll; packs of a sundry, less than nothing where more was bought than used.
	 */
	readonly amount: number;
}

/** An offcut that a booking puts on the rack, as its line in the stock says it. */
export type Yielded = Omit<TakenStock, 'kind'>;

/** One thing taken from the rack, and the offcuts it brings there under their printed labels. */
export interface Taking {
	readonly takes: TakenStock | TakenAmount;
	readonly yields: readonly Yielded[];
}

/** Work that is booked: what it takes from the rack and brings there, its record in the job. */
export interface Booking {
	readonly takings: readonly Taking[];
	/** What is left of cloth that was bought, as lines of rolls. */
	readonly remnants: readonly RollFile[];
	/** The file with the record of what was made; its rack is as it was. */
	readonly file: JobFile;
}

/** The booking carried out in the file's own rack. */
export function bookedIn({ takings, remnants, file }: Booking): JobFile {
	const yields = takings.flatMap((t) => t.yields);
	const left = takings.reduce((stock, { takes }) => usedUp(stock, takes), file.stock ?? {});
	const stock = {
		...left,
		...(yields.length > 0 ? { offcuts: [...(left.offcuts ?? []), ...yields] } : {}),
		...(remnants.length > 0 ? { rolls: [...(left.rolls ?? []), ...remnants] } : {}),
	};
	return { ...file, stock };
}

/** The rack with this taken off it; what was bought for the job was never on it. */
function usedUp(stock: StockFile, takes: Taking['takes']): StockFile {
	const { id } = takes;
	switch (takes.kind) {
		case 'owned':
			return {
				...stock,
				sheets: (stock.sheets ?? []).map((s) =>
					s.id === id ? { ...s, owned: Math.max(0, (s.owned ?? 0) - 1) } : s,
				),
			};
		case 'offcut':
			return {
				...stock,
				offcuts: (stock.offcuts ?? [])
					.map((o) => (o.id === id ? { ...o, count: (o.count ?? 1) - 1 } : o))
					.filter((o) => (o.count ?? 1) > 0),
			};
		case 'roll':
			return { ...stock, rolls: (stock.rolls ?? []).flatMap((r) => shorter(r, takes)) };
		case 'sundry':
			return {
				...stock,
				sundries: (stock.sundries ?? []).map((s) =>
					s.id === id ? { ...s, owned: fewer(s.owned ?? 0, takes.amount) } : s,
				),
			};
		case 'buy':
		case 'own':
			return stock;
	}
}

/** The roll with so much pulled off; none where nothing is left. One too short is left alone. */
function shorter(roll: RollFile, { id, amount }: TakenAmount): RollFile[] {
	const left = ticksOf(roll.left);
	const taken = snap(amount * TICKS_PER_MM);
	if (roll.id !== id || left === null || taken > left) return [roll];
	return taken === left ? [] : [{ ...roll, left: toMm(ticks(left - taken)) }];
}

/** A length as a file says it; null for none. */
function ticksOf(said: RollFile['left']): number | null {
	if (typeof said === 'number') return snap(said * TICKS_PER_MM);
	const reading = said ? readLength(said, { unit: 'mm', decimal: '.' }) : null;
	return reading?.ok ? reading.value : null;
}

/** A millionth of a pack: finer than anybody measures. */
const FINEST_SHARE = 1e6;

/** Packs less those used; what is not there stays. */
function fewer(owned: number, used: number): number {
	return used > owned ? owned : Math.round((owned - used) * FINEST_SHARE) / FINEST_SHARE;
}
