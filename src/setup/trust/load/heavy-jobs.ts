/** A job whose weight is known: so many parts, and so many offcuts on the rack. */
export interface Weight {
	readonly parts: number;
	readonly offcuts: number;
}

/** Parts of one size before the next. */
const ALIKE = 10;
/** Offcuts of one size: a rack may list two thousand. */
const RACKED = 4;

/** Loose parts of many sizes on one board; offcuts too small for most of them. */
export function heavyJob({ parts, offcuts }: Weight): object {
	return {
		format: 'kerf-and-nap job',
		version: 2,
		name: `${parts} parts, ${offcuts} offcuts`,
		stock: {
			materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
			sheets: [{ id: 'full', material: 'ply', length: 2440, width: 1220, price: 60 }],
			offcuts: Array.from({ length: Math.ceil(offcuts / RACKED) }, (_, i) => ({
				id: `O${i + 1}`,
				material: 'ply',
				length: 150 + ((37 * i) % 700),
				width: 100 + ((53 * i) % 400),
				count: Math.min(RACKED, offcuts - i * RACKED),
			})),
		},
		parts: Array.from({ length: Math.ceil(parts / ALIKE) }, (_, i) => ({
			id: `P${i + 1}`,
			material: 'ply',
			length: 120 + ((31 * i) % 480),
			width: 60 + ((17 * i) % 240),
			count: Math.min(ALIKE, parts - i * ALIKE),
		})),
	};
}
