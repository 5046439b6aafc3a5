import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bounds, circle, type Outline } from '../../../src/lib/geometry';
import { rectangle } from '../../../src/lib/geometry/shaping/tidy';
import { job as jobField } from '../../../src/lib/job/job';
import { mm, ticks, toMm } from '../../../src/lib/measure/length';
import type { RollLayout } from '../../../src/lib/layout/layouts';
import type { Plan } from '../../../src/lib/plan';
import { blankDrawings } from '../../../src/lib/print/cloth/blank-drawings';
import type { Drawing } from '../../../src/lib/print/drawing/drawing';
import { rollDrawing } from '../../../src/lib/print/cloth/roll-drawing';
import type { Blank } from '../../../src/lib/wrap/blank';
import { wrapCovering } from '../../../src/lib/wrap/wrap-panel';
import { runs } from '../../depth';
import { carpet, covering, GROOVED, SHOP } from '../../wrap/make';
import { textsOff, textsOverTexts, wordsOn } from '../words-on';

function planOf(blanks: readonly Blank[], nap = 'one-way'): Plan {
	const job = jobField.parse({
		stock: {
			cloths: [{ id: 'carpet', name: 'Grey carpet', loose: 4, pressed: 3, nap }],
			rolls: [{ id: 'roll', cloth: 'carpet', width: 1400, usable: 1370 }],
		},
	});
	// The drawings read the stock, the ruler and the blanks of a plan, nothing else.
	return { job, blanks } as unknown as Plan;
}

const island = {
	outline: rectangle(mm(100), mm(60), mm(300), mm(150)),
	height: mm(6),
	raised: true,
};
const window = { outline: rectangle(mm(450), mm(60), mm(110), mm(180)), edge: GROOVED };
const blank = wrapCovering(
	covering({ outline: rectangle(0, 0, mm(600), mm(300)), steps: [island], windows: [window] }),
	carpet(),
	SHOP,
	['panels', 0],
).blanks[0]!;

const says = (d: Drawing) => wordsOn(d.marks);

describe('the drawing of a blank', () => {
	const [drawing] = blankDrawings(blank, planOf([blank]));

	it('names the blank and its size', () => {
		expect(drawing!.title).toBe('C1 Tray face: 712 × 412');
	});

	it('says that the back is seen, and which way the nap lies', () => {
		expect(says(drawing!).some((t) => t.startsWith('BACK OF CLOTH'))).toBe(true);
		expect(says(drawing!)).toContain('NAP');
		const [plain] = blankDrawings(blank, planOf([blank], 'none'));
		expect(says(plain!)).not.toContain('NAP');
	});

	it('measures the folds, the layer, the window and the whole from one corner', () => {
		// Across the roll: fold 50, whole 412, fold at 362. Along it: folds 50 and 662, whole 712.
		for (const figure of ['50', '362', '412', '662', '712'])
			expect(says(drawing!)).toContain(figure);
	});

	it('gives the tape as a sum that adds up', () => {
		expect(says(drawing!).join(' ')).toContain(
			'Along the roll: face 600 + steps 12 + past the edges 2 × 50 = 712.',
		);
	});

	it('counts the reliefs and tells what the cloth does not take', () => {
		const all = says(drawing!).join(' ');
		expect(all).toContain('8 corner notches, 4 slits');
		expect(all).toContain('LOOK: Layer 1, outside corners. The cloth must shrink by 100 %');
	});

	it('keeps all its words on paper and off each other', () => {
		expect(textsOff(drawing!)).toEqual([]);
		expect(textsOverTexts(drawing!.marks)).toEqual([]);
	});

	it('draws each kind of mark in its own line and names it', () => {
		const lines = new Set(drawing!.marks.flatMap((m) => (m.kind === 'path' ? [m.line] : [])));
		for (const line of ['wide', 'narrow', 'dashed', 'phantom', 'hair'])
			expect(lines).toContain(line);
		expect(says(drawing!)).toContain('fold, over the front edge');
		expect(says(drawing!)).toContain('trim here, over the groove');
	});
});

