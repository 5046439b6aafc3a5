import { ticks, TICKS_PER_INCH, TICKS_PER_MM, type Length } from './length';
import { nearestWhole, whole } from './ratio';
import type { Hand, Reading, Unit } from './reading';
import { answer, Refusal } from './scan';
import { readSum, type Units } from './sum';

const UNIT_TICKS: Readonly<Record<Unit, number>> = {
	mm: TICKS_PER_MM,
	cm: 10 * TICKS_PER_MM,
	m: 1000 * TICKS_PER_MM,
	in: TICKS_PER_INCH,
};
const FOOT = whole(12 * TICKS_PER_INCH); // 304.8 mm exactly: NIST SP 811 (2008) appendix B.8
const INCH = whole(TICKS_PER_INCH);

const NAMED = new Map([
	...(['mm', 'cm', 'm', 'in'] as const).map((unit) => [unit, whole(UNIT_TICKS[unit])] as const),
	...['in.', 'inch', 'inches', '"'].map((word) => [word, INCH] as const),
	...['ft', 'ft.', 'foot', 'feet', "'"].map((word) => [word, FOOT] as const),
	...['yd', 'yard', 'yards'].map((word) => [word, whole(36 * TICKS_PER_INCH)] as const),
]);

const EXAMPLES: Readonly<Record<Unit, string>> = {
	mm: '600 or 23 5/8 in',
	cm: '60 or 23 5/8 in',
	m: '1.5 m or 600 mm',
	in: '23 5/8 or 600 mm',
};

/** Past ten kilometres a figure is a slip, and the grid would run out of exact numbers. */
const FARTHEST = whole(10_000_000 * TICKS_PER_MM);

/**
 * Reads a length as a person writes it: `600`, `60 cm`, `23 5/8`, `23-5/8"`, `2' 3 1/2"`,
 * `360+2*17.6`. The answer is exact and rounded once to the nearest tick. A refusal says what was
 * seen and gives an example of what is right.
 */
export function readLength(text: string, as: Hand): Reading<Length> {
	const units: Units = {
		named: NAMED,
		bare: whole(UNIT_TICKS[as.unit]),
		kind: 'length',
		example: EXAMPLES[as.unit].replace('.', as.decimal),
		follows: { after: FOOT, small: INCH },
	};
	return answer(() => {
		const sum = readSum(text, as.decimal, units);
		const size = sum.n < 0n ? -sum.n : sum.n;
		if (size <= FARTHEST.n * sum.d) return ticks(Number(nearestWhole(sum)));
		throw new Refusal(
			`"${text}" is farther than any job reaches.`,
			'Check the number and its unit.',
		);
	});
}
