/** A complex number: what a sine of one frequency is reckoned with. */
export interface Complex {
	readonly re: number;
	readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });

export const sumOf = (...terms: readonly Complex[]): Complex =>
	terms.reduce((sum, t) => complex(sum.re + t.re, sum.im + t.im), complex(0));

export const productOf = (...factors: readonly Complex[]): Complex =>
	factors.reduce(
		(a, b) => complex(a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re),
		complex(1),
	);

export function quotient(a: Complex, b: Complex): Complex {
	const d = b.re * b.re + b.im * b.im;
	return complex((a.re * b.re + a.im * b.im) / d, (a.im * b.re - a.re * b.im) / d);
}

export const sizeOf = (a: Complex): number => Math.hypot(a.re, a.im);
