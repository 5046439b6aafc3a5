import type { BoxBoard } from '../../design';
import { circle, type Outline, rectangle, without } from '../../geometry';
import { ticks, type Ruler } from '../../measure';
import { boardLabels } from './board-labels';
import { facing, type Facing } from './facing';
import { type Drawing, type Mark, type TextMark, onPaper, wrapped } from '../drawing';
import {
	running,
	outlineMark,
	scaleText,
	stageFor,
	TEXT,
	words,
	type Stage,
	LabelSlots,
} from '../marks';
import { facesText, type Figures } from '../wording';

const MARGINS = { left: 30, right: 22, bottom: 30 };
const WIDE = 180;
const LEADING = 4.6;
const SMALL = 2.5;

/**
 * One board as its part is cut, from outside or, where an end is turned over, from inside: the face
 * that is seen in wide lines, the one behind it dashed where a bevel parts them, the letter and
 * tilt at each edge, rabbets dashed, holes measured from the lower left corner of what is cut from
 * the sheet.
 */
export function boardDrawing(b: BoxBoard, print: Figures, ruler: Ruler): Drawing {
	const f = facing(b);
	const rect = { x: 0, y: 0, length: f.long.across, width: f.long.up };
	const head = headLines(f, print);
	const stage = stageFor(rect, { ...MARGINS, top: 6 + LEADING * head.length + 1 });
	const marks: Mark[] = [
		...shapes(f, stage, b.label),
		...sizes(f, stage, print),
		...head.map((line, i) => ({ ...line, x: MARGINS.left, y: 6 + i * LEADING })),
		words(stage.width - 1, 6 + head.length * LEADING, scaleText(stage), {
			anchor: 'end',
			ink: 'pencil',
		}),
	];
	const slots = new LabelSlots({ x: 1, y: 0, width: stage.width - 2, height: stage.height });
	slots.keepOff(marks);
	const under: string[] = [];
	for (const label of boardLabels(f, stage, print, ruler)) {
		const mark = slots.put(label.places);
		if (mark) marks.push(mark);
		else under.push(label.else);
	}
	const legend = wrapped(under.join('  ·  '), WIDE - 4, SMALL).filter((line) => line !== '');
	return {
		width: stage.width,
		height: stage.height + legend.length * LEADING,
		title: `${f.label} ${f.name}, seen from ${f.seen}`,
		marks: [
			...marks,
			...legend.map((line, i) => words(2, stage.height + i * LEADING + 3, line, { size: SMALL })),
		],
	};
}

/** Outline, far face, rabbets and holes. */
function shapes(f: Facing, stage: Stage, label: string): Mark[] {
	const { view } = stage;
	const open = f.holes.some(isSlot);
	const bevelled = f.edges.some((e) => e.tilt > 0);
	return [
		outlineMark(cutOut(f), view, 'wide', { of: `part:${label}` }),
		...(bevelled ? [outlineMark([f.far], view, 'dashed')] : []),
		...f.rabbets.map((r) =>
			outlineMark(
				[[r.low, { x: r.high.x, y: r.low.y }, r.high, { x: r.low.x, y: r.high.y }]],
				view,
				'dashed',
			),
		),
		...f.devices.flatMap((d) => [
			outlineMark([d.body], view, 'narrow'),
			outlineMark([d.space], view, 'chain', { ink: 'pencil' }),
		]),
		...f.holes.filter((h) => !open || h.pattern).flatMap((h) => holeMarks(h, stage)),
	];
}

const isSlot = (hole: Facing['holes'][number]): boolean => hole.of === 'halving';

/** The near face with the slots open at its edges; windows they run into go with them. */
function cutOut(f: Facing): Outline[] {
	if (!f.holes.some(isSlot)) return [f.near];
	const gone = f.holes.map((h) => h.outline);
	return without([f.near], gone).flatMap((r) => [r.outline, ...r.holes]);
}

