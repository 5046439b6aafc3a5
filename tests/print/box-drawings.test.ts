import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BoxFigures } from '../../src/lib/design/box/box-plan';
import { boardDrawing } from '../../src/lib/print/box-board';
import { exploded } from '../../src/lib/print/box-exploded';
import { threeViews } from '../../src/lib/print/box-views';
import type { Drawing } from '../../src/lib/print/drawing';
import { figuresOn } from '../../src/lib/print/figures';
import { overlap, textBox } from '../../src/lib/print/text-box';
import { made, type Asked } from '../design/box-make';
import { emptyBox, fullBox, fullTapered } from '../design/box-random';

const RULERS = [
	{ unit: 'mm', fraction: 32, decimal: '.' },
	{ unit: 'in', fraction: 64, decimal: '.' },
] as const;

function drawingsOf(figures: BoxFigures, ruler: (typeof RULERS)[number]): Drawing[] {
	const print = figuresOn(ruler);
	return [
		threeViews('Box', figures, print),
		exploded('Box', figures),
		...figures.boards.map((b) => boardDrawing(b, print, ruler)),
	];
}

/** Words that run into each other or off the drawing. */
function crowded({ title, width, height, marks }: Drawing): string[] {
	const texts = marks.flatMap((m) =>
		m.kind === 'text' ? [{ text: m.text, box: textBox(m) }] : [],
	);
	const off = texts.filter(
		({ box }) =>
			box.x < -0.1 ||
			box.y < -0.1 ||
			box.x + box.width > width + 0.1 ||
			box.y + box.height > height + 0.1,
	);
	const pairs = texts.flatMap((a, i) =>
		texts
			.slice(i + 1)
			.flatMap((b) => (overlap(a.box, b.box, 0.25) ? [`${a.text} / ${b.text}`] : [])),
	);
	return [...off.map((t) => `${t.text} is off`), ...pairs].map((t) => `${title}: ${t}`);
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
		},
	],
	terminal: { board: 'right', hole: { kind: 'round', diameter: 50 } },
	braces: [...(asked.braces ?? []), { kind: 'dowel', diameter: 20, a: 60, b: 90 }],
});

function check(asked: Asked): void {
	const { figures } = made(asked);
	fc.pre(figures !== undefined);
	for (const ruler of RULERS) expect(drawingsOf(figures, ruler).flatMap(crowded)).toEqual([]);
}

describe('words on the drawings of a box', () => {
	it('keep clear of each other on walls alone', () => {
		fc.assert(fc.property(emptyBox, check), { numRuns: 40, seed: 31 });
	});

	it('keep clear of each other on boxes with everything in them', () => {
		fc.assert(fc.property(fc.oneof(fullBox, fullTapered).map(fitted), check), {
			numRuns: 40,
			seed: 32,
		});
	});
});
