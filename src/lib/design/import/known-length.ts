import { bounds, edgeLength, edgesOf, type Outline } from '../../geometry';
import type { OutlineShape } from '../../job';
import { TICKS_PER_MM, type Ruler } from '../../measure';
import { sayRough, type Complaint } from '../shape';
import { check } from './drawing-file';

/** A drawing off by this much against the tape is not the thing measured: 0.5 %. */
const OFF = 0.005;
/** Or by what a tape shows at all. */
const TAPE = 0.5 * TICKS_PER_MM;

export function knownFault(
	outline: Outline,
	known: Extract<OutlineShape, { kind: 'svg' }>['known'],
	ruler: Ruler,
): Complaint[] {
	if (!known) return [];
	const box = bounds(outline);
	const edge = edgesOf(outline)[known.edge - 1];
	const seen =
		known.of === 'length'
			? box.length
			: known.of === 'width'
				? box.width
				: edge && edgeLength(edge);
	if (seen === undefined)
		return [
			check(
				`There is no edge ${known.edge} to check against.`,
				`The outline has ${outline.length} edges.`,
			),
		];
	if (Math.abs(seen - known.is) <= Math.max(OFF * known.is, TAPE)) return [];
	const factor = known.is / seen;
	return [
		check(
			`The known length is ${sayRough(known.is, ruler)}, and in the drawing it is ${sayRough(seen, ruler)}.`,
			`${hint(factor)} Then check again before cutting.`,
		),
	];
}

const SLIPS: readonly (readonly [number, string])[] = [
	[25.4, 'The drawing seems to be in inches.'],
	[10, 'The drawing seems to be in centimetres.'],
	[1000, 'The drawing seems to be in metres.'],
	[1 / 25.4, 'The drawing seems to be in millimetres, not inches.'],
	[0.1, 'The drawing seems to be in millimetres, not centimetres.'],
	[0.001, 'The drawing seems to be in millimetres, not metres.'],
	[25.4 / 96, 'The drawing seems to be in pixels of 1/96 in.'],
	[25.4 / 72, 'The drawing seems to be in points of 1/72 in.'],
];

function hint(factor: number): string {
	const slip = SLIPS.find(([f]) => Math.abs(factor / f - 1) < 0.01);
	return slip ? slip[1] : `A scale of ${Number(factor.toPrecision(4))} would make them equal.`;
}
