import type { Ruler } from '../../measure';

/** Reductions of ISO 5455; for inches those that a rule's own divisions read. */
const METRIC = [1, 2, 5, 10, 20, 50, 100, 200, 500];
const INCHES = [1, 2, 4, 8, 16, 32, 64, 128, 256, 512];

/** The largest standard scale no larger than `most`, where 0.1 is 1 : 10. */
export function standardScale(most: number, unit: Ruler['unit']): number {
	const scales = unit === 'in' ? INCHES : METRIC;
	const found = scales.find((n) => 1 / n <= most);
	return found === undefined ? most : 1 / found;
}

/** '1 : 10'. */
export function scaleText({ scale }: { readonly scale: number }): string {
	return `1 : ${Math.round((1 / scale) * 10) / 10}`;
}
