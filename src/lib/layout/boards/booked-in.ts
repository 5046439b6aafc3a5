import type { JobFile } from '../../job';

type StockFile = NonNullable<JobFile['stock']>;

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

/** An offcut that a booking puts on the rack, as its line in the stock says it. */
export type Yielded = Omit<TakenStock, 'kind'>;

/** A sheet booked as cut: what it takes from the rack and brings there, its record in the job. */
export interface Booking {
	readonly takes: TakenStock;
	/** Under their printed labels. */
	readonly yields: readonly Yielded[];
	/** The file with the layout kept as the record of what was made; its rack is as it was. */
	readonly file: JobFile;
}

/** The booking carried out in the file's own rack. */
export function bookedIn({ takes, yields, file }: Booking): JobFile {
	const stock = usedUp(file.stock ?? {}, takes);
	return { ...file, stock: { ...stock, offcuts: [...(stock.offcuts ?? []), ...yields] } };
}

/** The rack with one sheet or offcut less; a sheet that is bought for the job was never on it. */
function usedUp(stock: StockFile, { kind, id }: TakenStock): StockFile {
	if (kind === 'owned')
		return {
			...stock,
			sheets: (stock.sheets ?? []).map((s) =>
				s.id === id ? { ...s, owned: Math.max(0, (s.owned ?? 0) - 1) } : s,
			),
		};
	if (kind === 'offcut')
		return {
			...stock,
			offcuts: (stock.offcuts ?? [])
				.map((o) => (o.id === id ? { ...o, count: (o.count ?? 1) - 1 } : o))
				.filter((o) => (o.count ?? 1) > 0),
		};
	return stock;
}
