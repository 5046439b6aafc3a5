import { describe, expect, test } from 'vitest';
import { area } from '../../../src/lib/geometry';
import { toMm } from '../../../src/lib/measure';
import { figures, made, told, type Asked } from './make';
import { boardBody, joined } from './kernel';

/* Outside 536 x 436 x 336 of 18 mm board: inside 500 wide, 400 high, 300 deep. */
const shape = { kind: 'plain' as const, width: 536, height: 436, depth: 336 };
type Braces = NonNullable<Asked['braces']>;
type One = Braces[number];
const asked = (...braces: Braces): Asked => ({ shape, braces });

const shelf = (across: 'height' | 'depth', at: number, more = {}): One => ({
	kind: 'shelf',
	across,
	at,
	from: 0,
	length: 500,
	...more,
});
const frame = (across: 'width' | 'height' | 'depth', at: number, more = {}): One => ({
	kind: 'window',
	across,
	at,
	rim: 50,
	...more,
});

const braces = (box: Asked) => figures(box).boards.filter((b) => b.role === 'brace');
const slots = (box: Asked) =>
	braces(box).map((b) => b.holes.filter((h) => h.of === 'halving').map((h) => h.size.map(toMm)));

/** No two boards share a place, each weighs what its body does, and the air is what is left. */
function holds(box: Asked): void {
	const plan = made(box);
	const f = plan.figures!;
	const bodies = f.boards.map(boardBody);
	const sum = bodies.reduce((total, b) => total + b.volume(), 0);
	expect(joined(bodies).volume() / sum).toBeCloseTo(1, 6);
	bodies.forEach((body, i) => {
		expect(body.volume() / ((f.boards[i]!.mass / 680) * 1e9)).toBeCloseTo(1, 6);
		expect(body.decompose()).toHaveLength(1);
	});
	const net = f.chambers.reduce((litres, c) => litres + c.net, 0);
	expect((net * 1e6 + sum) / (536 * 436 * 336)).toBeCloseTo(1, 6);
}

/** Area of the parts of the braces, holes taken off, mm2. */
const cutAreas = (box: Asked) =>
	made(box)
		.parts.filter((p) => /brace/.test(p.name))
		.map(({ outline, holes }) => {
			const gone = holes.reduce((sum, h) => sum + Math.abs(area(h)), 0);
			return (area(outline!) - gone) / 1600 ** 2;
		});