describe('a blank that is no rectangle', () => {
	const inset = fc.integer({ min: 0, max: 1500 });
	const four = fc.tuple(inset, inset, inset, inset);
	/** A square of 600 mm, each corner drawn in along one of its sides, tenths of a millimetre. */
	const outlineOf = ([a, b, c, d]: readonly number[]): Outline => [
		{ x: mm(a! / 10), y: 0 },
		{ x: mm(600), y: mm(b! / 10) },
		{ x: mm(600 - c! / 10), y: mm(600) },
		{ x: 0, y: mm(600 - d! / 10) },
	];
	const drawn = (outline: Outline): Drawing => {
		const box = bounds(outline);
		const [length, width] = [ticks(box.length), ticks(box.width)];
		const leaning: Blank = { ...blank, outline, length, width, marks: [] };
		return blankDrawings(leaning, planOf([leaning]))[0]!;
	};
	const placesIn = (text: string) =>
		[...text.matchAll(/([a-z]) → (\d+(?:\.\d+)?) ↑ (\d+(?:\.\d+)?)/g)].map(([, letter, x, y]) => ({
			letter,
			at: [Number(x), Number(y)],
		}));

	it('has each corner in words and its letter at that corner', () => {
		fc.assert(
			fc.property(four, (by) => {
				const outline = outlineOf(by);
				const drawing = drawn(outline);
				const places = placesIn(says(drawing).join(' ').replaceAll('\u00a0', ' '));
				const square = by.every((n) => n === 0);
				const round = square ? [] : outline.map((p) => [toMm(p.x), toMm(p.y)]);
				const sorted = (list: readonly (readonly number[])[]) =>
					[...list].sort((p, q) => p[0]! - q[0]! || p[1]! - q[1]!);
				expect(sorted(places.map((p) => p.at))).toEqual(sorted(round));
				const shape = drawing.marks.find((m) => m.kind === 'path' && m.fill === 'sheet')!;
				const spots =
					shape.kind === 'path' ? shape.steps.filter(([c]) => c === 'L' || c === 'M') : [];
				const [left, low] = [
					Math.min(...spots.map((s) => Number(s[1]))),
					Math.max(...spots.map((s) => Number(s[2]))),
				];
				const scale = (Math.max(...spots.map((s) => Number(s[1]))) - left) / 600;
				for (const { letter, at } of places) {
					const mark = drawing.marks.find((m) => m.kind === 'text' && m.text === letter);
					const far = (to: readonly number[]): number =>
						mark?.kind === 'text'
							? Math.hypot(mark.x - left - to[0]! * scale, mark.y - low + to[1]! * scale)
							: NaN;
					const nearest = Math.min(...places.map((p) => far(p.at)));
					expect(far(at)).toBe(nearest);
				}
				expect(textsOff(drawing)).toEqual([]);
				expect(textsOverTexts(drawing.marks)).toEqual([]);
			}),
			{ numRuns: runs(60) },
		);
	});

	it('is traced where it is curved, and a rectangle has no words for its corners', () => {
		const round = circle(mm(100), mm(100), mm(100));
		expect(says(drawn(round)).join(' ')).toContain('Traced: see its template.');
		const square = says(drawn(rectangle(0, 0, mm(600), mm(300)))).join(' ');
		expect(square).not.toMatch(/Corners|Traced/);
	});
});

describe('the drawing of a roll', () => {
	const layout = (x: number): RollLayout => ({
		roll: 'roll',
		problem: {
			width: mm(1370),
			gap: mm(0),
			pieces: [],
			limit: null,
			repeat: mm(0),
			by: 'rectangle',
		},
		answer: {
			length: mm(712 + x),
			placed: [
				{
					id: 'tray.face',
					copy: 0,
					turn: 0,
					x: mm(x),
					y: mm(0),
					length: blank.length,
					width: blank.width,
				},
				{
					id: 'tray.face',
					copy: 1,
					turn: 0,
					x: mm(x),
					y: blank.width,
					length: blank.length,
					width: blank.width,
				},
			],
			unplaced: [],
			bound: mm(712),
			proven: true,
			effort: 1,
		},
		pull: mm(800),
		napless: mm(712),
		owned: false,
		faults: [],
	});

	it('says what to pull and measures every blank from one corner', () => {
		const drawing = rollDrawing(layout(0), planOf([blank]));
		expect(drawing.title).toBe('Grey carpet: pull 800 off the roll, 1400 wide, 1370 of it usable');
		for (const figure of ['712', '800', '427', '839', '1400'])
			expect(says(drawing)).toContain(figure);
		expect(textsOff(drawing)).toEqual([]);
		expect(textsOverTexts(drawing.marks)).toEqual([]);
	});

	it('draws blanks where they lie', () => {
		const left = (d: Drawing) =>
			Math.min(
				...d.marks.flatMap((m) =>
					m.kind === 'path' && m.of === 'blank:tray.face'
						? m.steps.flatMap((s) => (s[0] === 'M' || s[0] === 'L' ? [s[1]] : []))
						: [],
				),
			);
		const a = rollDrawing(layout(0), planOf([blank]));
		const b = rollDrawing(layout(80), planOf([blank]));
		const cut = a.marks.find((m) => m.kind === 'path' && m.line === 'cut');
		const at = cut?.kind === 'path' ? cut.steps[0]! : ['Z' as const];
		// The roll is cut off at 800; by that measure the blanks have moved on by 80.
		const scale = ((at[0] === 'M' ? at[1] : NaN) - left(a)) / 800;
		expect(left(b) - left(a)).toBeCloseTo(80 * scale, 6);
	});

	it('refuses a blank it does not know as a bug', () => {
		expect(() => rollDrawing(layout(0), planOf([]))).toThrow('bug:');
	});
});