function holeMarks(hole: Facing['holes'][number], stage: Stage): Mark[] {
	if (hole.pattern) {
		const { pattern } = hole;
		const round =
			pattern.kind === 'circle'
				? circle(pattern.middle.x, pattern.middle.y, pattern.diameter / 2)
				: rectangle(
						pattern.middle.x - pattern.across / 2,
						pattern.middle.y - pattern.up / 2,
						pattern.across,
						pattern.up,
					);
		return [
			outlineMark([hole.outline], stage.view, 'narrow'),
			outlineMark([round], stage.view, 'chain', { ink: 'pencil' }),
		];
	}
	const spot = onPaper(hole.centre, stage.view);
	const cross = (dx: number, dy: number): Mark => ({
		kind: 'path',
		steps: [
			['M', spot.x - dx, spot.y - dy],
			['L', spot.x + dx, spot.y + dy],
		],
		line: 'chain',
		ink: 'pencil',
	});
	const line = hole.recess === null ? 'wide' : hole.face ? 'dashed' : 'narrow';
	return [outlineMark([hole.outline], stage.view, line), cross(4, 0), cross(0, 4)];
}

/**
 * Running dimensions from the lower left corner: corners of the face, rabbets, centres of holes,
 * the whole.
 */
function sizes(f: Facing, stage: Stage, print: Figures): Mark[] {
	const { box, view } = stage;
	const places = (axis: 'x' | 'y'): { at: number; text: string }[] => {
		const corners = f.near.map((p) => p[axis]);
		const holes = f.holes.flatMap((h) =>
			isSlot(h) ? h.outline.map((p) => p[axis]) : [(h.pattern?.middle ?? h.centre)[axis]],
		);
		const bodies = f.devices.flatMap((d) => d.body.map((p) => p[axis]));
		const rabbets = axis === 'x' ? f.rabbets.flatMap((r) => [r.low.x, r.high.x]) : [];
		const all = [
			...corners,
			...holes,
			...bodies,
			...rabbets,
			axis === 'x' ? f.long.across : f.long.up,
		];
		const marks = [...new Set(all.map((n) => Math.round(n)))].filter((n) => n > 2);
		// Two that print alike are one mark of the tape.
		const seen = new Set<string>();
		return marks.flatMap((n) => {
			const text = print.bench(ticks(n));
			if (seen.has(text)) return [];
			seen.add(text);
			return [{ at: onPaper({ x: n, y: n }, view)[axis], text }];
		});
	};
	const { x, y, height } = box;
	return [
		...running({ axis: 'x', datum: x, edge: y + height, offset: 6, places: places('x') }),
		...running({ axis: 'y', datum: y + height, edge: x, offset: 6, places: places('y') }),
	];
}

/** What it is and how large both faces are, then what has to be minded. */
function headLines(f: Facing, print: Figures): Omit<TextMark, 'x' | 'y'>[] {
	const blank = f.shift ? 'BLANK ' : '';
	const size = `${blank}${print.size(f.long.across, f.long.up)}, ${print.length(f.thickness)} thick`;
	const faces = facesWords(f, print);
	const turned =
		f.seen === 'inside' ? ['seen from inside, the face its part is drawn from on the sheet'] : [];
	const below = [...turned, ...f.notes].join('  ·  ');
	const room = WIDE - MARGINS.left - 1;
	const lines = (text: string, more: Partial<TextMark>) =>
		wrapped(text, room, more.size ?? TEXT, more.weight).map((line) => words(0, 0, line, more));
	const head = lines(`${f.label}  ${f.name}  ·  ${size}${faces}`, { weight: 'semibold' });
	return [...head, ...(below === '' ? [] : lines(below, { size: SMALL, ink: 'pencil' }))];
}

/** The SHORT face, or both faces where neither is as long as the blank. */
function facesWords({ long, short, shift }: Facing, print: Figures): string {
	if (shift) {
		const pair = (s: Facing['long']): [number, number] => [s.across, s.up];
		const { outside, inside, offset } = shift;
		const pairs = { outside: pair(outside), inside: pair(inside), offset: pair(offset) };
		return `  ·  ${facesText(pairs, print)}`;
	}
	const shorter = short.across < long.across - 2 || short.up < long.up - 2;
	return shorter ? `  ·  SHORT FACE ${print.size(short.across, short.up)}` : '';
}
