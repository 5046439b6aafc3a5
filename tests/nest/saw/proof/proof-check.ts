import type { Piece, SawProblem, Sheet } from '../../../../src/lib/nest/types';

/*
 * The cheapest layout of a few pieces by trying everything, with nothing taken from the code under
 * test: kerf is counted cut by cut, each piece is one of its own, and every cut is tried at every
 * whole place.
 */

interface Single {
	readonly length: number;
	readonly width: number;
	readonly turns: Piece['turns'];
}

export interface Cheapest {
	readonly money: number;
	readonly sheets: number;
}

/** Can the pieces named by the bits of a set be cut from a rectangle? */
export class Cutter {
	private readonly known = new Map<string, boolean>();

	constructor(
		private readonly pieces: readonly Single[],
		private readonly kerf: number,
	) {}

	cuts(set: number, length: number, width: number): boolean {
		if (set === 0) return true;
		if (length <= 0 || width <= 0) return false;
		const key = `${set} ${length} ${width}`;
		const known = this.known.get(key);
		if (known !== undefined) return known;
		const can = this.whole(set, length, width) || this.parted(set, length, width);
		this.known.set(key, can);
		return can;
	}

	private whole(set: number, length: number, width: number): boolean {
		if ((set & (set - 1)) !== 0) return false;
		const p = this.pieces[Math.log2(set)]!;
		return (
			(p.length <= length && p.width <= width) ||
			(p.turns === 'any' && p.width <= length && p.length <= width)
		);
	}

	private parted(set: number, length: number, width: number): boolean {
		if ((set & (set - 1)) === 0) return false;
		for (let one = (set - 1) & set; one > 0; one = (one - 1) & set) {
			const two = set & ~one;
			for (let at = 1; at + this.kerf < length; at++)
				if (this.cuts(one, at, width) && this.cuts(two, length - at - this.kerf, width))
					return true;
			for (let at = 1; at + this.kerf < width; at++)
				if (this.cuts(one, length, at) && this.cuts(two, length, width - at - this.kerf))
					return true;
		}
		return false;
	}
}

const usable = ({ length, width, trim }: Sheet): [number, number] => [
	length - trim.left - trim.right,
	width - trim.top - trim.bottom,
];

/**
 * Least money, and apart from it the fewest sheets, that hold every piece; Infinity when the stock
 * does not.
 */
export function cheapest({ pieces, sheets, kerf }: SawProblem): Cheapest {
	const singles = pieces.flatMap((p) =>
		Array.from({ length: p.count }, () => ({ length: p.length, width: p.width, turns: p.turns })),
	);
	const cutter = new Cutter(singles, kerf);
	const stock = sheets.map((s) => s.count ?? Infinity);
	const fits = (set: number, kind: number): boolean => cutter.cuts(set, ...usable(sheets[kind]!));
	const least = (left: number, price: (s: Sheet) => number): number => {
		if (left === 0) return 0;
		const first = left & -left;
		const rest = left & ~first;
		let best = Infinity;
		for (let more = rest; ; more = (more - 1) & rest) {
			for (let kind = 0; kind < sheets.length; kind++) {
				if (stock[kind] === 0 || !fits(first | more, kind)) continue;
				stock[kind]!--;
				best = Math.min(best, price(sheets[kind]!) + least(rest & ~more, price));
				stock[kind]!++;
			}
			if (more === 0) return best;
		}
	};
	const all = (1 << singles.length) - 1;
	return { money: least(all, (s) => s.price), sheets: least(all, () => 1) };
}
