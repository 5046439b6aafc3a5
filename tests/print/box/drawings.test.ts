import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import type { BoxFigures } from '../../../src/lib/design/box/box-plan';
import { boardDrawing } from '../../../src/lib/print/box/board';
import { exploded } from '../../../src/lib/print/box/exploded';
import { placingDrawings } from '../../../src/lib/print/box/placing';
import { threeViews } from '../../../src/lib/print/box/views';
import type { Drawing } from '../../../src/lib/print/drawing/drawing';
import { figuresOn } from '../../../src/lib/print/wording/figures';
import { made, type Asked } from '../../design/box/make';
import { emptyBox, fullBox, fullTapered } from '../../design/box/random';
import { textsOff, textsOverTexts } from '../words-on';

const RULERS = [
	{ unit: 'mm', fraction: 32, decimal: '.' },
	{ unit: 'in', fraction: 64, decimal: '.' },
] as const;

function drawingsOf(figures: BoxFigures, ruler: (typeof RULERS)[number]): Drawing[] {
	const print = figuresOn(ruler);
	return [
		threeViews('Box', figures, print),
		exploded('Box', figures),
		...figures.boards.flatMap((b) => [boardDrawing(b, print, ruler), ...placingDrawings(b, print)]),
	];
}

/** Words that run into each other or off the drawing. */
function crowded(drawing: Drawing): string[] {
	return [...textsOff(drawing), ...textsOverTexts(drawing.marks)].map(
		(t) => `${drawing.title}: ${t}`,
	);
}

/** A driver let in flush, a terminal on one end and a rod, wherever they come to lie. */
const fitted = (asked: Asked): Asked => ({
	...asked,
	drivers: [
		{
			cutout: { kind: 'round', diameter: 140 },
			frame: 165,
			depth: 70,
			seat: { kind: 'routed', depth: 5 },
			boltCircle: { diameter: 152, angle: 22.5, hole: 5 },
		},
	],
	terminal: {
		board: 'right',
		hole: { kind: 'round', diameter: 50 },
		screwHoles: { kind: 'circle', diameter: 64 },
	},
	braces: [...(asked.braces ?? []), { kind: 'dowel', diameter: 20, a: 60, b: 90 }],
});

function check(asked: Asked): void {
	const { figures } = made(asked);
	fc.pre(figures !== undefined);
	for (const ruler of RULERS) expect(drawingsOf(figures, ruler).flatMap(crowded)).toEqual([]);
}

describe('words on the drawings of a box', () => {
	it('keep clear of each other on walls alone', () => {
		fc.assert(fc.property(emptyBox, check), { numRuns: runs(40), seed: 31 });
	});

	it('keep clear of each other on boxes with everything in them', () => {
		fc.assert(fc.property(fc.oneof(fullBox, fullTapered).map(fitted), check), {
			numRuns: runs(40),
			seed: 32,
		});
	});
});
