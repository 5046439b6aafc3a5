import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import type { BoxFigures } from '../../../src/lib/design/box/box-plan';
import { boardDrawing } from '../../../src/lib/print/box/board';
import { exploded } from '../../../src/lib/print/box/exploded';
import { placingDrawings } from '../../../src/lib/print/box/placing';
import { threeViews } from '../../../src/lib/print/box/views';
import { round, textBox, type Drawing } from '../../../src/lib/print/drawing';
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
	devices: [
		{
			name: 'Crossover of the whole front',
			board: 'left',
			length: 60,
			width: 50,
			height: 30,
			x: 5,
			y: 20,
			mass: 0.4,
			holes: [{ x: 10, y: 10 }],
		},
	],
});

/** Words on bolts, screws and devices that stand neither on their board nor under the drawing. */
function pastEdge(b: BoxFigures['boards'][number], drawing: Drawing): string[] {
	const ends = drawing.marks.flatMap((m) =>
		m.kind === 'path' && m.of === `part:${b.label}`
			? m.steps.flatMap((s) => (s[0] === 'M' || s[0] === 'L' ? [{ x: s[1], y: s[2] }] : []))
			: [],
	);
	const board = round(ends);
	return drawing.marks.flatMap((m) => {
		if (m.kind !== 'text' || m.anchor !== 'middle' || !/ on Ø |apart$|^Crossover/.test(m.text))
			return [];
		const box = textBox(m);
		const within = box.x >= board.x - 0.01 && box.x + box.width <= board.x + board.width + 0.01;
		return within ? [] : [`${drawing.title}: ${m.text}`];
	});
}

function check(asked: Asked): void {
	const { figures } = made(asked);
	fc.pre(figures !== undefined);
	for (const ruler of RULERS) {
		const all = drawingsOf(figures, ruler);
		expect(all.flatMap(crowded)).toEqual([]);
		const past = figures.boards.flatMap((b) => {
			const own = all.filter((d) => d.title.startsWith(`${b.label} ${b.name}, seen`));
			return own.flatMap((d) => pastEdge(b, d));
		});
		expect(past).toEqual([]);
	}
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

describe('a seat in the exploded view', () => {
	const seats = (into: 'far' | 'near') => {
		const { figures } = made({
			shape: { kind: 'plain', width: 600, height: 400, depth: 350 },
			dividers: [{ across: 'width', at: 300 }],
			drivers: [
				{
					board: 'divider-1',
					into,
					cutout: { kind: 'round', diameter: 180 },
					frame: 210,
					depth: 90,
					displacement: 1,
					seat: { kind: 'routed', depth: 5 },
				},
			],
		});
		const divider = figures!.boards.find((b) => b.role === 'divider')!;
		const marks = exploded('Box', figures!).marks.filter(
			(m) => m.kind === 'path' && m.of === `part:${divider.label}`,
		);
		const lines = (line: string) => marks.filter((m) => m.kind === 'path' && m.line === line);
		const inside = divider.holes.find((h) => h.of === 'seat')!.face === 'inside';
		return {
			inside,
			dashed: lines('dashed'),
			sunk: marks.filter((m) => m.kind === 'path' && m.fill === 'sunk'),
		};
	};

	it('is drawn on its own face: open where that is seen, dashed where it is not', () => {
		const both = (['far', 'near'] as const).map(seats);
		// The eye is to the right: of a divider across the width one of its faces is seen.
		expect(both.map((s) => s.dashed.length).sort((a, b) => a - b)).toEqual([0, 1]);
		for (const { dashed, sunk } of both) expect(sunk.length + dashed.length).toBe(2);
		expect(both.map((s) => s.inside).sort((a, b) => Number(a) - Number(b))).toEqual([false, true]);
	});
});
