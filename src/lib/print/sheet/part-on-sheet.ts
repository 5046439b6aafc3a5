import { nth, toMm } from '../../measure';
import type { Bevel, Part } from '../../design';
import type { Outline } from '../../geometry';
import type { Placed } from '../../nest';
import {
	type Mark,
	type TextMark,
	line,
	onPaper,
	outlineSteps,
	ringPath,
	type Spot,
	type View,
	boxInRing,
	boxOffRing,
	overlap,
	round,
	textBox,
	type Bounds,
} from '../drawing';
import { type Figures, partFacesText } from '../wording';
import { fitLabel, lain, shortName, type Label } from '../marks';

/**
 * A part as it lies on a sheet: its outline, its words, and the boxes of the words for whatever
 * must keep clear.
 */
interface PartOnSheet {
	readonly marks: readonly Mark[];
	readonly words: readonly Bounds[];
}

export function partOnSheet(part: Part, at: Placed, view: View, figures: Figures): PartOnSheet {
	const outlines = [shapeOf(part, at), ...part.holes.map((hole) => lain(hole, part, at))];
	const of = `part:${part.id}`;
	const shape: Mark = {
		kind: 'path',
		steps: outlineSteps(outlines, view),
		line: 'wide',
		fill: 'sheet',
		evenOdd: true,
		of,
	};
	const rings = outlines.map((o) => ringPath(o, view));
	const label = fitLabel(labels(part, at, view, figures), [
		clearOfBevels(part, at, nth(rings, 0)),
		...rings.slice(1),
	]);
	const tags = bevelTags(part, at, rings, label.boxes, figures);
	return {
		marks: [
			shape,
			...bevelLines(part, at, view),
			...[...label.marks, ...tags.marks].map((m) => ({ ...m, of })),
		],
		words: [...label.boxes, ...tags.boxes],
	};
}

/** The room for words: inside the lines of the bevels. */
function clearOfBevels(part: Part, at: Placed, ring: readonly Spot[]): readonly Spot[] {
	if (part.outline !== undefined) return ring;
	const sides = new Set(part.bevels.map((bevel) => sideOnSheet(bevel.side, at.turn)));
	const { x, y, width, height } = round(ring);
	const left = x + (sides.has('left') ? BEVEL : 0);
	const right = x + width - (sides.has('right') ? BEVEL : 0);
	const top = y + (sides.has('top') ? BEVEL : 0);
	const bottom = y + height - (sides.has('bottom') ? BEVEL : 0);
	return [
		{ x: left, y: bottom },
		{ x: right, y: bottom },
		{ x: right, y: top },
		{ x: left, y: top },
	];
}

function shapeOf(part: Part, at: Placed): Outline {
	if (part.outline !== undefined) return lain(part.outline, part, at);
	const { x, y, length, width } = at;
	return [
		{ x, y },
		{ x: x + length, y },
		{ x: x + length, y: y + width },
		{ x, y: y + width },
	];
}

/** What may be written on the part, from all there is to say down to its mark alone. */
function labels(part: Part, at: Placed, view: View, figures: Figures): Label[] {
	const name = `${part.label} ${part.name}`;
	const room = toMm(Math.max(at.length, at.width)) * view.scale - 4;
	const short = shortName(part.label, part.name, room);
	const size = figures.size(at.length, at.width);
	const show = part.show ? '● show face up' : '';
	const long = part.bevels.length > 0 ? [longFace(part, figures)] : [];
	const beside = [size, show].filter((t) => t !== '').join('  ');
	return [
		{ name, lines: [beside, ...long] },
		{ name, lines: [size, ...(show === '' ? [] : [show]), ...long] },
		{ name, lines: [size, ...(show === '' ? [] : [show])] },
		{ name, lines: [size, ...(show === '' ? [] : ['● show'])] },
		{ name, lines: [size] },
		{ name: short, lines: [size] },
		{ name: `${short}  ${size}`, lines: [] },
		{ name: part.label, lines: [size] },
		{ name: `${part.label}  ${size}`, lines: [] },
		{ name: part.label, lines: [] },
	];
}

