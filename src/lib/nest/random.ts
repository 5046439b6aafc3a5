/**
 * A stream of numbers that depends on the seed alone, so that a search gives the same answer on any
 * machine.
 */
export interface Random {
	/** A whole number from 0 to n - 1; n from 1 to 2^21. */
	int(n: number): number;
	/** A number from 0 up to, never at, 1. */
	unit(): number;
}

/**
 * Four 32-bit words of state, shift-register steps (G. Marsaglia, "Xorshift RNGs", J. Stat.
 * Software 8, 2003, the 128-bit generator). Any finite number is a seed; the state is filled by a
 * multiplicative walk from it.
 */
export function random(seed: number): Random {
	let word = Math.trunc(seed) | 0;
	const fill = (): number => {
		word = (word + 0x6d2b79f5) | 0;
		let mixed = Math.imul(word ^ (word >>> 16), 0x45d9f3b);
		mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d);
		return (mixed ^ (mixed >>> 16)) | 0;
	};
	let a = fill();
	let b = fill();
	let c = fill();
	let d = fill() | 1; // never all zero, where the register would stay
	const next = (): number => {
		const t = a ^ (a << 11);
		a = b;
		b = c;
		c = d;
		d = d ^ (d >>> 19) ^ t ^ (t >>> 8);
		return d >>> 0;
	};
	return {
		int: (n) => Math.floor((next() * n) / 4_294_967_296),
		unit: () => next() / 4_294_967_296,
	};
}