describe('braces that cross', () => {
	const two = asked(shelf('height', 200), shelf('depth', 150));

	test('two shelves get a slot each, half as deep as they cross, 0.3 mm wider than the other', () => {
		expect(slots(two)).toEqual([[[250, 18.3]], [[250, 18.3]]]);
		expect(made(two).problems).toEqual([]);
		const [level, upright] = braces(two);
		expect(level!.notes).toEqual([
			'Halved over B8: slot 18.3 mm wide, 250 mm deep, from the left; glued in the slot.',
		]);
		expect(upright!.notes).toEqual([
			'Halved over B7: slot 18.3 mm wide, 250 mm deep, from the right; glued in the slot.',
		]);
		expect(cutAreas(two).map(Math.round)).toEqual([500 * 300 - 250 * 18.3, 500 * 400 - 250 * 18.3]);
		holds(two);
	});

	test('what is glued in the slots is counted, and they are slid together before they go in', () => {
		const each = ['height', 'depth'].map((across, i) =>
			asked(shelf(across as 'height', i === 0 ? 200 : 150)),
		);
		const none = figures(asked()).glued;
		const edges = each.reduce((sum, box) => sum + figures(box).glued - none, 0);
		// Two walls of 250 x 18 in each of two slots, and their ends meet on 18 x 18.
		expect(figures(two).glued - none - edges).toBeCloseTo(2 * 2 * 250 * 18 + 18 * 18, 6);
		const glue = (box: Asked) => made(box).needs.find((n) => n.kind === 'wood-glue')!.amount;
		expect(glue(two) * 1e6).toBeCloseTo(figures(two).glued, 3);
		const steps = figures(two).assembly.map((s) => s.text);
		expect(steps.filter((t) => t.includes('Shelf'))).toEqual([
			expect.stringMatching(
				/^Slide B7 Shelf brace 1, B8 Shelf brace 2 together, glue in their slots, and set them in/,
			),
		]);
		expect(figures(two).assembly.reduce((sum, s) => sum + s.glued, 0)).toBeCloseTo(
			figures(two).glued,
			6,
		);
	});

	test('each slot is as wide as the other board is measured, and as the fit asked', () => {
		const mixed = asked(shelf('height', 200, { material: 'ply-17' }), shelf('depth', 150));
		const sizes = (fit: number) => slots({ ...mixed, braceFit: fit }).map((s) => s[0]![1]);
		expect(sizes(0)).toEqual([18, 17.4]);
		expect(sizes(1)).toEqual([19, 18.4]);
	});

	test('the air counts the crossing once', () => {
		const net = (box: Asked) => figures({ ...box, braceFit: 0 }).chambers[0]!.net;
		const none = net(asked());
		const each = [shelf('height', 200), shelf('depth', 150)].map((b) => none - net(asked(b)));
		expect(none - net(two)).toBeCloseTo(each[0]! + each[1]! - (500 * 18 * 18) / 1e6, 6);
	});

	test('of two frames one rim of each is cut right through, and the windows need no slot', () => {
		const frames = asked(frame('width', 250), frame('height', 200));
		expect(slots(frames)).toEqual([[[50, 18.3]], [[18.3, 50]]]);
		expect(braces(frames).flatMap((b) => b.notes)).toEqual([
			'Halved over B8: slot 18.3 mm wide, right through 50 mm of rim, from the front; glued in the slot.',
			'Halved over B7: slot 18.3 mm wide, right through 50 mm of rim, from the back; glued in the slot.',
		]);
		// The window has become a bay of the outline.
		expect(
			made(frames)
				.parts.slice(6)
				.map((p) => p.holes.length),
		).toEqual([0, 0]);
		holds(frames);
	});

	test('a shelf that passes through the window of a frame needs none, nor a word', () => {
		const clear = asked(
			frame('depth', 150, { rim: 60 }),
			shelf('height', 200, { from: 100, length: 200 }),
		);
		expect(slots(clear)).toEqual([[], []]);
		expect(told(clear, 'braces')).toEqual([]);
		holds(clear);
	});

	test('a shelf that reaches into the rim is halved over that rim alone', () => {
		const rim = asked(frame('depth', 150), shelf('height', 200, { from: 0, length: 250 }));
		expect(slots(rim)).toEqual([[[25, 18.3]], [[25, 18.3]]]);
		holds(rim);
	});

	test('a grid of two by two slides together: all of one kind open in front', () => {
		const grid = asked(
			shelf('height', 130),
			shelf('depth', 100),
			shelf('height', 270),
			shelf('depth', 200),
		);
		expect(slots(grid).map((s) => s.length)).toEqual([2, 2, 2, 2]);
		const from = braces(grid).map((b) => [
			...new Set(b.notes.map((n) => /from the (\w+)/.exec(n)![1])),
		]);
		expect(from).toEqual([['left'], ['right'], ['left'], ['right']]);
		holds(grid);
	});

	test('three that all cross each other cannot slide: the last crossings are told', () => {
		const three = asked(shelf('height', 200), shelf('depth', 150), frame('width', 400));
		expect(slots(three).map((s) => s.length)).toEqual([2, 1, 1]);
		expect(told(three, 'braces')).toEqual([
			expect.stringMatching(
				/^check: Shelf brace 2 and Window brace 3 cross each other: with slots/,
			),
		]);
	});

	test('a frame is not cut in two by two others', () => {
		const three = asked(frame('height', 200), frame('width', 150), frame('width', 350));
		for (const b of braces(three)) expect(boardBody(b).decompose()).toHaveLength(1);
		expect(told(three, 'braces')).toEqual([expect.stringMatching(/fall in two/)]);
	});

	test('one that ends within the other is told, one flush with its far face is halved', () => {
		const at = (length: number) => asked(frame('width', 250), shelf('height', 200, { length }));
		expect(told(at(250), 'braces')).toEqual([
			expect.stringMatching(/^check: .* ends within the thickness/),
		]);
		expect(slots(at(250))).toEqual([[], []]);
		expect(slots(at(259)).map((s) => s.length)).toEqual([1, 1]);
		holds(at(259));
		expect(slots(at(241))).toEqual([[], []]);
		expect(told(at(241), 'braces')).toEqual([]);
	});

	test('two slots of one board never run into each other', () => {
		// A shelf from each end, both held by a frame, so that a third board can slide on to them
		// from one end only; its slots would meet where the two are less than a board apart.
		const near = (up: number): Asked => ({
			...asked(
				frame('depth', 100, { rim: 32 }),
				shelf('height', 118, { from: 200, length: 300 }),
				shelf('depth', 250, { from: 80, length: 208 }),
				shelf('height', up, { from: 0, length: 194 }),
			),
			braceFit: 0,
		});
		expect(told(near(114), 'braces')).toEqual([
			expect.stringMatching(/^check: Shelf brace 3 and Shelf brace 4 cross .* run into one/),
		]);
		const { boards } = figures(near(114));
		const weighs = boards.map((b) => boardBody(b).volume() / ((b.mass / 680) * 1e9));
		expect(weighs).toEqual(boards.map(() => expect.closeTo(1, 6) as number));
		expect(told(near(90), 'braces')).toEqual([]);
		holds(near(90));
	});

	test('one alone, and two side by side, have none', () => {
		expect(slots(asked(shelf('height', 200)))).toEqual([[]]);
		expect(slots(asked(shelf('height', 100), shelf('height', 200)))).toEqual([[], []]);
	});

	test('in a box with a slanted face the slot is open where the edge is square', () => {
		const slanted: Asked = {
			shape: {
				kind: 'slanted',
				width: 536,
				height: 436,
				lean: { by: 'depths', bottom: 400, top: 300 },
			},
			braces: [shelf('height', 200), frame('width', 250)],
		};
		expect(told(slanted, 'braces')).toEqual([]);
		const f = figures(slanted);
		const bodies = f.boards.map(boardBody);
		const sum = bodies.reduce((total, b) => total + b.volume(), 0);
		expect(joined(bodies).volume() / sum).toBeCloseTo(1, 6);
		bodies.forEach((b, i) =>
			expect(b.volume() / ((f.boards[i]!.mass / 680) * 1e9)).toBeCloseTo(1, 6),
		);
	});
});