/**
 * Which face has the long edges when it lies face up on the saw, or how far apart the faces lie in
 * the blank.
 */
function longFace(part: Part, figures: Figures): string {
	if (part.shift !== undefined) return `blank, ${partFacesText(part, figures)}`;
	const up = part.bevels.every((b) => b.long === 'outside') ? 'LONG face out' : 'LONG face in';
	return part.bevels.some((b) => b.long !== nth(part.bevels, 0).long) ? 'LONG faces differ' : up;
}

const SIDES = ['bottom', 'right', 'top', 'left'] as const;

/** The side of the placed rectangle that a side of the part has become. */
export function sideOnSheet(side: Bevel['side'], turn: Placed['turn']): Bevel['side'] {
	return nth(SIDES, (SIDES.indexOf(side) + turn / 90) % 4);
}

const TAG = 2.3;
/** How far inside its edge the line of a bevel is drawn, mm on paper. */
const BEVEL = 0.9;

/**
 * At each bevelled edge its letter and the saw's tilt, where the edge has room clear of other words
 * and holes.
 */
function bevelTags(
	part: Part,
	at: Placed,
	rings: readonly (readonly Spot[])[],
	words: readonly Bounds[],
	figures: Figures,
): { marks: TextMark[]; boxes: Bounds[] } {
	const marks: TextMark[] = [];
	const boxes = [...words];
	for (const bevel of part.bevels) {
		const text = `${bevel.edge} ${figures.angle(bevel.tilt)}`;
		const side = sideOnSheet(bevel.side, at.turn);
		const slot = tagSlots(text, side, round(rings[0] ?? [])).find((mark) => {
			const box = textBox(mark);
			return (
				boxInRing(box, rings[0] ?? []) &&
				rings.slice(1).every((hole) => boxOffRing(box, hole)) &&
				!boxes.some((other) => overlap(other, box))
			);
		});
		if (slot === undefined) continue;
		marks.push(slot);
		boxes.push(textBox(slot));
	}
	return { marks, boxes: boxes.slice(words.length) };
}

/**
 * Slots along one edge of the placed rectangle, the far end first: names keep to the upper left.
 */
function tagSlots(text: string, side: Bevel['side'], space: Bounds): TextMark[] {
	const inset = 1.5;
	return [0.98, 0.75, 0.5, 0.25, 0.02].map((t) => {
		const anchor = t > 0.9 ? 'end' : t < 0.1 ? 'start' : 'middle';
		const x = space.x + t * space.width;
		const y = space.y + (1 - t) * space.height;
		const common = { kind: 'text', text, size: TAG, anchor } as const;
		if (side === 'top') return { ...common, x, y: space.y + inset + TAG * 0.72 };
		if (side === 'bottom') return { ...common, x, y: space.y + space.height - inset - TAG * 0.24 };
		const left = side === 'left' ? inset + TAG * 0.72 : space.width - inset - TAG * 0.24;
		return { ...common, x: space.x + left, y, turn: 90 };
	});
}

/** A dashed line just inside each bevelled edge: the other face ends there or thereabouts. */
function bevelLines(part: Part, at: Placed, view: View): Mark[] {
	if (part.outline !== undefined) return [];
	const { x: left, y: bottom } = onPaper(at, view);
	const { x: right, y: top } = onPaper({ x: at.x + at.length, y: at.y + at.width }, view);
	if (right - left < 4 * BEVEL || bottom - top < 4 * BEVEL) return [];
	const ends = {
		left: [left + BEVEL, bottom, left + BEVEL, top],
		right: [right - BEVEL, bottom, right - BEVEL, top],
		bottom: [left, bottom - BEVEL, right, bottom - BEVEL],
		top: [left, top + BEVEL, right, top + BEVEL],
	} as const;
	return part.bevels.map((bevel) => ({
		kind: 'path',
		steps: line(...ends[sideOnSheet(bevel.side, at.turn)]),
		line: 'dashed',
		of: `part:${part.id}`,
	}));
}
