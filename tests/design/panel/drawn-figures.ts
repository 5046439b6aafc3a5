import { expect } from 'vitest';
import type { Drawn, Undrawn } from '../../../src/lib/design/shape/drawn';
import { area, bounds } from '../../../src/lib/geometry/extent';
import { toMm } from '../../../src/lib/measure/length';

/** All complaints about a drawing. */
export const said = (d: Drawn | Undrawn): string =>
	d.complaints.map((c) => `${c.what} ${c.fix}`).join(' ');

/** Millimetres, and square millimetres, of a drawing that has to come out. */
export function sizes(d: Drawn | Undrawn): { length: number; width: number; area: number } {
	if (d.outline === null) throw new Error(said(d));
	const box = bounds(d.outline);
	return { length: toMm(box.length), width: toMm(box.width), area: area(d.outline) / 1600 ** 2 };
}

/**
 * Whatever the file held: an outline on the grid, or a complaint that stops; all of them whole
 * sentences.
 */
export function expectReadOrRefused(d: Drawn | Undrawn): void {
	if (d.outline === null) expect(d.complaints.some((c) => c.kind === 'stop')).toBe(true);
	else {
		expect(area(d.outline)).toBeGreaterThan(0);
		expect(d.outline.every((c) => Number.isSafeInteger(c.x) && Number.isSafeInteger(c.y))).toBe(
			true,
		);
		expect(d.sides).toHaveLength(d.outline.length);
	}
	expect(d.complaints.every((c) => /[.!?]$/.test(c.what) && /[.!?]$/.test(c.fix))).toBe(true);
}
