/*
 * What few blanks take of a roll, found by trying every way to lay them: one after another, each
 * where the pattern is right at or after the end of one that lies, or the start. mm.
 */

export interface Asked {
	/** Along the roll and across it. */
	readonly along: number;
	readonly across: number;
	/** May it lie a quarter turned? */
	readonly turns: boolean;
}

export interface ClothRoll {
	readonly usable: number;
	readonly repeat: number;
	readonly repeatAcross: number;
	readonly halfDrop: boolean;
}

interface Lying {
	readonly x: number;
	readonly y: number;
	readonly along: number;
	readonly across: number;
}

/** Lengths are of tenths here: what differs by less is the same. */
const SAME = 1e-6;

const nextOf = (from: number, step: number, first = 0): number =>
	step === 0 ? from : first + Math.max(0, Math.ceil((from - first) / step - SAME)) * step;

/** Where the pattern starts in the column that begins at y. */
function firstIn(y: number, { repeat, repeatAcross, halfDrop }: ClothRoll): number {
	if (!halfDrop || repeatAcross === 0) return 0;
	return Math.round(y / repeatAcross) % 2 === 1 ? repeat / 2 : 0;
}

const apart = (a: Lying, b: Lying): boolean =>
	a.x + a.along <= b.x + SAME ||
	b.x + b.along <= a.x + SAME ||
	a.y + a.across <= b.y + SAME ||
	b.y + b.across <= a.y + SAME;

/** The shortest length that gives all of them; Infinity where one is wider than the roll. */
export function shortest(asked: readonly Asked[], roll: ClothRoll): number {
	let best = Infinity;
	const lay = (left: readonly Asked[], lying: readonly Lying[], end: number): void => {
		if (end >= best - SAME) return;
		if (left.length === 0) {
			best = end;
			return;
		}
		left.forEach((blank, i) => {
			const rest = left.filter((_, k) => k !== i);
			for (const spot of spotsOf(blank, lying, roll))
				lay(rest, [...lying, spot], Math.max(end, spot.x + spot.along));
		});
	};
	lay(asked, [], 0);
	return best;
}

function spotsOf(blank: Asked, lying: readonly Lying[], roll: ClothRoll): Lying[] {
	const ways = [{ along: blank.along, across: blank.across }];
	if (blank.turns) ways.push({ along: blank.across, across: blank.along });
	const sides = [0, ...lying.map((l) => l.y + l.across)].map((y) => nextOf(y, roll.repeatAcross));
	return ways.flatMap((way) =>
		sides
			.filter((y) => y + way.across <= roll.usable + SAME)
			.flatMap((y) =>
				[0, ...lying.map((l) => l.x + l.along)].map((from) => ({
					...way,
					y,
					x: nextOf(from, roll.repeat, firstIn(y, roll)),
				})),
			)
			.filter((spot) => lying.every((l) => apart(l, spot))),
	);
}

export interface Seller {
	readonly cuts: 'counted' | 'whole';
	readonly begins: 'anywhere' | 'pattern';
	/** Sold in steps of this. */
	readonly step: number;
}

/**
 * What is pulled so that the length is had wherever the pattern of the roll begins: step by step
 * along the roll. Cut in whole repeats, the length ends where a repeat does.
 */
export function pulled(length: number, { repeat }: ClothRoll, seller: Seller): number {
	let end = 0;
	if (seller.cuts === 'whole' && repeat > 0) while (end < length - SAME) end += repeat;
	else end = length;
	const lost = seller.begins === 'anywhere' ? repeat : 0;
	let steps = 0;
	while (steps * seller.step < end + lost - SAME) steps++;
	return steps * seller.step;
}
