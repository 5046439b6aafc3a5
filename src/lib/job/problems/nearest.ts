import { nth } from '../../measure';
/**
 * The word most like the one seen, when it is near enough to be a slip of the finger; else null.
 */
export function nearest(seen: string, known: readonly string[]): string | null {
	const word = seen.slice(0, 40).toLowerCase();
	let best: string | null = null;
	let least = Math.max(1, Math.floor(word.length / 3)) + 1;
	for (const candidate of known) {
		const steps = distance(word, candidate.toLowerCase());
		if (steps < least) [best, least] = [candidate, steps];
	}
	return best;
}

/**
 * Fewest letters put in, taken out, changed or swapped with their neighbour (optimal string
 * alignment).
 */
function distance(a: string, b: string): number {
	let before: number[] = [];
	let row = Array.from({ length: b.length + 1 }, (_, j) => j);
	for (let i = 1; i <= a.length; i++) {
		const next = [i];
		for (let j = 1; j <= b.length; j++) {
			const change = nth(row, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
			let least = Math.min(nth(row, j) + 1, nth(next, j - 1) + 1, change);
			if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
				least = Math.min(least, nth(before, j - 2) + 1);
			}
			next.push(least);
		}
		[before, row] = [row, next];
	}
	return nth(row, b.length);
}
