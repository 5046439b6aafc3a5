import { nth } from '../../measure';
import { stepOf, type RollDeck } from './kinds';

/** How many thresholds of the widths are tried; each costs one pass over the kinds. */
const THRESHOLDS = 40;
const ROUNDINGS = 6;

/**
 * A length no layout can beat, gap included, for the blanks of `counts` (per kind of the deck). The
 * best of: the area; the longest blank; and widths seen through dual feasible functions (S.P.
 * Fekete, J. Schepers, "New classes of fast lower bounds for bin packing problems", Math.
 * Programming 91, 2001): functions u with u(a) + u(b) + ... <= u(width) whenever a + b + ... <=
 * width, so that the sum of u(width of blank) x length over u(width of roll) is a bound too. A
 * blank that may turn counts in its cheapest orientation.
 */
export function rollBound(deck: RollDeck, counts: readonly number[]): number {
	const dual = wholeRepeats(deck, dualBound(deck, counts));
	let longest = 0;
	deck.kinds.forEach((kind, k) => {
		if (nth(counts, k) <= 0) return;
		longest = Math.max(longest, Math.min(...kind.orientations.map((o) => o.reach)));
	});
	return Math.max(dual, longest);
}

/**
 * The dual bound counts blanks lengthened to whole repeats; the last ones may stick out by what was
 * added.
 */
function wholeRepeats(deck: RollDeck, bound: number): number {
	const step = stepOf(deck.pattern);
	if (step === 0) return bound;
	const added = deck.kinds.flatMap((kind) => kind.orientations.map((o) => o.tall - o.reach));
	return Math.ceil(bound / step) * step - Math.max(0, ...added);
}

/** Beyond this many kinds the longer look is not worth its time. */
const MOST_KINDS = 150;
/** Thresholds of the lengths tried against each function of the widths. */
const LENGTHS = 12;
/** The sums are computed figures: a length is refuted only by more than their rounding. */
const ROUNDING = 1e-9;

/**
 * The bound raised by looking along the roll too: a length L is impossible when the blanks, each
 * counted as a function of its width times a threshold function of its length within L, come to
 * more than the whole. (Blanks longer than half of L, say, all cross the middle, and so must fit
 * side by side.) Halves between `low`, the bound so far, and `high`, a length that was laid. A
 * pattern shifts the starts, so nothing is raised there. Lengths fall on multiples of `unit`.
 */
export function raisedBound(deck: RollDeck, low: number, high: number, unit: number): number {
	if (deck.pattern.repeat > 0 || deck.kinds.length > MOST_KINDS) return low;
	const widths = [...duals(deck)].map(({ dual, whole }) =>
		deck.kinds.map((kind) => kind.orientations.map((o) => dual(o.wide) / whole)),
	);
	let impossible = Math.ceil(low / unit) - 1;
	let laid = Math.floor(high / unit);
	while (laid - impossible > 1) {
		const middle = Math.floor((impossible + laid) / 2);
		if (isRefuted(deck, widths, middle * unit)) impossible = middle;
		else laid = middle;
	}
	return Math.max(low, (impossible + 1) * unit);
}

function isRefuted(
	deck: RollDeck,
	widths: readonly (readonly (readonly number[])[])[],
	L: number,
): boolean {
	return lengthThresholds(deck, L).some((least) => {
		const share = (tall: number): number => (tall > L - least ? 1 : tall < least ? 0 : tall / L);
		const lengths = deck.kinds.map((kind) => kind.orientations.map((o) => share(o.tall)));
		return widths.some((width) => {
			let sum = 0;
			deck.kinds.forEach((kind, k) => {
				const shares = kind.orientations.map(
					(_, l) => nth(nth(width, k), l) * nth(nth(lengths, k), l),
				);
				sum += kind.count * Math.min(...shares);
			});
			return sum > 1 + ROUNDING;
		});
	});
}

function lengthThresholds(deck: RollDeck, L: number): number[] {
	const all = new Set<number>([Math.floor(L / 2)]);
	for (const orientation of deck.kinds.flatMap((kind) => kind.orientations)) {
		if (orientation.tall <= L / 2) all.add(orientation.tall);
		else if (orientation.tall < L) all.add(L - orientation.tall + 1);
	}
	const sorted = [...all].filter((least) => least > 0 && least <= L / 2).sort((a, b) => b - a);
	const stride = Math.max(1, Math.ceil(sorted.length / LENGTHS));
	return sorted.filter((_, i) => i % stride === 0);
}

type Dual = (wide: number) => number; // whole numbers for whole numbers

function dualBound(deck: RollDeck, counts: readonly number[]): number {
	let best = 0;
	for (const { dual, whole } of duals(deck)) {
		let sum = 0n;
		deck.kinds.forEach((kind, k) => {
			if (nth(counts, k) <= 0) return;
			const least = Math.min(...kind.orientations.map((o) => dual(o.wide) * o.tall));
			sum += BigInt(least) * BigInt(nth(counts, k));
		});
		const bound = Number((sum + BigInt(whole) - 1n) / BigInt(whole));
		best = Math.max(best, bound);
	}
	return best;
}

function* duals(deck: RollDeck): Generator<{ readonly dual: Dual; readonly whole: number }> {
	const W = deck.width;
	yield { dual: (wide) => wide, whole: W };
	for (let k = 1; k <= ROUNDINGS; k++) {
		const rounded: Dual = (wide) => {
			const share = (k + 1) * wide;
			return share % W === 0 ? k * wide : Math.floor(share / W) * W;
		};
		yield { dual: rounded, whole: k * W };
	}
	for (const least of thresholds(deck)) {
		const threshold: Dual = (wide) => (wide > W - least ? W : wide < least ? 0 : wide);
		yield { dual: threshold, whole: W };
	}
}

/**
 * Widths, and what they leave of the roll, up to half the roll: where the threshold function can
 * change.
 */
function thresholds(deck: RollDeck): number[] {
	const half = deck.width / 2;
	const all = new Set<number>();
	for (const orientation of deck.kinds.flatMap((kind) => kind.orientations)) {
		all.add(orientation.wide <= half ? orientation.wide : deck.width - orientation.wide + 1);
		if (orientation.wide <= half) all.add(orientation.wide + 1);
	}
	const sorted = [...all].filter((least) => least > 0 && least <= half).sort((a, b) => a - b);
	const stride = Math.max(1, Math.ceil(sorted.length / THRESHOLDS));
	return sorted.filter((_, i) => i % stride === 0);
}
