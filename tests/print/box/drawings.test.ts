import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import type { BoxPlan } from '../../../src/lib/design/box/box-plan';
import { job } from '../../../src/lib/job/job';
import { exploded } from '../../../src/lib/print/box/exploded';
import { partDrawings } from '../../../src/lib/print/parts/part-drawings';
import { threeViews } from '../../../src/lib/print/box/views';
import type { Drawing } from '../../../src/lib/print/drawing';
import { figuresOn } from '../../../src/lib/print/wording/figures';
import { made, type Asked } from '../../design/box/make';
import { emptyBox, fullBox, fullTapered } from '../../design/box/random';
import { namesStruck, textsOff, textsOverTexts } from '../words-on';

const RULERS = [
	{ unit: 'mm', fraction: 32, decimal: '.' },
	{ unit: 'in', fraction: 64, decimal: '.' },
] as const;

function drawingsOf(box: BoxPlan, ruler: (typeof RULERS)[number]): Drawing[] {
	const print = figuresOn(ruler);
	const figures = box.figures!;
	return [
		threeViews('Box', figures, print),
		exploded('Box', figures),
		...partDrawings(job.parse({}), box.parts, { boxes: [box], panels: [] }, print),
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

function check(asked: Asked): void {
	const box = made(asked);
	fc.pre(box.figures !== undefined);
	for (const ruler of RULERS) {
		const all = drawingsOf(box, ruler);
		expect(all.filter((d) => d.fault !== undefined)).toEqual([]);
		expect(all.flatMap(crowded)).toEqual([]);
	}
}

describe('words on the drawings of a box', () => {
	it('keep clear of each other on walls alone, and of all lines where they are drawn apart', () => {
		const apart = (asked: Asked): void => {
			const { figures } = made(asked);
			if (figures) expect(namesStruck(exploded('Box', figures).marks, () => true)).toEqual([]);
		};
		const both = (asked: Asked): void => (check(asked), apart(asked));
		fc.assert(fc.property(emptyBox, both), { numRuns: runs(40), seed: 31 });
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
